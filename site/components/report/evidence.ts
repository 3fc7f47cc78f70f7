// Numbers the evidence of a job: one run of numbers through the whole report. Findings that are there come first, in the
// order of the model, because the drawing of the chain counts them so (Number in calc/cause/draw.go).

import type { Field, Finding, Job, Photo, Reading, Result } from "../job/schema.ts";
import type { Assessment } from "./assessment.ts";

export interface Item<T> { number: number; of: T }
export interface Found { id: string; name: string; finding: Finding; photos: Photo[] }
export interface Read { what: string; value: string; unit: string; time: string; instrument: string; photos: Photo[] }
export interface Written { what: string; value: string; time: string }

export interface Evidence {
  present: Item<Found>[];
  absent: Item<Found>[];
  readings: Item<Read>[]; // before the work
  answers: Item<Result>[];
  photos: Item<Photo>[];
  written: Item<Written>[];
  readingsAfter: Item<Read>[];
  answersAfter: Item<Result>[];
  photosAfter: Item<Photo>[];
  numberOf(finding: string): number | null;
  replacedBy: ReadonlyMap<string, number>; // by id of an answer: number of the later answer to the same log
  last: number;
}

/** Pages of the work itself: what is read there was read after the repair began. */
const workPages = ["braze-with-nitrogen", "pressure-test", "evacuate-and-hold", "charge", "prove-and-report"].map((p) => `stages/${p}`);

/** Worksheets of the work itself: their answers are tests of the work, whichever page they were kept on. */
const workSheets = ["purge", "pump-down", "standing-pressure", "vacuum-hold", "water-point", "moisture-in", "suction-drier", "charge-adjustment"];

/** Findings that say something of an earlier failure of the circuit, in the order in which they are told. */
export const earlier: readonly string[] = ["failed-before", "burnt-before", "not-cleaned", "within-a-year", "same-place"];

/** Fields that the report puts in a place of its own. */
export const placed = { excluded: "excluded", notMeasured: "not-measured", cost: "cost-nothing", decision: "decision" } as const;
export const provePage = "stages/prove-and-report";
const placedFields = Object.values(placed).map((f) => `${provePage}#${f}`);

export const pageOf = (place: string): string => place.split("#")[0] ?? place;

/** When the work began: the first tick on a page of the work; "" when there is none. */
function workBegan(job: Job): string {
  return Object.entries(job.ticks).filter(([place]) => workPages.includes(pageOf(place))).map(([, t]) => t.time).sort()[0] ?? "";
}

export function collect(job: Job, a: Assessment | null): Evidence {
  let last = 0;
  const number = <T>(list: T[]): Item<T>[] => list.map((of) => ({ number: ++last, of }));
  const began = workBegan(job);
  const after = (page: string, time: string): boolean => workPages.includes(page) || (!page.startsWith("stages/") && began !== "" && time >= began);

  const stepPhotos = (step: string): Photo[] => (step === "" ? [] : job.photos.filter((p) => p.link?.kind === "step" && p.link.id === step));
  const order = a ? [...a.findings.keys()] : [];
  const rank = (id: string): number => (order.includes(id) ? order.indexOf(id) : order.length);
  const found: Found[] = Object.entries(job.findings)
    .sort(([x], [y]) => rank(x) - rank(y))
    .map(([id, finding]) => ({ id, name: finding.text || a?.findings.get(id)?.name || words(id), finding, photos: job.photos.filter((p) => p.link?.kind === "finding" && p.link.id === id) }));

  const shown = new Set<Photo>(found.flatMap((f) => f.photos));
  const reads: { read: Read; after: boolean }[] = job.readings.map((r: Reading) => {
    const photos = stepPhotos(r.step).filter((p) => !shown.has(p));
    for (const p of photos) shown.add(p);
    return { read: { what: r.what, value: r.value, unit: r.unit, time: r.time, instrument: r.instrument, photos }, after: after(pageOf(r.step), r.time) };
  });
  const written: Written[] = [];
  for (const [place, f] of Object.entries(job.fields)) {
    if (f.value.trim() === "" || placedFields.includes(place)) continue;
    const what = f.label || words(place.split("#")[1] ?? place);
    if (isUnit(f)) reads.push({ read: { what, value: f.value, unit: f.unit, time: f.time, instrument: "", photos: [] }, after: after(pageOf(place), f.time) });
    else written.push({ what, value: f.value, time: f.time });
  }
  // Notes are the technician's words too.
  for (const n of job.notes) if (n.text.trim() !== "") written.push({ what: "", value: n.text, time: n.time });

  const byTime = (x: { time: string }, y: { time: string }): number => x.time.localeCompare(y.time);
  const readsOf = (late: boolean): Read[] => reads.filter((r) => r.after === late).map((r) => r.read).sort(byTime);
  const inWork = (r: Result): boolean => workSheets.includes(r.worksheet) || after(r.page, r.time);
  const answersOf = (late: boolean): Result[] => together(job.results.filter((r) => inWork(r) === late).sort(byTime));
  const photosOf = (late: boolean): Photo[] => job.photos.filter((p) => !shown.has(p) && after(p.link?.kind === "step" ? pageOf(p.link.id) : "", p.time) === late).sort(byTime);

  const present = number(found.filter((f) => f.finding.state === "present"));
  const absent = number(found.filter((f) => f.finding.state === "absent"));
  const numbers = new Map([...present, ...absent].map((i) => [i.of.id, i.number]));
  const before = { readings: number(readsOf(false)), answers: number(answersOf(false)), photos: number(photosOf(false)), written: number(written.sort(byTime)) };
  const later = { readingsAfter: number(readsOf(true)), answersAfter: number(answersOf(true)), photosAfter: number(photosOf(true)) };
  return {
    present, absent, ...before, ...later,
    numberOf: (finding) => numbers.get(finding) ?? null,
    replacedBy: replaced([...before.answers, ...later.answersAfter]),
    get last() { return last; },
  };
}

/** Answers of one worksheet stand together; the worksheets in the order of their first answer. */
function together(results: Result[]): Result[] {
  const first = results.map((r) => r.worksheet);
  return [...results].sort((x, y) => first.indexOf(x.worksheet) - first.indexOf(y.worksheet)); // a sort keeps the order of equals
}

/** Of several answers to one log the last is valid: the log was worked out again, with other entries beside it. */
function replaced(answers: Item<Result>[]): Map<string, number> {
  const last = new Map<string, Item<Result>>();
  const by = new Map<string, number>();
  for (const a of [...answers].sort((x, y) => x.of.time.localeCompare(y.of.time))) last.set(logOf(a.of), a);
  for (const a of answers) {
    const valid = last.get(logOf(a.of));
    if (logOf(a.of) !== "" && valid && valid !== a) by.set(a.of.id, valid.number);
  }
  return by;
}

/** Worksheet and log of an answer, "" without a log. Only blanks at the ends of lines may differ in the same log. */
function logOf(r: Result): string {
  const log = r.inputs.find((i) => i.id === "log");
  return !log || log.text.trim() === "" ? "" : [r.worksheet, log.unit, log.text.trim().replace(/\s*\n\s*/g, "\n")].join("\t");
}

/** A field of a procedure page is a reading when it has a unit of measure; "text", "time" and "photo number" are none. */
function isUnit(f: Field): boolean {
  return f.unit !== "" && !["text", "time", "photo number"].includes(f.unit);
}

/** "evacuate-and-hold" in words. */
export function words(id: string): string {
  const text = id.slice(id.lastIndexOf("/") + 1).replace(/-/g, " ");
  return text.charAt(0).toUpperCase() + text.slice(1);
}
