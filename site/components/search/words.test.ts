import { strict as assert } from "node:assert";
import { readFileSync } from "node:fs";
import { test } from "node:test";
import { slips, stem, words } from "./words.ts";

test("words are parted as the samples say that the Go test reads too", () => {
  const samples = readFileSync(new URL("../../../../../../testdata/search/words.txt", import.meta.url), "utf8").split("\n").filter((l) => l && !l.startsWith("#"));
  assert.ok(samples.length > 10, `samples: ${samples.length}`);
  for (const sample of samples) {
    const [text = "", want = ""] = sample.split(" =>");
    assert.equal(words(text).map((w) => w.text).join(" "), want.trim(), text);
  }
});

test("places of words lie in the text as it is shown", () => {
  const text = "Stop at 2,000 micron on the R-410A side.";
  assert.deepEqual(words(text).map((w) => text.slice(w.start, w.end)), ["Stop", "at", "2,000", "micron", "on", "the", "R", "410A", "R-410A", "side"]);
});

test("bent forms of a word share a stem, different words do not", () => {
  for (const group of [["evacuate", "evacuated", "evacuating", "evacuation"], ["braze", "brazed", "brazing"], ["leak", "leaks", "leaking", "leaked"],
    ["charge", "charges", "charged", "charging"], ["stop", "stops", "stopped", "stopping"], ["hose", "hoses"], ["recover", "recovered", "recovery"], ["capacitor", "capacitors"]]) {
    const [first = ""] = group;
    for (const word of group) assert.equal(stem(word), stem(first), `${word} beside ${first}`);
  }
  assert.notEqual(stem("charge"), stem("change"));
  assert.equal(stem("410a"), "410a");
});

test("slips are counted: a letter wrong, missing, too many, swapped", () => {
  for (const [a, b, want] of [["vacuum", "vacuum", 0], ["vaccum", "vacuum", 1], ["vacum", "vacuum", 1], ["vacuuum", "vacuum", 1], ["vacuum", "acvuum", 2], ["micorn", "micron", 1], ["compresor", "compressor", 1], ["comprsesro", "compressor", 2], ["cmoprsesro", "compressor", 3]] as const) {
    assert.equal(slips(a, b, 2), want, `${a} for ${b}`);
    assert.equal(slips(b, a, 2), want, `${b} for ${a}`);
  }
  assert.equal(slips("compr", "compressor", 1), 2, "more letters missing than the limit");
  assert.equal(slips("comrp", "compressor", 1, true), 1, "a word that is still being typed");
});
