import { strict as assert } from "node:assert";
import { test } from "node:test";
import type { Held } from "../../worker/messages.ts";
import { megabytes, verdict } from "./words.ts";

const whole: Held = { type: "held", digest: "0", version: "a1", date: "2026-11-25", files: 181, total: 181, bytes: 6.6e6, size: 6.6e6, missing: [], saved: 0, mended: 0, checked: true, sound: 1, reason: "" };
const now = new Date(2026, 10, 25, 14, 5);
const said = (change: Partial<Held>): string => verdict({ ...whole, ...change }, now).join(" | ");

test("ready is said of a checked and whole copy alone", () => {
  assert.equal(said({}), "ready | Ready for no signal. | All 181 files were read back, and each is right. Checked at 14:05 on Wednesday 25 Nov.");
  assert.match(said({ mended: 1 }), /^ready .* 1 missing or damaged file was fetched again\./);
  assert.match(said({ checked: false }), /^counted \| Stored, not checked yet\./);
  assert.match(said({ files: 180, missing: ["stages/hold.html"], reason: "the signal was lost." }), /^part \| Not ready for no signal\. \| 1 of 181 files is missing or damaged: stages\/hold\.html\. The signal was lost\. Checked/);
  assert.match(said({ files: 100, checked: false, missing: ["a", "b"] }), /^part .* 81 of 181 files are missing or damaged: a, b and 79 more\./);
});

test("sizes", () => assert.equal(megabytes(6_654_332), "6.7 MB"));
