// The root-cause report as one HTML document that needs nothing beside it. What it says is held by judge.ts (which words),
// evidence.ts (which numbers) and words.ts (which phrases); here it is put in order.

import { balances, kg, readMass } from "../job/mass.ts";
import type { Job, Photo } from "../job/schema.ts";
import { answerBlock } from "./answers.ts";
import type { Assessment } from "./assessment.ts";
import { chosen } from "./choices.ts";
import { earlier, pageOf, placed, provePage, words } from "./evidence.ts";
import type { Evidence, Item, Read } from "./evidence.ts";
import { drawing, html, lines, picture } from "./html.ts";
import type { Markup, Part } from "./html.ts";
import { againstIt, forIt, named, wordFor } from "./judge.ts";
import { lowerFirst, made, numberOf, numbers, riskOfPart, statement, whatFailed } from "./made.ts";
import type { Made, ReportOptions, Section } from "./made.ts";
import { optionsSection, priceBrief } from "./options.ts";
import { page, signature, titled } from "./page.ts";
import { clockText, dateText, dayOf, spanText, timeText } from "./times.ts";
import { fill, list, report } from "./words.ts";

export function makeReport(job: Job, assessment: Assessment | null, o: ReportOptions): string {
  const m = made(job, assessment, o);
  const body = html`
<header>
<p class="kind">${report.kind}</p>
<h1>${job.title.trim() || report.untitled}</h1>
${about(m)}
</header>
<main>
${summary(m)}
${[history(m), evidence(m), chain(m), excluded(m), work(m), refrigerant(m), risk(m), optionsSection(m, heading("options")), decision(m), limits(m)]}
</main>`;
  return page(job, titled(report.kind, job), "", body, o);
}

function heading(s: Section): Markup {
  return html`<h2 id="${s}"><span class="count">${numberOf(s)}</span> ${report.sections[s]}</h2>`;
}

function about({ job, o }: Made): Markup {
  const w = report.about;
  const by = [chosen(job, "technician"), chosen(job, "company")].filter((x) => x !== "").join(", ");
  const rows: [string, string][] = [
    [w.site, job.site], [w.unit, job.unit], [w.refrigerant, job.refrigerant],
    [w.nameplate, job.nameplate.value.trim() === "" ? "" : `${job.nameplate.value} ${job.nameplate.unit}`], [w.made, dayOf(o.now)], [w.by, by],
  ];
  return html`<dl class="about">${rows.map(([k, v]) => html`<div><dt>${k}</dt><dd>${v.trim() || report.none}</dd></div>`)}</dl>`;
}

// 1

function summary(m: Made): Markup {
  const w = report.summary;
  const answerBy = dateText(chosen(m.job, "answer-by"));
  const rows: [string, Part][] = [
    [w.failed, lines(whatFailed(m.job) || report.none)],
    [w.why, html`<p class="why">${statement(m)}</p>${doubts(m)}`],
    [w.stops, whatStops(m)],
    [w.risk, riskOfPart(m.v)],
    [w.price, priceBrief(m.job)],
    [w.answer, answerBy || html`<span class="line"></span>`],
  ];
  return html`<section class="brief">${heading("summary")}<dl>${rows.map(([k, v]) => html`<div><dt>${k}</dt><dd>${v}</dd></div>`)}</dl></section>`;
}

function doubts(m: Made): Markup[] {
  const said: string[] = [];
  for (const j of m.v.probable) {
    const n = numbers(m, againstIt(j));
    if (j.standing === "cause" && n.length > 0) said.push(`${j.name}: ${lowerFirst(fill(report.says.against, { numbers: list(n) }))}`);
  }
  const odd = numbers(m, m.a?.conflicts ?? []);
  if (odd.length > 0 && m.v.weighed) said.push(fill(report.says.conflict, { numbers: list(odd) }));
  return said.map((s) => html`<p>${s}</p>`);
}

function whatStops(m: Made): Part {
  const list_ = named(m.v).filter((j) => j.removes !== "");
  if (list_.length === 0) return fill(report.summary.stopsUnknown, { n: numberOf("excluded") });
  return list_.map((j) => html`<p>${wordFor(j) === "cause" ? null : `${report.summary.stopsMaybe} `}${j.removes}</p>`);
}

// 2

function history(m: Made): Markup {
  const w = report.history;
  const rows = m.job.failures.map((f) => html`<tr><td class="time">${dateText(f.date) || report.evidence.noTime}</td><td>${lines(f.what)}</td><td>${f.told}</td></tr>`);
  return html`<section>${heading("history")}${rows.length === 0 ? html`<p>${w.none}</p>` : html`<p class="soft">${w.rule}</p>
<div class="scroll"><table><thead><tr><th scope="col" class="number">${w.date}</th><th scope="col">${w.what}</th><th scope="col">${w.told}</th></tr></thead><tbody>${rows}</tbody></table></div>`}${earlierFailures(m)}</section>`;
}

/** What the findings say of an earlier failure: the list of failures may hold none, or none of these. */
function earlierFailures({ e, job }: Made): Part {
  const of = [...e.present, ...e.absent.filter((i) => i.of.id === "failed-before")].filter((i) => earlier.includes(i.of.id));
  if (of.length === 0) return null;
  const w = report.history;
  return html`<p>${w.found}</p><ul class="found">${of.map(({ number, of: f }) => html`<li><span class="no">${number}</span><div><p>${said(job, f.id, f.name)}.</p></div></li>`)}</ul>`;
}

// 3

function evidence(m: Made): Markup {
  const { e } = m;
  const w = report.evidence;
  const nothing = e.present.length + e.absent.length + e.readings.length + e.answers.length + e.photos.length + e.written.length === 0;
  const found = (title: string, items: Evidence["present"]): Part => items.length === 0 ? null : html`<h3>${title}</h3><ul class="found">${items.map(({ number, of: f }) => html`<li><span class="no">${number}</span><div><p>${f.name}. <span class="soft">${timeText(f.finding.time)}</span></p>${f.finding.note.trim() === "" ? null : html`<p>${lines(f.finding.note)}</p>`}${photos(m, f.photos, "")}</div></li>`)}</ul>`;
  return html`<section>${heading("evidence")}
${nothing ? html`<p>${w.none}</p>` : html`<p class="soft">${w.rule}</p>`}
${found(w.found, e.present)}${found(w.notFound, e.absent)}
${e.readings.length === 0 ? null : html`<h3>${w.readings}</h3>${readings(m, e.readings)}`}
${e.answers.length === 0 ? null : html`<h3>${w.answers}</h3>${e.answers.map((r) => answerBlock(r, m.o.again?.get(r.of.id), e.replacedBy.get(r.of.id)))}`}
${e.photos.length === 0 ? null : html`<h3>${w.photos}</h3>${numberedPhotos(m, e.photos)}`}
${e.written.length === 0 ? null : html`<h3>${w.written}</h3><p class="soft">${w.writtenRule}</p><ul class="found">${e.written.map(({ number, of: x }) => html`<li><span class="no">${number}</span><div><p>${x.what === "" ? null : html`<strong>${x.what}:</strong> `}${lines(x.value)} <span class="soft">${timeText(x.time)}</span></p></div></li>`)}</ul>`}
</section>`;
}

function readings(m: Made, items: Item<Read>[]): Markup {
  const w = report.evidence;
  return html`<div class="scroll ${items.length <= 8 ? "keep" : ""}"><table><thead><tr><th scope="col" class="number">${w.number}</th><th scope="col">${w.what}</th><th scope="col">${w.reading}</th><th scope="col">${w.time}</th><th scope="col">${w.instrument}</th></tr></thead>
<tbody>${items.map(({ number, of: r }) => html`<tr><td class="number"><span class="no">${number}</span></td><td>${r.what}</td><td><strong>${r.value}</strong> ${r.unit || report.noUnit}</td><td class="time">${timeText(r.time) || w.noTime}</td><td>${r.instrument || report.noInstrument}</td></tr>`)}</tbody></table></div>
${items.map(({ number, of: r }) => r.photos.length === 0 ? null : html`<p><span class="no">${number}</span>${r.what}</p>${photos(m, r.photos, "")}`)}`;
}

function photos(m: Made, of: Photo[], classes: string): Part {
  return of.length === 0 ? null : html`<div class="photos ${classes}">${of.map((p) => photo(m, p, null))}</div>`;
}

function numberedPhotos(m: Made, items: Item<Photo>[]): Markup {
  return html`<div class="photos photos--large">${items.map(({ number, of }) => photo(m, of, number))}</div>`;
}

function photo(m: Made, p: Photo, number: number | null): Markup {
  const url = picture(m.o.photos?.[p.id]);
  const caption = p.caption.trim() || report.evidence.noCaption;
  return html`<figure class="photo">${url === null ? html`<p class="soft">${report.evidence.lostPicture}</p>` : html`<img src="${url}" width="${p.width}" height="${p.height}" alt="${caption}">`}<figcaption>${number === null ? null : html`<span class="no">${number}</span>`}${caption}. <span class="soft">${timeText(p.time)}</span></figcaption></figure>`;
}

// 4

function chain(m: Made): Markup {
  const { a } = m;
  const w = report.chain;
  const svg = a && m.v.weighed ? drawing(a.drawing) : null;
  if (!a || a.arrows.length === 0 || !m.v.weighed) return html`<section>${heading("chain")}<p>${w.none}</p></section>`;
  const arrows = a.arrows.map((r) => {
    const mechanism = a.mechanisms.get(r.mechanism)?.name ?? r.mechanism;
    const from = r.cause === null ? mechanism : a.causeNames.get(r.cause) ?? r.cause;
    const to = r.cause === null ? w.part : lowerFirst(mechanism);
    const n = numbers(m, r.findings);
    const says = r.proven ? fill(w.proven, { numbers: list(n) }) : n.length > 0 ? fill(w.open, { numbers: list(n) }) : w.openNone;
    return html`<li class="${r.proven ? "" : "open"}"><strong>${from} → ${to}.</strong> ${says}</li>`;
  });
  const means = [...new Set(a.arrows.map((r) => r.mechanism))].map((id) => a.mechanisms.get(id)).filter((x) => x !== undefined && x.means !== "");
  return html`<section class="keep">${heading("chain")}<p class="soft">${w.legend}</p>
<div class="chain">${svg ?? html`<span></span>`}<div><ul>${arrows}</ul>
${means.length === 0 ? null : html`<h3>${w.means}</h3><ul>${means.map((x) => html`<li><strong>${x?.name ?? ""}:</strong> ${lowerFirst(x?.means ?? "")}</li>`)}</ul>`}</div></div></section>`;
}

// 5

function excluded(m: Made): Markup {
  const { a, v } = m;
  const w = report.excluded;
  const typed = (m.job.fields[`${provePage}#${placed.excluded}`]?.value ?? "").trim();
  const name = (f: string): string => a?.findings.get(f)?.name ?? words(f);
  const out = v.excluded.map((j) => html`<tr><td><strong>${j.name}</strong></td><td>${againstIt(j).map((f) => ({ f, n: m.e.numberOf(f) })).filter((x) => x.n !== null).map((x, i) => html`${i === 0 ? null : html`<br>`}<span class="no">${x.n}</span>${said(m.job, x.f, name(x.f))}`)}</td></tr>`);
  const open = [...v.causes, ...v.probable, ...v.possible].map((j) => {
    const plus = numbers(m, forIt(j));
    const minus = numbers(m, againstIt(j));
    const by = [plus.length > 0 ? fill(w.for, { numbers: list(plus) }) : "", minus.length > 0 ? fill(w.against, { numbers: list(minus) }) : ""].filter((x) => x !== "").join("; ");
    return html`<tr><td><strong>${j.name}</strong></td><td>${report.standing[wordFor(j)]}</td><td>${by}</td><td>${j.missing[0] === undefined ? "" : question(a, j.missing[0])}</td></tr>`;
  });
  const rest = a && v.weighed ? a.causes.filter((j) => wordFor(j) === "not determined").map((j) => lowerFirst(j.name)) : [];
  const next = a && v.weighed ? a.next.slice(0, 5).map((f) => question(a, f)) : [];
  return html`<section>${heading("excluded")}
<h3>${w.excluded}</h3>${out.length === 0 ? html`<p>${w.none}</p>` : html`<p class="soft">${w.rule}</p><div class="scroll"><table><thead><tr><th scope="col">${w.cause}</th><th scope="col">${w.by}</th></tr></thead><tbody>${out}</tbody></table></div>`}
${typed === "" ? null : html`<h3>${w.typed}</h3><p>${lines(typed)}</p>`}
${open.length === 0 ? null : html`<h3>${w.open}</h3><div class="scroll"><table><thead><tr><th scope="col">${w.cause}</th><th scope="col">${w.standing}</th><th scope="col">${w.test}</th><th scope="col">${w.missing}</th></tr></thead><tbody>${open}</tbody></table></div>`}
${rest.length === 0 ? null : html`<p>${fill(w.rest, { causes: rest.join("; ") })}</p>`}
${next.length === 0 ? null : html`<h3>${w.next}</h3><ul>${next.map((q) => html`<li>${q}</li>`)}</ul>`}
</section>`;
}

/** A finding in words: what is there reads as itself, what is not there says so. */
function said(job: Job, finding: string, name: string): string {
  return job.findings[finding]?.state === "absent" ? fill(report.excluded.notFound, { finding: lowerFirst(name) }) : name;
}

const question = (a: Assessment | null, f: string): string => a?.findings.get(f)?.question || a?.findings.get(f)?.name || words(f);

// 6

function work(m: Made): Markup {
  const { job, e } = m;
  const w = report.work;
  const typed = chosen(job, "work");
  const stages = new Map<string, string[]>();
  for (const [place, tick] of Object.entries(job.ticks)) stages.set(pageOf(place), [...(stages.get(pageOf(place)) ?? []), tick.time]);
  const rows = [...stages].map(([p, times]) => ({ p, times: times.sort() })).sort((x, y) => (x.times[0] ?? "").localeCompare(y.times[0] ?? ""))
    .map(({ p, times }) => html`<tr><td>${words(p)}</td><td>${times.length}</td><td class="time">${spanText(times[0] ?? "", times[times.length - 1] ?? "")}</td></tr>`);
  return html`<section>${heading("work")}
<h3>${w.done}</h3>${typed === "" && rows.length === 0 ? html`<p>${w.none}</p>` : null}${typed === "" ? null : html`<ul>${typed.split(/\n+/).filter((l) => l.trim() !== "").map((l) => html`<li>${l}</li>`)}</ul>`}
${rows.length === 0 ? null : html`<div class="scroll"><table><thead><tr><th scope="col">${w.stage}</th><th scope="col">${w.steps}</th><th scope="col">${w.when}</th></tr></thead><tbody>${rows}</tbody></table></div>`}
<h3>${w.readings}</h3>${e.readingsAfter.length === 0 ? html`<p>${w.noReadings}</p>` : readings(m, e.readingsAfter)}
${e.answersAfter.length === 0 ? null : html`<h3>${w.answers}</h3>${e.answersAfter.map((r) => answerBlock(r, m.o.again?.get(r.of.id), e.replacedBy.get(r.of.id)))}`}
${e.photosAfter.length === 0 ? null : html`<h3>${w.photos}</h3>${numberedPhotos(m, e.photosAfter)}`}
</section>`;
}

// 7

function refrigerant(m: Made): Markup {
  const { job } = m;
  const w = report.refrigerant;
  const plate = job.nameplate.value.trim() === "" ? null : html`<p>${fill(w.nameplate, { mass: `${job.nameplate.value} ${job.nameplate.unit}` })}</p>`;
  if (job.ledger.length === 0) return html`<section>${heading("refrigerant")}<p>${w.none}</p>${plate}</section>`;
  const rows = job.ledger.map((l) => html`<tr><td class="time">${dateText(l.date) || report.evidence.noTime}</td><td>${l.direction === "in" ? w.in : w.out}</td><td>${l.mass.value.trim() === "" ? report.none : `${l.mass.value} ${l.mass.unit}`}${"kg" in readMass(l.mass) ? null : " *"}</td><td>${l.refrigerant}</td><td>${l.cylinder}</td><td>${lines(l.note)}</td></tr>`);
  const sums = balances(job.ledger).map((b) => html`<tr><th scope="row">${b.refrigerant || report.none}</th><td>${kg(b.in)}</td><td>${kg(b.out)}</td><td>${signed(b.in - b.out)}</td><td>${b.unread === 0 ? null : `* ${fill(w.unread, { n: b.unread })}`}</td></tr>`);
  return html`<section class="${job.ledger.length <= 12 ? "keep" : ""}">${heading("refrigerant")}
<div class="scroll"><table><thead><tr><th scope="col">${w.date}</th><th scope="col">${w.direction}</th><th scope="col">${w.mass}</th><th scope="col">${w.kind}</th><th scope="col">${w.cylinder}</th><th scope="col">${w.note}</th></tr></thead><tbody>${rows}</tbody></table></div>
<h3>${w.balance}</h3><div class="scroll"><table><thead><tr><th scope="col">${w.kind}</th><th scope="col">${w.sumIn}</th><th scope="col">${w.sumOut}</th><th scope="col">${w.difference}</th><th></th></tr></thead><tbody>${sums}</tbody></table></div>${plate}</section>`;
}

const signed = (value: number): string => (Math.round(value * 1000) > 0 ? `+${kg(value)}` : kg(value));

// 8

function risk(m: Made): Markup {
  const { v, job } = m;
  const w = report.risk;
  const of = named(v);
  const gate = [...of, ...v.possible].filter((j) => j.recurs);
  const cost = (job.fields[`${provePage}#${placed.cost}`]?.value ?? "").trim();
  const typed = chosen(job, "risk");
  return html`<section class="keep">${heading("risk")}
${of.length === 0 ? html`<p>${w.unknown}</p>` : of.map((j) => html`<p>${fill(!j.recurs ? w.passes : wordFor(j) === "cause" ? w.recurs : w.mayRecur, { cause: j.name })}</p>`)}
${gate.length === 0 ? null : html`<p>${w.gate}</p><ul>${gate.map((j) => html`<li><strong>${j.name}</strong> (${report.standing[wordFor(j)].toLowerCase()}). ${j.removes}</li>`)}</ul>`}
<p>${w.none}</p>
${cost === "" ? null : html`<h3>${w.cost}</h3><p>${lines(cost)}</p>`}
${typed === "" ? null : html`<h3>${w.typed}</h3><p>${lines(typed)}</p>`}
</section>`;
}

// 10

function decision(m: Made): Markup {
  const { job } = m;
  const w = report.decision;
  const typed = (job.fields[`${provePage}#${placed.decision}`]?.value ?? "").trim();
  return html`<section class="decision">${heading("decision")}
<p>${fill(w.read, { n: numberOf("risk") })}</p>
<ul class="boxes"><li>${w.accept} <span class="box">A</span> <span class="box">B</span> <span class="box">C</span></li><li><span class="box">${w.refuse}</span> ${w.refused}</li></ul>
${typed === "" ? null : html`<p><strong>${w.typed}:</strong> ${lines(typed)}</p>`}
<div class="signs">${[[w.owner, chosen(job, "owner")], [w.company, [chosen(job, "technician"), chosen(job, "company")].filter((x) => x !== "").join(", ")]].map(([who = "", name = ""]) => signature(who, name))}</div>
</section>`;
}

// 11

function limits(m: Made): Markup {
  const { job, a, e, o } = m;
  const w = report.limitsCounted;
  const reads = [...e.readings, ...e.readingsAfter];
  const bare = reads.filter((r) => r.of.instrument === "").length;
  const unitless = reads.filter((r) => r.of.unit === "").length;
  const lost = job.photos.filter((p) => picture(o.photos?.[p.id]) === null).length;
  const notLooked = a ? [...a.findings.keys()].filter((f) => !(f in job.findings)).length : 0;
  const typed = [chosen(job, "limits"), (job.fields[`${provePage}#${placed.notMeasured}`]?.value ?? "").trim()].filter((x) => x !== "");
  const counted = [
    a && notLooked > 0 ? fill(w.notLooked, { n: notLooked, all: a.findings.size }) : "",
    !a && Object.keys(job.findings).length > 0 ? w.notWeighed : "",
    bare > 0 ? fill(w.noInstrument, { n: bare }) : "", unitless > 0 ? fill(w.noUnit, { n: unitless }) : "", lost > 0 ? fill(w.noPicture, { n: lost }) : "",
    fill(w.clock, { clock: clockText(o.now) }), fill(w.made, { version: o.handbook, date: dayOf(o.now) }),
  ].filter((x) => x !== "");
  return html`<section>${heading("limits")}
<ul class="limits">${[...counted.slice(0, -2), ...report.limits, ...counted.slice(-2)].map((l) => html`<li>${l}</li>`)}</ul>
${typed.length === 0 ? null : html`<h3>${w.typed}</h3>${typed.map((t) => html`<p>${lines(t)}</p>`)}`}</section>`;
}

