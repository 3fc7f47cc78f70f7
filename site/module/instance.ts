// One running instance of the module: gives Go's wasip1 target the few system calls it asks for and passes text in and out.
// It touches no page: a worker uses it, and the page where there is none. What finds the module's bytes is fetch.ts.

export interface Instance {
  memory: WebAssembly.Memory;
  _initialize(): void;
  request(n: number): number;
  evaluate(n: number): number;
  assess(n: number): number;
  reply(): number;
}

export type Question = "evaluate" | "assess";

/** The module never frees memory; a fresh instance takes over between two answers once it has grown to this. */
export const enough = 48 << 20;

/** Passes a text in and gives the answer's text. When it throws, the instance must not be used again. */
export function ask(m: Instance, what: Question, text: string): string {
  const bytes = new TextEncoder().encode(text);
  const into = m.request(bytes.length);
  new Uint8Array(m.memory.buffer, into, bytes.length).set(bytes);
  const length = m[what](bytes.length);
  return new TextDecoder().decode(new Uint8Array(m.memory.buffer, m.reply(), length));
}

export async function instantiate(module: WebAssembly.Module): Promise<Instance> {
  const imports: WebAssembly.Imports = {};
  let memory: WebAssembly.Memory | null = null;
  const view = () => new DataView((memory as WebAssembly.Memory).buffer);
  const calls = systemCalls(view);
  for (const { module: from, name, kind } of WebAssembly.Module.imports(module)) {
    if (kind !== "function") continue;
    (imports[from] ??= {})[name] = calls[name] ?? (() => notSupported);
  }
  const instance = await WebAssembly.instantiate(module, imports);
  const exports = instance.exports as unknown as Instance;
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
