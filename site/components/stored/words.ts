// The words of the page about what is stored.

import { clockTime } from "../timers/clock.ts";
import type { Held } from "../../worker/messages.ts";

/** Name of the state, its heading, and the sentences behind it. Ready is said of a checked copy alone. */
export function verdict(held: Held, now: Date): [name: "ready" | "part" | "counted", head: string, words: string] {
  const at = `Checked at ${clockTime(now.getTime(), 0)}.`; // with the day, whatever it is now: a page may stand open for a week
  const mended = held.mended > 0 ? ` ${held.mended} missing or damaged ${held.mended === 1 ? "file was" : "files were"} fetched again.` : "";
  if (held.files < held.total) {
    const lost = held.total - held.files;
    const more = lost > held.missing.length ? ` and ${lost - held.missing.length} more` : "";
    const why = held.reason ? ` ${capital(held.reason)}` : "";
    return ["part", "Not ready for no signal.", `${lost} of ${held.total} files ${lost === 1 ? "is" : "are"} missing or damaged: ${held.missing.join(", ")}${more}.${why} ${at}`];
  }
  if (!held.checked) return ["counted", "Stored, not checked yet.", `All ${held.total} files are there by name.`];
  return ["ready", "Ready for no signal.", `All ${held.total} files were read back, and each is right.${mended} ${at}`];
}

export function fileWords(n: number, total: number): string {
  return `${n} of ${total} files`;
}

export function megabytes(bytes: number): string {
  return `${(bytes / 1e6).toFixed(1)} MB`;
}

/** How much of it: "34 of 181 files, 2.1 of 6.6 MB". */
export function share(files: number, total: number, bytes: number, size: number): string {
  return `${fileWords(files, total)}, ${(bytes / 1e6).toFixed(1)} of ${megabytes(size)}`;
}

const two = (n: number): string => String(n).padStart(2, "0");

export function day(ms: number): string {
  const d = new Date(ms);
  return `${d.getFullYear()}-${two(d.getMonth() + 1)}-${two(d.getDate())}`;
}

function capital(s: string): string {
  return s.charAt(0).toUpperCase() + s.slice(1);
}
