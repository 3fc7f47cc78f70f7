import { strict as assert } from "node:assert";
import { test } from "node:test";
import { resultOf } from "./result.ts";
import type { Answer } from "./load.ts";

const answer: Answer = {
  worksheet: "saturation", title: "Saturation", page: "worksheets/saturation", system: "si",
  inputs: [{ id: "pressure", label: "Pressure", text: "6,9", unit: "barg", shown: "6,9 bar gauge" }, { id: "log.columns", label: "", text: "time:min", unit: "" }],
  outputs: [{ id: "dew", label: "Dew", value: "272.35", unit: "K", text: "−0.8 °C", main: true }, { id: "none", label: "None", value: "", unit: "K", text: "", main: false }, { id: "bad", label: "Bad", value: "NaN", unit: "K", text: "", main: false }, { id: "inf", label: "Inf", value: "+Inf", unit: "K", text: "", main: false }],
  verdict: { id: "vapour", tone: "info", title: "T", text: "S" },
  warnings: [],
};

test("an answer as the job holds it: what was typed stays, no NaN and no Inf", () => {
  const r = resultOf(answer, "a", "2026-01-01T00:00:00.000Z", "v");
  assert.deepEqual(r.outputs.map((o) => [o.si, o.siUnit, o.main]), [[272.35, "K", true], [null, "", false], [null, "", false], [null, "", false]]);
  assert.deepEqual(r.inputs.map((i) => [i.text, i.unit, i.shown]), [["6,9", "barg", "6,9 bar gauge"], ["time:min", "", ""]]);
  assert.deepEqual([r.worksheet, r.page, r.version, r.warnings, r.note], ["saturation", "worksheets/saturation", "v", [], ""]);
});
