// Starts the module: finds its bytes, compiles them once and keeps an instance running. Compiling waits until the page is
// idle or a form is touched.

import { decode, encode } from "./wire.ts";
import type { Reply, Request } from "./wire.ts";
import { ask, enough, instantiate } from "./instance.ts";
import type { Instance } from "./instance.ts";
import { root } from "./root.ts";
import { unpack } from "./unpack.ts";

/** Why the module is not there, in a sentence that a person can act on. */
export class NotLoaded extends Error {}

let compiled: Promise<WebAssembly.Module> | null = null;
let running: Instance | null = null;

/** Compiles once; every caller gets the same promise. A failure is forgotten, so that the next touch tries again. */
export function compile(): Promise<WebAssembly.Module> {
  const early = (globalThis as { changeoutModule?: Promise<WebAssembly.Module> }).changeoutModule; // see early.ts
  compiled ??= (early?.catch(fetchModule) ?? fetchModule()).catch((error: unknown) => {
    compiled = null;
    throw error;
  });
  return compiled;
}

/** True as soon as evaluate can answer at once. */
export function ready(): boolean {
  return running !== null;
}

export async function start(): Promise<void> {
  if (running) return;
  const module = await compile();
  if (running) return;
  running = await instantiate(module);
}

/** Answers a request. Call start first. After a crash of the module the next start makes a fresh one. */
export function evaluate(request: Request): Reply {
  return decode(call("evaluate", encode(request)));
}

/** Weighs findings against root causes: the model and the facts as lines, see calc/cause/read.go. Call start first. */
export function assess(text: string): string {
  return call("assess", text);
}

function call(what: "evaluate" | "assess", text: string): string {
  if (!running) throw new Error("The calculator has not been started.");
  const m = running;
  try {
    const reply = ask(m, what, text);
    if (m.memory.buffer.byteLength > enough) renew();
    return reply;
  } catch (error) {
    running = null;
    throw error;
  }
}

let renewing = false;

/** Starts the next instance beside the running one, which answers until it is there. */
function renew(): void {
  if (renewing) return;
  renewing = true;
  compile().then(instantiate).then((next) => (running = next)).catch(console.error).finally(() => (renewing = false));
}

async function fetchModule(): Promise<WebAssembly.Module> {
  const inside = document.getElementById("co-module");
  if (inside) return WebAssembly.compile(await unpack(inside.textContent ?? ""));
  const { module = "", moduleSum = "" } = document.documentElement.dataset;
  // The worker has compared the bytes already. Without one the browser compares them: a module that was cut between two
  // sections can still compile, and would give wrong figures.
  const integrity = navigator.serviceWorker?.controller ? "" : moduleSum;
  let reason = "";
  // A second time past the browser's own cache, which may hold for a year what a sign-in page once sent under this name.
  for (const cache of ["default", "reload"] as const) {
    let response: Response;
    try {
      response = await fetch(root(module), { cache, integrity });
    } catch {
      reason = navigator.onLine ? "The calculator did not arrive whole, or something else came in its place. A sign-in page of the network does that." : "The calculator is not stored on this phone, and there is no signal.";
      continue;
    }
    if (!response.ok) {
      reason = `The server answered ${response.status} for the calculator.`;
      continue;
    }
    try {
      // A server that sends another type than application/wasm must not stop anybody.
      if (WebAssembly.compileStreaming && response.headers.get("content-type")?.startsWith("application/wasm")) return await WebAssembly.compileStreaming(response);
      return await WebAssembly.compile(await response.arrayBuffer());
    } catch (error) {
      if (error instanceof WebAssembly.CompileError) reason = "What came is not the calculator. A sign-in page of the network does that.";
      else reason = "The calculator did not arrive whole: the signal was lost.";
    }
  }
  throw new NotLoaded(reason);
}
