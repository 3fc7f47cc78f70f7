// What the report may say of the causes. It never says more than the assessment's standing; where a fact speaks against a
// cause it says less, as the handbook's own table on words asks.

import type { Assessment, Judged, Standing } from "./assessment.ts";

const counts = 2; // a fact counts when it doubles the odds or halves them; the factor of calc/cause

export interface Verdict {
  causes: Judged[]; // called the cause
  probable: Judged[];
  possible: Judged[];
  excluded: Judged[];
  weighed: boolean; // false: nothing entered, nothing weighed or nothing that fits together
  why: "nothing" | "notWeighed" | "contradiction" | "";
}

/** Facts that count for a cause, and against it. */
export const forIt = (j: Judged): string[] => j.for.filter((w) => w.factor >= counts).map((w) => w.finding);
export const againstIt = (j: Judged): string[] => j.against.filter((w) => w.factor <= 1 / counts).map((w) => w.finding);

/** The word for a cause. A fact against it that counts makes a probable cause of a cause. */
export function wordFor(j: Judged): Standing {
  return j.standing === "cause" && againstIt(j).length > 0 ? "probable" : j.standing;
}

export function judge(a: Assessment | null, entered: number): Verdict {
  const v: Verdict = { causes: [], probable: [], possible: [], excluded: [], weighed: false, why: "" };
  if (entered === 0) return { ...v, why: "nothing" };
  if (!a) return { ...v, why: "notWeighed" };
  if (a.problem) return { ...v, why: a.causes.length === 0 && /contradict/.test(a.problem) ? "contradiction" : "notWeighed" };
  const byP = [...a.causes].sort((x, y) => y.p - x.p);
  const of = (s: Standing): Judged[] => byP.filter((j) => wordFor(j) === s);
  return { causes: of("cause"), probable: of("probable"), possible: of("possible"), excluded: of("excluded"), weighed: true, why: "" };
}

/** What is named, strongest words first: the causes that options are built on. */
export const named = (v: Verdict): Judged[] => [...v.causes, ...v.probable];

export type Option = "a" | "b" | "c";

/** The option that the evidence asks for: with a cause shown, remove it; without, watch what could not be shown. Whether
    today's work has removed it already, and A is enough, only the person knows. */
export const advised = (v: Verdict): Option => (v.causes.length > 0 && v.probable.length === 0 ? "b" : "c");
