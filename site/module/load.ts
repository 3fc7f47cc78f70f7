// Starts the module: finds its bytes, compiles them once, gives it the few system calls Go's wasip1 target asks for,
// and passes text in and out. Compiling waits until the page is idle or a form is touched.

import { decode, encode } from "./wire.ts";
import type { Reply, Request } from "./wire.ts";
import { root } from "./root.ts";
import { unpack } from "./unpack.ts";

interface Exports {
  memory: WebAssembly.Memory;
  _initialize(): void;
  request(n: number): number;
  evaluate(n: number): number;
  assess(n: number): number;
  reply(): number;
}

let compiled: Promise<WebAssembly.Module> | null = null;
let running: Exports | null = null;

/** Compiles once; every caller gets the same promise. A failure is forgotten, so that the next touch tries again. */
export function compile(): Promise<WebAssembly.Module> {
  compiled ??= fetchModule().catch((error: unknown) => {
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

// The module never frees memory; a fresh instance takes over between two answers once it has grown to this.
const enough = 48 << 20;

function call(what: "evaluate" | "assess", text: string): string {
  if (!running) throw new Error("The calculator has not been started.");
  const m = running;
  try {
    const bytes = new TextEncoder().encode(text);
    const into = m.request(bytes.length);
    new Uint8Array(m.memory.buffer, into, bytes.length).set(bytes);
    const length = m[what](bytes.length);
    const reply = new TextDecoder().decode(new Uint8Array(m.memory.buffer, m.reply(), length));
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
  const url = root(document.documentElement.dataset.module ?? "");
  const response = await fetch(url);
  if (!response.ok) throw new Error(`The server answered ${response.status} for the calculator.`);
  // A server that sends another type than application/wasm must not stop anybody.
  if (WebAssembly.compileStreaming && response.headers.get("content-type")?.startsWith("application/wasm")) {
    return WebAssembly.compileStreaming(response);
  }
  return WebAssembly.compile(await response.arrayBuffer());
}

async function instantiate(module: WebAssembly.Module): Promise<Exports> {
  const imports: WebAssembly.Imports = {};
  let memory: WebAssembly.Memory | null = null;
  const view = () => new DataView((memory as WebAssembly.Memory).buffer);
  const calls = systemCalls(view);
  for (const { module: from, name, kind } of WebAssembly.Module.imports(module)) {
    if (kind !== "function") continue;
    (imports[from] ??= {})[name] = calls[name] ?? (() => notSupported);
  }
  const instance = await WebAssembly.instantiate(module, imports);
  const exports = instance.exports as unknown as Exports;
  memory = exports.memory;
  exports._initialize();
  return exports;
}

const notSupported = 52; // ENOSYS
const badDescriptor = 8; // EBADF: ends Go's search for opened folders

/** What Go's runtime calls. There are no files, no arguments, no environment; there is a clock and there is chance. */
function systemCalls(view: () => DataView): Record<string, (...args: never[]) => unknown> {
  const none = (countAt: number, sizeAt: number) => {
    view().setUint32(countAt, 0, true);
    view().setUint32(sizeAt, 0, true);
    return 0;
  };
  return {
    args_sizes_get: none,
    environ_sizes_get: none,
    args_get: () => 0,
    environ_get: () => 0,
    clock_time_get: (id: number, _precision: bigint, at: number) => {
      const ms = id === 0 ? Date.now() : performance.now();
      view().setBigUint64(at, BigInt(Math.round(ms * 1e6)), true);
      return 0;
    },
    random_get: (at: number, length: number) => {
      crypto.getRandomValues(new Uint8Array(view().buffer as ArrayBuffer, at, length));
      return 0;
    },
    fd_prestat_get: () => badDescriptor,
    fd_prestat_dir_name: () => badDescriptor,
    fd_fdstat_get: () => badDescriptor,
    fd_fdstat_set_flags: () => 0,
    fd_close: () => 0,
    // Go writes only the text of a crash. It goes to the console, where it helps whoever looks for the cause.
    fd_write: (_fd: number, vectors: number, count: number, writtenAt: number) => {
      let written = 0;
      let text = "";
      for (let i = 0; i < count; i++) {
        const at = view().getUint32(vectors + 8 * i, true);
        const length = view().getUint32(vectors + 8 * i + 4, true);
        text += new TextDecoder().decode(new Uint8Array(view().buffer as ArrayBuffer, at, length));
        written += length;
      }
      console.error(text);
      view().setUint32(writtenAt, written, true);
      return 0;
    },
    sched_yield: () => 0,
    poll_oneoff: (_in: number, _out: number, _count: number, eventsAt: number) => {
      view().setUint32(eventsAt, 0, true);
      return 0;
    },
    proc_exit: (code: number) => {
      throw new Error(`The calculator stopped with code ${code}.`);
    },
  } as Record<string, (...args: never[]) => unknown>;
}
