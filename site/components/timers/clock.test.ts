import { strict as assert } from "node:assert";
import { test } from "node:test";
import { ago, clockTime, left } from "./clock.ts";

test("time left", () => {
  const cases: [number, string][] = [[0, "0:00"], [-5000, "0:00"], [1, "0:01"], [59_999, "1:00"], [309_000, "5:09"], [3_600_000, "1:00:00"], [43_200_000, "12:00:00"]];
  for (const [ms, want] of cases) assert.equal(left(ms), want, String(ms));
});

test("how long ago", () => {
  const cases: [number, string][] = [[10, "less than a minute"], [60e3, "1 minute"], [59 * 60e3, "59 minutes"], [3600e3, "1 hour"], [26 * 3600e3, "1 day"], [72 * 3600e3, "3 days"]];
  for (const [ms, want] of cases) assert.equal(ago(ms), want, String(ms));
});

test("another day is named", () => {
  const now = new Date(2026, 10, 25, 9, 0).getTime();
  assert.ok(!/ on /.test(clockTime(now - 3600e3, now)));
  assert.match(clockTime(now - 26 * 3600e3, now), / on .*24/);
});

test("the clock has 24 hours", () => {
  const now = new Date(2026, 10, 26, 0, 2).getTime();
  assert.equal(clockTime(now, now), "00:02");
  assert.equal(clockTime(new Date(2026, 10, 25, 23, 53).getTime(), now).slice(0, 9), "23:53 on ");
});
