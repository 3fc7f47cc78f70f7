// The three options: what is done, what risk is left, the owner's part, how success is measured, price and date.

import type { Job } from "../job/schema.ts";
import type { Judged } from "./assessment.ts";
import { chosen, options, priceText, recommended } from "./choices.ts";
import { html, lines } from "./html.ts";
import type { Markup, Part } from "./html.ts";
import { advised, named } from "./judge.ts";
import type { Option } from "./judge.ts";
import { riskOfPart } from "./made.ts";
import type { Made } from "./made.ts";
import { dateText } from "./times.ts";
import { report } from "./words.ts";

/** Prices of the three in one line, for the summary. */
export function priceBrief(job: Job): Markup {
  return html`<div class="prices">${options.map((o) => html`<span>${o.toUpperCase()}: <strong>${priceText(job, o) || report.summary.openPrice}</strong></span>`)}</div>`;
}

export const best = (m: Made): Option => recommended(m.job) ?? advised(m.v);

export function optionsSection(m: Made, heading: Markup): Markup {
  const w = report.options;
  const mine = best(m);
  const cls = (o: Option): string => (o === mine ? "best" : "");
  const label = (o: Option): string => `${o.toUpperCase()}: ${w.names[o]}`;
  const row = (title: string, classes: string, cell: (o: Option) => Part): Markup =>
    html`<tr class="${classes}"><th scope="row">${title}</th>${options.map((o) => html`<td class="${cls(o)}" data-label="${label(o)}">${cell(o)}</td>`)}</tr>`;
  return html`<section>${heading}
<div class="options"><table><thead><tr><th></th>${options.map((o) => html`<th scope="col" class="${cls(o)}">${o === mine ? html`<span class="tag">${w.recommended}</span>` : null}${label(o)}</th>`)}</tr></thead>
<tbody>${row(w.rows.work, "", (o) => work(m, o))}${row(w.rows.left, "", (o) => left(m, o))}${row(w.rows.duties, "", (o) => duties(m, o))}${row(w.rows.measure, "", (o) => measure(m, o))}${row(w.rows.price, "price", (o) => priceText(m.job, o) || html`<span class="line"></span>`)}${row(w.rows.date, "", (o) => dateText(chosen(m.job, `by-${o}`)) || html`<span class="line"></span>`)}</tbody></table></div>
<p class="soft">${recommended(m.job) === null ? w.byEvidence : w.byPerson}</p>
${visits(m)}
</section>`;
}

const paragraphs = (sentences: readonly Part[]): Markup[] => sentences.map((s) => html`<p>${s}</p>`);
const items = (list: readonly string[]): Part => (list.length === 0 ? null : html`<ul>${list.map((l) => html`<li>${l}</li>`)}</ul>`);

function work(m: Made, o: Option): Part {
  const w = report.options;
  const typed = chosen(m.job, `work-${o}`);
  const added = typed === "" ? null : html`<p>${lines(typed)}</p>`;
  if (o === "a") return [html`<p>${w.a.work}</p>`, added];
  if (o === "c") return [html`<p>${w.c.work}</p>`, added];
  const removes = (of: Judged[]): string[] => of.map((j) => j.removes).filter((x) => x !== "");
  const now = removes(m.v.causes);
  const shown = removes(m.v.probable); // to be done once a test has shown it
  return [html`<p>${now.length + shown.length > 0 ? w.b.work : w.b.workUnknown}</p>`, items(now), shown.length === 0 ? null : html`<p>${w.b.workMaybe}</p>`, items(shown), added];
}

function left(m: Made, o: Option): Part {
  const w = report.options;
  if (o === "a") return riskOfPart(m.v);
  if (o === "c") return w.c.left;
  return m.v.probable.length > 0 ? w.b.leftMaybe : m.v.causes.length > 0 ? w.b.left : w.b.leftUnknown;
}

function duties(m: Made, o: Option): Part {
  const w = report.options;
  const typed = o === "b" ? chosen(m.job, "duties").split(/\n+/).filter((l) => l.trim() !== "") : [];
  const before = o === "a" ? null : html`<p>${o === "b" ? w.asA : w.asB}</p>`;
  return [before, items([...w.duties[o], ...typed])];
}

function measure(m: Made, o: Option): Part {
  const w = report.options;
  if (o !== "b") return w[o].measure;
  const own = named(m.v).map((j) => report.measures[j.id]).filter((x): x is string => x !== undefined);
  const typed = chosen(m.job, "measure");
  return [...paragraphs([...own, w.b.measure]), typed === "" ? null : html`<p>${lines(typed)}</p>`];
}

function visits(m: Made): Markup {
  const w = report.options;
  const rows = w.visits.map((v) => html`<tr><td>${v.when}</td><td>${v.what}</td><td>${dateText(chosen(m.job, `visit-${v.key}`)) || html`<span class="line"></span>`}</td><td>${chosen(m.job, `who-${v.key}`) || html`<span class="line"></span>`}</td></tr>`);
  return html`<div class="keep"><h3>${w.followUp}</h3><div class="scroll"><table><thead><tr><th scope="col">${w.visit}</th><th scope="col">${w.check}</th><th scope="col">${w.date}</th><th scope="col">${w.name}</th></tr></thead><tbody>${rows}</tbody></table></div><p class="soft">${w.asCommon}</p></div>`;
}
