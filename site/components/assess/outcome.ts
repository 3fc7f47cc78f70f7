// The module's answer as the page of the assessment shows it: what the report reads, and the parts that only this page needs.

import { readAssessment } from "../report/assessment.ts";
import type { Assessment } from "../report/assessment.ts";

/** A check not made yet: the cause that would lead after a yes and after a no, with its probability then. */
export interface Check { finding: string; ifYes: Lead | null; ifNo: Lead | null }
export interface Lead { cause: string; p: number }
/** Causes that act at once. */
export interface Together { causes: string[]; p: number }

/** What a yes to a check is a sign of: names of causes or mechanisms that it speaks for and against. */
export interface Sign { for: string[]; against: string[] }

export interface Outcome extends Assessment {
  signs: Map<string, Sign>; // by finding
  checks: Check[]; // best first
  together: Together[]; // most probable first
}

export function readOutcome(data: string, answer: string): Outcome {
  const checks: Check[] = [];
  const together: Together[] = [];
  const lead = (cause: string, p: string): Lead | null => (cause === "-" || cause === "" ? null : { cause, p: Number(p) });
  for (const line of answer.split("\n")) {
    const f = line.split("\t");
    // next  finding  bits  score  probability  cause-if-there  probability  cause-if-not  probability  before
    if (f[0] === "next") checks.push({ finding: f[1] ?? "", ifYes: lead(f[5] ?? "", f[6] ?? ""), ifNo: lead(f[7] ?? "", f[8] ?? "") });
    else if (f[0] === "together") together.push({ p: Number(f[1]), causes: (f[2] ?? "").split(",").filter((c) => c !== "") });
  }
  const read = readAssessment(data, answer);
  return { ...read, checks, together, signs: signsOf(data, read) };
}

const counts = 2; // a sign speaks for a thing when it at least doubles the odds, as in calc/cause

/** From the lines finding (layer at 3, leak at 5) and sign (finding, cause or mechanism, probability); the most probable causes first. */
function signsOf(data: string, a: Assessment): Map<string, Sign> {
  const signs = new Map<string, Sign>();
  const leak = new Map<string, number>();
  const found: { finding: string; to: string; p: number; by: number }[] = [];
  for (const line of data.split("\n")) {
    const f = line.split("\t");
    if (f[0] === "finding") {
      leak.set(f[1] ?? "", Number(f[5]));
      signs.set(f[1] ?? "", { for: [], against: [] });
    } else if (f[0] === "sign") found.push({ finding: f[1] ?? "", to: f[2] ?? "", by: Number(f[3]) / (leak.get(f[1] ?? "") ?? NaN), p: a.causes.find((j) => j.id === f[2])?.p ?? 0 });
  }
  for (const { finding, to, by } of found.sort((x, y) => y.p - x.p)) {
    const name = a.causeNames.get(to) ?? a.mechanisms.get(to)?.name ?? to;
    if (by >= counts) signs.get(finding)?.for.push(name);
    else if (by <= 1 / counts) signs.get(finding)?.against.push(name);
  }
  return signs;
}

/** What removes each cause and the page that says how, from the data file: removes, cause, words, address. */
export function removals(data: string): Map<string, { words: string; address: string }> {
  const found = new Map<string, { words: string; address: string }>();
  for (const line of data.split("\n")) {
    const [kind, cause = "", words = "", address = ""] = line.split("\t");
    if (kind === "removes") found.set(cause, { words, address });
  }
  return found;
}
