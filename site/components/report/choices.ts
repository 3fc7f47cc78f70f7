// What the person fills in for the report: the keys under which a job keeps it (ReportChoices), what to ask, and in which
// order. The form is drawn from this list; the report reads the same keys.

import type { Job } from "../job/schema.ts";
import type { Option } from "./judge.ts";
import { report } from "./words.ts";

export interface Ask { key: string; label: string; hint: string; long: boolean; kind: "text" | "price" | "date" }
export interface Group { title: string; hint: string; asks: Ask[] }

const ask = (key: string, label: string, hint = "", kind: Ask["kind"] = "text"): Ask => ({ key, label, hint, long: false, kind });
const long = (key: string, label: string, hint = ""): Ask => ({ key, label, hint, long: true, kind: "text" });

export const options: readonly Option[] = ["a", "b", "c"];

export const groups: readonly Group[] = [
  { title: "Summary", hint: "", asks: [
    long("failed", "What failed", "Left empty, the last entry of the failure history stands here."),
    ask("answer-by", "Answer wanted by", "", "date"),
  ] },
  { title: "Work", hint: "", asks: [long("work", "Work done", "One line for each piece of work. Ticked steps are counted beside it.")] },
  { title: "The three options", hint: "An empty price leaves a line to write on.", asks: [
    ask("currency", "Currency", "Such as EUR."),
    ...options.flatMap((o) => [
      ask(`price-${o}`, `${o.toUpperCase()}: ${report.options.names[o]}. Price`, "", "price"),
      long(`work-${o}`, `${o.toUpperCase()}: work to add`, ""),
      ask(`by-${o}`, `${o.toUpperCase()}: done by`, "", "date"),
    ]),
    long("duties", "Owner’s part, to add", "One duty a line."),
    long("measure", "How success is measured, to add"),
  ] },
  { title: report.options.followUp, hint: "", asks: report.options.visits.flatMap((v) => [ask(`visit-${v.key}`, v.when, v.what, "date"), ask(`who-${v.key}`, `${v.when}: who comes`)]) },
  { title: "Risk and limits", hint: "", asks: [
    long("risk", "Risk that remains, to add"),
    long("limits", "What could not be measured, and why"),
  ] },
  { title: "Who signs", hint: "", asks: [ask("company", "Company"), ask("technician", "Technician"), ask("owner", "For the owner")] },
];

export const papers = ["a4", "letter"] as const;
export type Paper = (typeof papers)[number];

/** One value, trimmed; "" when nothing was typed. Prices and the currency have places of their own in the job. */
export function chosen(job: Job, key: string): string {
  const r = job.report;
  const text = key === "currency" ? r.currency : key.startsWith("price-") ? r.prices[key.slice(6)] : r.choices[key];
  return (text ?? "").trim();
}

export function choose(r: Job["report"], key: string, text: string): void {
  if (key === "currency") r.currency = text;
  else if (key.startsWith("price-")) put(r.prices, key.slice(6), text);
  else put(r.choices, key, text);
}

function put(into: Record<string, string>, key: string, text: string): void {
  if (text === "") delete into[key];
  else into[key] = text;
}

export const paperOf = (job: Job): Paper => (chosen(job, "paper") === "letter" ? "letter" : "a4");

/** The option that the person recommends; null leaves it to the evidence. */
export function recommended(job: Job): Option | null {
  const o = chosen(job, "recommend");
  return options.find((x) => x === o) ?? null;
}

/** "EUR 4,200", as typed; "" when there is no price. */
export function priceText(job: Job, option: Option): string {
  const price = chosen(job, `price-${option}`);
  const currency = chosen(job, "currency");
  return price === "" ? "" : currency === "" || price.includes(currency) ? price : `${currency} ${price}`;
}
