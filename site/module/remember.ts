// The last answer of each worksheet, kept with its question. A page that opens with the same entries shows it before the
// module has started, and even where the phone has dropped the module. The same question to the same module has the same
// answer, so the module's digest is part of what must be equal.

import { prefix } from "./store.ts";

const longest = 20_000; // characters of an answer; a log's chart is not worth the room
const given = new Map<string, string>(); // by worksheet, to be written when the page is left: writing takes longer than working out

const { moduleSum = "" } = document.documentElement.dataset;
const key = (worksheet: string): string => `${prefix}answer:${worksheet}`;
const record = (question: string, reply = ""): string => `${moduleSum}\n\n${question}\n\n${reply}`;

/** The kept answer to this very question, or null. */
export function remembered(worksheet: string, question: string): string | null {
  try {
    const kept = localStorage.getItem(key(worksheet));
    const start = record(question);
    return moduleSum && kept?.startsWith(start) && kept.length > start.length ? kept.slice(start.length) : null;
  } catch {
    return null;
  }
}

export function remember(worksheet: string, question: string, reply: string): void {
  if (given.size === 0) for (const leaving of ["pagehide", "visibilitychange"]) addEventListener(leaving, write, true);
  given.set(worksheet, record(question, reply));
}

/** Nobody misses what cannot be written: the module works it out again. */
function write(): void {
  for (const [worksheet, text] of given) {
    try {
      if (text.length > longest) localStorage.removeItem(key(worksheet));
      else localStorage.setItem(key(worksheet), text);
    } catch {
      // Full, or denied.
    }
  }
  given.clear();
}
