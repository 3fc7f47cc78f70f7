// Times as people read them.

const two = (n: number): string => String(n).padStart(2, "0");

/** 5:09 under an hour, 1:05:09 from an hour on. Never negative. */
export function left(ms: number): string {
  const s = Math.max(0, Math.ceil(ms / 1000));
  const h = Math.floor(s / 3600);
  const m = Math.floor(s / 60) % 60;
  return h > 0 ? `${h}:${two(m)}:${two(s % 60)}` : `${m}:${two(s % 60)}`;
}

/** "00:02": the clock of 24 hours, whatever the phone is set to, as the rest of the handbook writes it. */
export function hourMinute(t: Date): string {
  return `${two(t.getHours())}:${two(t.getMinutes())}`;
}

/** "14:32", with the day when it is not the day of now: "14:32 on Tuesday 24 Nov". */
export function clockTime(at: number, now: number): string {
  const t = new Date(at);
  const time = hourMinute(t);
  if (t.toDateString() === new Date(now).toDateString()) return time;
  return `${time} on ${t.toLocaleDateString("en-GB", { weekday: "long", day: "numeric", month: "short" })}`;
}

/** "less than a minute", "25 minutes", "3 hours", "2 days": rounded down. */
export function ago(ms: number): string {
  const units: [number, string][] = [[86400e3, "day"], [3600e3, "hour"], [60e3, "minute"]];
  for (const [size, name] of units) {
    const n = Math.floor(ms / size);
    if (n > 0) return `${n} ${name}${n === 1 ? "" : "s"}`;
  }
  return "less than a minute";
}
