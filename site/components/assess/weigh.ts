// Gives a text to the module and gets the assessment back: in a worker, so that the page stays ready for the finger. Where a
// worker is refused, as in the single file, the page itself does it, after the browser has drawn the tap.

import { assess, compile, start } from "../../module/load.ts";
import { root, singleFile } from "../../module/root.ts";

export interface Asked { turn: number; text: string; module?: WebAssembly.Module }
export interface Told { turn: number; text?: string; error?: string }

const tooLong = 20_000; // ms; a worker that says nothing has been stopped by the browser

export function weigher(): (text: string) => Promise<string> {
  let helper: Worker | null = null;
  let turn = 0;
  const address = document.documentElement.dataset.weighing ?? "";
  let refused = singleFile || address === "" || typeof Worker === "undefined";

  return async (text) => {
    if (!refused) {
      try {
        return await inWorker(text);
      } catch (error) {
        console.warn(error);
        helper?.terminate();
        helper = null;
        refused = true;
      }
    }
    await start();
    await drawn();
    return assess(text);
  };

  async function inWorker(text: string): Promise<string> {
    const module = helper ? undefined : await compile();
    helper ??= new Worker(root(address));
    const asked: Asked = { turn: ++turn, text, ...(module && { module }) };
    const worker = helper;
    return new Promise<string>((done, failed) => {
      const end = (): void => {
        clearTimeout(late);
        worker.removeEventListener("message", told);
        worker.removeEventListener("error", broken);
      };
      const told = ({ data }: MessageEvent<Told>): void => {
        if (data.turn !== asked.turn) return;
        end();
        if (data.text !== undefined) done(data.text);
        else failed(new Error(data.error));
      };
      const broken = (event: Event): void => {
        end();
        failed(new Error(`the worker does not run: ${(event as ErrorEvent).message ?? ""}`));
      };
      const late = setTimeout(() => {
        end();
        failed(new Error("the worker does not answer"));
      }, tooLong);
      worker.addEventListener("message", told);
      worker.addEventListener("error", broken);
      worker.postMessage(asked);
    });
  }
}

/** After the next frame; a page in the background has none, so a moment counts too. */
function drawn(): Promise<void> {
  return new Promise((done) => {
    const late = setTimeout(done, 100);
    requestAnimationFrame(() => setTimeout(() => {
      clearTimeout(late);
      done();
    }));
  });
}
