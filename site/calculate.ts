// The calculator's worker: it fetches, compiles and runs the module beside the page, so that neither the start nor an answer
// holds up a finger or the drawing of the page. module/beside.ts asks it.

import { NotLoaded, fetchModule } from "./module/fetch.ts";
import type { Where } from "./module/fetch.ts";
import { ask, enough, instantiate } from "./module/instance.ts";
import type { Instance } from "./module/instance.ts";
import type { Asked, Told } from "./module/beside.ts";

let compiled: Promise<WebAssembly.Module> | null = null;
let running: Promise<Instance> | null = null;

onmessage = async ({ data, ports }: MessageEvent<Asked>) => {
  const say = (told: Told): void => ports[0]?.postMessage(told);
  say({ now: "heard" });
  try {
    let m: Instance;
    let from: Promise<Instance>;
    do m = await (from = started(data.where)); // once more when a question before this one broke it meanwhile
    while (from !== running);
    if (data.what === "prepare") return;
    if (data.what === "module") return say({ module: await compile(data.where) });
    say({ now: "working" });
    const text = ask(m, data.what, data.text);
    say({ text });
    if (m.memory.buffer.byteLength <= enough) return;
    running = null;
    await started(data.where);
  } catch (error) {
    running = null;
    say({ error: error instanceof Error ? error.message : String(error), notLoaded: error instanceof NotLoaded });
  }
};

/** One instance at a time, started once. A failure is forgotten, so that the next question tries again. */
function started(where: Where): Promise<Instance> {
  running ??= compile(where).then(instantiate).catch((error: unknown) => {
    running = null;
    throw error;
  });
  return running;
}

function compile(where: Where): Promise<WebAssembly.Module> {
  compiled ??= fetchModule(where).catch((error: unknown) => {
    compiled = null;
    throw error;
  });
  return compiled;
}
