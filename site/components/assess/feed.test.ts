import assert from "node:assert/strict";
import test from "node:test";
import type { Finding, Result } from "../job/schema.ts";
import { fed, opinion, readFeeds } from "./feed.ts";
import type { Fed, Opinion } from "./feed.ts";

const feeds = readFeeds("cause\tx\n\nlimit\tlow\trunning\tsuperheat\tbelow\t3\tboth\tunsteady,odd\nlimit\tair\tairflow\tshare\tbelow\t0.7\tyes\t\nlimit\thigh\trunning\tsubcooling\tabove\t12\tboth\t\nverdict\tout\tsupply\tlost,outside\teven\n");
const feed = (id: string) => feeds.find((f) => f.finding === id) ?? assert.fail(id);

const result = (worksheet: string, outputs: Record<string, number | null>, verdict = "", time = "2026-11-25T10:00:00.000Z"): Result => ({
  id: time, worksheet, title: `The sheet ${worksheet}`, page: "", system: "si", inputs: [], warnings: [], version: "", note: "", time,
  outputs: Object.entries(outputs).map(([id, si]) => ({ id, label: id, si, siUnit: "K", text: `${si} K`, main: true })),
  verdict: verdict === "" ? null : { id: verdict, tone: "info", title: `Verdict ${verdict}`, text: "" },
});
const state = (id: string, ...results: Result[]) => opinion(feed(id), results)?.state ?? null;

test("a limit is passed strictly", () => {
  assert.equal(state("low", result("running", { superheat: 1 })), "present");
  assert.equal(state("low", result("running", { superheat: 3 })), "absent"); // 3 K is not under 3 K
  assert.equal(state("low", result("running", { superheat: 8 })), "absent");
  assert.equal(state("high", result("running", { subcooling: 12 })), "absent");
  assert.equal(state("high", result("running", { subcooling: 12.1 })), "present");
});

test("where a figure proves no “no”, the question stays open", () => {
  assert.equal(state("air", result("airflow", { share: 0.55 })), "present");
  assert.equal(state("air", result("airflow", { share: 0.9 })), null);
});

test("no answer, no figure, a verdict that says nothing: open", () => {
  assert.equal(state("low"), null);
  assert.equal(state("low", result("other", { superheat: 1 })), null);
  assert.equal(state("low", result("running", { superheat: null })), null);
  assert.equal(state("low", result("running", { superheat: NaN })), null);
  assert.equal(state("low", result("running", { superheat: 1 }, "unsteady")), null);
  assert.equal(state("low", result("running", { superheat: 1 }, "fine")), "present");
  assert.equal(state("out", result("supply", {}, "lost")), "present");
  assert.equal(state("out", result("supply", {}, "even")), "absent");
  assert.equal(state("out", result("supply", {}, "watch")), null);
});

test("the newest answer counts, in whatever order they stand", () => {
  const early = result("running", { superheat: 1 }, "", "2026-11-25T09:00:00.000Z");
  const late = result("running", { superheat: 8 }, "", "2026-11-25T11:00:00.000Z");
  assert.equal(state("low", early, late), "absent");
  assert.equal(state("low", late, early), "absent");
  assert.equal(opinion(feed("low"), [early, late])?.shown, "8 K");
});

const says = (s: Opinion["state"], time: string): Opinion => ({ state: s, time, title: "Sheet", page: "", shown: "1 K" });
const own = (s: Finding["state"], time = "2026-11-25T12:00:00.000Z", note = ""): Finding => ({ state: s, time, text: "Low", note });
const none: Fed = { findings: {}, taken: {}, notes: {} };
const put = (before: Fed, o: Opinion | null): Fed => fed(before, new Map([["low", o]]), () => "Low");

test("a worksheet answers an open question, and a newer one answers it anew", () => {
  const first = put(none, says("present", "t1"));
  assert.deepEqual(first.findings, { low: { state: "present", text: "Low", time: "t1", note: "" } });
  const second = put(first, says("absent", "t2"));
  assert.equal(second.findings.low?.state, "absent");
  assert.deepEqual(put(second, says("absent", "t2")), second, "twice changes nothing");
});

test("a person's answer stands, whatever the worksheet says", () => {
  const mine: Fed = { findings: { low: own("absent") }, taken: {}, notes: {} };
  assert.deepEqual(put(mine, says("present", "t1")).findings, mine.findings);
  // An overruled one: the time is the person's, no longer the worksheet's.
  const over: Fed = { findings: { low: own("absent") }, taken: { low: "t1" }, notes: {} };
  assert.deepEqual(put(over, says("present", "t2")).findings, over.findings);
});

test("“Not looked” by choice stays until the worksheet is worked out anew", () => {
  const open: Fed = { findings: {}, taken: { low: "t1" }, notes: { low: "wet" } };
  assert.deepEqual(put(open, says("present", "t1")), open);
  assert.deepEqual(put(open, says("present", "t2")).findings.low, { state: "present", text: "Low", time: "t2", note: "wet" });
});

test("an answer whose worksheet is gone goes with it; its note does not", () => {
  const derived: Fed = { findings: { low: own("present", "t1", "wet") }, taken: { low: "t1" }, notes: {} };
  assert.deepEqual(put(derived, null), { findings: {}, taken: {}, notes: { low: "wet" } });
  const mine: Fed = { findings: { low: own("present") }, taken: {}, notes: {} };
  assert.deepEqual(put(mine, null), mine);
});

test("a job that came from a file knows its worksheets' answers by their time", () => {
  const file: Fed = { findings: { low: own("present", "t1") }, taken: {}, notes: {} };
  const known = put(file, says("present", "t1"));
  assert.equal(known.taken.low, "t1");
  assert.equal(put(known, says("absent", "t2")).findings.low?.state, "absent");
});
