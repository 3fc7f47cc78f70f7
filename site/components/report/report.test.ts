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
import { collect } from "./evidence.ts";
import { cssString, drawing, html, picture } from "./html.ts";
import { advised, judge, wordFor } from "./judge.ts";
import { made, statement } from "./made.ts";
import { makeReport } from "./report.ts";
import { dateText, spanText } from "./times.ts";
import { report } from "./words.ts";

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

test("an unknown standing of a newer module is not determined", () => {
  assert.equal(readAssessment("", "judged\tx\t0.99\tcertain\trecurs\n").causes[0]?.standing, "not determined");
});

test("excluded causes name their test, and an open arrow says so", () => {
  const page = words(makeReport(job, assessed, o));
  assert.match(page, /Crankcase heater dead or power off before start 8 looked for, and not found: crankcase heater dead/);
  const open = { ...assessed, arrows: [...assessed.arrows, { cause: "valve", mechanism: "floodback", proven: false, findings: ["sump-cold"] }, { cause: null, mechanism: "acid", proven: false, findings: [] }] };
  const more = words(makeReport(job, open, o));
  assert.match(more, /Expansion valve over-feeds or sticks open → liquid floodback\. Not proven\. Evidence so far: 4\./);
  assert.match(more, /Acid and copper plating → failed compressor\. Not proven\. No evidence yet\./);
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
