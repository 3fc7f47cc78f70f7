// The worker that weighs findings: an assessment takes some hundred milliseconds on a phone, too long beside a finger. It gets
// the compiled module once and a text each time; see components/assess/weigh.ts.

import { ask, enough, instantiate } from "./module/instance.ts";
import type { Instance } from "./module/instance.ts";
import type { Asked, Told } from "./components/assess/weigh.ts";

let module: WebAssembly.Module | undefined;
let running: Instance | null = null;

onmessage = async ({ data }: MessageEvent<Asked>) => {
  module = data.module ?? module;
  try {
    if (!module) throw new Error("the worker has no module");
    running ??= await instantiate(module);
    const text = ask(running, "assess", data.text);
    if (running.memory.buffer.byteLength > enough) running = null;
    postMessage({ turn: data.turn, text } satisfies Told);
  } catch (error) {
    running = null;
    postMessage({ turn: data.turn, error: String(error) } satisfies Told);
  }
};
