import { strict as assert } from "node:assert";
import { test } from "node:test";
import { ago, clockSet, clockTime, clockWatch, left, ringDue } from "./clock.ts";

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

test("what is over rings often, then once a minute, for an hour", () => {
  const cases: [number, number, boolean][] = [
    [-1, Infinity, false], [0, Infinity, true], [59e3, 5e3, true], [59e3, 4e3, false],
    [60e3, 59e3, false], [60e3, 60e3, true], [3599e3, 60e3, true], [3599e3, 10e3, false], [3600e3, Infinity, false],
  ];
  for (const [over, calm, want] of cases) assert.equal(ringDue(over, calm), want, `${over} ms over, ${calm} ms after a ring`);
});

test("a clock that is set anew is noticed", () => {
  const watch = clockWatch();
  const at = 1764_000_000_000;
  assert.equal(watch(at, 1000, true), 0);
  assert.equal(watch(at + 4e3, 2000, true), 0, "a few seconds are nothing");
  assert.equal(watch(at + 4e3 + 600e3, 2000, false), 0, "out of sight it may have slept");
  assert.equal(watch(at - 116e3, 2000, false), -720e3, "no sleep sets it back");
  assert.equal(watch(at - 115e3, 3000, true), -720e3);
  assert.equal(watch(at + 605e3, 3000, true), 0, "set right again");
});

test("what a clock set anew does, in words", () => {
  assert.equal(clockSet(0), "");
  assert.equal(clockSet(-719_990), "The phone's clock was set back by 12 minutes. Timers that ran then end that much later.");
  assert.equal(clockSet(30e3), "The phone's clock jumped forward by less than a minute. If the phone was awake, timers that ran then end that much too early.");
});
