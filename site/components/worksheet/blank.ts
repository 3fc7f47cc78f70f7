// A blank form for paper: everything the worksheet asks and gives, with lines to write on. It is made from the page when
// somebody asks for it, so it costs no page a byte, and it shows the units that the person works in.

import { all, make } from "../../module/dom.ts";
import type { Child } from "../../module/dom.ts";
import type { OutputUnits } from "./answer.ts";
import { allOptions } from "./options.ts";
import { columnsOf } from "./series-text.ts";
import { printAs } from "../../module/print-as.ts";

const fewOptions = 12; // a longer list is a line to write on
const rows = 5; // of an empty table
const logRows = 16; // of one that goes by time
const head = ["Date and time", "Site and unit", "Done by", "Instruments, numbers, last calibrated"];

/** Puts the sheet into the page in place of everything else that would be printed, and prints. */
export function printBlank(section: HTMLElement, system: string, outputs: Map<string, OutputUnits>): void {
  const page = section.closest<HTMLElement>("[data-page]");
  if (!page) return;
  const sheet = blankSheet(section, page, system, outputs);
  page.querySelector(".co-blank")?.remove();
  page.append(sheet);
  printAs(page, "blank", () => sheet.remove());
}

export function blankSheet(section: HTMLElement, page: HTMLElement, system: string, outputs: Map<string, OutputUnits>): HTMLElement {
  const inputs = all(section, "[data-input]");
  all<HTMLSelectElement>(section, "select[data-value]").forEach(allOptions);
  const text = (under: ParentNode, selector: string): string => under.querySelector(selector)?.textContent?.trim() ?? "";
  const list = (title: string, items: string[], more = ""): Child => items.length === 0 ? null
    : make("div", { class: `co-blank__small ${more}` }, make("h2", {}, title), make("ul", {}, ...items.map((i) => make("li", {}, i))));
  return make("article", { class: "co-blank" },
    make("h1", {}, section.dataset.title ?? ""),
    make("p", { class: "co-blank__purpose" }, text(page, ".co-title__summary")),
    make("div", { class: "co-blank__grid" }, ...head.map((h) => field(h, [line()]))),
    ...all(section, ".co-caution").map((c) => make("p", { class: "co-blank__caution" },
      make("b", {}, text(c, ".co-caution__word"), " "), ["hazard", "consequence", "avoid"].map((p) => text(c, `.co-caution__${p}`)).join(" "))),
    list("When not to rely on it", all(section, ".co-limits li").map((li) => li.textContent ?? "")),
    make("h2", {}, "Entries"),
    make("div", { class: "co-blank__grid" }, ...inputs.map((box) => input(box, inputs, system))),
    make("h2", {}, "Result"),
    make("div", { class: "co-blank__grid co-blank__grid--short" }, field("Verdict", [line()]),
      ...[...outputs.values()].map((o) => written(o.label, o.units, system)),
      field("What was done", [line()])),
    list("Sources", [...all(section, ".co-worksheet__sources li:not([data-equation])").map(sourceText),
      ...(section.querySelector("[data-equation]") ? ["The equations of state of the refrigerants are listed on this worksheet’s page of the handbook."] : [])], "co-blank__sources"));
}

function input(box: HTMLElement, inputs: HTMLElement[], system: string): HTMLElement {
  const { kind = "", label = "" } = box.dataset;
  const name = label + ("optional" in box.dataset ? " (if known)" : "");
  const notes = [onlyIf(box.dataset.when ?? "", inputs), box.querySelector(".co-input__help")?.textContent ?? ""];
  if (kind === "choice") {
    const options = optionsOf(box);
    return field(name, options.length > fewOptions ? [line()] : options.map((o) => make("span", { class: "co-blank__option" }, make("i", { class: "co-blank__box" }), " ", o.label)), notes);
  }
  if (kind === "series") {
    const declared = columnsOf(box);
    const columns = declared.map((c) => [c.label, system === "ip" && c.ipUnit ? c.ipUnit : c.unit].filter((t) => t !== "").join(", "));
    const table = make("table", {}, make("thead", {}, make("tr", {}, ...columns.map((c) => make("th", { scope: "col" }, c)))),
      make("tbody", {}, ...Array.from({ length: /^(time|date)/.test(declared[0]?.id ?? "") ? logRows : rows }, () => make("tr", {}, ...columns.map(() => make("td"))))));
    const f = field(name, [table], notes);
    f.classList.add("co-blank__field--wide");
    return f;
  }
  const units = all<HTMLOptionElement>(box, "select[data-unit] option").map((o) => ({ label: o.textContent ?? "", system: o.dataset.system ?? "", bounds: o.dataset.bounds ?? "" }));
  const only = box.querySelector(".co-input__unit--only")?.textContent ?? "";
  notes.push(units.length > 0 ? fitting(units, system)[0]?.bounds ?? "" : box.querySelector("[data-bounds-shown]")?.textContent ?? "");
  return units.length > 0 ? written(name, units, system, notes) : field(name, [line(), " ", only], notes);
}

/** A line to write on. The units of the person's system are boxes to tick; one alone is simply written. */
function written(name: string, units: { label: string; system: string }[], system: string, notes: string[] = []): HTMLElement {
  const fit = fitting(units, system);
  if (fit.length < 2) return field(name, [line(), " ", fit[0]?.label ?? ""], notes);
  const f = field(name, [line()], notes);
  f.querySelector(".co-blank__line")?.after(make("div", { class: "co-blank__units" }, ...fit.map((u) => make("span", {}, make("i", { class: "co-blank__box" }), " ", u.label))));
  return f;
}

/** A source without its address and without how it was read: paper shows what it is, the page has the rest. */
function sourceText(item: HTMLElement): string {
  const copy = item.cloneNode(true) as HTMLElement;
  for (const e of all(copy, "a, .co-sources__read")) e.remove();
  return (copy.textContent ?? "").replace(/[\s.]+$/, ".");
}

function fitting<U extends { system: string }>(units: U[], system: string): U[] {
  const own = units.filter((u) => u.system === system);
  const fit = own.length > 0 ? own : units.filter((u) => u.system === "");
  return fit.length > 0 ? fit : units;
}

function optionsOf(box: HTMLElement): { id: string; label: string }[] {
  const radios = all<HTMLInputElement>(box, "input[type=radio]").map((r) => ({ id: r.value, label: r.parentElement?.textContent?.trim() ?? "" }));
  return radios.length > 0 ? radios : all<HTMLOptionElement>(box, "select[data-value] option").map((o) => ({ id: o.value, label: o.textContent ?? "" })).filter((o) => o.id !== "");
}

/** "method=weight|both" as a person says it. */
function onlyIf(when: string, inputs: HTMLElement[]): string {
  if (when === "") return "";
  return "Only for " + when.split("&").map((clause) => {
    const [id = "", wanted = ""] = clause.split("=");
    const other = inputs.find((i) => i.dataset.input === id);
    const labels = wanted.split("|").map((w) => (other && optionsOf(other).find((o) => o.id === w)?.label) ?? w);
    return `${other?.dataset.label ?? id}: ${labels.join(" or ")}`;
  }).join("; ") + ".";
}

function field(label: string, writing: Child[], notes: string[] = []): HTMLElement {
  const small = notes.filter((n) => n !== "").join(" ");
  return make("div", { class: "co-blank__field" }, make("p", {}, make("b", {}, label)), make("div", { class: "co-blank__line" }, ...writing), small ? make("p", { class: "co-blank__note" }, small) : null);
}

function line(): HTMLElement {
  return make("i", { class: "co-blank__rule" });
}
