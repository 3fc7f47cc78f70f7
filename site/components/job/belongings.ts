// What procedure pages and worksheets keep for a job lies in localStorage, so that a tick or a key press is kept at once
// (module/store.ts). Here it becomes part of the job, and goes back when a job comes from a file.

import { keysOf, load, loadRecord, save, saveRecord } from "../../module/store.ts";
import { singleFile } from "../../module/root.ts";
import { putPast, replaceTimers, timersNow, timersPast } from "../timers/running.ts";
import type { Timer as Running } from "../timers/running.ts";
import { findingsOf } from "./findings.ts";
import type { Field, Job, Tick, Timer } from "./schema.ts";

export type Belongings = Pick<Job, "ticks" | "fields" | "entries" | "findings" | "timers">;

/** Everything of a job; of no job for "". */
export function belongings(job: string): Belongings {
  const found: Belongings = { ticks: {}, fields: {}, entries: {}, findings: {}, timers: [] };
  for (const key of keysOf(job)) {
    const [kind, rest] = cut(key, ":");
    if (kind === "ticks") {
      const words = loadRecord(`words:${rest}`, job);
      for (const [step, time] of Object.entries(loadRecord(key, job))) found.ticks[`${rest}#${step}`] = { time, text: words[step] ?? "" } satisfies Tick;
    } else if (kind === "readings") {
      const about = loadRecord(`about:${rest}`, job);
      for (const [name, value] of Object.entries(loadRecord(key, job))) {
        const [label = "", unit = "", time = ""] = (about[name] ?? "").split("\t");
        found.fields[`${rest}#${name}`] = { value, label, unit, time } satisfies Field;
      }
    } else if (kind === "values") found.entries[rest] = loadRecord(key, job);
  }
  found.findings = findingsOf(job);
  const all = [...timersPast(job), ...timersNow().filter((t) => (t.job ?? "") === job)].sort((a, b) => a.start - b.start);
  found.timers = all.map((t) => ({ page: t.page, wait: cut(t.id, "#")[1], title: t.title, start: t.start, end: t.end }));
  return found;
}

/** Puts the belongings of a job from a file in place of what is there. */
export function putBelongings(job: string, title: string, b: Belongings, now: number): void {
  forgetBelongings(job);
  const records = new Map<string, Record<string, string>>();
  const put = (key: string, name: string, value: string): void => {
    const record = records.get(key) ?? {};
    record[name] = value;
    records.set(key, record);
  };
  for (const [place, tick] of Object.entries(b.ticks)) {
    const [page, step] = cut(place, "#");
    put(`ticks:${page}`, step, tick.time);
    if (tick.text) put(`words:${page}`, step, tick.text);
  }
  for (const [place, f] of Object.entries(b.fields)) {
    const [page, name] = cut(place, "#");
    put(`readings:${page}`, name, f.value);
    if (f.label || f.unit || f.time) put(`about:${page}`, name, [f.label, f.unit, f.time].join("\t"));
  }
  for (const [sheet, values] of Object.entries(b.entries)) records.set(`values:${sheet}`, values);
  for (const [id, f] of Object.entries(b.findings)) put("findings", id, JSON.stringify(f));
  for (const [key, record] of records) saveRecord(key, record, job);
  putTimers(job, title, b.timers, now);
}

function putTimers(job: string, title: string, list: Timer[], now: number): void {
  const timers: Running[] = list.map((t) => ({ id: `${job}/${t.page}#${t.wait}`, page: t.page, wait: `${singleFile ? t.page + "/" : ""}wait-${t.wait}`, title: t.title, start: t.start, end: t.end, job, jobTitle: title }));
  putPast(job, timers.filter((t) => t.end <= now));
  replaceTimers((running) => [...running.filter((t) => t.job !== job), ...timers.filter((t) => t.end > now)]);
}

export function forgetBelongings(job: string): void {
  for (const key of keysOf(job)) save(key, null, job);
  replaceTimers((running) => running.filter((t) => t.job !== job));
}

/** How much was ticked and typed while no job was open, in words; "" for nothing. */
export function looseInWords(): string {
  const loose = belongings("");
  const count = (n: number, one: string, many: string): string[] => (n === 0 ? [] : [`${n} ${n === 1 ? one : many}`]);
  return [
    ...count(Object.keys(loose.ticks).length, "tick", "ticks"),
    ...count(Object.keys(loose.fields).length, "reading", "readings"),
    ...count(Object.keys(loose.findings).length, "finding", "findings"),
    ...count(Object.keys(loose.entries).length, "worksheet with entries", "worksheets with entries"),
    ...count(loose.timers.length, "timer", "timers"),
  ].join(", ");
}

/** Takes what was kept without a job into a job. Where the job has a value of its own, both stay where they are. */
export function takeLoose(job: string, title: string, only?: string): void {
  for (const key of keysOf("")) {
    if (only !== undefined && key !== only) continue;
    const value = load(key, "");
    if (value === null) continue;
    if (load(key, job) === null) {
      save(key, value, job);
      save(key, null, "");
      continue;
    }
    if (!/^(ticks|words|readings|about|findings)/.test(key)) continue;
    const own = loadRecord(key, job);
    const rest: Record<string, string> = {};
    for (const [name, text] of Object.entries(loadRecord(key, ""))) {
      if (own[name] === undefined) own[name] = text;
      else if (own[name] !== text) rest[name] = text;
    }
    saveRecord(key, own, job);
    saveRecord(key, rest, "");
  }
  if (only !== undefined) return;
  putPast(job, [...timersPast(job), ...timersPast("")].filter((t, i, all) => all.findIndex((x) => x.id === t.id && x.end === t.end) === i));
  putPast("", []);
  replaceTimers((running) => running.map((t) => (t.job ? t : { ...t, id: `${job}/${t.id}`, job, jobTitle: title })));
}

/** Parts a key at its first colon, a place at its last #. */
function cut(text: string, at: ":" | "#"): [string, string] {
  const i = at === ":" ? text.indexOf(at) : text.lastIndexOf(at);
  return i < 0 ? [text, ""] : [text.slice(0, i), text.slice(i + 1)];
}
