// Worksheet answers kept in the job answer a check by themselves. The data file says how:
//
//	limit    finding  worksheet  output  below|above  SI value  both|yes  verdicts with which it says nothing, with commas
//	verdict  finding  worksheet  verdicts for yes  verdicts for no
//
// A finding that came from a worksheet carries the time of the worksheet's answer. A second record remembers, for each
// finding, which answer was last taken into account: a person's own answer then stands until the worksheet is worked out anew.

import type { Finding, Result } from "../job/schema.ts";

export interface Feed {
  finding: string;
  worksheet: string;
  output: string; // "" when the verdict answers
  above: boolean;
  limit: number;
  yesOnly: boolean;
  not: string[];
  yes: string[];
  no: string[];
}

export function readFeeds(data: string): Feed[] {
  const feeds: Feed[] = [];
  const ids = (text = ""): string[] => text.split(",").filter((id) => id !== "");
  for (const line of data.split("\n")) {
    const f = line.split("\t");
    const [, finding = "", worksheet = ""] = f;
    if (f[0] === "limit") feeds.push({ finding, worksheet, output: f[3] ?? "", above: f[4] === "above", limit: Number(f[5]), yesOnly: f[6] === "yes", not: ids(f[7]), yes: [], no: [] });
    else if (f[0] === "verdict") feeds.push({ finding, worksheet, output: "", above: false, limit: NaN, yesOnly: false, not: [], yes: ids(f[3]), no: ids(f[4]) });
  }
  return feeds;
}

/** What a worksheet says to a check. shown: the figure or the verdict, as the worksheet showed it. */
export interface Opinion { state: "present" | "absent"; time: string; title: string; page: string; shown: string }

/** The opinion of the newest answer of the worksheet; null when there is none or it leaves the check open. */
export function opinion(feed: Feed, results: Result[]): Opinion | null {
  const newest = results.filter((r) => r.worksheet === feed.worksheet).reduce<Result | null>((a, b) => (a && a.time > b.time ? a : b), null);
  if (!newest) return null;
  const of = (state: Opinion["state"], shown: string): Opinion => ({ state, shown, time: newest.time, title: newest.title, page: `worksheets/${newest.worksheet}` });
  const verdict = newest.verdict?.id ?? "";
  if (feed.output === "") {
    if (feed.yes.includes(verdict)) return of("present", newest.verdict?.title ?? "");
    return feed.no.includes(verdict) ? of("absent", newest.verdict?.title ?? "") : null;
  }
  if (feed.not.includes(verdict)) return null;
  const output = newest.outputs.find((o) => o.id === feed.output);
  const value = output?.si;
  if (!output || typeof value !== "number" || !Number.isFinite(value) || !Number.isFinite(feed.limit)) return null;
  // Strictly beyond the limit is a yes; on the limit is not beyond it.
  if (feed.above ? value > feed.limit : value < feed.limit) return of("present", output.text);
  return feed.yesOnly ? null : of("absent", output.text);
}

export interface Fed {
  findings: Record<string, Finding>;
  taken: Record<string, string>; // by finding: time of the worksheet's answer that was last taken into account
  notes: Record<string, string>; // notes to findings that are not looked at now
}

/** Brings findings up to date with what worksheets say. text gives a finding in words. */
export function fed(before: Fed, opinions: Map<string, Opinion | null>, text: (id: string) => string): Fed {
  const findings = { ...before.findings };
  const taken = { ...before.taken };
  const notes = { ...before.notes };
  for (const [id, o] of opinions) {
    const now = findings[id];
    if (now && o && taken[id] === undefined && now.time === o.time) taken[id] = o.time; // a job that came from a file
    if (now && now.time !== taken[id]) continue; // a person's own
    if (!now && o && taken[id] === o.time) continue; // a person chose "Not looked"
    if (o) {
      findings[id] = { state: o.state, text: now?.text || text(id), time: o.time, note: now?.note ?? notes[id] ?? "" };
      delete notes[id];
      taken[id] = o.time;
    } else if (now) {
      if (now.note) notes[id] = now.note;
      delete findings[id]; // the answer that it came from is gone
      delete taken[id];
    }
  }
  return { findings, taken, notes };
}
