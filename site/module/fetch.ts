// Gets the module's bytes from the server or from what the phone keeps, and compiles them. The page and the calculator's
// worker both use it.

/** Why the module is not there, in a sentence that a person can act on. */
export class NotLoaded extends Error {}

/** Where the module is. integrity: its digest, where nobody else compares the bytes; else "". */
export interface Where { address: string; integrity: string }

export async function fetchModule({ address, integrity }: Where): Promise<WebAssembly.Module> {
  let reason = "";
  // A second time past the browser's own cache, which may hold for a year what a sign-in page once sent under this name.
  for (const cache of ["default", "reload"] as const) {
    let response: Response;
    try {
      response = await fetch(address, { cache, integrity });
    } catch {
      reason = navigator.onLine ? "The calculator did not arrive whole, or something else came in its place. A sign-in page of the network does that." : "The calculator is not stored on this phone, and there is no signal.";
      continue;
    }
    if (response.headers.has("x-changeout")) throw new NotLoaded(`The phone has dropped the calculator, and ${await response.text()}`); // from worker.ts
    if (!response.ok) {
      reason = `The server answered ${response.status} for the calculator.`;
      continue;
    }
    try {
      // A server that sends another type than application/wasm must not stop anybody.
      if (WebAssembly.compileStreaming && response.headers.get("content-type")?.startsWith("application/wasm")) return await WebAssembly.compileStreaming(response);
      return await WebAssembly.compile(await response.arrayBuffer());
    } catch (error) {
      if (error instanceof WebAssembly.CompileError) reason = "What came is not the calculator. A sign-in page of the network does that.";
      else reason = "The calculator did not arrive whole: the signal was lost.";
    }
  }
  throw new NotLoaded(reason);
}
