// Times as a reader of a report wants them: the clock of the place where it was made, the month in letters.

const months = ["Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"];
const two = (n: number): string => String(n).padStart(2, "0");

/** "25 Nov 2026, 10:05"; "" for what is no time. */
export function timeText(time: string): string {
  const t = new Date(time);
  return Number.isNaN(t.getTime()) ? "" : `${dayOf(t)}, ${two(t.getHours())}:${two(t.getMinutes())}`;
}

export function dayOf(t: Date): string {
  return `${t.getDate()} ${months[t.getMonth()] ?? ""} ${t.getFullYear()}`;
}

/** A date as typed: 2026-11-25 becomes 25 Nov 2026, anything else stays. */
export function dateText(typed: string): string {
  const found = /^(\d{4})-(\d{2})-(\d{2})$/.exec(typed.trim());
  const month = months[Number(found?.[2]) - 1];
  return found && month ? `${Number(found[3])} ${month} ${found[1]}` : typed.trim();
}

/** "UTC+01:00", the clock that the times of a document follow. */
export function clockText(t: Date): string {
  const m = -t.getTimezoneOffset();
  return m === 0 ? "UTC" : `UTC${m < 0 ? "−" : "+"}${two(Math.floor(Math.abs(m) / 60))}:${two(Math.abs(m) % 60)}`;
}

/** "25 Nov 2026, 10:05 to 14:20", or one time when both are the same minute. */
export function spanText(from: string, to: string): string {
  const a = timeText(from);
  const b = timeText(to);
  if (a === b || b === "") return a;
  const [dayA] = a.split(", ");
  const [dayB, clockB = ""] = b.split(", ");
  return dayA === dayB ? `${a} to ${clockB}` : `${a} to ${b}`;
}
