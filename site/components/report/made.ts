// What every document of a job is made from: the evidence with its numbers, what may be said, and the sentences that the
// report and the page for the owner share.

import type { Job } from "../job/schema.ts";
import type { Again } from "./answers.ts";
import type { Assessment, Judged } from "./assessment.ts";
import { chosen } from "./choices.ts";
import { collect } from "./evidence.ts";
import type { Evidence } from "./evidence.ts";
import { forIt, judge, named } from "./judge.ts";
import type { Verdict } from "./judge.ts";
import { dateText } from "./times.ts";
import { fill, list, report } from "./words.ts";

export interface ReportOptions {
  now: Date;
  handbook: string; // version
  photos?: Record<string, string>; // data: URL by photo id
  again?: Again; // answers worked out again, for their charts
  style?: "inside" | "none"; // none: the caller brings paperStyle, where a page's policy forbids style inside
}

/** Everything a section needs. */
export interface Made { job: Job; a: Assessment | null; v: Verdict; e: Evidence; o: ReportOptions }

const order = ["history", "evidence", "chain", "excluded", "work", "refrigerant", "risk", "options", "decision", "limits"] as const;
export type Section = "summary" | (typeof order)[number];

/** Number of a section in print; the summary is 1. */
export const numberOf = (s: Section): number => (s === "summary" ? 1 : order.indexOf(s) + 2);

export function made(job: Job, assessment: Assessment | null, o: ReportOptions): Made {
  const e = collect(job, assessment);
  return { job, a: assessment, v: judge(assessment, Object.keys(job.findings).length), e, o };
}

export function whatFailed(job: Job): string {
  const typed = chosen(job, "failed");
  if (typed !== "") return typed;
  const last = job.failures[job.failures.length - 1];
  return last ? [last.what.trim(), dateText(last.date)].filter((x) => x !== "").join(", ") : "";
}

/** Numbers of findings, ascending; those the job does not hold have none. */
export function numbers(m: Made, findings: string[]): number[] {
  return findings.map((f) => m.e.numberOf(f)).filter((n): n is number => n !== null).sort((x, y) => x - y);
}

function withEvidence(m: Made, j: Judged): string {
  const n = numbers(m, forIt(j));
  const name = lowerFirst(j.name);
  return n.length === 0 ? name : `${name} (${fill(report.says.evidence, { numbers: list(n) })})`;
}

export const lowerFirst = (s: string): string => (/^[A-Z][a-z]/.test(s) ? s.charAt(0).toLowerCase() + s.slice(1) : s);

/** What may be said of the cause, in one sentence or two. */
export function statement(m: Made): string {
  const { v } = m;
  const w = report.says;
  const all = (list_: Judged[]): string => list(list_.map((j) => withEvidence(m, j)));
  if (!v.weighed) return v.why === "nothing" ? w.nothing : v.why === "contradiction" ? w.contradiction : w.notWeighed;
  if (v.causes.length > 0) {
    const first = fill(v.causes.length === 1 ? w.cause : w.causes, { causes: all(v.causes) });
    return v.probable.length === 0 ? first : `${first} ${fill(w.beside, { causes: all(v.probable) })}`;
  }
  if (v.probable.length > 0) return fill(v.probable.length === 1 ? w.probable : w.probables, { causes: all(v.probable) });
  return v.possible.length > 0 ? fill(w.possible, { causes: all(v.possible) }) : w.undetermined;
}

/** The cause of the content that says the part is not broken: then a new part is no remedy. */
export const sound = "sound";

/** What is left when nothing but the part is replaced. */
export function riskOfPart(v: Verdict): string {
  const w = report.options.a;
  if (v.causes.some((j) => j.id === sound)) return w.leftSound;
  if (v.probable.some((j) => j.id === sound)) return w.leftMaybeSound;
  if (v.causes.some((j) => j.recurs)) return w.left;
  if (v.probable.some((j) => j.recurs)) return w.leftMaybe;
  return named(v).length === 0 ? w.leftUnknown : w.leftPasses;
}

