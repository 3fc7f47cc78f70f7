import { strict as assert } from "node:assert";
import { test } from "node:test";
import { fold, rank } from "./rank.ts";
import type { Entry } from "./rank.ts";

const index: Entry[] = [
  { u: "a.html", t: "Evacuate and hold", k: "procedure", n: 8, d: "Take the air out.", s: [["step-gauge", "Connect the vacuum gauge"], ["step-500", "Stop at 500\u00a0micron."]] },
  { u: "b.html", t: "R-410A pressure and temperature", k: "table" },
  { u: "c.html", t: "Vacuum hold", k: "worksheet" },
];

const found = (asked: string): string[] => rank(index, asked, 30).map((h) => h.entry.u + (h.part ? "#" + h.part[0] : ""));

test("words begin words; titles come first", () => {
  assert.deepEqual(found("vac"), ["c.html", "a.html#step-gauge"]);
  assert.deepEqual(found("acuum"), []);
  assert.deepEqual(found(""), []);
});

test("hyphens, case and no-break spaces do not matter", () => {
  assert.deepEqual(found("R 410a"), ["b.html"]);
  assert.deepEqual(found("r-410A"), ["b.html"]);
  assert.deepEqual(found("500 micron"), ["a.html#step-500"]);
  assert.equal(fold("Café—Über"), "cafe uber");
});

test("a step may borrow a word from its page's title, never all of them", () => {
  assert.deepEqual(found("hold gauge"), ["a.html#step-gauge"]);
  assert.ok(!found("evacuate").includes("a.html#step-gauge"));
});
