// The page's line to the calculator's worker. early.ts begins it, calculator.ts asks it.

import { NotLoaded } from "./fetch.ts";
import type { Where } from "./fetch.ts";
import type { Question } from "./instance.ts";
import { root } from "./root.ts";

/** To the worker. prepare asks for nothing. */
export type Asked = { where: Where; what: "prepare" } | { where: Where; what: "module" } | { where: Where; what: Question; text: string };
/** From the worker, through the port that came with the question. */
export type Told = { now: "heard" | "working" } | { text: string } | { module: WebAssembly.Module } | { error: string; notLoaded: boolean };

const deaf = 10_000; // ms; a worker that has not heard a question by then never began, or is stuck in another
const tooLong = 20_000; // ms; a worker that has said nothing for so long was stopped by the browser

interface Line {
  worker: Worker;
  broken: Error | null; // its script did not come, or threw
  kept: boolean; // begun on a page that is answered from the phone: then so is the worker, and the bytes have been compared
}

const html = document.documentElement;
const shared = globalThis as { changeoutCalculator?: Line }; // one for all scripts of a page
const open = new Set<(error: Error) => void>(); // questions that this script waits for

/** Lets the worker fetch and start the module. */
export function prepareBeside(): void {
  const to = line();
  to.worker.postMessage({ where: where(to.kept), what: "prepare" } satisfies Asked);
}

/** Asks the worker, and gives what it tells in the end. */
export function tell(what: "module"): Promise<Told>;
export function tell(what: Question, text: string): Promise<Told>;
export function tell(what: Question | "module", text = ""): Promise<Told> {
  const to = line();
  return new Promise<Told>((done, failed) => {
    const { port1, port2 } = new MessageChannel();
    // An error is made when it is needed: for its stack the browser parses every function on it once more.
    let late = setTimeout(() => end(new Error("the worker does not begin")), deaf);
    function end(error?: Error): void {
      clearTimeout(late);
      port1.close();
      to.worker.removeEventListener("error", broken);
      open.delete(end);
      if (error) failed(error);
    }
    function broken(): void {
      end(to.broken ?? new Error("the worker does not run"));
    }
    if (to.broken) return end(to.broken);
    open.add(end);
    to.worker.addEventListener("error", broken);
    port1.onmessage = ({ data }: MessageEvent<Told>) => {
      clearTimeout(late);
      if ("now" in data) {
        // The module may be on its way over a slow line: that has no limit.
        if (data.now === "working") late = setTimeout(() => end(new Error("the worker does not answer")), tooLong);
      } else if ("error" in data) end(data.notLoaded ? new NotLoaded(data.error) : new Error(data.error));
      else {
        end();
        done(data);
      }
    };
    to.worker.postMessage((what === "module" ? { where: where(to.kept), what } : { where: where(to.kept), what, text }) satisfies Asked, [port2]);
  });
}

function line(): Line {
  if (!shared.changeoutCalculator) {
    const made: Line = { worker: new Worker(root(html.dataset.calculator ?? "")), broken: null, kept: !!navigator.serviceWorker?.controller };
    made.worker.addEventListener("error", (event) => (made.broken = new Error(`the worker does not run: ${event.message ?? ""}`)));
    shared.changeoutCalculator = made;
  }
  return shared.changeoutCalculator;
}

/**
 * Where the module is. kept: the worker that keeps the handbook has compared the bytes already. Otherwise the browser
 * compares them: a module that was cut between two sections can still compile, and would give wrong figures.
 */
export function where(kept = !!navigator.serviceWorker?.controller): Where {
  const { module = "", moduleSum = "" } = html.dataset;
  return { address: root(module), integrity: kept ? "" : moduleSum };
}

/** Gives the worker up: every question that waits fails, and the next begins another worker. */
export function stop(): void {
  shared.changeoutCalculator?.worker.terminate();
  delete shared.changeoutCalculator;
  for (const end of [...open]) end(new Error("the worker was given up"));
}
