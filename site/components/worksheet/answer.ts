// Draws an answer. Everything shown comes from the module's reply; text is set as text, charts are parsed as SVG.

import { make } from "../../module/dom.ts";
import { pageAddress, singleFile } from "../../module/root.ts";
import type { Reply } from "../../module/wire.ts";

export interface OutputUnits { label: string; units: { id: string; label: string; system: string }[] }

/** Draws the reply into the box. pick is called with an output and the unit a person wants it in. */
export function drawAnswer(box: HTMLElement, sheet: string, heading: string, reply: Reply, units: Map<string, OutputUnits>, pick: (output: string, unit: string) => void): void {
  const wasOpen = box.querySelector<HTMLDetailsElement>("[data-working]")?.open ?? false;
  const focused = (document.activeElement as HTMLElement | null)?.dataset.pick;
  const parts: Node[] = [make(heading === "2" ? "h3" : "h4", { class: "co-answer__title", tabindex: "-1" }, "Answer")];

  if (reply.verdict) {
    parts.push(make("div", { class: `co-verdict co-verdict--${tone(reply.verdict.tone)}`, "data-verdict": reply.verdict.id },
      make("p", { class: "co-verdict__title" }, reply.verdict.title),
      make("p", { class: "co-verdict__text" }, reply.verdict.text)));
  }
  if (reply.outputs.length > 0) {
    const list = make("dl", { class: "co-results" });
    for (const o of reply.outputs) {
      list.append(make("div", { class: o.main ? "co-result co-result--main" : "co-result", "data-output": o.id }, make("dt", {}, o.label), figure(o.id, o.label, o.text, units.get(o.id), pick)));
    }
    parts.push(list);
  }
  if (reply.warnings.length > 0) parts.push(notes("Take care", reply.warnings, "co-notes co-notes--warn"));
  if (reply.advice.length > 0) parts.push(notes("What to do", reply.advice, "co-notes"));
  for (const c of reply.charts) {
    const svg = parseSVG(c.svg);
    if (svg) parts.push(make("figure", { class: "co-chart-frame" }, make("figcaption", {}, c.title), svg));
  }
  if (reply.steps.length > 0) parts.push(working(sheet, reply, wasOpen));

  box.replaceChildren(...parts);
  if (focused) box.querySelector<HTMLElement>(`[data-pick="${CSS.escape(focused)}"]`)?.focus();
}

/** No answer is said in words; it never looks like a figure. */
export function drawNoAnswer(box: HTMLElement, reason: string): void {
  const p = make("p", { class: "co-answer__empty" }, make("strong", {}, "No answer yet"), reason);
  if (box.firstElementChild?.className === "co-answer__empty" && box.textContent === p.textContent) return;
  box.replaceChildren(p);
}

function figure(id: string, label: string, text: string, known: OutputUnits | undefined, pick: (output: string, unit: string) => void): HTMLElement {
  // Labels may differ in their spaces from the text; the longest fitting unit wins ("kPa gauge" before "gauge").
  const plain = text.replace(/\u00a0|\u202f/g, " ");
  const fits = (known?.units ?? []).filter((u) => u.label !== "" && plain.endsWith(" " + u.label)).sort((a, b) => b.label.length - a.label.length)[0];
  if (!fits) return make("dd", {}, make("span", { class: "co-result__value" }, text));
  const number = make("span", { class: "co-result__value" }, plain.slice(0, -fits.label.length - 1));
  if (!known || known.units.length < 2) return make("dd", {}, number, " ", make("span", { class: "co-result__unit" }, fits.label));
  const select = make("select", { class: "co-input__unit", "aria-label": `Unit of ${label}`, "data-pick": id });
  for (const u of known.units) select.append(new Option(u.label, u.id, false, u.id === fits.id));
  select.addEventListener("change", () => pick(id, select.value));
  return make("dd", {}, number, " ", select);
}

function notes(title: string, list: string[], classes: string): HTMLElement {
  return make("div", {}, make("p", { class: "co-notes__title" }, title), make("ul", { class: classes }, ...list.map((s) => make("li", {}, s))));
}

function working(sheet: string, reply: Reply, open: boolean): HTMLElement {
  const list = make("ol", { class: "co-working" });
  for (const s of reply.steps) {
    const li = make("li", {}, make("span", { class: "co-working__label" }, s.label));
    if (s.formula) li.append(" ", make("span", { class: "co-working__formula" }, s.formula));
    li.append(" ", make("span", { class: "co-working__value" }, s.value));
    if (s.source) {
      const words = s.locator ? `source, ${s.locator}` : "source";
      li.append(" ", make("a", { class: "co-working__source", href: sourceAddress(sheet, s.source), "data-source": s.source }, words));
    }
    list.append(li);
  }
  const details = make("details", { class: "co-fold", "data-working": "" }, make("summary", {}, "Working and sources"), list);
  details.open = open;
  // A source listed inside a folded list is unfolded when someone goes to it.
  list.addEventListener("click", (event) => {
    const a = (event.target as HTMLElement).closest("a");
    const at = a && document.getElementById(decodeURIComponent(a.hash.slice(1)));
    const fold = at?.closest("details");
    if (fold) fold.open = true;
  });
  return details;
}

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
