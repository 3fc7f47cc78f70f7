// The module's answer as the page of the assessment shows it: what the report reads, and the parts that only this page needs.

import { readAssessment } from "../report/assessment.ts";
import type { Assessment } from "../report/assessment.ts";

/** A check not made yet: the cause that would lead after a yes and after a no, with its probability then. */
export interface Check { finding: string; ifYes: Lead | null; ifNo: Lead | null }
export interface Lead { cause: string; p: number }
/** Causes that act at once. */
export interface Together { causes: string[]; p: number }

export interface Outcome extends Assessment {
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
  return { ...readAssessment(data, answer), checks, together };
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
