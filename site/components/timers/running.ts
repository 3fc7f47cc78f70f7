// The timers that run or have ended and were not yet noted. They are kept as wall-clock times, so a reload, a closed
// tab or a sleeping phone changes nothing; another tab sees the same ones.

import { load, onOtherTab, save } from "../../module/store.ts";

export interface Timer {
  id: string; // page id + "#" + id of the wait
  page: string;
  wait: string; // element id of the wait
  title: string;
  start: number; // ms since 1970
  end: number;
}

const key = "timers";

export function timersNow(): Timer[] {
  try {
    const value: unknown = JSON.parse(load(key) ?? "[]");
    return Array.isArray(value) ? value.filter(isTimer) : [];
  } catch {
    return [];
  }
}

export function putTimer(timer: Timer): void {
  store([...timersNow().filter((t) => t.id !== timer.id), timer]);
}

export function dropTimer(id: string): void {
  store(timersNow().filter((t) => t.id !== id));
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
