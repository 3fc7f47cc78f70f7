// Pages with a worksheet run this first of all, before the style and anything drawn (a script that may come when it likes
// comes half a second later on a slow phone): when the handbook is kept on the phone,
// the module is fetched from there and compiled, off the main thread, beside all the rest. Over the air it would only hold
// up what a person came to read, so there load.ts fetches it when the page is idle.

export {};

const { base = "./", module } = document.documentElement.dataset;
if (navigator.serviceWorker?.controller && module && WebAssembly.compileStreaming) {
  const coming = WebAssembly.compileStreaming(fetch(base + module));
  coming.catch(() => undefined); // load.ts fetches again, and says why when that fails too
  (globalThis as { changeoutModule?: Promise<WebAssembly.Module> }).changeoutModule = coming;
}
