import assert from "node:assert/strict";
import test from "node:test";
import { unitsOf } from "./unit-list.ts";

test("the page's list of units, and the one that a system begins with", () => {
  const gauge = "bar gauge,kPa gauge,*psi gauge,in Hg vacuum";
  assert.deepEqual(unitsOf(gauge, "ip"), { units: ["bar gauge", "kPa gauge", "psi gauge", "in Hg vacuum"], first: "psi gauge" });
  assert.equal(unitsOf(gauge, "si").first, "bar gauge");
  assert.equal(unitsOf("lb,+kg,oz", "si").first, "kg");
  assert.equal(unitsOf("micron,Pa", "ip").first, "micron", "without a mark the one that the step writes");
});
