// Makes the job that the tests of the report use: job.json (a job file), causes.txt (a part of the model's data) and
// answer.txt (what the module answers to it). Everything in it is invented: no such site, unit, person or failure exists.
// The worksheet answers and the assessment come from the module of a built site, so that they agree with it:
//
//   go run ./build -out /tmp/site && node testdata/report/make.mjs /tmp/site PICTURE.jpg PICTURE.jpg PICTURE.jpg
//
// The three pictures are 640 × 420, 640 × 420 and 420 × 640; without them the ones in job.json stay.

import { readFileSync, readdirSync, writeFileSync } from "node:fs";
import path from "node:path";

const [site, ...pictures] = process.argv.slice(2);
const here = new URL("./", import.meta.url);
const asset = (start, end) => path.join(site, "assets", readdirSync(path.join(site, "assets")).find((f) => f.startsWith(start) && f.endsWith(end)));

async function startModule(file) {
  const module = await WebAssembly.compile(readFileSync(file));
  let memory;
  const view = () => new DataView(memory.buffer);
  const none = (a, b) => (view().setUint32(a, 0, true), view().setUint32(b, 0, true), 0);
  const calls = {
    args_sizes_get: none, environ_sizes_get: none, args_get: () => 0, environ_get: () => 0, fd_prestat_get: () => 8, fd_prestat_dir_name: () => 8,
    fd_fdstat_get: () => 8, fd_fdstat_set_flags: () => 0, fd_close: () => 0, sched_yield: () => 0,
    clock_time_get: (id, _, at) => (view().setBigUint64(at, BigInt(Math.round((id === 0 ? Date.now() : performance.now()) * 1e6)), true), 0),
    random_get: (at, n) => (crypto.getRandomValues(new Uint8Array(memory.buffer, at, n)), 0),
    fd_write: (a, b, c, d) => (view().setUint32(d, 0, true), 0),
  };
  const imports = {};
  for (const { module: from, name, kind } of WebAssembly.Module.imports(module)) if (kind === "function") (imports[from] ??= {})[name] = calls[name] ?? (() => 52);
  const e = (await WebAssembly.instantiate(module, imports)).exports;
  memory = e.memory;
  e._initialize();
  return (what, text) => {
    const bytes = new TextEncoder().encode(text);
    const into = e.request(bytes.length);
    new Uint8Array(memory.buffer, into, bytes.length).set(bytes);
    const n = e[what](bytes.length);
    return new TextDecoder().decode(new Uint8Array(memory.buffer, e.reply(), n));
  };
}

const call = await startModule(asset("changeout", ".wasm"));
const escape = (s) => s.replace(/[\\\t\n]/g, (c) => ({ "\\": "\\\\", "\t": "\\t", "\n": "\\n" })[c]);
const unescape = (s) => s.replace(/\\([\s\S])/g, (_, c) => (c === "t" ? "\t" : c === "n" ? "\n" : c));

let ids = 0;
/** A kept answer as the job page keeps it. inputs: id, label, text. */
function result(worksheet, title, page, time, inputs, note = "") {
  const text = `worksheet\t${worksheet}\nsystem\tsi\n` + inputs.map(([id, , t]) => `in\t${id}\t${escape(t)}\t\n`).join("");
  const lines = call("evaluate", text).split("\n").filter((l) => l).map((l) => l.split("\t").map(unescape));
  const problem = lines.find((l) => l[0] === "problem");
  if (problem) throw new Error(`${worksheet}: ${problem.join(" ")}`);
  const v = lines.find((l) => l[0] === "verdict");
  return {
    id: `r${++ids}`, worksheet, title, page, system: "si",
    inputs: inputs.map(([id, label, t]) => ({ id, label, text: t, unit: "", shown: t })),
    outputs: lines.filter((l) => l[0] === "output").map(([, id, label, si, siUnit, shown, main]) => ({ id, label, si: Number.isFinite(Number(si)) && si !== "" ? Number(si) : null, siUnit, text: shown, main: main === "main" })),
    verdict: v ? { id: v[1], tone: v[2], title: v[3], text: v[4] } : null,
    warnings: lines.filter((l) => l[0] === "warning").map((l) => l[1]), time, version: "invented", note,
  };
}

const hold = "minutes,micron\n0,310\n1,330\n2,344\n3,352\n4,358\n5,363\n6,366\n8,370\n10,372\n12,374\n15,375\n20,376\n25,377\n30,377\n";
const standing = "hours;pressure_barg;temperature_C\n0;40.00;27\n4;39.42;23\n10;38.80;19\n14;38.62;18\n20;39.85;26";
const running = (time, suction, pipe, high, hot, liquid, page) => result("running-state", "Running state", page, time, [["refrigerant", "Refrigerant", "R-410A"], ["drive", "Compressor", "inverter"], ["steady", "Steady for", "60 min"],
  ["suction-pressure", "Suction pressure", suction], ["suction-temperature", "Suction pipe temperature", pipe], ["discharge-pressure", "Discharge pressure", high], ["discharge-temperature", "Discharge pipe temperature", hot], ["liquid-temperature", "Liquid pipe temperature", liquid], ["outdoor-air", "Outdoor air on", "30 C"]]);

const photo = (id, caption, time, link, size, i, old) => {
  const data = pictures[i] ? readFileSync(pictures[i]).toString("base64") : old.find((p) => p.id === id).data;
  return { id, caption, time, link, type: "image/jpeg", width: size[0], height: size[1], size: Buffer.from(data, "base64").length, data };
};
let old = [];
try {
  old = JSON.parse(readFileSync(new URL("job.json", here), "utf8")).jobs[0].photos;
} catch {
  // The first time there is none.
}

const day = (h, m = 0, d = 24) => `2026-11-${d}T${String(h).padStart(2, "0")}:${String(m).padStart(2, "0")}:00Z`;
const found = (state, time, note = "") => ({ state, text: "", time, note });
const reading = (id, what, value, unit, si, siUnit, time, instrument, step) => ({ id, what, value, unit, si, siUnit, time, instrument, step });
const job = {
  id: "invented-1", title: "Invented Harbour House, roof unit 2", demo: true, made: day(7), updated: day(17), site: "Invented Harbour House, Example Quay 1", unit: "Roof unit 2, compressor A, serial INV-0002", refrigerant: "R-410A",
  nameplate: { value: "11.8", unit: "kg" },
  failures: [
    { id: "f1", date: "2025-03-14", what: "Compressor A locked after four years", told: "Building manager" },
    { id: "f2", date: "2026-11-23", what: "Compressor A stopped on over-current and did not start again", told: "Building manager" },
  ],
  ticks: Object.fromEntries([
    ...["photograph-as-found", "interview", "read-faults", "count-failures", "measure-airflow"].map((s, i) => [`stages/find-the-cause#${s}`, { time: day(8, 5 * i), text: "" }]),
    ...["weigh-cylinder", "recover-liquid"].map((s, i) => [`stages/recover#${s}`, { time: day(10, 10 * i), text: "" }]),
    ...["flow-nitrogen", "braze-joint", "cool-down"].map((s, i) => [`stages/braze-with-nitrogen#${s}`, { time: day(12, 15 * i), text: "" }]),
    ...["fill-nitrogen", "read-pressure"].map((s, i) => [`stages/pressure-test#${s}`, { time: day(13, 40 * i), text: "" }]),
    ...["pull", "isolate", "log-hold"].map((s, i) => [`stages/evacuate-and-hold#${s}`, { time: day(10, 20 * i, 25), text: "" }]),
    ...["weigh-in", "start", "read-sheet"].map((s, i) => [`stages/charge#${s}`, { time: day(12, 20 * i, 25), text: "" }]),
  ]),
  fields: {
    "stages/prove-and-report#t-suction": { value: "12.4", label: "Suction pipe at the compressor", unit: "°C", time: day(15, 10, 25) },
    "stages/prove-and-report#not-measured": { value: "Heating run: the rooms were too warm. Booked for January.", label: "Not measured, and why", unit: "text", time: day(16, 0, 25) },
    "stages/prove-and-report#cost-nothing": { value: "Two failures in 20 months. One more costs about what option B costs three times.", label: "Cost of doing nothing, with the sum", unit: "text", time: day(16, 5, 25) },
    "stages/prove-and-report#fact-list": { value: "Filters grey through, all six cassettes.", label: "Facts: number and what each shows", unit: "text", time: day(16, 10, 25) },
  },
  entries: {}, timers: [],
  readings: [
    reading("g1", "Suction pressure, roof unit 2, cooling, sister compressor", "7.4", "bar gauge", 841325, "Pa", day(8, 30), "Digital gauge, 1 % class", "stages/find-the-cause#measure-airflow"),
    reading("g2", "Airflow of indoor unit 3", "1180", "m³/h", 0.3278, "m³/s", day(8, 50), "Capture hood", "stages/find-the-cause#measure-airflow"),
    reading("g3", "Sump temperature, running", "9", "°C", 282.15, "K", day(9, 5), "", ""),
    reading("g4", "Airflow of indoor unit 3, filter and coil clean", "1770", "m³/h", 0.4917, "m³/s", day(14, 30, 25), "Capture hood", "stages/prove-and-report#airflow-list"),
  ],
  results: [
    running(day(8, 40), "7.4 barg", "3.5 C", "24.5 barg", "52 C", "36 C", "worksheets/running-state"),
    result("standing-pressure", "Standing pressure test", "stages/pressure-test", day(9, 30, 25), [["entry", "Readings", "log"], ["log", "Log", standing], ["gauge-class", "Gauge class", "0.1 %"], ["gauge-range", "Full scale of the gauge", "60 barg"], ["temperature-error", "Greatest error of a temperature", "0.5 K"], ["volume", "Inside volume under test", "60 L"]]),
    result("vacuum-hold", "Vacuum hold", "stages/evacuate-and-hold", day(11, 45, 25), [["log", "Hold log", hold], ["ambient-start", "Ambient at the start", "21 C"], ["ambient-end", "Ambient at the end", "21 C"], ["volume", "System volume", "45 L"]]),
    running(day(15, 0, 25), "9.1 barg", "12.4 C", "25.6 barg", "71 C", "38 C", "worksheets/running-state"),
  ],
  findings: {
    "sump-cold": found("present", day(9, 5), "Sister compressor, after an hour."),
    "filters-blocked": found("present", day(8, 10), "All six cassettes. <script>alert('note')</script>"),
    "superheat-low": found("present", day(8, 40)),
    "failed-before": found("present", day(7, 40)),
    "suction-low-wet": found("present", day(8, 40)),
    "wear-growing": found("present", day(11, 20), "Seen at the workshop."),
    "oil-thin": found("present", day(11, 0)),
    "heater-dead": found("absent", day(9, 10)),
    "discharge-hot": found("absent", day(8, 40)),
    "acid-test": found("absent", day(9, 40)),
    "valve-dead": found("absent", day(9, 50)),
    "charge-low": found("absent", day(10, 30)),
  },
  notes: [{ id: "n1", time: day(9, 55), text: "The manager says that the filters are changed once a year." }],
  photos: [
    photo("p1", "Coil face of indoor unit 3, as found", day(8, 12), { kind: "finding", id: "filters-blocked" }, [640, 420], 0, old),
    photo("p2", "The same coil face after cleaning", day(14, 0, 25), { kind: "step", id: "stages/prove-and-report#picture-pairs" }, [640, 420], 1, old),
    photo("p3", "Oil of compressor A", day(11, 2), { kind: "finding", id: "oil-thin" }, [420, 640], 2, old),
  ],
  ledger: [
    { id: "l1", date: "2026-11-24", direction: "out", mass: { value: "11.2", unit: "kg" }, refrigerant: "R-410A", cylinder: "INV-C-17", note: "Recovered, to the reclaimer" },
    { id: "l2", date: "2026-11-25", direction: "in", mass: { value: "11.8", unit: "kg" }, refrigerant: "R-410A", cylinder: "INV-C-21", note: "New" },
    { id: "l3", date: "2026-11-25", direction: "in", mass: { value: "120", unit: "g" }, refrigerant: "R-410A", cylinder: "INV-C-21", note: "For the length of the pipes" },
  ],
  report: {
    currency: "EUR", prices: { a: "6,450", b: "8,900", c: "9,750" },
    choices: { work: "Compressor A replaced.\nFilters and coils of all six cassettes cleaned.\nOil of both compressors changed.", "answer-by": "2026-12-04", "by-b": "2026-12-18", "visit-24h": "2026-11-26", "visit-month": "2026-12-28", technician: "A. N. Invented", company: "Invented Cooling", owner: "B. Invented" },
  },
};
writeFileSync(new URL("job.json", here), JSON.stringify({ format: "changeout-job-file", version: 1, saved: day(17, 0, 25), handbook: "invented", jobs: [job] }, null, 1) + "\n");

// A part of the model is enough for the tests, and stays as it is while the content is tuned.
const causes = ["contamination", "airflow", "undercharge", "valve", "heater", "overcharge", "oil-trapped", "sound"];
const data = readFileSync(asset("causes", ".txt"), "utf8").split("\n").filter((l) => {
  const [kind, id, to] = l.split("\t");
  if (["cause", "removes"].includes(kind)) return causes.includes(id);
  if (kind === "leads") return causes.includes(id);
  return kind !== "sign" || causes.includes(to) || !/^(air-moisture|outdoor-coil|sensor|scale|inverter|restriction|oil-wrong|low-load|supply|outdoor-fan|wrong-setting|part|reversing-valve|vacuum-start)$/.test(to);
}).join("\n");
writeFileSync(new URL("causes.txt", here), data);
const answer = call("assess", data.split("\n\n")[0] + "\n" + Object.entries(job.findings).map(([id, f]) => `fact\t${id}\t${f.state}\n`).join(""));
writeFileSync(new URL("answer.txt", here), answer);
console.log(answer.split("\n").filter((l) => /^(judged|arrow|conflict|problem)/.test(l)).join("\n"));
