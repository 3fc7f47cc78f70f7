// The page's line to the calculator. A worker makes the module ready and gives the first answers, so that no start holds up the
// page. Then, while the page is idle, the page takes the compiled module over: a quick answer within the key press is
// sooner there than a message to a busy page. A worksheet whose answers take long stays with the worker. Where no worker is to be
// had, the page does it all.

import { decode, encode } from "./wire.ts";
import type { Reply, Request } from "./wire.ts";
import { drawn } from "./drawn.ts";
import { prepareBeside, stop, tell, where } from "./beside.ts";
import { NotLoaded } from "./fetch.ts";
import { answerHere, answerNow, compile, running, takeOver } from "./here.ts";
import type { Question } from "./instance.ts";
import { remember, remembered } from "./remember.ts";
import { singleFile } from "./root.ts";

export { NotLoaded };

const slow = 16; // ms; an answer that takes longer twice running is worked out beside the page from then on

const slowRuns = new Map<string, number>(); // by worksheet: answers in a row that held up the page
let refused = singleFile || typeof Worker === "undefined";
let taking = false;
const begun = new Set<string>(); // worksheets that have asked

/** True when an answer that takes long is worked out beside the page: then it cannot hold up a finger. */
export function beside(): boolean {
  return !refused;
}

/** Fetches and starts the module before anybody asks. */
export function prepare(): void {
  if (refused) void compile(where()).catch(() => undefined);
  else prepareBeside();
}

/**
 * Answers a worksheet's request. Rejects with NotLoaded when there is no module; the first question of a page may have an
 * answer all the same, see remember.ts.
 */
export async function evaluate(request: Request): Promise<Reply> {
  const text = encode(request);
  const { worksheet } = request;
  const runs = slowRuns.get(worksheet) ?? 0;
  if (!refused && running() && runs < 2) {
    const began = performance.now();
    const reply = answerNow("evaluate", text);
    slowRuns.set(worksheet, performance.now() - began > slow ? runs + 1 : 0);
    remember(worksheet, text, reply);
    return decode(reply);
  }
  const kept = begun.has(worksheet) ? null : remembered(worksheet, text);
  begun.add(worksheet);
  if (kept) {
    takeOverWhenIdle();
    return decode(kept);
  }
  const reply = await answer("evaluate", text);
  remember(worksheet, text, reply);
  if (runs < 2) takeOverWhenIdle();
  return decode(reply);
}

/** Weighs findings against root causes: the model and the facts as lines, see calc/cause/read.go. */
export function assess(text: string): Promise<string> {
  return answer("assess", text);
}

async function answer(what: Question, text: string): Promise<string> {
  if (!refused) {
    try {
      const told = await tell(what, text);
      if ("text" in told) return told.text;
    } catch (error) {
      if (error instanceof NotLoaded) throw error;
      console.warn(error);
      stop();
      refused = true;
    }
  }
  if (what === "assess") await drawn(); // it takes long: first the browser draws the tap
  return answerHere(what, text, where());
}

/** The worker's code is compiled as it runs, and the page shares it: after the worker's first answer, starting takes a few ms. */
function takeOverWhenIdle(): void {
  if (refused || running() || taking) return;
  taking = true;
  const begin = async (): Promise<void> => {
    try {
      if (refused) return;
      const told = await tell("module");
      if ("module" in told) await takeOver(told.module);
    } catch (error) {
      console.warn(error); // the worker goes on answering
    } finally {
      taking = false;
    }
  };
  if ("requestIdleCallback" in window) requestIdleCallback(() => void begin(), { timeout: 2000 });
  else setTimeout(() => void begin(), 200);
}
