// What the phone keeps: ticks, readings, timers, choices of unit and theme. It stays in this browser.
// Private windows and full storage must not lose anything while the page is open, so memory stands behind
// localStorage, and one sentence says that it will not outlive the page.

import { root, singleFile } from "./root.ts";

export const prefix = "changeout:" + (singleFile ? "one-file" : new URL(root("./")).pathname) + ":";

/** A page may load two scripts that keep things (app.ts, worksheets.ts): they share what could not be written. */
interface Shared { memory: Map<string, string>; unsaved: Set<(sentence: string) => void>; told: boolean; jobChanges: Set<() => void> }
const shared = ((globalThis as { changeoutStore?: Shared }).changeoutStore ??= { memory: new Map(), unsaved: new Set(), told: false, jobChanges: new Set() });
const { memory, unsaved } = shared;

/** The job that is open, if one is: what a person ticks and types belongs to it. See components/job. */
export interface CurrentJob { id: string; title: string; demo: boolean }

export function currentJob(): CurrentJob | null {
  try {
    const j = JSON.parse(load("job") ?? "null") as CurrentJob | null;
    return j && typeof j.id === "string" ? j : null;
  } catch {
    return null;
  }
}

// What each job keeps for itself. Timers run on whichever job is open, so they are not among these; units and theme
// belong to the person.
const ofJob = /^(ticks|words|readings|about|values|before|findings|past|last)(:|$)/;

/** The key under which a job keeps something; "" is no job. */
export function scoped(key: string, job: string = ofJob.test(key) ? currentJob()?.id ?? "" : ""): string {
  return job && ofJob.test(key) ? `job/${job}/${key}` : key;
}

/** Every kept key of a job, without the job's name; of no job for "". */
export function keysOf(job: string): string[] {
  const start = job ? `job/${job}/` : "";
  const found = new Set<string>();
  const take = (key: string): void => {
    if (key.startsWith(start) && ofJob.test(key.slice(start.length))) found.add(key.slice(start.length));
  };
  for (const key of memory.keys()) take(key);
  try {
    for (let i = 0; i < localStorage.length; i++) {
      const key = localStorage.key(i) ?? "";
      if (key.startsWith(prefix)) take(key.slice(prefix.length));
    }
  } catch {
    // Nothing but memory then.
  }
  return [...found].sort();
}

/** True while something could not be written and lives in this page alone. */
export const holdsUnsaved = (): boolean => memory.size > 0;

export function load(name: string, job?: string): string | null {
  const key = scoped(name, job);
  const kept = memory.get(key);
  if (kept !== undefined) return kept;
  try {
    return localStorage.getItem(prefix + key);
  } catch {
    return null;
  }
}

export function save(name: string, value: string | null, job?: string): void {
  const key = scoped(name, job);
  try {
    if (value === null) localStorage.removeItem(prefix + key);
    else localStorage.setItem(prefix + key, value);
    memory.delete(key);
  } catch {
    if (value === null) memory.delete(key);
    else memory.set(key, value);
    if (!shared.told) {
      shared.told = true;
      for (const tell of unsaved) tell("This browser keeps nothing after the page is closed. Write your readings down.");
    }
  }
}

export function loadRecord(key: string, job?: string): Record<string, string> {
  try {
    const value: unknown = JSON.parse(load(key, job) ?? "{}");
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

export function saveRecord(key: string, record: Record<string, string>, job?: string): void {
  save(key, Object.keys(record).length === 0 ? null : JSON.stringify(record), job);
}

/** Calls tell once, if something could not be kept. */
export function onUnsaved(tell: (sentence: string) => void): void {
  unsaved.add(tell);
}

/** Calls changed with a key when another tab of this handbook changes it. Keys of a job that is not open here are left out. */
export function onOtherTab(changed: (key: string) => void): void {
  addEventListener("storage", (event) => {
    if (!event.key?.startsWith(prefix)) return;
    const key = event.key.slice(prefix.length);
    const inJob = /^job\/([^/]+)\/(.*)$/s.exec(key);
    const name = inJob?.[2] ?? key;
    if (scoped(name) === key) changed(name);
  });
}

/** Calls changed when another job is opened, here or in another tab: everything that shows what a job keeps draws anew. */
export function onJobChange(changed: () => void): void {
  shared.jobChanges.add(changed);
}

export function jobChanged(): void {
  for (const changed of shared.jobChanges) changed();
}

export function openJob(job: CurrentJob | null): void {
  save("job", job ? JSON.stringify(job) : null);
  jobChanged();
}
