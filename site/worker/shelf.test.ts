import { strict as assert } from "node:assert";
import { createHash } from "node:crypto";
import { test } from "node:test";
import type { Entry } from "./receive.ts";
import { Shelf } from "./shelf.ts";

const scope = "https://example.org/job/handbook/";
const texts: Record<string, string> = { "index.html": "<h1>Front</h1>", "stages/hold.html": "<h1>Hold</h1>".repeat(40), "assets/changeout.0123456789abcdef.wasm": "\0asm".repeat(300) };
const entry = (path: string, text: string): Entry => [path, createHash("sha256").update(text).digest("hex"), Buffer.byteLength(text)];
const listOf = (files: Record<string, string>): Entry[] => Object.entries(files).map(([path, text]) => entry(path, text));

/** Caches as the standard describes them, as far as the shelf uses them. */
class Stores {
  readonly all = new Map<string, Map<string, Response>>();
  room = Infinity;
  async open(name: string) {
    const held = this.all.get(name) ?? new Map<string, Response>();
    this.all.set(name, held);
    return {
      match: async (url: string) => held.get(url)?.clone(),
      put: async (url: string, r: Response) => {
        if (held.size >= this.room) throw new DOMException("full", "QuotaExceededError");
        held.set(url, r);
      },
      delete: async (url: string) => held.delete(url),
      keys: async () => [...held.keys()].map((url) => ({ url })),
    };
  }
  async keys() { return [...this.all.keys()]; }
  async delete(name: string) { return this.all.delete(name); }
}

type Answer = (path: string, init: RequestInit, n: number) => Promise<Response> | Response;
const good = (files: Record<string, string>): Answer => (path) => path in files ? new Response(files[path]) : new Response("none", { status: 404 });

function make(files: Record<string, string>, answer: Answer, stores = new Stores(), digest = "v1", silence = 60) {
  let asked = 0;
  const fetch = async (url: string, init: RequestInit): Promise<Response> => answer(url.slice(scope.length), init, asked++);
  return { stores, shelf: new Shelf(scope, digest, listOf(files), stores as unknown as CacheStorage, { fetch, silence }), asked: () => asked };
}
const held = (stores: Stores, digest = "v1") => [...(stores.all.get(`changeout /job/handbook/ ${digest}`)?.keys() ?? [])].map((u) => u.slice(scope.length)).filter((path) => !path.startsWith("?")).sort(); // files, no notes

test("a whole answer is kept, with the right type whatever the server says", async () => {
  const { shelf, stores } = make(texts, (path) => new Response(texts[path], { headers: { "content-type": "text/plain" } }));
  const seen: [number, number][] = [];
  await shelf.fill((files, bytes) => seen.push([files, bytes]));
  assert.deepEqual(held(stores), Object.keys(texts).sort());
  assert.deepEqual(seen.at(-1), [3, shelf.size], "progress ends at all files and all bytes");
  assert.ok(seen.every(([f, b], i) => i === 0 || f >= seen[i - 1]![0] && b >= seen[i - 1]![1]), "progress never goes back");
  assert.equal((await shelf.file("assets/changeout.0123456789abcdef.wasm")).headers.get("content-type"), "application/wasm");
  const found = await shelf.check();
  assert.deepEqual([found.good.length, found.bad, found.bytes], [3, [], shelf.size]);
  assert.ok(Math.abs(found.saved - Date.now()) < 5000, `saved at ${found.saved}`);
});

const lies: [name: string, answer: Answer, says: RegExp][] = [
  ["a sign-in page for everything", () => new Response("<form>Sign in</form>", { headers: { "content-type": "text/html" } }), /something other than the handbook|sign-in page of the network/],
  ["a long sign-in page", () => new Response("x".repeat(100_000)), /something other than the handbook/],
  ["an error", () => new Response("no", { status: 502 }), /answered 502/],
  ["a page that says it is missing", () => new Response("none", { status: 404 }), /answered 404/],
  ["one byte less", (path) => new Response(texts[path]!.slice(0, -1)), /\d+ of \d+ bytes came for .*half a file/],
  ["nothing", () => new Response(""), /: ?0 of \d+ bytes|^Error: 0 of \d+ bytes/],
  ["one bit changed", (path) => new Response(texts[path]!.replace(/.$/, "?")), /something other than the handbook/],
  ["no answer", () => { throw new TypeError("Failed to fetch"); }, /the signal was lost/],
  ["a redirect to another host", (_p, init) => { if (init.redirect === "manual") return { type: "opaqueredirect" } as Response; throw new TypeError("CORS"); }, /something other than the handbook/],
  ["an answer that never comes", (_p, init) => new Promise((_done, fail) => init.signal!.addEventListener("abort", () => fail(new DOMException("", "AbortError")))), /the signal was lost/],
  ["an answer that stops half way", (path, init) => new Response(new ReadableStream({
    start(to) {
      to.enqueue(new TextEncoder().encode(texts[path]!.slice(0, 5)));
      init.signal!.addEventListener("abort", () => { try { to.error(new DOMException("", "AbortError")); } catch { /* ended */ } });
    },
  })), /the signal was lost/],
];
for (const [name, answer, says] of lies) {
  test(`never kept: ${name}`, async () => {
    const { shelf, stores } = make(texts, answer);
    await assert.rejects(shelf.fill(), says);
    assert.deepEqual(held(stores), []);
  });
}

test("a stale copy of the browser is passed by", async () => {
  const { shelf, stores } = make(texts, (path, init) => new Response(init.cache === "default" ? "older" : texts[path]));
  await shelf.fill();
  assert.equal(held(stores).length, 3);
});

test("what came before the signal went is not fetched twice", async () => {
  let up = true;
  const { shelf, stores, asked } = make(texts, (path, init, n) => {
    if (!up || path.startsWith("stages")) throw new TypeError("lost");
    return good(texts)(path, init, n);
  });
  await assert.rejects(shelf.fill(), /signal was lost/);
  const some = held(stores).length;
  assert.ok(some > 0 && some < 3, `${some} files after the cut`);
  up = false;
  const before = asked();
  await assert.rejects(shelf.fill(), /signal was lost/);
  assert.ok(asked() - before <= 4 * (3 - some), "only what is missing is asked for");
});

test("an update copies what did not change, and a failed one leaves the older version whole", async () => {
  const stores = new Stores();
  await make(texts, good(texts), stores).shelf.fill();
  const after = { ...texts, "index.html": "<h1>New</h1>" };
  const asked: string[] = [];
  const bad = make(after, (path) => { asked.push(path); throw new TypeError("lost"); }, stores, "v2");
  await assert.rejects(bad.shelf.fill());
  assert.ok(asked.every((path) => path === "index.html"), `asked for ${asked.join(" ")}`);
  const old = make(texts, () => { throw new TypeError("no server"); }, stores);
  assert.deepEqual((await old.shelf.check()).bad, []);
  assert.equal(await (await old.shelf.file("index.html")).text(), texts["index.html"]);
  assert.deepEqual(held(stores, "v2"), Object.keys(texts).filter((p) => p !== "index.html").sort());
});

test("reading back finds what is missing, cut or changed; none of it is given out; it is mended", async () => {
  const { shelf, stores } = make(texts, good(texts));
  assert.equal(await shelf.sound(), 0);
  await shelf.fill();
  assert.ok(Math.abs(await shelf.sound() - Date.now()) < 5000, "what got in was compared");
  const cache = [...stores.all.values()][0]!;
  cache.delete(scope + "index.html");
  cache.set(scope + "stages/hold.html", new Response("<h1>Hol"));
  cache.set(scope + "assets/changeout.0123456789abcdef.wasm", new Response("X" + texts["assets/changeout.0123456789abcdef.wasm"]!.slice(1)));
  assert.deepEqual(await shelf.missing(), ["index.html"], "by name only one is missing");
  const found = await shelf.check();
  assert.deepEqual(found.bad.sort(), Object.keys(texts).sort());
  assert.deepEqual(held(stores), [], "what is not right is taken out");
  assert.equal(await shelf.sound(), 0);
  await shelf.mend(found.bad);
  assert.equal(shelf.again.size, 3, "what was fetched again can be told");
  assert.deepEqual((await shelf.check()).bad, []);
  const restarted = make(texts, good(texts), stores).shelf;
  assert.ok(Math.abs(await restarted.sound() - Date.now()) < 5000, "a worker that was stopped knows it again");
});

test("a file that was dropped is fetched again when it is asked for, or says why not", async () => {
  let up = true;
  const { shelf, stores } = make(texts, (path, init, n) => { if (!up) throw new TypeError("lost"); return good(texts)(path, init, n); });
  await shelf.fill();
  const cache = [...stores.all.values()][0]!;
  cache.delete(scope + "index.html");
  assert.equal(await (await shelf.file("index.html")).text(), texts["index.html"]);
  assert.deepEqual(held(stores), Object.keys(texts).sort());
  assert.deepEqual([...shelf.again], ["index.html"]);
  cache.delete(scope + "index.html");
  up = false;
  await assert.rejects(shelf.file("index.html"), /signal was lost/);
});

test("what the phone drops while the rest is saved is fetched again; a phone that keeps nothing is said", async () => {
  const { shelf, stores } = make(texts, (path, init, n) => {
    if (n === 1) [...stores.all.values()][0]!.clear();
    return good(texts)(path, init, n);
  });
  await shelf.fill();
  assert.deepEqual((await shelf.check()).bad, []);
  const forgetful = new Stores();
  const open = forgetful.open.bind(forgetful);
  forgetful.open = async (name) => ({ ...(await open(name)), put: async () => undefined });
  await assert.rejects(make(texts, good(texts), forgetful).shelf.fill(), /does not keep/);
});

test("a full phone is said", async () => {
  const stores = new Stores();
  stores.room = 1;
  await assert.rejects(make(texts, good(texts), stores).shelf.fill(), /no room left/);
});

test("older versions go, a newer one that is being saved stays, other sites stay", async () => {
  const stores = new Stores();
  await make(texts, good(texts), stores, "v1").shelf.fill();
  await stores.open("changeout /other/ v1");
  await stores.open("somebody else");
  const two = make(texts, good(texts), stores, "v2").shelf;
  await two.fill();
  await two.outdate();
  assert.deepEqual(await two.missing(), [], "the list of older ones is no file of the handbook");
  await stores.open("changeout /job/handbook/ v3");
  assert.ok(await two.fromOthers("assets/changeout.0123456789abcdef.wasm"), "an open page of the older version gets its file");
  await two.removeOlder();
  await two.removeOlder();
  assert.deepEqual((await stores.keys()).sort(), ["changeout /job/handbook/ v2", "changeout /job/handbook/ v3", "changeout /other/ v1", "somebody else"]);
  assert.deepEqual((await two.check()).bad, []);
});
