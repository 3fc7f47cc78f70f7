import { strict as assert } from "node:assert";
import { test } from "node:test";
import { readdirSync, readFileSync } from "node:fs";
import { decode, encode, escape, unescape } from "./wire.ts";

test("a field survives escaping, whatever it holds", () => {
  for (const text of ["", "plain", "a\tb", "line\nline", "back\\slash", "\\t is not a tab", "\\\\\n\t", "−40 °C", "0,5\n1,6\n"]) {
    assert.equal(unescape(escape(text)), text);
    assert.ok(!/[\t\n]/.test(escape(text)), "no bare tab or new line in " + JSON.stringify(escape(text)));
  }
});

test("a request is one line a fact", () => {
  const text = encode({
    worksheet: "vacuum-hold",
    system: "ip",
    inputs: [{ id: "log", text: "0,310\n1,340\n", unit: "" }, { id: "target", text: "500", unit: "micron" }],
    outputs: [{ id: "leak", unit: "micron/min" }],
  });
  assert.equal(text, "worksheet\tvacuum-hold\nsystem\tip\nin\tlog\t0,310\\n1,340\\n\t\nin\ttarget\t500\tmicron\nout\tleak\tmicron/min\n");
});

test("a reply comes apart into its kinds; unknown lines are skipped", () => {
  const r = decode([
    "output\tdew\tDew temperature\t278.15\tK\t5.0 °C\tmain",
    "output\tglide\tGlide\t6\tK\t6.0 K\t",
    "verdict\tleak\tstop\tLeak\tA sentence.",
    "future\tsomething\tnew",
    "warning\tone", "advice\ttwo",
    "step\tLabel\tp = a\\\\b\t3 kPa\tiapws-r14-08\tequation 1",
    "chart\tTitle\t<svg>\\n</svg>",
    "",
  ].join("\n"));
  assert.deepEqual(r.outputs.map((o) => [o.id, o.text, o.main]), [["dew", "5.0 °C", true], ["glide", "6.0 K", false]]);
  assert.deepEqual(r.verdict, { id: "leak", tone: "stop", title: "Leak", text: "A sentence." });
  assert.deepEqual([r.warnings, r.advice], [["one"], ["two"]]);
  assert.deepEqual(r.steps, [{ label: "Label", formula: "p = a\\b", value: "3 kPa", source: "iapws-r14-08", locator: "equation 1" }]);
  assert.deepEqual(r.charts, [{ title: "Title", svg: "<svg>\n</svg>" }]);
  assert.deepEqual(r.problems, []);
});

test("suggestions belong to the problem before them", () => {
  const r = decode("problem\tpressure\ttwo-ways\tIt can mean two things.\nsuggest\tpressure\t1.5\t1.5\nproblem\tlog\tcolumn-unit\tWhich unit?\nsuggest\tlog.columns\tmicron\ttime:min,pressure:micron\n");
  assert.deepEqual(r.problems.map((p) => [p.input, p.suggestions.map((s) => [s.input, s.value])]), [
    ["pressure", [["pressure", "1.5"]]],
    ["log", [["log.columns", "time:min,pressure:micron"]]],
  ]);
  assert.deepEqual(decode("suggest\tx\ty\tz\n").problems, [], "a suggestion without a problem is no crash");
});

test("a problem may name its place in a series", () => {
  const places = decode("problem\tlog\tbad-row\tRow 3.\t3\t2\nproblem\tpressure\tmissing\tNone.\n").problems.map((p) => [p.row, p.field]);
  assert.deepEqual(places, [[3, 2], [0, 0]]);
});

// The samples that the Go tests of wasm/wire read, once they are there.
const samples = new URL("../../../../../testdata/wire/", import.meta.url);
let names: string[] = [];
try {
  names = readdirSync(samples).filter((n) => n.endsWith(".reply.txt"));
} catch {
  // No samples yet.
}
for (const name of names) {
  test(`sample ${name}`, () => {
    const text = readFileSync(new URL(name, samples), "utf8");
    const lines = text.split("\n").filter((l) => l !== "");
    const r = decode(text);
    const count = r.outputs.length + (r.verdict ? 1 : 0) + r.warnings.length + r.advice.length + r.steps.length + r.charts.length +
      r.problems.length + r.problems.reduce((n, p) => n + p.suggestions.length, 0);
    assert.equal(count, lines.length, "each line of the sample is understood");
  });
}
