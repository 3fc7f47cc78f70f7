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

/** How long a timer that is over rings, while nobody notes it. */
export const ringFor = 3600e3;

/** Every 5 s in the first minute after the end, then once a minute. In ms since the end and since the last ring. */
export function ringDue(over: number, calm: number): boolean {
  return over >= 0 && over < ringFor && calm >= (over < 60e3 ? 5e3 : 60e3);
}

/**
 * Gives how far the phone's clock was set anew, in ms, forward positive. steady is a clock that nobody sets, but that may
 * stand still while a phone sleeps: then the time seems to jump forward, so a jump forward counts only with the page in sight.
 */
export function clockWatch(): (wall: number, steady: number, inSight: boolean) => number {
  let apart = NaN;
  let set = 0;
  return (wall, steady, inSight) => {
    const jump = wall - steady - apart;
    apart = wall - steady;
    if (jump < -5e3 || (jump > 5e3 && inSight)) set += jump;
    return set;
  };
}

/** What a clock set anew does to the timers that ran, in words; "" for none. A sleep that the page was not told of looks the same. */
export function clockSet(by: number): string {
  const much = Math.abs(by);
  if (much < 5e3) return "";
  const far = ago(much + 1e3); // it is measured to some ms, and ago rounds down
  return by < 0
    ? `The phone's clock was set back by ${far}. Timers that ran then end that much later.`
    : `The phone's clock jumped forward by ${far}. If the phone was awake, timers that ran then end that much too early.`;
}
