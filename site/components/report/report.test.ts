// The report from an invented job (testdata/report; make.mjs there says how it was made).

import { strict as assert } from "node:assert";
import { test } from "node:test";
import { readFileSync } from "node:fs";
import type { Reply, Request } from "../../module/wire.ts";
import { readJobFile } from "../job/check.ts";
import { newJob } from "../job/schema.ts";
import type { Job } from "../job/schema.ts";
import { again } from "./answers.ts";
import { readAssessment } from "./assessment.ts";
import type { Assessment, Judged } from "./assessment.ts";
import { choose } from "./choices.ts";
import { makeCustomerPage } from "./customer.ts";
import { collect, earlier } from "./evidence.ts";
import { cssString, drawing, html, picture } from "./html.ts";
import { advised, judge, wordFor } from "./judge.ts";
import { made, statement } from "./made.ts";
import { makeReport } from "./report.ts";
import { dateText, spanText } from "./times.ts";
import { customer, report } from "./words.ts";

const data = new URL("../../../../../../testdata/report/", import.meta.url);
const text = (name: string): string => readFileSync(new URL(name, data), "utf8");
const read = readJobFile(text("job.json"));
if ("reason" in read) throw new Error(`the invented job is no job file: ${read.reason}`);
const inFile = read.file.jobs[0];
if (!inFile) throw new Error("the file holds no job");
const photos = Object.fromEntries(inFile.photos.map((p) => [p.id, `data:${p.type};base64,${p.data}`]));
const job: Job = { ...inFile, photos: inFile.photos.map(({ data: _, ...p }) => p) };
const assessed = readAssessment(text("causes.txt"), text("answer.txt"));
const o = { now: new Date("2026-11-25T17:00:00Z"), handbook: "test", photos };

const copy = (change: (j: Job) => void): Job => {
  const j = structuredClone(job);
  change(j);
  return j;
};
const words = (page: string): string => page.replace(/<style>.*?<\/style>/s, "").replace(/<[^>]*>/g, " ").replace(/&#(\d+);/g, (_, n: string) => String.fromCharCode(Number(n))).replace(/\s+/g, " ");
const sections = (page: string): string[] => [...page.matchAll(/<h2 id="[a-z]+"><span class="count">(\d+)<\/span> (.*?)<\/h2>/g)].map((m) => `${m[1]} ${m[2]?.replace(/&#(\d+);/g, (_, n: string) => String.fromCharCode(Number(n)))}`);
const wanted = Object.values(report.sections).map((s, i) => `${i + 1} ${s}`);

test("all sections, in order, full job and empty job", () => {
  assert.deepEqual(sections(makeReport(job, assessed, o)), wanted);
  assert.deepEqual(sections(makeReport(newJob("x", "", "2026-11-25T10:00:00Z"), null, o)), wanted);
});

test("numbers on the drawing are the numbers of the evidence", () => {
  // The drawing's own numbers, from calc/cause/draw.go: at most three on an arrow, in the order of the arrow's findings.
  const drawn = [...assessed.drawing.matchAll(/class="co-chain__number"[^>]*>([^<]*)</g)].map((m) => (m[1] ?? "").replace(/[…?]/g, "").trim().split(/\s+/).filter((x) => x !== "").map(Number));
  const e = collect(job, assessed);
  const counted = assessed.arrows.map((a) => a.findings.slice(0, 3).map((f) => e.numberOf(f)));
  assert.ok(drawn.some((d) => d.length > 0), "the invented chain carries numbers");
  assert.deepEqual([...drawn].sort(), [...counted].sort());
  // And the page shows the finding beside its number.
  const page = words(makeReport(job, assessed, o));
  for (const { number, of } of e.present) assert.ok(page.includes(`${number} ${of.name}.`), `${number} ${of.name}`);
  assert.deepEqual(e.present.map((i) => i.number), e.present.map((_, i) => i + 1));
});

test("one run of numbers, none twice", () => {
  const e = collect(job, assessed);
  const all = [...e.present, ...e.absent, ...e.readings, ...e.answers, ...e.photos, ...e.written, ...e.readingsAfter, ...e.answersAfter, ...e.photosAfter].map((i) => i.number);
  assert.deepEqual(all, all.map((_, i) => i + 1));
  assert.equal(e.present.length + e.absent.length, Object.keys(job.findings).length, "no finding is lost");
  const shown = [...e.present, ...e.absent].flatMap((i) => i.of.photos).length + e.photos.length + e.photosAfter.length + [...e.readings, ...e.readingsAfter].flatMap((i) => i.of.photos).length;
  assert.equal(shown, job.photos.length, "no photo is lost");
  assert.equal(e.answers.length + e.answersAfter.length, job.results.length);
});

test("readings before and after the work stay apart", () => {
  const e = collect(job, assessed);
  assert.ok(e.readings.some((r) => r.of.what === "Airflow of indoor unit 3"));
  assert.ok(e.readingsAfter.some((r) => r.of.what === "Airflow of indoor unit 3, filter and coil clean"));
  assert.deepEqual(e.answersAfter.map((r) => r.of.worksheet), ["standing-pressure", "vacuum-hold", "running-state"]);
  // The same worksheet on its own page belongs to what its time says.
  assert.deepEqual(e.answers.map((r) => r.of.worksheet), ["running-state"]);
});

test("each reading has unit, time and instrument, or says that one is missing", () => {
  const bare = copy((j) => j.readings.push({ id: "z", what: "Bare", value: "5", unit: "", si: null, siUnit: "", time: "2026-11-24T09:00:00Z", instrument: "", step: "" }));
  const page = words(makeReport(bare, assessed, o));
  assert.match(page, /Bare 5 no unit recorded \d+ Nov 2026, \d\d:\d\d not recorded/);
  assert.match(page, /Airflow of indoor unit 3 1180 m³\/h \d+ Nov 2026, \d\d:\d\d Capture hood/);
  assert.match(page, /Readings without a unit: 1\./);
});

test("what was typed stays text", () => {
  const evil = `"><script>alert(1)</script><img src=x onerror=alert(1)>`;
  const bad = copy((j) => {
    j.title = evil;
    j.site = evil;
    for (const f of j.failures) f.what = evil;
    for (const p of j.photos) p.caption = evil;
    for (const r of j.readings) r.instrument = evil;
    for (const l of j.ledger) l.note = evil;
    for (const r of j.results) r.outputs.forEach((x) => (x.text = evil));
    for (const key of ["failed", "work", "work-b", "duties", "risk", "limits", "owner", "by-a", "visit-24h"]) choose(j.report, key, evil);
    choose(j.report, "price-a", evil);
    j.report.currency = evil;
  });
  for (const page of [makeReport(bad, assessed, o), makeCustomerPage(bad, assessed, o)]) {
    assert.doesNotMatch(page, /<script|<img src=x|onerror=[^&]*>.*?<img src=x/i);
    assert.deepEqual(page.match(/<img [^>]*>/g)?.filter((i) => !/^<img src="data:image\/jpeg;base64,[A-Za-z0-9+/=]+" width="\d+" height="\d+" alt="[^"<>]*">$/.test(i)) ?? [], []);
    assert.match(page, /&#60;script&#62;/);
    assert.equal((page.match(/<\/style>/g) ?? []).length, 1, "the title cannot end the style sheet");
  }
});

test("the document needs nothing beside it and lets nothing run", () => {
  for (const page of [makeReport(job, assessed, o), makeCustomerPage(job, assessed, o)]) {
    assert.doesNotMatch(page, /https?:|<link|<script|@import|url\(|\son\w+=|javascript:/i);
    assert.match(page, /Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'; img-src data:/);
  }
  assert.doesNotMatch(makeReport(job, assessed, { ...o, style: "none" }), /<style/);
});

test("an empty job says so and names no cause", () => {
  const empty = newJob("x", "Empty", "2026-11-25T10:00:00Z");
  const page = words(makeReport(empty, null, o));
  assert.match(page, /Not determined\. No findings have been entered\./);
  assert.doesNotMatch(page, /The (probable )?causes? (is|are):/);
  assert.match(page, /No refrigerant movement has been recorded/);
  assert.doesNotMatch(page, /undefined|NaN|null|Infinity/);
  const plain = words(makeCustomerPage(empty, null, o));
  assert.match(plain, /We do not know the cause yet/);
  assert.doesNotMatch(plain, /We found the cause|We think we know/);
  // Findings without an assessment are no cause either.
  assert.match(words(makeReport(job, null, o)), /Not determined\. The findings were not weighed\./);
});

test("no word is stronger than the standing", () => {
  const j = (standing: Judged["standing"], against: number[] = []): Judged => ({ id: "airflow", name: "Low indoor airflow", removes: "Clean.", p: 0.9, standing, recurs: true, for: [{ finding: "filters-blocked", factor: 5 }, { finding: "suction-low-wet", factor: 4 }], against: against.map((factor) => ({ finding: "acid-test", factor })), missing: [] });
  const with_ = (...causes: Judged[]): Assessment => ({ ...assessed, causes, conflicts: [], problem: "" });
  const says = (...causes: Judged[]): string => statement(made(job, with_(...causes), o));
  assert.equal(says(j("cause")), "The cause is: low indoor airflow (evidence 3 and 5).");
  assert.equal(says(j("cause", [0.9])), "The cause is: low indoor airflow (evidence 3 and 5).", "a fact that hardly speaks against it changes no word");
  assert.equal(says(j("cause", [0.4])), "The probable cause is: low indoor airflow (evidence 3 and 5).");
  assert.equal(wordFor(j("cause", [0.4])), "probable");
  assert.equal(says(j("probable")), "The probable cause is: low indoor airflow (evidence 3 and 5).");
  assert.equal(says(j("possible")), "Not determined. Possible, but not shown: low indoor airflow (evidence 3 and 5).");
  for (const s of ["excluded", "not determined"] as const) assert.equal(says(j(s)), report.says.undetermined);
  const contradiction = readAssessment("", "problem\tThese findings contradict each other. Look at each of them again.\n");
  assert.equal(statement(made(job, contradiction, o)), report.says.contradiction);
  for (const s of ["probable", "possible", "not determined"] as const) {
    assert.equal(advised(judge(with_(j(s)), 3)), "c", `${s}: watch what could not be shown`);
    assert.doesNotMatch(words(makeReport(job, with_(j(s)), o)), /The causes? (is|are):/);
    assert.doesNotMatch(words(makeCustomerPage(job, with_(j(s)), o)), /We found the cause/);
  }
  assert.equal(advised(judge(with_(j("cause")), 3)), "b");
});

test("the owner's page says “may have” of a probable cause, for every cause of the model", () => {
  const model = readFileSync(new URL("../../content/causes/root-causes.md", data), "utf8");
  const ids = [...(/\n## Root causes\n(.*?)\n## /s.exec(model)?.[1] ?? "").matchAll(/^\| ([a-z-]+) \| ([^|]+) \| 0\./gm)].map((x) => [x[1] ?? "", x[2] ?? ""]);
  assert.equal(ids.length, 22, "causes read from the content");
  for (const [id = "", name = ""] of ids) {
    const [was = "", fix = "", maybe = ""] = customer.plain[id] ?? [];
    assert.match(maybe, /\bmay\b/, id);
    const page = (standing: Judged["standing"]): string => words(makeCustomerPage(job, { ...assessed, problem: "", conflicts: [], causes: [{ id, name, removes: "Mend it.", p: 0.7, standing, recurs: true, for: [{ finding: "filters-blocked", factor: 5 }], against: [], missing: [] }] }, o));
    const probable = page("probable");
    assert.ok(probable.includes(`We think we know the cause, but one more test is needed. ${maybe}`), id);
    assert.ok(probable.includes(`If the test shows it, we do this: ${fix}`), id);
    assert.ok(!probable.includes(was), `${id}: a probable cause told as a fact`);
    assert.doesNotMatch(probable, /We do this as well|The cause stays|The part is not broken|If this stays as it is/, id);
    assert.ok(page("cause").includes(`We found the cause. ${was}`), id);
    assert.ok(page("cause").includes(`We do this as well: ${fix}`), id);
  }
});

test("a cause of a company without words of its own is no fact while it is probable", () => {
  const own: Judged = { id: "own", name: "Bird nest", removes: "Take it out.", p: 0.7, standing: "probable", recurs: true, for: [], against: [], missing: [] };
  assert.match(words(makeCustomerPage(job, { ...assessed, causes: [own] }, o)), /It may be this: Bird nest\./);
});

test("the report binds the remedy of a probable cause to a test", () => {
  const airflow = (standing: Judged["standing"]): string => words(makeReport(job, { ...assessed, causes: [{ id: "airflow", name: "Low indoor airflow", removes: "Clean the filters.", p: 0.7, standing, recurs: true, for: [{ finding: "filters-blocked", factor: 5 }], against: [], missing: [] }] }, o));
  assert.match(airflow("probable"), /What will stop it Once a test has shown it: Clean the filters\./);
  assert.match(airflow("probable"), /Option A, and: Once a test has shown the probable cause: Clean the filters\./);
  assert.match(airflow("probable"), /Low indoor airflow is only probable\. If it is the cause, it would act on the next compressor too\./);
  assert.doesNotMatch(airflow("probable"), /The cause still works|The cause named is gone/);
  assert.match(airflow("cause"), /What will stop it Clean the filters\./);
  assert.match(airflow("cause"), /Option A, and: Clean the filters\./);
});

test("an unknown standing of a newer module is not determined", () => {
  assert.equal(readAssessment("", "judged\tx\t0.99\tcertain\trecurs\n").causes[0]?.standing, "not determined");
});

test("what findings speak against names them, and no test is said that none made", () => {
  const page = words(makeReport(job, assessed, o));
  assert.match(page, /Findings speak against these With the findings beside it, each of these is improbable\./);
  for (const at of [report.excluded, report.standing, report.sections, report.says]) assert.doesNotMatch(Object.values(at).join(" "), /excluded by|by (a )?test|shown (nor|by)/i);
  assert.doesNotMatch(page, /Shown by evidence|Excluded by test/);
  assert.match(page, /→ failed compressor\. Supported by evidence/);
  assert.match(page, /Crankcase heater dead or power off before start 8 looked for, and not found: crankcase heater dead/);
  const open = { ...assessed, arrows: [...assessed.arrows, { cause: "valve", mechanism: "floodback", proven: false, findings: ["sump-cold"] }, { cause: null, mechanism: "acid", proven: false, findings: [] }] };
  const more = words(makeReport(job, open, o));
  assert.match(more, /Expansion valve over-feeds or sticks open → liquid floodback\. Not proven\. Evidence so far: 4\./);
  assert.match(more, /Acid and copper plating → failed compressor\. Not proven\. No evidence yet\./);
});

test("a hold is a test of the work on whichever page it was kept, and the last answer to one log is the valid one", () => {
  const kept = job.results.find((r) => r.worksheet === "vacuum-hold");
  assert.ok(kept);
  const hold = (id: string, page: string, time: string, log = "minutes,micron\n0,310\n30,377\n"): Job["results"][number] => ({ ...structuredClone(kept), id, page, time, inputs: kept.inputs.map((i) => (i.id === "log" ? { ...i, text: log } : i)) });
  const own = "worksheets/vacuum-hold";
  const j = copy((x) => {
    x.ticks = {}; // so that no page tells when the work began
    x.results = [
      hold("third", own, "2026-11-25T13:00:00Z"), hold("other", own, "2026-11-25T14:30:00Z", "minutes,micron\n0,300\n30,310"),
      hold("first", "stages/evacuate-and-hold", "2026-11-25T11:00:00Z"), ...x.results.filter((r) => r.worksheet === "running-state"),
      hold("second", own, "2026-11-25T12:00:00Z", "minutes,micron \n0,310\n30,377"),
    ];
  });
  const e = collect(j, assessed);
  assert.deepEqual(e.answersAfter.map((r) => r.of.id), ["first", "second", "third", "other"], "all under the tests, together, in order of time");
  assert.deepEqual(e.answers.map((r) => r.of.worksheet), ["running-state", "running-state"]);
  const third = e.answersAfter[2]?.number;
  assert.deepEqual([...e.replacedBy], [["first", third], ["second", third]], "another log is another hold");
  const page = words(makeReport(j, assessed, o));
  assert.equal(page.split(`Replaced by ${third}, the later answer to the same log.`).length - 1, 2);
  // Two holds with a running state between them still stand together.
  const mixed = copy((x) => (x.results = [hold("a", own, "2026-11-25T11:00:00Z"), { ...(x.results.find((r) => r.id === "r4") ?? kept), time: "2026-11-25T11:30:00Z" }, hold("b", own, "2026-11-25T12:00:00Z", "0,1")]));
  assert.deepEqual(collect(mixed, assessed).answersAfter.map((r) => r.of.worksheet), ["vacuum-hold", "vacuum-hold", "running-state"]);
});

test("the history says what its list holds and what the findings say of an earlier failure", () => {
  const history = (j: Job): string => /2 Failure history(.*?)3 Evidence/.exec(words(makeReport(j, assessed, o)))?.[1] ?? "";
  const yes = (j: Job, ...ids: string[]): void => ids.forEach((id) => (j.findings[id] = { state: "present", text: "", time: "2026-11-24T08:00:00Z", note: "" }));
  const both = history(copy((j) => {
    j.failures = [];
    yes(j, "failed-before", "burnt-before", "not-cleaned", "within-a-year");
  }));
  assert.match(both, /The failure history of this job lists none\. The findings of the assessment say:/);
  for (const name of ["An earlier compressor of this circuit failed", "The earlier compressor burnt or left acid", "No clean-up after the earlier failure", "Failed within a year of a change-out"]) assert.match(both, new RegExp(`\\d+ ${name}\\.`));
  assert.doesNotMatch(both, /No earlier failure is recorded/);
  assert.match(history(job), /Compressor A locked after four years.*The findings of the assessment say: 1 An earlier compressor of this circuit failed\./, "a list of failures and the findings stand side by side");
  const none = history(copy((j) => {
    j.failures = [];
    j.findings = {};
  }));
  assert.equal(none.trim(), "The failure history of this job lists none.");
  const no = history(copy((j) => (j.findings = { "failed-before": { state: "absent", text: "", time: "2026-11-24T08:00:00Z", note: "" } })));
  assert.match(no, /looked for, and not found: an earlier compressor of this circuit failed\./);
  // The names are those of the model.
  const checks = readFileSync(new URL("../../content/causes/findings.md", data), "utf8");
  for (const id of earlier) assert.ok(checks.includes(`\n| ${id} | `), id);
});

test("the demonstration is marked on every page, a real job is not", () => {
  const reals = copy((j) => (j.demo = false));
  for (const make of [makeReport, makeCustomerPage]) {
    const page = make(job, assessed, o);
    assert.match(page, /@page \{[^}]*@top-center \{ content: "Invented demonstration"/, "in the margin of every page");
    assert.match(page, /<div class="mark" aria-hidden="true">Invented demonstration<\/div>/, "behind every page");
    assert.match(page, /<p class="demo">Invented demonstration\./);
    assert.doesNotMatch(make(reals, assessed, o), /Invented demonstration/);
  }
});

test("paper is A4 unless Letter is chosen", () => {
  assert.match(makeReport(job, assessed, o), /size: A4/);
  assert.match(makeReport(copy((j) => choose(j.report, "paper", "letter")), assessed, o), /size: Letter/);
});

test("the refrigerant log has a balance, and says what is not in it", () => {
  const page = words(makeReport(copy((j) => j.ledger.push({ id: "q", date: "", direction: "in", mass: { value: "about 2", unit: "kg" }, refrigerant: "r410a", cylinder: "", note: "" })), assessed, o));
  // 11.8 kg + 120 g in, 11.2 kg out: by hand 11.920, 11.200, +0.720.
  assert.match(page, /R-410A 11\.920 kg 11\.200 kg \+0\.720 kg \* 1 without a mass that can be read/);
});

test("charts come from the kept inputs; the kept answer stays", async () => {
  const svg = `<svg class="co-chart" viewBox="0 0 360 270" role="img" aria-label="x"><path class="co-chart__fit" d="M0 0L1 1"/><text x="1" y="2">5 &lt; 6</text></svg>`;
  const asked: string[] = [];
  const reply = (change: (r: Reply) => void = () => undefined) => async (q: Request): Promise<Reply> => {
    asked.push(`${q.worksheet} ${q.inputs.map((i) => i.id).join()}`);
    const kept = job.results.find((r) => r.worksheet === q.worksheet);
    const r: Reply = { outputs: (kept?.outputs ?? []).map((x) => ({ id: x.id, label: x.label, value: String(x.si), unit: x.siUnit, text: x.text, main: x.main })), verdict: kept?.verdict ?? null, warnings: [], advice: [], steps: [], charts: [{ title: "A chart", svg }], problems: [] };
    change(r);
    return r;
  };
  const hold = copy((j) => (j.results = j.results.filter((r) => r.worksheet === "vacuum-hold")));
  const drawn = async (evaluate: (q: Request) => Promise<Reply>): Promise<string> => makeReport(hold, assessed, { ...o, again: await again(hold.results, evaluate) });
  const page = await drawn(reply());
  assert.ok(page.includes(svg), "the drawing of the module");
  assert.equal(asked[0], "vacuum-hold log,ambient-start,ambient-end,volume");
  assert.doesNotMatch(page, /Worked out again/);
  assert.match(words(await drawn(reply((r) => (r.verdict = { id: "leak", tone: "stop", title: "Leak: find it", text: "" })))), /Tight and dry\..*Worked out again, the answer is now Leak: find it\. The kept one stands above/);
  assert.match(words(await drawn(reply((r) => r.outputs.forEach((x) => (x.value = "NaN"))))), /Worked out again/, "no number is no agreement");
  for (const evaluate of [reply((r) => (r.charts = [{ title: "x", svg: `<svg><script>alert(1)</script></svg>` }])), () => Promise.reject(new Error("it fell over"))]) {
    const without = await drawn(evaluate);
    assert.doesNotMatch(without, /<figure class="chart">|<script/);
    assert.match(words(without), /Tight and dry\./);
  }
});

test("drawings and pictures that hold more than shapes and bytes are left out", () => {
  assert.ok(drawing(assessed.drawing), "the module's own drawing passes");
  for (const bad of ["", "x", `<svg onload="x()"></svg>`, `<svg><a href="x"></a></svg>`, `<svg><image href="http://x"/></svg>`, `<svg><style>x</style></svg>`, `<svg><path style="x"/></svg>`, `<svg></svg><p>`, `<svg><foreignObject></foreignObject></svg>`]) assert.equal(drawing(bad), null, bad);
  for (const bad of [undefined, "", "http://x/y.jpg", "data:image/svg+xml;base64,AAAA", "data:text/html;base64,AAAA", `data:image/png;base64,AA"onerror="x`]) assert.equal(picture(bad), null, String(bad));
  assert.equal(html`<p title="${`a"b'c`}">${["<", html`<b>${1}</b>`, null]}</p>`.text, `<p title="a&#34;b&#39;c">&#60;<b>1</b></p>`);
  assert.equal(cssString(`a"}</style>`), `"a\\22 \\7d \\3c \\2f style\\3e "`);
});

test("a picture that the phone lost is said, not hidden", () => {
  const page = words(makeReport(job, assessed, { ...o, photos: {} }));
  assert.match(page, /The picture is not kept on this phone\./);
  assert.match(page, /Photos whose picture is not kept on this phone: 3\./);
});

test("dates and times", () => {
  const cases: [string, string][] = [["2026-11-05", "5 Nov 2026"], ["2026-13-05", "2026-13-05"], ["last spring", "last spring"], ["", ""]];
  for (const [typed, want] of cases) assert.equal(dateText(typed), want);
  assert.match(spanText("2026-11-25T10:00:10Z", "2026-11-25T10:00:40Z"), /^\d+ Nov 2026, \d\d:\d\d$/);
  assert.match(spanText("2026-11-25T10:00:00Z", "2026-11-25T10:30:00Z"), /^\d+ Nov 2026, \d\d:\d\d to \d\d:\d\d$/);
});
