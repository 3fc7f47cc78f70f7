// Draws an answer. Everything shown comes from the module's reply; text is set as text, charts are parsed as SVG.

import { make } from "../../module/dom.ts";
import { pageAddress, singleFile } from "../../module/root.ts";
import { together } from "../../module/together.ts";
import type { Output, Reply, Step } from "../../module/wire.ts";

export interface OutputUnits { label: string; units: { id: string; label: string; system: string }[] }

type PickUnit = (output: string, unit: string) => void;

interface Part { key: string; node: HTMLElement }
/** tail: how the text ends after the figure, where no other unit's name ends alike; else "". */
interface Row { label: string; main: boolean; unitID: string; tail: string; node: HTMLElement; value: HTMLElement; unit: HTMLSelectElement | null }
interface Drawn { parts: Part[]; rows: Map<string, Row>; list: HTMLElement; more: More; working: Working }

const few = 6; // figures beside the main ones that a person takes in before what to do; more of them wait in a fold

/** What each box shows. A key press changes a few figures: what stays the same keeps its place on the page. */
const shown = new WeakMap<HTMLElement, Drawn>();

/** Draws the reply into the box. pick is called with an output and the unit a person wants it in. */
export function drawAnswer(box: HTMLElement, sheet: string, heading: string, reply: Reply, units: Map<string, OutputUnits>, pick: PickUnit): void {
  const focused = (document.activeElement as HTMLElement | null)?.dataset.pick;
  const before = shown.get(box);
  const list = before?.list ?? make("dl", { class: "co-results" });
  const more = before?.more ?? makeMore();
  const working = before?.working ?? makeWorking(sheet);
  const rows = new Map<string, Row>();
  const parts: Part[] = [];
  const part = (key: unknown, draw: () => HTMLElement | null): void => {
    const text = JSON.stringify(key);
    const same = before?.parts.find((p) => p.key === text);
    const node = same?.node ?? draw();
    if (node) parts.push({ key: text, node });
  };

  part("title", () => make(heading === "2" ? "h3" : "h4", { class: "co-answer__title", tabindex: "-1" }, "Answer"));
  if (reply.verdict) {
    const v = reply.verdict;
    part(["verdict", v], () => make("div", { class: `co-verdict co-verdict--${tone(v.tone)}`, "data-verdict": v.id },
      make("p", { class: "co-verdict__title" }, v.title),
      make("p", { class: "co-verdict__text" }, ...together(v.text))));
  }
  if (reply.outputs.length > 0) {
    for (const o of reply.outputs) rows.set(o.id, row(o, units.get(o.id), pick, before?.rows.get(o.id)));
    const side = reply.outputs.filter((o) => !o.main);
    const folded = side.length > few && side.length < reply.outputs.length ? side : [];
    const nodes = (of: Output[]): HTMLElement[] => of.flatMap((o) => rows.get(o.id)?.node ?? []);
    put(list, nodes(reply.outputs.filter((o) => !folded.includes(o))));
    more.show(nodes(folded));
    part("outputs", () => list);
  }
  if (reply.warnings.length > 0) part(["warnings", reply.warnings], () => notes("Take care", reply.warnings, "co-notes co-notes--warn"));
  if (reply.advice.length > 0) part(["advice", reply.advice], () => notes("What to do", reply.advice, "co-notes"));
  for (const c of reply.charts) {
    part(["chart", c], () => {
      const svg = parseSVG(c.svg);
      return svg && make("figure", { class: "co-chart-frame" }, make("figcaption", {}, c.title), svg);
    });
  }
  if (more.list.childElementCount > 0) part("more", () => more.node);
  working.show(reply.steps);
  if (reply.steps.length > 0) part("working", () => working.node);

  put(box, parts.map((p) => p.node));
  shown.set(box, { parts, rows, list, more, working });
  if (focused && (document.activeElement as HTMLElement | null)?.dataset.pick !== focused) box.querySelector<HTMLElement>(`[data-pick="${CSS.escape(focused)}"]`)?.focus();
}

const made = new WeakSet<Element>();

/** Makes these the children in place of those it made before. What is in its place already is not touched, and what somebody else put between stays. */
function put(under: HTMLElement, children: HTMLElement[]): void {
  for (const old of Array.from(under.children)) if (made.has(old) && !children.includes(old as HTMLElement)) old.remove();
  let last: Element | null = null;
  for (const child of children) {
    made.add(child);
    let at: Element | null = last ? last.nextElementSibling : under.firstElementChild;
    while (at && at !== child && !made.has(at)) at = at.nextElementSibling;
    if (at !== child) {
      if (last) last.after(child);
      else under.prepend(child);
    }
    last = child;
  }
}

/** No answer is said in words; it never looks like a figure. */
export function drawNoAnswer(box: HTMLElement, reason: string): void {
  const p = make("p", { class: "co-answer__empty" }, make("strong", {}, "No answer yet"), reason);
  made.add(p);
  if (box.firstElementChild?.className === "co-answer__empty" && box.textContent === p.textContent) return;
  box.replaceChildren(p);
}

/** One output. The row of before stays when only its figure is another. */
function row(o: Output, known: OutputUnits | undefined, pick: PickUnit, before: Row | undefined): Row {
  const same = before && before.label === o.label && before.main === o.main;
  if (same && before.tail !== "" && o.text.endsWith(before.tail)) return refigure(before, o.text.slice(0, -before.tail.length));
  // Labels may differ in their spaces from the text; the longest fitting unit wins ("kPa gauge" before "gauge").
  const plain = o.text.replace(/\u00a0|\u202f/g, " ");
  const fits = (known?.units ?? []).filter((u) => u.label !== "" && plain.endsWith(" " + u.label)).sort((a, b) => b.label.length - a.label.length)[0];
  const figure = fits ? o.text.slice(0, -fits.label.length - 1) : o.text; // with the spaces that keep a long number whole
  if (same && before.unitID === (fits?.id ?? "")) return refigure(before, figure);
  const value = make("span", { class: "co-result__value" }, figure);
  const dd = make("dd", {}, value);
  const unit = fits && known && known.units.length > 1 ? choice(o, known, fits.id) : null;
  if (fits) dd.append(" ", unit ?? make("span", { class: "co-result__unit" }, fits.label));
  unit?.addEventListener("change", () => {
    value.textContent = "…"; // the figure in the old unit must not stand before the new one
    pick(o.id, unit.value);
  });
  const tail = fits && !known?.units.some((u) => u !== fits && u.label.endsWith(fits.label)) ? o.text.slice(figure.length) : "";
  return { label: o.label, main: o.main, unitID: fits?.id ?? "", tail, value, unit, node: make("div", { class: o.main ? "co-result co-result--main" : "co-result", "data-output": o.id }, make("dt", {}, o.label), dd) };
}

function refigure(row: Row, figure: string): Row {
  if (row.value.textContent !== figure) row.value.textContent = figure;
  if (row.unit) row.unit.value = row.unitID; // another may have been picked meanwhile
  return row;
}

function choice(o: Output, known: OutputUnits, chosen: string): HTMLSelectElement {
  const select = make("select", { class: "co-input__unit", "aria-label": `Unit of ${o.label}`, "data-pick": o.id });
  for (const u of known.units) select.append(new Option(u.label, u.id, false, u.id === chosen));
  return select;
}

function notes(title: string, list: string[], classes: string): HTMLElement {
  return make("div", {}, make("p", { class: "co-notes__title" }, title), make("ul", { class: classes }, ...list.map((s) => make("li", {}, ...together(s)))));
}

interface More { node: HTMLElement; list: HTMLElement; show(rows: HTMLElement[]): void }

function makeMore(): More {
  const list = make("dl", { class: "co-results" });
  const summary = make("summary");
  const node = make("details", { class: "co-fold", "data-more-figures": "" }, summary, list);
  return { node, list, show: (rows) => {
    put(list, rows);
    const words = `${rows.length} more figures`;
    if (summary.textContent !== words) summary.textContent = words;
  } };
}

interface Working { node: HTMLElement; show(steps: Step[]): void }

/** The working is listed when somebody opens it or prints: half of an answer's elements are in it. */
function makeWorking(sheet: string): Working {
  const list = make("ol", { class: "co-working" });
  const details = make("details", { class: "co-fold", "data-working": "" }, make("summary", {}, "Working and sources"), list);
  let steps: Step[] = [];
  let listed = "";
  const fill = (): void => {
    const now = JSON.stringify(steps);
    if (now !== listed) list.replaceChildren(...steps.map((s) => step(sheet, s)));
    listed = now;
  };
  details.addEventListener("toggle", fill);
  listing.set(details, fill);
  // A source listed inside a folded list is unfolded when someone goes to it.
  list.addEventListener("click", (event) => {
    const a = (event.target as HTMLElement).closest("a");
    const at = a && document.getElementById(decodeURIComponent(a.hash.slice(1)));
    const fold = at?.closest("details");
    if (fold) fold.open = true;
  });
  return { node: details, show: (now) => {
    steps = now;
    if (details.open || printing) fill();
  } };
}

function step(sheet: string, s: Step): HTMLElement {
  const li = make("li", {}, make("span", { class: "co-working__label" }, s.label));
  if (s.formula) li.append(" ", make("span", { class: "co-working__formula" }, s.formula));
  li.append(" ", make("span", { class: "co-working__value" }, s.value));
  if (s.source) {
    const words = s.locator ? `source, ${s.locator}` : "source";
    li.append(" ", make("a", { class: "co-working__source", href: sourceAddress(sheet, s.source), "data-source": s.source }, words));
  }
  return li;
}

const listing = new WeakMap<Element, () => void>();
let printing = false; // a worksheet that begins because the page is printed lists its working too
addEventListener("beforeprint", () => {
  printing = true;
  for (const d of document.querySelectorAll("[data-working]")) listing.get(d)?.();
}, true); // before print.ts numbers the sources
addEventListener("afterprint", () => (printing = false));

/** In the single file the ids on a page begin with the page's own. A worksheet inside a procedure leaves its sources to its own page. */
function sourceAddress(sheet: string, key: string): string {
  const here = `${sheet}-source-${key}`;
  if (document.getElementById(here)) return "#" + here;
  const id = sheet.slice(sheet.lastIndexOf("/") + 1);
  return `${pageAddress("worksheets/" + id)}${singleFile ? "/" : "#"}${id}-source-${key}`;
}

function tone(given: string): string {
  return ["good", "stop", "doubt", "info"].includes(given) ? given : "info";
}

export function parseSVG(text: string): Element | null {
  // Parsed as HTML, where an svg needs no namespace of its own; a parsed document runs nothing.
  const svg = new DOMParser().parseFromString(text, "text/html").querySelector("svg");
  return svg && document.importNode(svg, true);
}
