// The module in the page itself: it answers within the key press. It is taken over from the calculator's worker once that
// has answered; where no worker can be had (the single file, a browser that refuses one) it is all there is.

import { fetchModule } from "./fetch.ts";
import type { Where } from "./fetch.ts";
import { ask, enough, instantiate } from "./instance.ts";
import type { Instance, Question } from "./instance.ts";
import { unpack } from "./unpack.ts";

let compiled: Promise<WebAssembly.Module> | null = null;
let instance: Instance | null = null;

/** Compiles once; every caller gets the same promise. A failure is forgotten, so that the next touch tries again. */
export function compile(where: Where): Promise<WebAssembly.Module> {
  const inside = document.getElementById("co-module");
  compiled ??= (inside ? unpack(inside.textContent ?? "").then((bytes) => WebAssembly.compile(bytes)) : fetchModule(where)).catch((error: unknown) => {
    compiled = null;
    throw error;
  });
  return compiled;
}

/** Takes a module that is compiled already. */
export async function takeOver(module: WebAssembly.Module): Promise<void> {
  compiled = Promise.resolve(module);
  instance ??= await instantiate(module);
}

/** True when answerNow can answer. */
export function running(): boolean {
  return instance !== null;
}

/** Answers at once. After a crash, and when it has used up its memory, the module has to be started again. */
export function answerNow(what: Question, text: string): string {
  if (!instance) throw new Error("The calculator has not been started.");
  const m = instance;
  instance = null;
  const reply = ask(m, what, text);
  if (m.memory.buffer.byteLength <= enough) instance = m;
  return reply;
}

/** Answers as soon as the module is there. */
export async function answerHere(what: Question, text: string, where: Where): Promise<string> {
  const module = await compile(where);
  instance ??= await instantiate(module);
  return answerNow(what, text);
}
