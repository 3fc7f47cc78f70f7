// Every page runs this first of all, before the style and anything drawn (a script that may come when it likes comes half a
// second later on a slow phone). It does what would otherwise be seen to happen late: the chosen light or dark, the room for
// the line of the open job. On a page with a worksheet that is kept on the phone, the module is fetched from there and
// compiled, off the main thread, beside all the rest. Over the air that would only hold up what a person came to read, so
// there load.ts fetches it at the first sign of use.

import { currentJob, load } from "./module/store.ts";

const html = document.documentElement;
const { base = "./", module } = html.dataset;
const theme = load("theme");
if (theme) html.dataset.theme = theme;
if (currentJob()) html.dataset.jobOpen = "";
if ("sheets" in html.dataset && navigator.serviceWorker?.controller && module && WebAssembly.compileStreaming) {
  const coming = WebAssembly.compileStreaming(fetch(base + module));
  coming.catch(() => undefined); // load.ts fetches again, and says why when that fails too
  (globalThis as { changeoutModule?: Promise<WebAssembly.Module> }).changeoutModule = coming;
}
