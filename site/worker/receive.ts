// Fetches one file of the list and lets it in only when its bytes are those that the build wrote down. Half a file, an
// error page, a sign-in page, another version: each ends in a sentence, and nothing is kept.

/** A file of the handbook: its address from the root of the site, SHA-256 in hex, length. */
export type Entry = readonly [path: string, sha256: string, size: number];

export interface Net {
  fetch: (url: string, init: RequestInit) => Promise<Response>;
  silence: number; // ms without a byte after which the signal counts as lost
}

const lost = "the signal was lost. It goes on when you open a page again.";
const stranger = (path: string): string => `something other than the handbook came for ${path}. A sign-in page of the network does that.`;

/** The bytes, checked. got is told of each piece that arrives, and of pieces that turned out to be worth nothing as less than zero. */
export async function receive(net: Net, url: string, [path, digest, size]: Entry, got: (bytes: number) => void = () => undefined): Promise<ArrayBuffer> {
  let reason = "";
  // First with the browser's own cache, which may hold the file already; then past it, where a stale copy cannot hide.
  for (const cache of ["default", "reload", "reload"] as const) {
    const stop = new AbortController();
    let timer = setTimeout(() => stop.abort(), net.silence);
    let arrived = 0;
    try {
      const response = await net.fetch(url, { cache, credentials: "same-origin", signal: stop.signal });
      if (!response.ok) {
        reason = `the server answered ${response.status} for ${path}.`;
        continue;
      }
      const bytes = await read(response, size, (n) => {
        clearTimeout(timer);
        timer = setTimeout(() => stop.abort(), net.silence);
        arrived += n;
        got(n);
      });
      if (bytes && (await sha256(bytes)) === digest) return bytes;
      reason = bytes && arrived < size ? `${arrived} of ${size} bytes came for ${path}: half a file, or a sign-in page of the network.` : stranger(path);
    } catch {
      reason = lost;
    } finally {
      clearTimeout(timer);
      stop.abort(); // what is still on its way is not wanted
    }
    if (arrived > 0) got(-arrived);
  }
  if (reason === lost && (await leadsAway(net, url))) reason = stranger(path);
  throw new Error(reason);
}

/** Null when more comes than the file holds: nobody has to load a sign-in page's pictures to know that it is one. */
async function read(response: Response, size: number, got: (n: number) => void): Promise<ArrayBuffer | null> {
  const bytes = new Uint8Array(size);
  let at = 0;
  const reader = response.body?.getReader();
  if (!reader) {
    const whole = await response.arrayBuffer();
    got(whole.byteLength);
    return whole;
  }
  for (;;) {
    const { done, value } = await reader.read();
    if (done) return bytes.buffer.slice(0, at);
    got(value.length);
    if (at + value.length > size) return null;
    bytes.set(value, at);
    at += value.length;
  }
}

/** True when the network sends the phone to another address: to the browser that looks like a lost signal. */
async function leadsAway(net: Net, url: string): Promise<boolean> {
  const stop = new AbortController();
  const timer = setTimeout(() => stop.abort(), net.silence);
  try {
    return (await net.fetch(url, { cache: "reload", credentials: "same-origin", redirect: "manual", signal: stop.signal })).type === "opaqueredirect";
  } catch {
    return false;
  } finally {
    clearTimeout(timer);
    stop.abort();
  }
}

export async function sha256(bytes: ArrayBuffer): Promise<string> {
  return Array.from(new Uint8Array(await crypto.subtle.digest("SHA-256", bytes)), (b) => b.toString(16).padStart(2, "0")).join("");
}
