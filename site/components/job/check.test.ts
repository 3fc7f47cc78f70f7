import { strict as assert } from "node:assert";
import { test } from "node:test";
import { readFileSync } from "node:fs";
import { readJobFile } from "./check.ts";
import type { JobFile } from "./schema.ts";

const demo = readFileSync(new URL("../../../../../components/job/demonstration.json", import.meta.url), "utf8");
const changed = (change: (file: any) => void): string => {
  const file = JSON.parse(demo);
  change(file);
  return JSON.stringify(file);
};

test("the demonstration job is a job file, and says that it is invented", () => {
  const r = readJobFile(demo);
  assert.ok("file" in r, "reason" in r ? r.reason : "");
  for (const job of r.file.jobs) assert.deepEqual([job.demo, /demonstration/.test(job.title), /^Invented/.test(job.site)], [true, true, true]);
});

// Each row: what is wrong, how the file is spoilt, and what the sentence must name: the place, what was given, what is allowed.
const bad: [string, string, RegExp][] = [
  ["nothing", "", /not JSON/],
  ["half a file", demo.slice(0, demo.length / 2), /not JSON/],
  ["another file", '{"name":"small"}', /format is nothing.*changeout-job-file/],
  ["a list", "[]", /not a job file/],
  ["null", "null", /not a job file/],
  ["no version", changed((f) => delete f.version), /version: nothing is given/],
  ["a version in words", changed((f) => (f.version = "one")), /“one” is given, a whole number/],
  ["a newer version", changed((f) => (f.version = 2)), /version 2, made by a newer handbook.*up to 1/],
  ["no job", changed((f) => (f.jobs = [])), /holds no job/],
  ["jobs that are no list", changed((f) => (f.jobs = {})), /jobs: an object is given, a list/],
  ["a job without a title", changed((f) => delete f.jobs[0].title), /jobs\[1\]\.title is missing/],
  ["a part nobody knows", changed((f) => (f.jobs[0].colour = "red")), /jobs\[1\]\.colour is not known/],
  ["an inherited name", demo.replace('"demo": true', '"demo": true, "__proto__": {"x": 1}'), /__proto__ is not known/],
  ["a number for a text", changed((f) => (f.jobs[0].site = 7)), /jobs\[1\]\.site: 7 is given, a text/],
  ["a text too long", changed((f) => (f.jobs[0].title = "x".repeat(301))), /301 signs.*up to 300/],
  ["a time in words", changed((f) => (f.jobs[0].made = "yesterday")), /made: “yesterday” is given, a time such as/],
  ["NaN in JSON", demo.replace('"si": null', '"si": NaN'), /not JSON/],
  ["a number that is none", changed((f) => (f.jobs[0].readings[0].si = "9")), /readings\[1\]\.si: “9” is given, a number/],
  ["an unknown unit", changed((f) => (f.jobs[0].ledger[0].mass.unit = "stone")), /mass\.unit: “stone” is given, “kg” or “g” or “lb” or “oz”/],
  ["an unknown state", changed((f) => (f.jobs[0].findings["power-off"].state = "maybe")), /findings\.power-off\.state: “maybe”/],
  ["a place without a step", changed((f) => (f.jobs[0].ticks["stages/recover"] = { time: "2026-01-01T00:00:00Z", text: "" })), /ticks: the name “stages\/recover” is given/],
  ["an id twice", changed((f) => (f.jobs[0].notes[1].id = f.jobs[0].notes[0].id)), /notes: the id “demo-note-1” is given twice/],
  ["a job twice", changed((f) => f.jobs.push(f.jobs[0])), /jobs: the id “demo-rehearsal-hall” is given twice/],
  ["a picture cut off", changed((f) => (f.jobs[0].photos[0].data = f.jobs[0].photos[0].data.slice(0, -400))), /photos\[1\]\.data: the picture has \d+ bytes, \d+ are said/],
  ["a picture that is a page", changed((f) => Object.assign(f.jobs[0].photos[0], { data: Buffer.from("<script>alert(1)</script>").toString("base64"), size: 25 })), /no picture of the type image\/png/],
  ["a picture of another kind", changed((f) => (f.jobs[0].photos[0].type = "image/svg+xml")), /type: “image\/svg\+xml” is given/],
  ["a picture that is no base64", changed((f) => (f.jobs[0].photos[0].data = "data:image/png;base64,AAAA")), /the picture as base64/],
];
for (const [name, text, says] of bad) {
  test(`refused: ${name}`, () => {
    const r = readJobFile(text);
    assert.ok("reason" in r, `${name} was read`);
    assert.match(r.reason, says);
    assert.match(r.reason, /[.]$/);
  });
}

test("each property of a job is needed: without it the file is refused with its name", () => {
  const job = (JSON.parse(demo) as JobFile).jobs[0] ?? assert.fail();
  for (const name of Object.keys(job)) {
    const r = readJobFile(changed((f) => delete f.jobs[0][name]));
    assert.ok("reason" in r && r.reason.includes(`jobs[1].${name} is missing`), `${name}: got ${JSON.stringify(r).slice(0, 200)}`);
  }
});

test("old versions are read step by step, and one without its step is not", () => {
  // Two made-up older versions: 1 had no notes, and called the site a place.
  const steps = [
    { from: 1, change: (f: any) => ({ ...f, jobs: f.jobs.map(({ place, ...j }: any) => ({ ...j, site: place })) }) },
    { from: 2, change: (f: any) => ({ ...f, jobs: f.jobs.map((j: any) => ({ ...j, notes: [] })) }) },
  ];
  const old = changed((f) => {
    f.jobs[0].place = f.jobs[0].site;
    delete f.jobs[0].site;
    delete f.jobs[0].notes;
  });
  const r = readJobFile(old, steps, 3);
  assert.ok("file" in r, JSON.stringify(r).slice(0, 200));
  const was = (JSON.parse(demo) as JobFile).jobs[0];
  const is = r.file.jobs[0];
  assert.deepEqual(is, { ...was, notes: [] });
  const none = readJobFile(old, steps.slice(1), 3);
  assert.ok("reason" in none && /no longer reads version 1/.test(none.reason));
  const broken = readJobFile(changed((f) => (f.jobs = 5)), steps, 3);
  assert.ok("reason" in broken && /says version 1, but is not built like one/.test(broken.reason));
});
