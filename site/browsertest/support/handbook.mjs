// The built handbook under test. run.mjs prepares it once; every test file finds it through the folder in CHANGEOUT_TEST:
//
//   changeout      the Go program (go run ./build, compiled)
//   source/        a copy of the repository, so that an edit during the tests reaches no test
//   handbook.html  the single file

import { execFile, spawn } from "node:child_process";
import { cp, mkdtemp, readdir } from "node:fs/promises";
import path from "node:path";
import { pathToFileURL } from "node:url";
import { freePort } from "./port.mjs";
import { until } from "./page.mjs";

export function folder() {
  const dir = process.env.CHANGEOUT_TEST;
  if (!dir) throw new Error("there is no built handbook; start the tests with: node site/browsertest/run.mjs [file …]");
  return dir;
}

export const program = () => path.join(folder(), "changeout");
export const source = () => path.join(folder(), "source");
export const singleFile = () => path.join(folder(), "handbook.html");

/**
 * Serves the handbook with the project's own server: builds into a new folder, listens on a free port of the loopback
 * address. content is a folder of pages in place of the repository's; base a path such as "/handbook/".
 */
export async function serve({ content, base = "/" } = {}) {
  const out = await mkdtemp(path.join(folder(), "site-"));
  const port = await freePort();
  const server = new Server({ out, port, content, base });
  await server.start();
  return server;
}

class Server {
  constructor({ out, port, content, base }) {
    Object.assign(this, { out, port, content, base, origin: `http://127.0.0.1:${port}` });
  }
  /** Builds and starts again on the same port; the output folder is brought up to date. */
  async start() {
    const args = ["serve", "-root", source(), "-out", this.out, "-port", String(this.port), "-base", this.base, "-date", "2026-11-25"];
    if (this.content) args.push("-content", this.content);
    let said = "";
    this.child = spawn(program(), args, { cwd: source(), stdio: ["ignore", "ignore", "pipe"] });
    this.child.stderr.setEncoding("utf8").on("data", (text) => (said += text));
    await until("the server to listen", () => {
      if (this.child.exitCode !== null) throw Object.assign(new Error(`the server stopped: ${said}`), { final: true });
      return said.includes("serving http");
    }, 120_000);
  }
  async stop() {
    if (this.child.exitCode !== null) return;
    const gone = new Promise((done) => this.child.once("exit", done));
    this.child.kill("SIGTERM");
    await gone;
    const alive = await fetch(this.origin, { signal: AbortSignal.timeout(2000) }).then(() => true, () => false);
    if (alive) throw new Error("the server still answers after it was stopped");
  }
  /** Where pages are found by a browser, and how its parts are named there. */
  get place() {
    const root = this.origin + this.base;
    return {
      name: "site",
      allowed: [root],
      url: (page, part = "") => root + (page === "index" ? "" : page + ".html") + (part && "#" + part),
    };
  }
}

/** The single file on disk, opened as a phone opens it from its storage. */
export function filePlace(file = singleFile()) {
  const root = pathToFileURL(file).href;
  return {
    name: "single file",
    allowed: [root],
    url: (page, part = "") => `${root}#${page}${part && "/" + part}`,
  };
}

/** The ids of all pages in a folder of the built site: "index", "stages/charge", … */
export async function pagesOf(dir) {
  return (await readdir(dir, { recursive: true })).filter((f) => f.endsWith(".html")).map((f) => f.slice(0, -".html".length)).sort();
}

/** The table that the tests read whole; the other tables of refrigerants are the same template with other figures. */
export const wholeTable = "tables/r-407c";

/**
 * The pages that slow checks read: all but most of the 149 tables of refrigerants, of which every twentieth stands for the rest.
 * EVERY_PAGE=1 reads them all, which takes some minutes more for each check.
 */
export async function pagesToRead(dir) {
  const all = await pagesOf(dir);
  if (process.env.EVERY_PAGE === "1") return all;
  return all.filter((page, i) => !page.startsWith("tables/r-") || page === wholeTable || i % 20 === 0);
}

/** A copy of the handbook's pages that a test may change. */
export async function ownContent() {
  const dir = await mkdtemp(path.join(folder(), "content-"));
  await cp(path.join(source(), "content"), dir, { recursive: true });
  return dir;
}

/** What the command line says to a worksheet: { code, answer, sentence }. */
export function compute(worksheet, inputs) {
  const args = ["compute", worksheet, ...Object.entries(inputs).map(([k, v]) => `${k}=${v}`), "-json"];
  return new Promise((done) => {
    execFile(program(), args, { cwd: source() }, (error, stdout, stderr) => {
      done({ code: error ? error.code : 0, answer: error ? null : JSON.parse(stdout), sentence: stderr.trim() });
    });
  });
}
