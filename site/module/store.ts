// What the phone keeps: ticks, readings, timers, choices of unit and theme. It stays in this browser.
// Private windows and full storage must not lose anything while the page is open, so memory stands behind
// localStorage, and one sentence says that it will not outlive the page.

import { root, singleFile } from "./root.ts";

const prefix = "changeout:" + (singleFile ? "one-file" : new URL(root("./")).pathname) + ":";
const memory = new Map<string, string>();
const unsaved = new Set<(sentence: string) => void>();
let told = false;

export function load(key: string): string | null {
  const kept = memory.get(key);
  if (kept !== undefined) return kept;
  try {
    return localStorage.getItem(prefix + key);
  } catch {
    return null;
  }
}

export function save(key: string, value: string | null): void {
  try {
    if (value === null) localStorage.removeItem(prefix + key);
    else localStorage.setItem(prefix + key, value);
    memory.delete(key);
  } catch {
    if (value === null) memory.delete(key);
    else memory.set(key, value);
    if (!told) {
      told = true;
      for (const tell of unsaved) tell("This browser keeps nothing after the page is closed. Write your readings down.");
    }
  }
}

export function loadRecord(key: string): Record<string, string> {
  try {
    const value: unknown = JSON.parse(load(key) ?? "{}");
    if (value && typeof value === "object" && !Array.isArray(value)) {
      const record: Record<string, string> = {};
      for (const [k, v] of Object.entries(value)) if (typeof v === "string") record[k] = v;
      return record;
    }
  } catch {
    // A value that cannot be read is as good as none.
  }
  return {};
}

export function saveRecord(key: string, record: Record<string, string>): void {
  save(key, Object.keys(record).length === 0 ? null : JSON.stringify(record));
}

/** Calls tell once, if something could not be kept. */
export function onUnsaved(tell: (sentence: string) => void): void {
  unsaved.add(tell);
}

/** Calls changed with a key when another tab of this handbook changes it. */
export function onOtherTab(changed: (key: string) => void): void {
  addEventListener("storage", (event) => {
    if (event.key?.startsWith(prefix)) changed(event.key.slice(prefix.length));
  });
}
