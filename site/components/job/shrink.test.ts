import { strict as assert } from "node:assert";
import { test } from "node:test";
import { fit, longest } from "./shrink.ts";

test("a picture keeps its shape, is never enlarged, and is never without a pixel", () => {
  const cases: [number, number, number, number][] = [[4000, 3000, 1600, 1200], [3000, 4000, 1200, 1600], [800, 600, 800, 600], [1600, 1600, 1600, 1600], [16000, 3, 1600, 1], [1, 1, 1, 1]];
  for (const [w, h, wantW, wantH] of cases) assert.deepEqual(fit(w, h, longest), { width: wantW, height: wantH }, `${w} × ${h}`);
});
