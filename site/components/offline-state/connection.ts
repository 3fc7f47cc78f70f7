// The page's line to the service worker: registers it, asks it, hears it. The header, the update notice and the page
// about what is stored all use it.

import { load, save } from "../../module/store.ts";
import { root, singleFile } from "../../module/root.ts";
import type { Held, ToPage, ToWorker } from "../../worker/messages.ts";

const html = document.documentElement;

/** The version of this page. */
export const running = html.dataset.version ?? "";

/** Why nothing can be kept here, or "". The single file needs nothing kept. */
export const unable = singleFile ? "" : !isSecureContext ? "pages are saved only over https." : "serviceWorker" in navigator ? "" : "this browser saves no pages.";

/** The address of the handbook as one file, if this site offers it, or "". */
export const oneFile = html.dataset.single ? root(html.dataset.single) : "";

const kept = "changeout:kept"; // an event, because the page about what is stored has a script of its own

export function hear(listener: (message: ToPage) => void): void {
  document.addEventListener(kept, (event) => listener((event as CustomEvent<ToPage>).detail));
}

function pass(detail: ToPage): void {
  document.dispatchEvent(new CustomEvent(kept, { detail }));
}

/** Asks a worker and waits for what it holds; null when it does not answer in time, as a script that is none of ours. */
export function ask(worker: ServiceWorker | null | undefined, message: ToWorker, patience = 10_000): Promise<Held | null> {
  return new Promise((done) => {
    if (!worker) return done(null);
    const { port1, port2 } = new MessageChannel();
    const late = setTimeout(() => done(null), patience);
    port1.onmessage = (event: MessageEvent<Held>) => {
      clearTimeout(late);
      done(event.data);
    };
    worker.postMessage(message, [port2]);
  });
}

/** The worker that answers for this page, or would after a reload. */
export async function keeper(): Promise<ServiceWorker | null> {
  const container = navigator.serviceWorker;
  return container.controller ?? (await container.getRegistration(root("./")))?.active ?? null;
}

/** Registers the worker, or looks for a newer one. Rejects when the server cannot be asked or sends something else. */
export async function lookForNewer(): Promise<ServiceWorkerRegistration> {
  const known = await navigator.serviceWorker.getRegistration(root("./"));
  // Registering looks too: never both, or the second would speak over the first.
  if (!known?.active) return navigator.serviceWorker.register(root(html.dataset.worker ?? "worker.js"), { updateViaCache: "none" });
  await known.update();
  return known;
}

/** What this browser remembers of the last whole copy, so that it can say when the phone has deleted it. */
export interface Remembered {
  version: string;
  since: string; // day
  dropped?: string; // day on which it was found deleted
}

export function remembered(): Remembered | null {
  try {
    return JSON.parse(load("stored") ?? "null") as Remembered | null;
  } catch {
    return null;
  }
}

export function remember(value: Remembered): void {
  const text = JSON.stringify(value);
  if (load("stored") !== text) save("stored", text);
}

export const today = (): string => new Date().toISOString().slice(0, 10);

/** Begins to listen, and asks what is held. first is told whether a worker ruled this page from its start. */
export async function connect(): Promise<void> {
  const container = navigator.serviceWorker;
  const hadWorker = !!container.controller;
  let reloading = false;
  const reload = (): void => {
    if (reloading) return;
    reloading = true;
    location.reload();
  };
  // A page must not mix its own version with the files of another one. What was typed is kept, so it reloads, but
  // never twice for the same version: a server that hands out a mix must not make a page that never rests.
  const same = (held: Held): void => {
    if (held.version === running) return;
    const key = `changeout reloaded for ${held.version}`;
    try {
      if (sessionStorage.getItem(key)) return;
      sessionStorage.setItem(key, "1");
    } catch {
      return;
    }
    reload();
  };
  let ours = ""; // the version whose word counts: one that waits speaks of its own files
  const state = async (): Promise<void> => {
    const ruling = container.controller;
    const held = await ask(ruling ?? (await keeper()), { type: "state", version: running });
    if (!held) return;
    if (ruling) same(held);
    ours = held.digest;
    pass(held);
  };
  container.addEventListener("message", ({ data }: MessageEvent<ToPage>) => {
    if (data.type !== "held" || !ours || data.digest === ours) pass(data);
  });
  container.addEventListener("controllerchange", () => (hadWorker ? reload() : void state()));
  addEventListener("offline", () => void state());
  let looked = Date.now();
  const again = (): void => {
    looked = Date.now();
    void state();
    lookForNewer().catch(() => undefined);
  };
  addEventListener("online", again);
  // What was true an hour ago may not be.
  document.addEventListener("visibilitychange", () => {
    if (document.visibilityState === "visible" && Date.now() - looked > 3600e3) again();
  });
  // A page that comes back from the browser's memory may be of a version that is gone.
  addEventListener("pageshow", (event) => event.persisted && void state());
  await state();
}
