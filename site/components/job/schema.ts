// What a job file holds, version 1. The types below are what the handbook works with; the description in schemaOfFile is
// what a saved file must look like, published as job-file.schema.json, and the only rule by which a file is refused.
// A time is a text such as 2026-11-25T10:05:00.000Z, a date 2026-11-25. What a person typed stays as it was typed.

export const format = "changeout-job-file";
export const version = 1;

/** A job as the handbook holds it. Every list is in the order it was made; every id is unique in its list. */
export interface Job {
  id: string;
  title: string; // what the person calls the job
  demo: boolean; // true for an invented job: say so wherever it shows
  made: string; // time
  updated: string; // time
  site: string; // where the system stands
  unit: string; // which system or compressor: type, mark on the door, serial number
  refrigerant: string; // as the nameplate writes it, such as R-410A; "" when not known
  nameplate: Mass; // factory charge on the nameplate; value "" when not known
  failures: Failure[]; // earlier failures and this one
  ticks: Record<string, Tick>; // by place "page#step", such as "stages/braze-with-nitrogen#cool-down"
  fields: Record<string, Field>; // what was written down on procedure pages, by place "page#field"
  entries: Record<string, Record<string, string>>; // what stands in worksheets now: by "page:worksheet", then by input
  timers: Timer[];
  readings: Reading[];
  results: Result[]; // worksheet answers that were kept
  findings: Record<string, Finding>; // by finding id of content/causes/findings.md; one that is not there was not looked at
  notes: Note[];
  photos: Photo[];
  ledger: LedgerEntry[]; // refrigerant in and out
  report: ReportChoices;
}

export type MassUnit = "kg" | "g" | "lb" | "oz";
export interface Mass { value: string; unit: MassUnit } // value as typed
export interface Failure { id: string; date: string; what: string; told: string } // date as typed; told: who was told
export interface Tick { time: string; text: string } // text: the words of the step when it was ticked, may be ""
export interface Field { value: string; label: string; unit: string; time: string } // label, unit and time may be ""
export interface Timer { page: string; wait: string; title: string; start: number; end: number } // wait: id of the wait on its page; ms since 1970
export interface Note { id: string; time: string; text: string }

export interface Reading {
  id: string;
  what: string; // what was measured and where
  value: string; // as typed
  unit: string; // as shown, such as "kPa gauge"
  si: number | null; // in SI, when a worksheet knows it
  siUnit: string; // unit of si, "" when si is null
  time: string;
  instrument: string; // what it was measured with, "" when not said
  step: string; // place "page#step" it belongs to, or ""
}

export interface Result {
  id: string;
  worksheet: string; // worksheet id
  title: string;
  page: string; // page id it was worked out on
  system: "si" | "ip";
  inputs: ResultInput[]; // with text and unit the same answer can be worked out again
  outputs: ResultOutput[];
  verdict: ResultVerdict | null;
  warnings: string[];
  time: string;
  version: string; // version of the handbook that answered
  note: string; // typed later, "" when none
}
export interface ResultInput { id: string; label: string; text: string; unit: string; shown: string } // unit: id, may be ""; shown: as read
export interface ResultOutput { id: string; label: string; si: number | null; siUnit: string; text: string; main: boolean }
export interface ResultVerdict { id: string; tone: string; title: string; text: string } // tone: good, stop, doubt, info

export interface Finding { state: "present" | "absent"; text: string; time: string; note: string } // text: the finding in words, may be ""

export interface Link { kind: "finding" | "step"; id: string } // a finding id, or a place "page#step"
export interface Photo {
  id: string;
  caption: string;
  time: string;
  link: Link | null;
  type: string; // image/jpeg, image/png or image/webp
  width: number; // pixels
  height: number;
  size: number; // bytes
}
/** The picture itself lies beside the job in the store: photoOf(job, photo) in store.ts. In a file it is base64. */
export interface PhotoInFile extends Photo { data: string }

export interface LedgerEntry {
  id: string;
  date: string; // as typed
  direction: "in" | "out"; // into or out of the system
  mass: Mass;
  refrigerant: string;
  cylinder: string; // number of the cylinder
  note: string;
}

/** What the person chose and typed for the report; keys belong to the report. */
export interface ReportChoices {
  currency: string;
  prices: Record<string, string>; // as typed
  choices: Record<string, string>;
}

/** The file: one job or several. */
export interface JobFile {
  format: typeof format;
  version: typeof version;
  saved: string; // time
  handbook: string; // version of the handbook that saved it
  jobs: JobInFile[];
}
export interface JobInFile extends Omit<Job, "photos"> { photos: PhotoInFile[] }

/** The part of JSON Schema that check() understands and the published document uses. */
export interface Rule {
  type?: "object" | "array" | "string" | "number" | "boolean";
  properties?: Record<string, Rule>;
  required?: readonly string[];
  additionalProperties?: Rule | false;
  items?: Rule;
  maxItems?: number;
  maxProperties?: number;
  propertyNames?: { pattern: string; description: string };
  enum?: readonly (string | number)[];
  pattern?: string;
  maxLength?: number;
  minimum?: number;
  maximum?: number;
  anyOf?: readonly [Rule, { type: "null" }]; // may be null
  description?: string;
}

const short: Rule = { type: "string", maxLength: 300 };
const long: Rule = { type: "string", maxLength: 20000 };
const bool: Rule = { type: "boolean" };
const time: Rule = { type: "string", pattern: "^\\d{4}-\\d{2}-\\d{2}T\\d{2}:\\d{2}:\\d{2}(\\.\\d{1,3})?Z$", description: "a time such as 2026-11-25T10:05:00Z" };
const timeOrNone: Rule = { type: "string", pattern: "^(\\d{4}-\\d{2}-\\d{2}T\\d{2}:\\d{2}:\\d{2}(\\.\\d{1,3})?Z)?$", description: "a time such as 2026-11-25T10:05:00Z, or nothing" };
const id: Rule = { type: "string", pattern: "^[a-zA-Z0-9_-]{1,64}$", description: "1 to 64 letters, digits, hyphens" };
const moment: Rule = { type: "number", minimum: 0, maximum: 8.64e15, description: "milliseconds since 1970" };
const number: Rule = { type: "number" };
const orNull = (rule: Rule): Rule => ({ anyOf: [rule, { type: "null" }] });
const object = (properties: Record<string, Rule>): Rule => ({ type: "object", properties, required: Object.keys(properties), additionalProperties: false });
const list = (items: Rule, maxItems = 5000): Rule => ({ type: "array", items, maxItems });
const map = (rule: Rule, names?: Rule["propertyNames"]): Rule => ({ type: "object", additionalProperties: rule, maxProperties: 5000, ...(names && { propertyNames: names }) });
const place = { pattern: "^[^#:]{1,200}#[^#:]{1,200}$", description: "page and part with # between them" };
const oneOf = (...values: (string | number)[]): Rule => ({ enum: values });

const mass = object({ value: short, unit: oneOf("kg", "g", "lb", "oz") });
const job = object({
  id, title: short, demo: bool, made: time, updated: time, site: short, unit: short, refrigerant: short, nameplate: mass,
  failures: list(object({ id, date: short, what: long, told: short })),
  ticks: map(object({ time, text: long }), place),
  fields: map(object({ value: long, label: short, unit: short, time: timeOrNone }), place),
  entries: map(map({ type: "string", maxLength: 500000 }), { pattern: "^[^#:]{1,200}:[^#:]{1,200}$", description: "page and worksheet with : between them" }),
  timers: list(object({ page: short, wait: short, title: short, start: moment, end: moment })),
  readings: list(object({ id, what: short, value: short, unit: short, si: orNull(number), siUnit: short, time, instrument: short, step: short })),
  results: list(object({
    id, worksheet: id, title: short, page: short, system: oneOf("si", "ip"),
    inputs: list(object({ id: short, label: short, text: { type: "string", maxLength: 500000 }, unit: short, shown: { type: "string", maxLength: 500000 } })),
    outputs: list(object({ id: short, label: short, si: orNull(number), siUnit: short, text: long, main: bool })),
    verdict: orNull(object({ id: short, tone: short, title: short, text: long })),
    warnings: list(long), time, version: short, note: long,
  })),
  findings: map(object({ state: oneOf("present", "absent"), text: long, time, note: long })),
  notes: list(object({ id, time, text: long })),
  photos: list(object({
    id, caption: short, time, link: orNull(object({ kind: oneOf("finding", "step"), id: short })),
    type: oneOf("image/jpeg", "image/png", "image/webp"),
    width: { type: "number", minimum: 1, maximum: 20000 }, height: { type: "number", minimum: 1, maximum: 20000 }, size: { type: "number", minimum: 1, maximum: 1e8 },
    data: { type: "string", pattern: "^[A-Za-z0-9+/]+={0,2}$", description: "the picture as base64" },
  }), 500),
  ledger: list(object({ id, date: short, direction: oneOf("in", "out"), mass, refrigerant: short, cylinder: short, note: long })),
  report: object({ currency: short, prices: map(short), choices: map(long) }),
});

/** What a file of this version must look like. Every property is required. */
export const schemaOfFile: Rule = object({ format: oneOf(format), version: oneOf(version), saved: time, handbook: short, jobs: list(job, 200) });

/** The published document, content/about/job-file.schema.json; a test holds it to this. */
export const published = {
  $schema: "https://json-schema.org/draft/2020-12/schema",
  title: "Changeout job file",
  description: "One job or several, as the handbook saves and opens them. See about/job-file.html for what each part means.",
  ...schemaOfFile,
};

/** A new, empty job. */
export function newJob(id: string, title: string, now: string): Job {
  return {
    id, title, demo: false, made: now, updated: now, site: "", unit: "", refrigerant: "", nameplate: { value: "", unit: "kg" },
    failures: [], ticks: {}, fields: {}, entries: {}, timers: [], readings: [], results: [], findings: {}, notes: [], photos: [], ledger: [],
    report: { currency: "", prices: {}, choices: {} },
  };
}
