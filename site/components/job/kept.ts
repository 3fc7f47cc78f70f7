// What pages and worksheets put into the open job: answers, ticks, fields, findings, timers. To be read; it is changed where
// it was made.

import { button, make } from "../../module/dom.ts";
import { pageAddress } from "../../module/root.ts";
import { words } from "../report/evidence.ts";
import { parseSeries } from "../worksheet/series-text.ts";
import { takeAway } from "./entries.ts";
import { count, field, fold, when } from "./form.ts";
import type { Job, Result } from "./schema.ts";
import type { Jobs } from "./store.ts";

export function results(job: Job, jobs: Jobs, open: Set<string>): HTMLElement {
  const empty = make("p", {}, "Under each worksheet answer a button keeps it here. ", make("a", { href: pageAddress("worksheets") }, "All worksheets"));
  const list = make("ul", { class: "co-job__list" }, ...job.results.map(row));
  const d = fold("results", "Worksheet answers", "", open, empty, list);
  const note = d.querySelector(".co-job__count");
  tell();
  return d;

  function tell(): void {
    if (note) note.textContent = count(job.results.length, "answer", "answers");
    list.hidden = list.childElementCount === 0;
    empty.hidden = !list.hidden;
  }

  function row(r: Result): HTMLElement {
    const inputs = r.inputs.filter((i) => i.label !== "").map((i) => i.text.includes("\n")
      ? { label: i.label, text: log(i.label, i.text, r.inputs.find((c) => c.id === `${i.id}.columns`)?.text ?? "") }
      : { label: i.label, text: i.shown || [i.text, i.unit].join(" ").trim() });
    const main = r.outputs.filter((o) => o.main);
    const li = make("li", { class: "co-job__entry", "data-result": r.worksheet },
      make("p", { class: "co-job__first" }, r.title),
      r.verdict ? make("p", { class: "co-job__verdict" }, make("strong", {}, r.verdict.title), ` ${r.verdict.text}`) : null,
      pairs(main.length > 0 ? main : r.outputs),
      make("details", { class: "co-fold" }, make("summary", {}, main.length > 0 && main.length < r.outputs.length ? "Other figures, and what was entered" : "What was entered"),
        main.length > 0 && main.length < r.outputs.length ? pairs(r.outputs.filter((o) => !o.main)) : null, pairs(inputs)),
      ...r.warnings.map((w) => make("p", {}, w)),
      field({ name: "note", label: "Note to this answer", kind: "text" }, r.note, (value) => {
        r.note = value;
        void jobs.change(job.id, (kept) => kept.results.filter((x) => x.id === r.id).forEach((x) => (x.note = value)));
      }),
      make("p", { class: "co-job__small" }, `${when(r.time)}, handbook version ${r.version}`));
    const remove = button("Take away", "co-button co-button--quiet", () => takeAway(li, r.title, () => {
      const at = job.results.indexOf(r);
      job.results.splice(at, 1);
      tell();
      void jobs.change(job.id, (kept) => void (kept.results = kept.results.filter((x) => x.id !== r.id)));
      return () => {
        job.results.splice(Math.min(at, job.results.length), 0, r);
        void jobs.change(job.id, (kept) => void kept.results.splice(Math.min(at, kept.results.length), 0, r));
        tell();
        return row(r);
      };
    }, tell));
    remove.setAttribute("aria-label", `Take away: ${r.title}`);
    li.append(make("p", { class: "co-job__buttons" }, make("a", { class: "co-job__link", href: pageAddress(`worksheets/${r.worksheet}`) }, "Open this worksheet"), remove));
    return li;
  }
}

const long = 28; // letters: more than these read better below their label than at the right edge

function pairs(list: { label: string; text: string | HTMLElement }[]): HTMLElement {
  return make("dl", { class: "co-pairs" }, ...list.map((p) => make("div", {}, make("dt", {}, p.label), make("dd", typeof p.text !== "string" || p.text.length > long ? { class: "co-job__wide" } : {}, p.text))));
}

const unitWords: Record<string, string> = { C: "°C", F: "°F", kPag: "kPa gauge", barg: "bar gauge", psig: "psi gauge", kPaa: "kPa absolute", bara: "bar absolute", psia: "psi absolute" };
const short = 8; // rows that need no fold

/** A log as a table. columns: what was answered about columns without names, "time:min,pressure:micron". */
function log(label: string, text: string, columns: string): HTMLElement {
  const { header, rows } = parseSeries(text);
  const heads = (header ?? (columns === "" ? [] : columns.split(","))).map((name) => {
    const [what = "", unit = ""] = name.split(/[_:](.*)/);
    return { what: words(what), unit: unitWords[unit] ?? unit };
  });
  const table = make("div", { class: "co-job__rows" }, make("table", { class: "co-job__log", "aria-label": label },
    heads.length > 0 ? make("thead", {}, make("tr", {}, ...heads.map((h) => make("th", { scope: "col" }, [h.what, h.unit].filter((t) => t !== "").join(", "))))) : null,
    make("tbody", {}, ...rows.map((row) => make("tr", {}, ...row.map((cell) => make("td", {}, cell.replace(/^-/, "−"))))))));
  if (rows.length <= short) return table;
  const [from = "", to = ""] = [rows[0]?.[0], rows[rows.length - 1]?.[0]];
  const first = heads[0];
  const span = Number(to) > Number(from) ? `, ${first && first.unit === "" ? `${first.what.toLowerCase()} ` : ""}${from} to ${to} ${first?.unit ?? ""}`.trimEnd() : "";
  return make("details", { class: "co-fold" }, make("summary", {}, `${rows.length} rows${span}`), table);
}

/** Ticks, fields and timers by page. */
export function fromPages(job: Job, open: Set<string>, title: (page: string) => string): HTMLElement {
  const by = new Map<string, { ticks: string[]; fields: { label: string; text: string }[]; timers: string[] }>();
  const of = (page: string): { ticks: string[]; fields: { label: string; text: string }[]; timers: string[] } => {
    const found = by.get(page) ?? { ticks: [], fields: [], timers: [] };
    by.set(page, found);
    return found;
  };
  for (const [place, t] of Object.entries(job.ticks)) of(place.split("#")[0] ?? "").ticks.push(`${t.text || words(place.split("#")[1] ?? "")} (${when(t.time)})`);
  for (const [place, f] of Object.entries(job.fields)) of(place.split("#")[0] ?? "").fields.push({ label: f.label || words(place.split("#")[1] ?? ""), text: `${f.value} ${f.unit === "text" ? "" : f.unit}`.trim() });
  for (const t of job.timers) of(t.page).timers.push(`${t.title}: ${when(new Date(t.start).toISOString())}, ${count(Math.round((t.end - t.start) / 60_000), "minute", "minutes")}`);
  const ticks = Object.keys(job.ticks).length;
  const fields = Object.keys(job.fields).length;
  const parts = [...by].sort().map(([page, p]) => make("section", { class: "co-job__entry" },
    make("h3", {}, make("a", { class: "co-job__link", href: pageAddress(page) }, title(page))),
    p.fields.length > 0 ? pairs(p.fields) : null,
    p.ticks.length > 0 ? make("details", { class: "co-fold" }, make("summary", {}, count(p.ticks.length, "step ticked", "steps ticked")), make("ul", {}, ...p.ticks.map((t) => make("li", {}, t)))) : null,
    p.timers.length > 0 ? make("ul", {}, ...p.timers.map((t) => make("li", {}, t))) : null));
  return fold("pages", "From the pages", `${count(ticks, "tick", "ticks")}, ${count(fields, "reading", "readings")}`, open,
    ...(parts.length > 0 ? parts : [make("p", {}, "While this job is open, ticks and readings on the procedure pages belong to it.")]));
}

/** names: the findings of the model in words, for those that were kept without. */
export function findings(job: Job, open: Set<string>, names: Map<string, string>): HTMLElement {
  const list = Object.entries(job.findings).sort(([, a], [, b]) => b.state.localeCompare(a.state)); // present first
  const present = list.filter(([, f]) => f.state === "present").length;
  return fold("findings", "Findings", list.length === 0 ? "none" : `${present} present, ${list.length - present} absent`, open,
    list.length === 0 ? make("p", {}, "What you find on the assessment page stands here.") : make("ul", { class: "co-job__list" }, ...list.map(([id, f]) => make("li", { class: "co-job__entry" },
      make("p", { class: "co-job__first" }, `${f.state === "present" ? "Present" : "Absent"}: ${f.text || names.get(id) || words(id)}`),
      f.note ? make("p", {}, f.note) : null, make("p", { class: "co-job__small" }, when(f.time))))),
    make("p", {}, make("a", { class: "co-job__link", href: pageAddress("stages/assess") }, "Assess the cause")));
}
