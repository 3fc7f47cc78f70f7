import { strict as assert } from "node:assert";
import { test } from "node:test";
import { nextOpen } from "./next.ts";

test("the step to go on with", () => {
  const steps = [1, 2, 3, 4, 5];
  const next = (done: number[], at: number): number | undefined =>
    nextOpen(steps.map((row) => ({ row, box: { checked: done.includes(row) } })), new Set(steps.slice(0, at)))?.row;
  assert.equal(next([], 0), 1, "at the top of the page");
  assert.equal(next([], 3), 4, "not back to the first");
  assert.equal(next([4], 3), 5, "over what is ticked");
  assert.equal(next([4, 5], 3), 1, "none below");
  assert.equal(next([1, 4, 5], 5), 2);
  assert.equal(next(steps, 0), undefined);
});
