// What the page says of a result. A probability is a ranking, not a measured frequency, so it is never a percentage: a word
// where the verdict stands, "about 3 in 4" where somebody looks closer.

import { judge } from "../report/judge.ts";
import type { Judged, Standing } from "../report/assessment.ts";
import type { Check, Outcome } from "./outcome.ts";

/** "A", "A and B", "A, B and C". */
export function list(words: string[]): string {
  return words.length < 2 ? (words[0] ?? "") : `${words.slice(0, -1).join(", ")} and ${words[words.length - 1]}`;
}

export const count = (n: number, one: string, many: string): string => `${n} ${n === 1 ? one : many}`;

export interface Said { tone: "good" | "info" | "doubt"; title: string; text: string }

/** The verdict in words. facts: how many different facts were entered. */
export function verdict(o: Outcome, facts: number): Said {
  if (facts === 0) return { tone: "doubt", title: "Not determined yet: nothing entered", text: "Answer what you looked at. The check below tells most for its minutes and its risk." };
  if (o.problem) return { tone: "doubt", title: "Not determined: the answers contradict each other", text: "No cause fits all of them. Look at each of them again, the least certain first." };
  const v = judge(o, facts);
  const names = (causes: Judged[]): string => list(causes.map((j) => j.name));
  if (v.causes.length > 0) {
    const beside = v.probable.length > 0 ? ` Probable beside it: ${names(v.probable)}.` : "";
    const mixed = v.causes.length > 1 ? "They act together. " : "";
    return { tone: "good", title: `${v.causes.length === 1 ? "Cause" : "Causes"}: ${names(v.causes)}`, text: `${mixed}Two or more independent facts support ${v.causes.length === 1 ? "it" : "each"}.${beside} Prove the open arrows of the chain before you write it down.` };
  }
  if (v.probable.length > 0) {
    return { tone: "info", title: `Probable: ${names(v.probable)}`, text: "The facts point there, and they do not prove it yet. The next check can." };
  }
  const possible = v.possible.length > 0 ? `Possible so far: ${names(v.possible)}.` : "They fit several causes, or none well.";
  return { tone: "doubt", title: `Not determined yet: ${count(facts, "fact", "facts")} entered`, text: possible };
}

/** How far a fact moves the odds of a cause; 2 is what makes it count as a fact for it. */
export function weight(factor: number): string {
  const by = factor < 1 ? 1 / factor : factor;
  return by >= 5 ? "strongly" : by >= 2 ? "clearly" : "a little";
}

// Each begins in the middle, by odds, between its share and the one below.
const steps: [from: number, words: string][] = [
  [0.965, "more than 19 in 20"], [0.929, "about 19 in 20"], [0.857, "about 9 in 10"], [0.776, "about 4 in 5"], [0.71, "about 3 in 4"], [0.586, "about 2 in 3"], [0.414, "about 1 in 2"],
  [0.29, "about 1 in 3"], [0.224, "about 1 in 4"], [0.143, "about 1 in 5"], [0.071, "about 1 in 10"], [0.032, "about 1 in 20"], [0.015, "about 1 in 50"],
];

/** A probability as people say it. What is no number is "not known". */
export function odds(p: number): string {
  if (!(p >= 0 && p <= 1)) return "not known";
  return steps.find(([from]) => p >= from)?.[1] ?? "less than 1 in 50";
}

/** What an outcome of a check would say: which cause would then lead, or, when the first place stays as it is, what it is a sign of. */
export function wouldSay(o: Outcome, check: Check, mark: "yes" | "no"): string {
  const lead = mark === "yes" ? check.ifYes : check.ifNo;
  const sign = o.signs.get(check.finding) ?? { for: [], against: [] };
  const [speaks, against] = mark === "yes" ? [sign.for, sign.against] : [sign.against, sign.for];
  const quoted = (name: string): string => `“${name}”`;
  const few = (names: string[]): string => (names.length > 3 ? `${names.slice(0, 2).map(quoted).join(", ")} and others` : list(names.map(quoted)));
  const named = (id: string): string => quoted(o.causeNames.get(id) ?? id);
  const now = o.causes.find((j) => j.id === lead?.cause)?.p ?? 0;
  if (lead && lead.p >= now * 1.2) return `${lead.p >= 0.8 ? "points strongly to" : lead.p >= 0.4 ? "points to" : "speaks for"} ${named(lead.cause)}`;
  const says = [speaks.length > 0 && mark === "yes" ? `speaks for ${few(speaks)}` : "", against.length > 0 && (mark === "no" || speaks.length === 0) ? `speaks against ${few(against)}` : ""].filter((t) => t !== "").join(", ");
  const first = lead ? `${named(lead.cause)} stays first` : "";
  return [says, first].filter((t) => t !== "").join("; ") || "says little";
}

export const standingWords: Record<Standing, string> = {
  cause: "cause", probable: "probable", possible: "possible", excluded: "spoken against", "not determined": "not determined",
};
