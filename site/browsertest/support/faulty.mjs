// A server that goes wrong on purpose: it cuts, delays, truncates, mislabels and lies. It hands out editions: the built
// handbook's own files and its own worker, with a shorter list, so that a whole install takes a moment and not a minute.

import { createHash } from "node:crypto";
import { readFile } from "node:fs/promises";
import { createServer } from "node:http";
import path from "node:path";
import { folder } from "./handbook.mjs";

/** The pages of an edition; what they load comes with them. */
const pages = ["index.html", "about/offline.html", "stages/evacuate-and-hold.html", "worksheets/saturation.html"];
const others = ["manifest.webmanifest", "icon.svg"];

const built = () => path.join(folder(), "public");
const sha256 = (bytes, as = "hex") => createHash("sha256").update(bytes).digest(as);

/**
 * One version of the handbook: { version, files: Map(name: bytes), list, worker, module, size }. Every version has another
 * number in its pages and another module (by a custom section, which changes no answer), as a real one may.
 * single: where the site offers the single file, "" for nowhere. silence: ms after which the worker takes a silent server for a lost signal, in place of its 20 s.
 */
export async function edition(version, { silence, single = "handbook.html" } = {}) {
  const read = (name) => readFile(path.join(built(), name));
  const script = await readFile(path.join(built(), "worker.js"), "utf8");
  const [, , shown, list, code] = /^\{const __VERSION__="(\w+)",__EDITION__=(\[.*?\]),__PRECACHE__=(\[.*?\n\]);\n(.*)$/s.exec(script);
  const [old, date] = JSON.parse(shown);
  const names = JSON.parse(list).map(([name]) => name);
  const texts = (await Promise.all(pages.map(read))).join("");
  const loaded = names.filter((name) => name.startsWith("assets/") && (texts.includes(name) || name.endsWith(".css")));
  const module = loaded.find((name) => name.endsWith(".wasm"));
  const files = new Map();

  const mark = Buffer.from(version);
  const wasm = Buffer.concat([await read(module), Buffer.from([0, mark.length + 2, 1, 0x76]), mark]); // id 0, length, name "v"
  const moduleNow = `assets/changeout.${sha256(wasm).slice(0, 16)}.wasm`;
  for (const name of [...pages, ...others, ...loaded].sort()) {
    if (name === module) continue;
    let bytes = await read(name);
    if (name.endsWith(".html")) {
      bytes = Buffer.from(bytes.toString().replaceAll(old, version).replaceAll(module, moduleNow).replace(/data-module-sum="[^"]*"/, `data-module-sum="sha256-${sha256(wasm, "base64")}"`)
        .replace(/data-single="[^"]*"/, `data-single="${single}"`));
    }
    files.set(name, bytes);
  }
  files.set(moduleNow, wasm);

  const entries = [...files].map(([name, bytes]) => [name, sha256(bytes), bytes.length]);
  const text = JSON.stringify(entries);
  let worker = `{const __VERSION__="${sha256(text)}",__EDITION__=${JSON.stringify([version, date])},__PRECACHE__=${text};\n${code}`;
  if (silence) {
    if (worker.split("silence:2e4").length !== 2) throw new Error("the worker's limit of silence is not where it was");
    worker = worker.replace("silence:2e4", `silence:${silence}`);
  }
  const size = entries.reduce((sum, e) => sum + e[2], 0);
  return { version, files, total: files.size, list: entries, worker: Buffer.from(worker), module: moduleNow, size };
}

const types = { html: "text/html; charset=utf-8", js: "text/javascript", css: "text/css", wasm: "application/wasm", svg: "image/svg+xml", webmanifest: "application/manifest+json", txt: "text/plain" };

/** What a network shows until somebody signs in. */
export const signIn = "<!doctype html><title>Sign in</title><h1>Welcome to our network</h1><form><input name=room><button>Sign in</button></form>";

/**
 * fault(name, n) is asked for every request (name as in the edition, n counts them) and gives nothing, or one of
 *   { status }                        an error
 *   { body, type }                    something else, with 200
 *   { keep: n, honest }               only the first n bytes; honest: with the whole length announced, then the line is cut
 *   { flip: n }                       byte n changed
 *   { type }                          another type
 *   { stall: n }                      the first n bytes, then silence
 *   { delay }                         ms before the answer
 *   { to }                            a redirect
 * cutAfter: bytes of bodies until every line is cut and nobody answers any more.
 */
export class Faulty {
  constructor(base = "/job/handbook/") {
    this.base = base;
    this.fault = () => undefined;
    this.forgotten = false; // true: the browser's own cache keeps nothing, as after a week
    this.lines = new Set();
    this.asked = [];
    this.heal();
    this.http = createServer((request, response) => void this.answer(request, response));
    this.http.on("connection", (line) => {
      if (this.down) return line.destroy();
      this.lines.add(line);
      line.on("close", () => this.lines.delete(line));
      line.on("error", () => undefined);
    });
  }
  async start(port = 0) {
    await new Promise((done) => this.http.listen(port, "127.0.0.1", done));
    this.port = this.http.address().port;
    this.root = `http://127.0.0.1:${this.port}${this.base}`;
    return this;
  }
  url(page) {
    return this.root + page;
  }
  /** All is well again. */
  heal() {
    this.fault = () => undefined;
    this.left = Infinity;
    this.down = false;
  }
  /** Nobody answers. */
  cut() {
    this.down = true;
    for (const line of this.lines) line.destroy();
  }
  cutAfter(bytes) {
    this.left = bytes;
    if (bytes === 0) this.cut();
  }
  async stop() {
    this.cut();
    await new Promise((done) => this.http.close(done));
  }

  async answer(request, response) {
    const address = new URL(request.url, this.root).pathname;
    if (this.down) return request.socket.destroy();
    if (address + "/" === this.base) return response.writeHead(302, { location: this.base }).end();
    const name = address.slice(this.base.length) || "index.html";
    const fault = this.fault(name, this.asked.push(name)) ?? {};
    if (fault.delay) await new Promise((done) => setTimeout(done, fault.delay));
    if (fault.to) return response.writeHead(302, { location: fault.to }).end();
    let body = name === "worker.js" ? this.edition.worker : this.edition.files.get(name) ?? (name === "handbook.html" ? Buffer.from("<!doctype html><title>One file</title>") : undefined);
    if (fault.status || (!body && fault.body === undefined)) return response.writeHead(fault.status ?? 404, { "content-type": "text/html" }).end("<h1>No</h1>");
    if (fault.body !== undefined) body = Buffer.from(fault.body);
    if (fault.flip !== undefined) {
      body = Buffer.from(body);
      body[fault.flip] ^= 1;
    }
    const whole = body.length;
    const end = fault.keep ?? fault.stall ?? whole;
    response.writeHead(200, {
      "content-type": fault.type ?? types[name.slice(name.lastIndexOf(".") + 1)] ?? "application/octet-stream",
      "content-length": fault.keep !== undefined && !fault.honest ? end : whole,
      "cache-control": this.forgotten ? "no-store" : /\.[0-9a-f]{16}\.\w+$/.test(name) ? "public, max-age=31536000, immutable" : "no-cache",
    });
    // In pieces, and never more than is left before the cut, to the byte.
    for (let at = 0; at < end && !this.down; ) {
      const n = Math.min(16384, end - at, this.left);
      await new Promise((done) => response.write(body.subarray(at, at + n), done));
      at += n;
      this.left -= n;
      if (this.left <= 0) return this.cut();
    }
    if (this.down) return request.socket.destroy();
    if (fault.stall !== undefined) return; // and nothing more
    if (fault.honest) return request.socket.destroy();
    response.end();
  }
}

/** Where the section with the module's data begins. A module that ends there compiles, and would work on empty memory. */
export function beforeData(wasm) {
  for (let at = 8; at < wasm.length; ) {
    const id = wasm[at];
    let length = 0;
    let next = at + 1;
    for (let shift = 0; ; shift += 7) {
      const b = wasm[next++];
      length += (b & 127) * 2 ** shift;
      if (b < 128) break;
    }
    if (id === 11) return at;
    at = next + length;
  }
  throw new Error("the module has no data section");
}
