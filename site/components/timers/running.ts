// The timers that run or have ended and were not yet noted. They are kept as wall-clock times, so a reload, a closed
// tab or a sleeping phone changes nothing; another tab sees the same ones. A timer runs on when another job is opened;
// one that ended and was noted goes into the past of its job.

import { currentJob, load, onOtherTab, save } from "../../module/store.ts";

export interface Timer {
  id: string; // timerId
  page: string;
  wait: string; // element id of the wait
  title: string;
  start: number; // ms since 1970
  end: number;
  job?: string; // the job that was open when it was started
  jobTitle?: string;
}

const key = "timers";

/** Page id + "#" + id of the wait, in the job that is open. */
export function timerId(page: string, wait: string): string {
  const job = currentJob()?.id ?? "";
  return `${job && job + "/"}${page}#${wait}`;
}

export function timersNow(): Timer[] {
  return read(key);
}

/** Timers of a job ("" for none) that ended and were noted. */
export function timersPast(job: string): Timer[] {
  return read("past", job);
}

export function putPast(job: string, list: Timer[]): void {
  save("past", list.length === 0 ? null : JSON.stringify(list), job);
}

function read(name: string, job?: string): Timer[] {
  try {
    const value: unknown = JSON.parse(load(name, job) ?? "[]");
    return Array.isArray(value) ? value.filter(isTimer) : [];
  } catch {
    return [];
  }
}

export function putTimer(timer: Timer): void {
  store([...timersNow().filter((t) => t.id !== timer.id), timer]);
}

export function dropTimer(id: string): void {
  const list = timersNow();
  const over = list.find((t) => t.id === id && t.end <= Date.now());
  if (over) putPast(over.job ?? "", [...timersPast(over.job ?? ""), over]);
  store(list.filter((t) => t.id !== id));
}

/** Takes over timers of another place, or takes them away; for the job file. */
export function replaceTimers(change: (list: Timer[]) => Timer[]): void {
  store(change(timersNow()));
}

export function onTimersChange(changed: () => void): void {
  changes.push(changed);
  onOtherTab((k) => {
    if (k === key) changed();
  });
}

const changes: (() => void)[] = [];

function store(list: Timer[]): void {
  save(key, list.length === 0 ? null : JSON.stringify(list));
  for (const changed of changes) changed();
}

function isTimer(value: unknown): value is Timer {
  const t = value as Partial<Timer> | null;
  return !!t && typeof t.id === "string" && typeof t.title === "string" && typeof t.page === "string" && typeof t.wait === "string" &&
    Number.isFinite(t.start) && Number.isFinite(t.end);
}
