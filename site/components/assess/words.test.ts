import assert from "node:assert/strict";
import test from "node:test";
import { readOutcome, removals } from "./outcome.ts";
import { list, odds, verdict, weight, wouldSay } from "./words.ts";

// An invented model of two causes and one mechanism, in the form of the data file.
const data = [
  "cause\tdust\tDust in the coil\t0.2\trecurs", "cause\tluck\tBad luck\t0.1\tpasses", "mechanism\theat\tHeat", "leads\tdust\theat\t0.7",
  "finding\tgrey\tIt is grey\tcauses\tcolour\t0.1\t5\t0\t-", "sign\tgrey\tdust\t0.7", "sign\tgrey\tluck\t0.05",
  "finding\tburnt\tIt is burnt\tmechanisms\tburn\t0.05\t9\t2\tbefore", "sign\tburnt\theat\t0.6", "", "removes\tdust\tClean it.\tstages/clean.html#step-wash", "removes\tluck\tNothing.\t", "",
].join("\n");
const judged = (dust: string, luck: string, p = "0.9", q = "0.05"): string => `judged\tdust\t${p}\t${dust}\trecurs\nfor\tdust\tgrey\t6\njudged\tluck\t${q}\t${luck}\tpasses\n`;

test("the verdict never says more than the standings", () => {
  const title = (answer: string, facts: number): string => verdict(readOutcome(data, answer), facts).title;
  assert.equal(title("", 0), "Not determined yet: nothing entered");
  assert.equal(title(judged("not determined", "not determined"), 1), "Not determined yet: 1 fact entered");
  assert.equal(title(judged("possible", "not determined"), 2), "Not determined yet: 2 facts entered");
  assert.equal(title(judged("probable", "not determined"), 2), "Probable: Dust in the coil");
  assert.equal(title(judged("cause", "excluded"), 3), "Cause: Dust in the coil");
  assert.equal(title(judged("cause", "cause"), 5), "Causes: Dust in the coil and Bad luck");
  assert.equal(title("problem\tThese findings contradict each other. Look at each of them again.\n", 2), "Not determined: the answers contradict each other");
  // A fact that counts against it makes a probable cause of a cause, as in the report.
  assert.equal(title(judged("cause", "excluded") + "against\tdust\tburnt\t0.2\n", 3), "Probable: Dust in the coil");
});

test("no verdict holds a percentage", () => {
  for (const answer of [judged("cause", "probable"), judged("possible", "possible"), judged("excluded", "excluded")]) {
    const said = verdict(readOutcome(data, answer), 2);
    assert.ok(!/%|\d\.\d/.test(said.title + said.text), said.title + said.text);
  }
});

test("a probability is said as people say it, and what is none is not", () => {
  const wanted: [number, string][] = [[0.999, "more than 19 in 20"], [0.95, "about 19 in 20"], [0.9, "about 9 in 10"], [0.8, "about 4 in 5"], [0.75, "about 3 in 4"], [0.66, "about 2 in 3"], [0.5, "about 1 in 2"], [0.33, "about 1 in 3"], [0.25, "about 1 in 4"], [0.2, "about 1 in 5"], [0.1, "about 1 in 10"], [0.05, "about 1 in 20"], [0.02, "about 1 in 50"], [0.001, "less than 1 in 50"], [NaN, "not known"], [1.5, "not known"]];
  for (const [p, words] of wanted) assert.equal(odds(p), words, String(p));
  // "About" means that the odds differ by less than a factor of 1.7: the step from 1 in 20 to 1 in 50 is one of 2.6, and half of
  // it, by odds, is 1.6. A person does not act otherwise on so small a difference.
  for (let p = 0.03; p <= 0.96; p += 0.005) {
    const m = /^about (\d+) in (\d+)$/.exec(odds(p));
    const said = m ? Number(m[1]) / Number(m[2]) : NaN;
    const got = Math.log((p / (1 - p)) / (said / (1 - said)));
    assert.ok(!m || Math.abs(got) < 0.55, `${p} is said as ${odds(p)}: odds differ by a factor of ${Math.exp(got)}, want less than 1.7`);
  }
});

test("what an outcome would say", () => {
  const o = readOutcome(data, judged("possible", "not determined", "0.3", "0.2") + "next\tgrey\t0.3\t0.06\t0.4\tdust\t0.85\tluck\t0.21\t-\nnext\tburnt\t0.1\t0.01\t0.4\tdust\t0.31\tdust\t0.29\tbefore\n");
  const [grey, burnt] = o.checks;
  assert.ok(grey && burnt);
  assert.equal(wouldSay(o, grey, "yes"), "points strongly to “Dust in the coil”");
  assert.equal(wouldSay(o, grey, "no"), "speaks against “Dust in the coil”; “Bad luck” stays first");
  assert.equal(wouldSay(o, burnt, "yes"), "speaks for “Heat”; “Dust in the coil” stays first");
  assert.equal(wouldSay(o, burnt, "no"), "speaks against “Heat”; “Dust in the coil” stays first");
  assert.deepEqual(o.signs.get("grey"), { for: ["Dust in the coil"], against: ["Bad luck"] });
});

test("small words", () => {
  assert.equal(list(["a", "b", "c"]), "a, b and c");
  assert.deepEqual([0.1, 0.4, 0.9, 1.1, 2, 5].map(weight), ["strongly", "clearly", "a little", "a little", "clearly", "strongly"]);
  assert.deepEqual(removals(data).get("dust"), { words: "Clean it.", address: "stages/clean.html#step-wash" });
});
