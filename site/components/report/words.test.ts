// Three rules over our own phrases: no blame, no promise of energy, and an owner's page that reads at the age of 12.

import { strict as assert } from "node:assert";
import { test } from "node:test";
import { groups } from "./choices.ts";
import { customer, demo, demoLong, fill, list, report } from "./words.ts";

/** Every phrase under a value, with the way to it. */
function phrases(value: unknown, at: string): [string, string][] {
  if (typeof value === "string") return [[at, value]];
  if (value && typeof value === "object") return Object.entries(value).flatMap(([key, v]) => phrases(v, `${at}.${key}`));
  return [];
}

const ours = [...phrases(report, "report"), ...phrases(customer, "customer"), ...phrases({ demo, demoLong }, "demo"), ...phrases(groups, "form")];

test("no phrase lays blame on anyone", () => {
  const blame = /\b(fault of|blam\w*|neglig\w*|careless\w*|incompeten\w*|sloppy|botch\w*|poor(ly)? (work\w*|done|made|fitted)|bad (work\w*|job)|shoddy|unprofessional|mistake\w*|guilt\w*|liab\w*|should have|ought to have|failed to|did not (clean|check|change|do|fit|braze|evacuate|measure)|(previous|earlier|former|last|other) (contractor|technician|company|firm|engineer|installer|mechanic|team)s?|contractor\w*|installer\w*|their (work|fault|job)|your fault|someone else)\b/i;
  for (const [at, phrase] of ours) assert.doesNotMatch(phrase, blame, at);
  // The rule itself can fail.
  for (const bad of ["The previous contractor did poor work.", "They failed to clean it.", "It was the fault of the installer."]) assert.match(bad, blame);
});

test("no phrase promises energy", () => {
  const energy = /\b(energy|saves?|savings?|saving|efficien\w*|electricity|power bill|kwh|cheaper to run|running costs?|pays? for itself|payback)\b/i;
  const refusals = ["report.limits.3", "customer.noEnergy"];
  for (const [at, phrase] of ours) {
    if (refusals.includes(at)) assert.match(phrase, /\bno saving of energy is promised|we do not promise/i, at);
    else assert.doesNotMatch(phrase, energy, at);
  }
});

test("no phrase is stronger than a standing", () => {
  for (const [at, phrase] of ours) assert.doesNotMatch(phrase, /\b(certain(ly)?|proves? that|without doubt|undoubtedly|definitely|guarantee\w*|obviously|clearly)\b/i, at);
});

test("sentences are short", () => {
  for (const [at, phrase] of ours) {
    for (const s of sentences(phrase)) {
      const most = at.startsWith("customer") ? 15 : 25;
      const n = wordsOf(s).length;
      assert.ok(n <= most, `${at}: ${n} words, ${most} allowed: ${s}`);
    }
  }
});

test("the owner's page reads at the age of 12", (t) => {
  // Flesch-Kincaid grade = 0.39 words/sentences + 11.8 syllables/words − 15.59 (Kincaid and others, 1975, US Navy report
  // 8-75). Grade 6 is the age of 11 to 12. Labels without a full stop count as sentences of their own, which is how they are
  // read; so the whole sentences are measured alone too.
  const all = phrases(customer, "customer").map(([, p]) => fill(p, { n: 4, cause: "" }));
  const full = all.filter((p) => /[.!?]$/.test(p.trim()));
  for (const [name, texts] of [["all phrases", all], ["whole sentences", full]] as const) {
    const grade = fleschKincaid(texts);
    t.diagnostic(`${name}: grade ${grade.toFixed(2)}, wanted 6.0 or less`);
    assert.ok(grade <= 6.0, `${name}: grade ${grade}`); // NaN fails
  }
  for (const p of full) {
    const grade = fleschKincaid([p]);
    // One sentence may hold one long word; more than grade 9 is a sentence to write anew.
    assert.ok(grade <= 9, `grade ${grade.toFixed(1)}: ${p}`);
  }
});

test("the measure of reading tells hard from easy", () => {
  // Syllables by hand.
  const cases: [string, number][] = [["the", 1], ["oil", 1], ["valve", 1], ["system", 2], ["filters", 2], ["leaked", 1], ["started", 2], ["pipes", 1], ["changes", 2], ["little", 2], ["indoor", 2], ["electricity", 5], ["contamination", 5], ["reading", 2], ["power", 2], ["cleaned", 1], ["needed", 2], ["stays", 1], ["promise", 2], ["hundred", 2]];
  for (const [word, want] of cases) assert.equal(syllables(word), want, word);
  // 6 words, 1 sentence, 6 syllables: 0.39·6 + 11.8·1 − 15.59 = −1.45.
  const got = fleschKincaid(["The cat sat on the mat."]);
  assert.ok(Math.abs(got - -1.45) < 1e-9, `got ${got}, want -1.45`);
  assert.ok(fleschKincaid(["Contamination originating in preceding operations deteriorates insulation and lubrication simultaneously."]) > 15);
});

test("a list reads as a sentence", () => {
  assert.deepEqual([list([]), list([1]), list([1, 2]), list([1, 2, 3])], ["", "1", "1 and 2", "1, 2 and 3"]);
});

function sentences(text: string): string[] {
  return text.split(/(?<=[.!?:])\s+/).filter((s) => wordsOf(s).length > 0);
}

function wordsOf(text: string): string[] {
  return text.match(/[A-Za-z0-9’']+/g) ?? [];
}

function fleschKincaid(texts: string[]): number {
  const all = texts.flatMap(sentences);
  const words = all.flatMap(wordsOf);
  return 0.39 * (words.length / all.length) + 11.8 * (words.reduce((n, w) => n + syllables(w), 0) / words.length) - 15.59;
}

/** Groups of vowels, less a silent e or ed at the end. Where spelling leaves doubt it counts one more. */
function syllables(word: string): number {
  let w = word.toLowerCase().replace(/[^a-z]/g, "");
  if (w.length <= 3) return 1;
  w = w.replace(/(?:[^laeiouy]es|(?<![tdrl])ed|[^laeiouy]e)$/, (end) => (/(?:[sxz]|[cs]h|g|c)es$/.test(w) ? end : end.charAt(0) === "e" ? "" : end.charAt(0)));
  return Math.max(1, (w.match(/[aeiouy]+/g) ?? []).length);
}
