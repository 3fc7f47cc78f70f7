// What the phone keeps: ticks, readings, timers, choices of unit and theme. It stays in this browser.
// Where the storage is full or refused, memory stands behind it, the tab's own storage carries that to the next page, and one
// sentence says how long it lasts. Where the tab keeps nothing either, the browser asks before the page is left.

import { root, singleFile } from "./root.ts";

export const prefix = "changeout:" + (singleFile ? "one-file" : new URL(root("./")).pathname) + ":";

/** A page may load two scripts that keep things (app.ts, worksheets.ts): they share what could not be written. */
interface Shared { memory: Map<string, string>; unsaved: Set<(sentence: string) => void>; told: string; carried: boolean; jobChanges: Set<() => void> }
const mine = globalThis as { changeoutStore?: Shared };
const first = !mine.changeoutStore;
const shared = (mine.changeoutStore ??= { memory: new Map(), unsaved: new Set(), told: "", carried: true, jobChanges: new Set() });
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
  keep(scoped(name, job), value);
}

const carrier = prefix + "unsaved";

function keep(key: string, value: string | null): void {
  const held = memory.size;
  let refused: unknown;
  try {
    if (value === null) localStorage.removeItem(prefix + key);
    else localStorage.setItem(prefix + key, value);
    memory.delete(key);
  } catch (error) {
    refused = error;
    if (value === null) memory.delete(key);
    else memory.set(key, value);
  }
  if (held + memory.size === 0) return;
  try {
    sessionStorage.setItem(carrier, JSON.stringify([...memory]));
    shared.carried = true;
  } catch {
    shared.carried = false;
    addEventListener("beforeunload", ask);
  }
  if (!refused) return;
  const until = shared.carried ? "close this tab" : singleFile ? "close this file" : "leave this page";
  const sentence = /quota/i.test(String(refused))
    ? `The storage of this browser is full. What it has no room for is lost when you ${until}. Write your readings down.`
    : `This browser keeps nothing. What you tick and type is lost when you ${until}. Write your readings down.`;
  if (sentence === shared.told) return;
  shared.told = sentence;
  for (const tell of unsaved) tell(sentence);
}

function ask(event: Event): void {
  if (memory.size > 0 && !shared.carried) event.preventDefault();
}

/** What the page before could not write is tried again. */
function carriedHere(): void {
  try {
    const list = JSON.parse(sessionStorage.getItem(carrier) ?? "[]") as [string, string][];
    if (shared.carried) memory.clear();
    for (const [key, value] of list) keep(key, value);
  } catch {
    // Nothing came along.
  }
}

if (first) {
  carriedHere();
  addEventListener("pageshow", (event) => event.persisted && carriedHere()); // another page of this tab may have held more since
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
  if (shared.told) tell(shared.told);
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
