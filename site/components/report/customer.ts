// The page for the owner: one sheet, plain words, nothing that the report does not carry.

import type { Job } from "../job/schema.ts";
import type { Assessment, Judged } from "./assessment.ts";
import { chosen, options, priceText } from "./choices.ts";
import { html, lines } from "./html.ts";
import type { Markup, Part } from "./html.ts";
import { forIt, named } from "./judge.ts";
import type { Option } from "./judge.ts";
import { made, sound, whatFailed } from "./made.ts";
import type { Made, ReportOptions } from "./made.ts";
import { best } from "./options.ts";
import { page, titled } from "./page.ts";
import { dateText, dayOf } from "./times.ts";
import { customer, fill, report } from "./words.ts";

export function makeCustomerPage(job: Job, assessment: Assessment | null, o: ReportOptions): string {
  const m = made(job, assessment, o);
  const w = customer;
  const mine = best(m);
  const duties = [...w.duties, ...chosen(job, "duties").split(/\n+/).filter((l) => l.trim() !== "")];
  const visits = report.options.visits.map((v) => ({ when: w.visits[v.key] ?? v.when, date: dateText(chosen(job, `visit-${v.key}`)) })).filter((v) => v.date !== "");
  const body = html`
<h1>${w.title}</h1>
<p class="soft">${[job.site.trim(), job.unit.trim(), dayOf(o.now)].filter((x) => x !== "").join(" · ")}</p>
<h2>${w.failed}</h2><p>${lines(whatFailed(job) || report.none)}</p>
<h2>${w.why}</h2>${why(m)}
<h2>${w.again}</h2><p>${next(m)}</p>
<h2>${w.choices}</h2><ol class="choices">${options.map((x) => choice(m, x, x === mine))}</ol>
<h2>${w.part}</h2><ul class="columns">${duties.map((d) => html`<li>${d}</li>`)}</ul>
<h2>${w.back}</h2>${visits.length === 0 ? html`<p>${w.noDate}</p>` : html`<ul class="columns">${visits.map((v) => html`<li>${v.when}: ${v.date}</li>`)}</ul>`}
<p>${w.noEnergy} ${w.full}</p>
<section class="decision"><h2>${w.sign}</h2>
<ul class="boxes"><li>${w.yes} <span class="box">A</span> <span class="box">B</span> <span class="box">C</span></li><li><span class="box">${w.no}</span></li></ul>
<div class="signs--row">${[[chosen(job, "owner"), w.name], ["", w.date], ["", w.signature]].map(([text = "", label = ""]) => html`<div class="sign"><span class="line line--long">${text}</span><p>${label}</p></div>`)}</div></section>`;
  return page(job, titled(w.title, job), "plain", body, o);
}

// What the evidence carries decides the words: a cause that is only probable may have been it.
const plain = (j: Judged): string => customer.plain[j.id]?.[0] ?? `${j.name}.`;
const perhaps = (j: Judged): string => customer.plain[j.id]?.[2] ?? fill(customer.maybe, { cause: j.name });
const fix = (j: Judged): string => customer.plain[j.id]?.[1] ?? j.removes;

function why(m: Made): Markup {
  const w = customer;
  const { v } = m;
  const of = named(v);
  if (of.length === 0) return html`<p>${w.unknown}</p>`;
  const facts = new Set(of.flatMap((j) => forIt(j)).filter((f) => m.e.numberOf(f) !== null)).size;
  const told = facts === 0 ? null : html`<p class="soft">${facts === 1 ? w.fact : fill(w.facts, { n: facts })}</p>`;
  if (v.causes.length > 1) return html`<p>${w.causes} ${v.causes.map(plain).join(" ")}</p>${maybe(v.probable)}${told}`;
  if (v.causes.length === 1) return html`<p>${fill(w.cause, { cause: v.causes.map(plain).join(" ") })}</p>${maybe(v.probable)}${told}`;
  return html`${maybe(v.probable)}${told}`;
}

const maybe = (probable: Judged[]): Part => (probable.length === 0 ? null : html`<p>${fill(customer.probable, { cause: probable.map(perhaps).join(" ") })}</p>`);

function next(m: Made): string {
  const of = named(m.v);
  if (of.length === 0) return customer.unknownNext;
  if (!of.some((j) => j.recurs)) return customer.passes;
  return m.v.causes.some((j) => j.recurs) ? customer.recurs : customer.mayRecur;
}

function choice(m: Made, o: Option, isBest: boolean): Markup {
  const w = customer;
  const says = o === "a" ? partOnly(m) : o === "b" ? remedy(m) : w.c.says;
  const price = priceText(m.job, o);
  return html`<li class="${isBest ? "best" : ""}">${isBest ? html`<p class="tag">${w.best}</p>` : null}<p class="name">${o.toUpperCase()}: ${w[o].name}</p><p>${says}</p><p>${price === "" ? w.noPrice : html`${w.price}: <strong>${price}</strong>`}</p></li>`;
}

/** What is said of option A, from the strongest words down. */
function partOnly(m: Made): string {
  const w = customer;
  const { causes, probable } = m.v;
  const isSound = (j: Judged): boolean => j.id === sound;
  if (causes.some(isSound)) return w.aSound;
  if (probable.some(isSound)) return w.aMaybeSound;
  if (causes.some((j) => j.recurs)) return w.a.says;
  if (probable.some((j) => j.recurs)) return w.aMaybe;
  return named(m.v).length === 0 ? w.aUnknown : w.aPasses;
}

/** What option B removes: a cause now, a probable cause when a test has shown it. */
function remedy(m: Made): string {
  const w = customer.b;
  const { causes, probable } = m.v;
  if (named(m.v).length === 0) return w.unknown;
  const fixes = (first: string, of: Judged[]): string[] => (of.length === 0 ? [] : [first, ...of.map(fix)]);
  return [...fixes(w.says, causes), ...fixes(w.maybe, probable)].join(" ");
}
