// The answers of the open job, or of this phone while no job is open. Everything is kept at once; "Not looked" is no entry.

import { load, loadRecord, save, saveRecord } from "../../module/store.ts";
import { findingsOf, setFinding } from "../job/findings.ts";
import type { Finding } from "../job/schema.ts";
import { fed } from "./feed.ts";
import type { Opinion } from "./feed.ts";

export type Mark = "present" | "absent" | "unknown";

const takenKey = "findings:from"; // which answer of a worksheet was last taken into account, see feed.ts
const notesKey = "findings:note"; // notes to what is not looked at now
const asideKey = "findings:aside"; // checks that cannot be made here
const clearedKey = "before:assess";

export const answers = (): Record<string, Finding> => findingsOf();
export const noteOf = (id: string): string => findingsOf()[id]?.note ?? loadRecord(notesKey)[id] ?? "";

/** Everything that is kept, read once. */
export interface Sheet {
  found: Record<string, Finding>;
  taken: Record<string, string>;
  notes: Record<string, string>;
}
export const sheet = (): Sheet => ({ found: findingsOf(), taken: loadRecord(takenKey), notes: loadRecord(notesKey) });

/** True when the answer came from a worksheet and nobody has overruled it. */
export const fromWorksheet = (s: Sheet, id: string): boolean => s.found[id] !== undefined && s.taken[id] === s.found[id]?.time;

/** A person's own answer. known: what a worksheet says to the same check, so that it is not put back against the person's will. */
export function answer(id: string, mark: Mark, text: string, known: Opinion | null): void {
  const note = noteOf(id);
  if (mark === "unknown") {
    setNoteAside(id, note);
    setFinding(id, null);
    if (known) set(takenKey, id, known.time);
    return;
  }
  setFinding(id, { state: mark, text, time: new Date().toISOString(), note });
  set(notesKey, id, null);
}

/** The worksheet's answer in place of what is there. */
export function takeOpinion(id: string, o: Opinion, text: string): void {
  setFinding(id, { state: o.state, text, time: o.time, note: noteOf(id) });
  set(notesKey, id, null);
  set(takenKey, id, o.time);
}

export function setNote(id: string, note: string): void {
  const now = findingsOf()[id];
  if (now) setFinding(id, { ...now, note });
  else setNoteAside(id, note);
}

/** Takes what worksheets say into the answers. */
export function feedAnswers(opinions: Map<string, Opinion | null>, text: (id: string) => string): void {
  const before = { findings: findingsOf(), taken: loadRecord(takenKey), notes: loadRecord(notesKey) };
  const after = fed(before, opinions, text);
  for (const id of opinions.keys()) {
    const [a, b] = [before.findings[id], after.findings[id]];
    if (JSON.stringify(a) !== JSON.stringify(b)) setFinding(id, b ?? null);
  }
  saveRecord(takenKey, after.taken);
  saveRecord(notesKey, after.notes);
}

// Checks that cannot be made here: the list of next checks passes over them.

export const aside = (): Set<string> => new Set(Object.keys(loadRecord(asideKey)));
export const setAside = (id: string, is: boolean): void => set(asideKey, id, is ? "1" : null);
export const noneAside = (): void => save(asideKey, null);

// Clearing, and bringing back what was cleared.

interface Cleared { findings: Record<string, Finding>; notes: Record<string, string>; ticks: Record<string, string> }

function read(): Cleared | null {
  try {
    const c = JSON.parse(load(clearedKey) ?? "null") as Partial<Cleared> | null;
    if (c && typeof c === "object" && c.findings) return { findings: c.findings, notes: c.notes ?? {}, ticks: c.ticks ?? {} };
  } catch {
    // What cannot be read is as good as none.
  }
  return null;
}

/** How many answers can be brought back. */
export const clearedCount = (): number => Object.keys(read()?.findings ?? {}).length;

/** Clears every answer, note and tick of the gate list; ticks: key of the page's ticks. */
export function clear(ticks: string, opinions: Map<string, Opinion | null>): void {
  const old = read();
  const found = findingsOf();
  const kept: Cleared = {
    findings: { ...old?.findings, ...found },
    notes: { ...old?.notes, ...loadRecord(notesKey) },
    ticks: { ...old?.ticks, ...loadRecord(ticks) },
  };
  save(clearedKey, JSON.stringify(kept));
  for (const id of Object.keys(found)) setFinding(id, null);
  save(notesKey, null);
  save(asideKey, null);
  save(ticks, null);
  // Without this the worksheets would fill the answers in again at once.
  const taken = loadRecord(takenKey);
  for (const [id, o] of opinions) if (o) taken[id] = o.time;
  saveRecord(takenKey, taken);
}

/** Brings back what was cleared, where nothing new was answered since. */
export function bringBack(ticks: string): void {
  const old = read();
  if (!old) return;
  const now = findingsOf();
  for (const [id, f] of Object.entries(old.findings)) if (!now[id]) setFinding(id, f);
  saveRecord(notesKey, { ...old.notes, ...loadRecord(notesKey) });
  saveRecord(ticks, { ...old.ticks, ...loadRecord(ticks) });
  save(clearedKey, null);
}

function setNoteAside(id: string, note: string): void {
  set(notesKey, id, note === "" ? null : note);
}

function set(key: string, id: string, value: string | null): void {
  const record = loadRecord(key);
  if (value === null) delete record[id];
  else record[id] = value;
  saveRecord(key, record);
}
