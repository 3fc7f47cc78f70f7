import { strict as assert } from "node:assert";
import { readFileSync } from "node:fs";
import { test } from "node:test";
import { keep, units } from "./together.ts";

test("a number keeps its unit, and nothing else is tied", () => {
  for (const [given, want] of [
    ["Move no more than 10 % of it.", "Move no more than 10\u00a0% of it."],
    ["at 8.5 °C and 1.2 kg/m, in 30 min", "at 8.5\u00a0°C and 1.2\u00a0kg/m, in 30\u00a0min"],
    ["500 micron; 75 psig, 3 in.", "500\u00a0micron; 75\u00a0psig, 3\u00a0in."],
    ["wait 2 more hours, then 3 hours.", "wait 2 more hours, then 3\u00a0hours."],
    ["step 3 is a check", "step 3 is a check"],
    ["5 Maker’s values, 4 inside", "5 Maker’s values, 4 inside"],
  ] as const) assert.equal(keep(given), want);
});

test("the units are those of the built pages", () => {
  const go = /func IsUnit[\s\S]*?case ("[\s\S]*?"):\s/.exec(readFileSync("../build/internal/typeset/typeset.go", "utf8"))?.[1] ?? "";
  assert.deepEqual([...units].sort(), [...go.matchAll(/"([^"]+)"/g)].map((m) => m[1]).sort());
});
