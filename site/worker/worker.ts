// Keeps the whole handbook on the phone and answers from there.
//
// - Install is all or nothing: each file is fetched and its bytes compared with the digest the build wrote down. A
//   captive portal's page, an error page, half a file: none of them can get in.
// - One cache per version, named by the digest of the list. A version answers from its own cache only.
// - A new version waits until a person taps; nobody's page changes under their hands.
// - An interrupted install keeps what it has verified and goes on from there next time; the old version stays whole.
//
// The build puts the constants and this script between two braces: cut anywhere, the script is no script, and no
// browser takes it for an update.

import { contentType, route } from "./addresses.ts";
import type { Held, ToPage, ToWorker } from "./messages.ts";
import type { Entry, Net } from "./receive.ts";
import { Shelf } from "./shelf.ts";

declare const self: ServiceWorkerGlobalScope;
declare const __VERSION__: string; // digest of the list below
declare const __PRECACHE__: Entry[]; // put in by the build
declare const __EDITION__: [version: string, date: string]; // as they stand at the foot of each page

const scope = self.registration.scope;
const [version, date] = __EDITION__;
const net: Net = { fetch: (url, init) => fetch(url, init), silence: 20_000 };
const shelf = new Shelf(scope, __VERSION__, __PRECACHE__, caches, net);
const files: ReadonlySet<string> = new Set(shelf.entries.keys());
const total = files.size;
const spoken = new Map<string, string>(); // page: version it said it is

self.addEventListener("install", (event) => event.waitUntil(install()));
self.addEventListener("activate", (event) => event.waitUntil(activate()));
self.addEventListener("fetch", (event) => {
  const url = new URL(event.request.url);
  if (event.request.method !== "GET" || !url.href.startsWith(scope)) return;
  const navigation = event.request.mode === "navigate";
  const path = decode(url.pathname.slice(new URL(scope).pathname.length));
  const to = route(path, files, navigation);
  if (to.kind === "file") event.respondWith(answer(to.path, navigation));
  else if (to.kind === "move") event.respondWith(Response.redirect(shelf.address(to.path) + url.search, 302));
  else if (navigation) event.respondWith(elsewhere(event.request));
  // A page of the version before, still open while this one takes over, gets the files it was built with.
  else if (/\.[0-9a-f]{16}\.\w+$/.test(path)) event.respondWith(shelf.fromOthers(path).then((kept) => kept ?? fetch(event.request)));
});
self.addEventListener("message", (event) => {
  const message = event.data as ToWorker;
  const port = event.ports[0];
  const say = (held: Held): void => port?.postMessage(held);
  if (message.type === "use") event.waitUntil(self.skipWaiting());
  if (message.type === "state") {
    if (event.source && "id" in event.source) spoken.set(event.source.id, message.version);
    event.waitUntil(state(say));
  }
  if (message.type === "check") event.waitUntil(check(say));
});

async function install(): Promise<void> {
  let last = 0;
  const progress = (done: number, bytes: number): void => {
    const now = Date.now();
    if (now - last < 500 && done < total) return; // ms: each word drawn costs a slow phone a twentieth of a second
    last = now;
    void tell({ type: "saving", digest: __VERSION__, version, done, total, bytes, size: shelf.size });
  };
  progress(0, 0);
  try {
    await shelf.fill(progress);
  } catch (error) {
    await tell({ type: "failed", digest: __VERSION__, version, reason: sentence(error) });
    throw error;
  }
}

async function activate(): Promise<void> {
  if (!self.registration.installing) await shelf.outdate();
  await self.clients.claim();
  await tell(await held());
}

async function held(reason = ""): Promise<Held> {
  const [lost, sound] = await Promise.all([shelf.missing(), shelf.sound()]);
  const bytes = lost.reduce((left, path) => left - (shelf.entries.get(path)?.[2] ?? 0), shelf.size);
  return { type: "held", digest: __VERSION__, version, date, files: total - lost.length, total, bytes, size: shelf.size, missing: lost.slice(0, 5), saved: 0, mended: 0, checked: false, sound, reason };
}

const day = 86_400_000; // ms
let daily: Promise<void> | null = null;
let checks = 0; // under way
const due = async (): Promise<boolean> => checks === 0 && Date.now() - (await shelf.sound()) >= day;

/**
 * Tells how much is held by name. What the phone has dropped is fetched again while there is signal, and told again.
 * Names say nothing of damage: once a day every body is read back, a little after the page that a person came for.
 */
async function state(say: (held: Held) => void): Promise<void> {
  say(await held());
  await tidy();
  const lost = await shelf.missing();
  if (lost.length === 0) {
    if (!daily && !(await due())) return;
    daily ??= new Promise((done) => setTimeout(done, 5000)).then(async () => (await due()) ? check(() => undefined) : undefined).finally(() => (daily = null));
    return daily;
  }
  const reason = await shelf.mend(lost).then(() => "", sentence);
  await tell(await held(reason));
}

/** Reads everything back, mends what is not right, and tells every page what is true then. */
async function check(say: (held: Held) => void): Promise<void> {
  let last = 0;
  const progress = (done: number): void => {
    const now = Date.now();
    if (now - last < 100) return;
    last = now;
    void tell({ type: "checking", done, total });
  };
  checks++;
  let found;
  let reason = "";
  try {
    found = await shelf.check(progress);
    if (found.bad.length > 0) {
      reason = await shelf.mend(found.bad).then(() => "", sentence);
      found = await shelf.check(progress);
    }
  } finally {
    checks--;
  }
  for (const path of found.bad) shelf.again.delete(path);
  const now: Held = {
    type: "held", digest: __VERSION__, version, date, files: found.good.length, total, bytes: found.bytes, size: shelf.size,
    missing: found.bad.slice(0, 5), saved: found.saved, mended: shelf.again.size, checked: true, sound: await shelf.sound(), reason,
  };
  shelf.again.clear();
  say(now);
  await tell(now);
}

/** Deletes older versions when every open page has said that it is of this one. */
async function tidy(): Promise<void> {
  const open = await self.clients.matchAll({ includeUncontrolled: true, type: "window" });
  if (open.every((page) => !page.url.startsWith(scope) || spoken.get(page.id) === version)) await shelf.removeOlder();
}

async function answer(path: string, navigation: boolean): Promise<Response> {
  try {
    return await shelf.file(path);
  } catch (error) {
    // This version is not whole any more and cannot be made whole. One that waits may take over without a tap.
    if (navigation) self.registration.waiting?.postMessage({ type: "use" } satisfies ToWorker);
    const why = `it cannot be fetched now: ${sentence(error)}`;
    if (navigation) return page(503, `The phone has dropped this page from its storage, and ${why}`);
    // Without its script a page has no other way to say what is wrong.
    if (/^assets\/app\.\w+\.js$/.test(path)) {
      const words = "The phone dropped a part of the handbook. You can read, but ticks and timers work only with a signal.";
      return new Response(`document.querySelector("[data-offline-state]").textContent=${JSON.stringify(words)}`, { headers: { "content-type": contentType(path) } });
    }
    return new Response(why, { status: 503, headers: { "content-type": "text/plain; charset=utf-8", "x-changeout": "dropped" } });
  }
}

async function tell(message: ToPage): Promise<void> {
  for (const client of await self.clients.matchAll({ includeUncontrolled: true, type: "window" })) if (client.url.startsWith(scope)) client.postMessage(message);
}

function sentence(error: unknown): string {
  return error instanceof Error ? error.message : String(error);
}

/** A page that is not in the list: the server's, when it answers before a person gives up. */
function elsewhere(request: Request): Promise<Response> {
  const unknown = (why: string): Response => page(404, `This page is not part of the saved handbook, and ${why}`);
  return Promise.race([
    fetch(request).catch(() => unknown("there is no signal to look for it.")),
    new Promise<Response>((done) => setTimeout(() => done(unknown("the network does not answer.")), net.silence / 2)),
  ]);
}

/** A page that says what is not here, in the handbook's own style and the chosen light or dark where those are held. */
function page(status: number, sentence: string): Response {
  const asset = (name: RegExp): string => shelf.address([...files].find((path) => name.test(path)) ?? "");
  const html = `<!doctype html><html lang="en" data-base="${scope}"><head><meta charset="utf-8"><meta name="viewport" content="width=device-width, initial-scale=1"><meta name="color-scheme" content="light dark"><title>Not here</title><script src="${asset(/\/early\.[^/]*js$/)}"></script><link rel="stylesheet" href="${asset(/\/app\.[^/]*css$/)}"></head><body><main class="co-page"><div class="co-title"><h1>Not here</h1><p class="co-title__summary">${sentence.replace(/[&<]/g, (c) => (c === "&" ? "&amp;" : "&lt;"))}</p></div><p><a class="co-button" href="${shelf.address("index.html")}">To the front page</a></p><p><a class="co-button co-button--quiet" href="${shelf.address("contents.html")}#find">Search the handbook</a></p></main></body></html>`;
  return new Response(html, { status, headers: { "content-type": "text/html; charset=utf-8", "content-security-policy": "default-src 'none'; script-src 'self'; style-src 'self'" } });
}

function decode(path: string): string {
  try {
    return decodeURIComponent(path);
  } catch {
    return path;
  }
}
