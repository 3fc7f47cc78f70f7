// The page's line to the calculator's worker. early.ts begins it, calculator.ts asks it.

import { NotLoaded } from "./fetch.ts";
import type { Where } from "./fetch.ts";
import type { Question } from "./instance.ts";
import { root } from "./root.ts";

/** To the worker. prepare asks for nothing. */
export type Asked = { where: Where; what: "prepare" } | { where: Where; what: "module" } | { where: Where; what: Question; text: string };
/** From the worker, through the port that came with the question. */
export type Told = { now: "heard" | "working" } | { text: string } | { module: WebAssembly.Module } | { error: string; notLoaded: boolean };

const deaf = 10_000; // ms; a worker that has not heard a question by then never began
const tooLong = 20_000; // ms; a worker that has said nothing for so long was stopped by the browser

const html = document.documentElement;
const shared = globalThis as { changeoutCalculator?: Worker }; // one for all scripts of a page

/** Lets the worker fetch and start the module. */
export function prepareBeside(): void {
  worker().postMessage({ where: where(), what: "prepare" } satisfies Asked);
}

/** Asks the worker, and gives what it tells in the end. */
export function tell(asked: Asked): Promise<Told> {
  const to = worker();
  return new Promise<Told>((done, failed) => {
    const { port1, port2 } = new MessageChannel();
    let late = setTimeout(end, deaf, new Error("the worker does not begin"));
    function end(error?: Error): void {
      clearTimeout(late);
      port1.close();
      to.removeEventListener("error", broken);
      if (error) failed(error);
    }
    function broken(event: ErrorEvent): void {
      end(new Error(`the worker does not run: ${event.message ?? ""}`));
    }
    to.addEventListener("error", broken);
    port1.onmessage = ({ data }: MessageEvent<Told>) => {
      clearTimeout(late);
      if ("now" in data) {
        // The module may be on its way over a slow line: that has no limit.
        if (data.now === "working") late = setTimeout(end, tooLong, new Error("the worker does not answer"));
      } else if ("error" in data) end(data.notLoaded ? new NotLoaded(data.error) : new Error(data.error));
      else {
        end();
        done(data);
      }
    };
    to.postMessage(asked, [port2]);
  });
}

function worker(): Worker {
  return (shared.changeoutCalculator ??= new Worker(root(html.dataset.calculator ?? "")));
}

/**
 * Where the module is. The worker that keeps the handbook has compared the bytes already; without it the browser compares
 * them: a module that was cut between two sections can still compile, and would give wrong figures.
 */
export function where(): Where {
  const { module = "", moduleSum = "" } = html.dataset;
  return { address: root(module), integrity: navigator.serviceWorker?.controller ? "" : moduleSum };
}

/** After this the next question begins another worker. */
export function stop(): void {
  shared.changeoutCalculator?.terminate();
  delete shared.changeoutCalculator;
}
