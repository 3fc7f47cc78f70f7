// Keeps the whole handbook on the phone and answers from there.
//
// - Install is all or nothing: each file is fetched and its bytes compared with the digest the build wrote down. A
//   captive portal's page, an error page, half a file: none of them can get in.
// - One cache per version, named by the digest of the list. A version answers from its own cache only.
// - A new version waits until a person taps; nobody's page changes under their hands.
// - An interrupted install keeps what it has verified and goes on from there next time; the old version stays whole.

import { contentType, route } from "./addresses.ts";
import type { ToPage, ToWorker } from "./messages.ts";

declare const self: ServiceWorkerGlobalScope;
declare const __VERSION__: string; // digest of the list below
declare const __PRECACHE__: [path: string, sha256: string][]; // put in by the build

const scope = self.registration.scope;
const family = `changeout ${new URL(scope).pathname} `;
const cacheName = family + __VERSION__;
const digests = new Map(__PRECACHE__);
const files: ReadonlySet<string> = new Set(digests.keys());
const address = (path: string): string => new URL(path, scope).href;
const atOnce = 4; // files fetched side by side

self.addEventListener("install", (event) => event.waitUntil(install()));
self.addEventListener("activate", (event) => event.waitUntil(activate()));
self.addEventListener("fetch", (event) => {
  const url = new URL(event.request.url);
  if (event.request.method !== "GET" || !url.href.startsWith(scope)) return;
  const navigation = event.request.mode === "navigate";
  const to = route(decode(url.pathname.slice(new URL(scope).pathname.length)), files, navigation);
  if (to.kind === "file") event.respondWith(answer(to.path));
  else if (to.kind === "move") event.respondWith(Response.redirect(address(to.path), 302));
  else if (navigation) event.respondWith(fetch(event.request).catch(unknownPage));
});
self.addEventListener("message", (event) => {
  const message = event.data as ToWorker;
  if (message.type === "use") void self.skipWaiting();
  if (message.type === "state") event.waitUntil(report());
});

async function install(): Promise<void> {
  const cache = await caches.open(cacheName);
  const older = (await caches.keys()).filter((name) => name.startsWith(family) && name !== cacheName);
  const queue = [...digests];
  let done = 0;
  const one = async (): Promise<void> => {
    for (let next = queue.shift(); next; next = queue.shift()) {
      const [path, digest] = next;
      if (!(await alreadyHere(cache, older, path, digest))) await save(cache, path, digest);
      done++;
      if (done % 4 === 0 || done === digests.size) await tell({ type: "saving", done, total: digests.size });
    }
  };
  try {
    await tell({ type: "saving", done, total: digests.size });
    await Promise.all(Array.from({ length: atOnce }, one));
  } catch (error) {
    queue.length = 0;
    await tell({ type: "failed", reason: error instanceof Error ? error.message : String(error) });
    throw error;
  }
}

async function activate(): Promise<void> {
  for (const name of await caches.keys()) if (name.startsWith(family) && name !== cacheName) await caches.delete(name);
  await self.clients.claim();
  await report();
}

/** The file, from this version's cache. One the phone has dropped is fetched again, checked, and kept. */
async function answer(path: string): Promise<Response> {
  const cache = await caches.open(cacheName);
  const kept = await cache.match(address(path));
  if (kept) return kept;
  try {
    return await save(cache, path, digests.get(path) ?? "");
  } catch {
    return page(503, "This page was dropped from the phone’s storage, and there is no signal to fetch it again.");
  }
}

/** True when the cache holds the right bytes, perhaps after copying them from an older version's cache. */
async function alreadyHere(cache: Cache, older: string[], path: string, digest: string): Promise<boolean> {
  const own = await cache.match(address(path));
  if (own && (await sha256(await own.arrayBuffer())) === digest) return true;
  for (const name of older) {
    const old = await (await caches.open(name)).match(address(path));
    if (!old) continue;
    const bytes = await old.arrayBuffer();
    if ((await sha256(bytes)) !== digest) continue;
    await cache.put(address(path), response(path, bytes));
    return true;
  }
  return false;
}

async function save(cache: Cache, path: string, digest: string): Promise<Response> {
  let reason = "";
  // First with the browser's own cache, which may hold the file already; then past it, where a stale copy cannot hide.
  for (const mode of ["default", "reload", "reload"] as const) {
    let bytes: ArrayBuffer;
    try {
      const got = await fetch(address(path), { cache: mode, credentials: "same-origin" });
      if (!got.ok) {
        reason = `the server answered ${got.status} for ${path}.`;
        continue;
      }
      bytes = await got.arrayBuffer();
    } catch {
      reason = "the signal was lost. It goes on when you open a page again.";
      continue;
    }
    if ((await sha256(bytes)) !== digest) {
      reason = `something other than the handbook came for ${path}. A sign-in page of the network does that.`;
      continue;
    }
    try {
      await cache.put(address(path), response(path, bytes));
    } catch {
      throw new Error("the phone has no room left for the handbook.");
    }
    return response(path, bytes);
  }
  throw new Error(reason);
}

function response(path: string, bytes: ArrayBuffer): Response {
  return new Response(bytes.slice(0), { headers: { "content-type": contentType(path), "content-length": String(bytes.byteLength), "x-content-type-options": "nosniff" } });
}

/** Tells how much is held; what the phone has dropped is fetched again while there is signal, and told again. */
async function report(): Promise<void> {
  const lost = await missing();
  await tell({ type: "state", stored: digests.size - lost.length, total: digests.size });
  if (lost.length === 0) return;
  const cache = await caches.open(cacheName);
  try {
    for (const path of lost) await save(cache, path, digests.get(path) ?? "");
  } catch {
    return; // said already: files are missing
  }
  await tell({ type: "state", stored: digests.size - (await missing()).length, total: digests.size });
}

async function missing(): Promise<string[]> {
  const cache = await caches.open(cacheName);
  const held = new Set((await cache.keys()).map((request) => request.url));
  return [...files].filter((path) => !held.has(address(path)));
}

async function sha256(bytes: ArrayBuffer): Promise<string> {
  return Array.from(new Uint8Array(await crypto.subtle.digest("SHA-256", bytes)), (b) => b.toString(16).padStart(2, "0")).join("");
}

async function tell(message: ToPage): Promise<void> {
  for (const client of await self.clients.matchAll({ includeUncontrolled: true, type: "window" })) client.postMessage(message);
}

function unknownPage(): Response {
  return page(404, "This page is not part of the saved handbook, and there is no signal to look for it.");
}

function page(status: number, sentence: string): Response {
  const html = `<!doctype html><html lang="en"><meta charset="utf-8"><meta name="viewport" content="width=device-width"><title>Not here</title><h1>Not here</h1><p>${sentence}</p><p><a href="${address("index.html")}">To the front page</a></p></html>`;
  return new Response(html, { status, headers: { "content-type": "text/html; charset=utf-8", "content-security-policy": "default-src 'none'" } });
}

function decode(path: string): string {
  try {
    return decodeURIComponent(path);
  } catch {
    return path;
  }
}
