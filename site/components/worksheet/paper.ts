// A worksheet on paper. What its working cites gets the number of a line in a list of sources: the list of its own page, or,
// inside a procedure, one made for the print. A result can be printed alone.

import { all, make } from "../../module/dom.ts";
import { beginAll } from "../../module/near.ts";
import { printAs } from "../../module/print-as.ts";
import { pageAddress, root, singleFile } from "../../module/root.ts";

const longest = 5000; // ms that a print waits for answers and sources
const shownPage = "[data-page]:not([hidden])";

/** Called once, after answer.ts was loaded: before a print that lists the working, and this numbers it. */
export function worksheetsForPrint(): void {
  let undo: (() => void)[] = [];
  addEventListener("beforeprint", () => {
    restore();
    for (const sheet of all(document, `${shownPage} [data-worksheet]`)) cite(sheet);
  }, true);
  addEventListener("afterprint", restore);
  // The button of the page, pressed before somebody has come near every worksheet.
  document.addEventListener("click", (event) => {
    if (!(event.target as Element).closest("[data-print]") || !document.querySelector(`${shownPage} [data-worksheet]`)) return;
    event.stopPropagation();
    beginAll();
    void settled(document).then(() => print());
  }, true);
  document.addEventListener("changeout:answer", (event) => {
    if ((event.target as HTMLElement).dataset.heading !== "2") void bibliography(); // paper cannot wait for it
  });

  function restore(): void {
    for (const back of undo) back();
    undo = [];
  }

  function cite(sheet: HTMLElement): void {
    const cites = all<HTMLAnchorElement>(sheet, ".co-working__source");
    const here = all(sheet, ".co-answer .co-working__source");
    let list = sheet.querySelector<HTMLElement>(".co-worksheet__sources .co-sources__list");
    if (list && here.length > 0) fewerEquations(list, here.map((a) => a.dataset.source ?? ""));
    if (!list && here.length > 0) list = listOf(sheet, here.map((a) => a.dataset.source ?? ""));
    const lines = Array.from(list?.children ?? []).filter((li) => !(li as HTMLElement).hidden);
    for (const a of cites) {
      const n = lines.findIndex((li) => (li as HTMLElement).dataset.cited === a.dataset.source && a.dataset.source || li.id === decodeURIComponent(a.hash.slice(1)));
      if (n >= 0) add(a, make("span", {}, ` [${n + 1}]`));
    }
  }

  function add(to: Element, e: HTMLElement): void {
    to.append(e);
    undo.push(() => e.remove());
  }

  /** An answer for one refrigerant is printed without the equations of the hundred others. */
  function fewerEquations(list: HTMLElement, cited: string[]): void {
    const uncited = all(list, "[data-equation]").filter((li) => !cited.some((key) => li.id.endsWith(`-source-${key}`)));
    for (const li of uncited) {
      li.hidden = true;
      undo.push(() => (li.hidden = false));
    }
    if (uncited.length > 0 && list.parentElement) add(list.parentElement, make("p", {}, `${uncited.length} equations of state that this answer does not cite by name, those of a blend’s components among them, are listed on this page of the handbook.`));
  }

  /** What the answer of a worksheet inside a procedure cites, in full. Without the bibliography, where it is. */
  function listOf(sheet: HTMLElement, cited: string[]): HTMLElement | null {
    const list = make("ol", { class: "co-sources__list" });
    let missing = false;
    for (const key of new Set(cited)) {
      const line = entry(key);
      if (line) list.append(line);
      else missing = true;
    }
    const page = pageAddress("worksheets/" + (sheet.dataset.worksheet ?? ""));
    add(sheet.querySelector(".co-answer") ?? sheet, make("div", { class: "co-worksheet__cited" }, make("p", { class: "co-sources__title" }, "Sources of this answer"), list,
      missing ? make("p", {}, `The full entries are on this worksheet’s own page: ${singleFile ? page.slice(1) : page}`) : null));
    return list;
  }
}

let text = ""; // the page of all sources, as it came
let found: Document | null = null;

/** Gets the page of all sources, once. The single file holds it. */
async function bibliography(): Promise<void> {
  if (singleFile || text) return;
  try {
    const response = await fetch(root("about/sources.html"), { priority: "low" });
    if (response.ok) text = await response.text();
  } catch {
    // The paper then says where the entries are, and the next answer tries again.
  }
}

/** A line of the bibliography, without the pages that cite it. Parsed at the first print, since most answers never go to paper. */
function entry(key: string): HTMLElement | null {
  if (text) found ??= new DOMParser().parseFromString(text, "text/html");
  const at = singleFile ? document.getElementById(`about/sources/source-${key}`) : found?.getElementById(`source-${key}`);
  if (!at) return null;
  const line = make("li", { "data-cited": key });
  for (const node of at.childNodes) {
    if (node.nodeName === "BR") break;
    line.append(document.importNode(node, true));
  }
  return line;
}

/** Kept once no answer is on its way and the sources are there, but not for ever. */
async function settled(under: ParentNode): Promise<void> {
  const end = performance.now() + longest;
  const late = new Promise((done) => setTimeout(done, longest));
  if (under.querySelector('[data-worksheet]:not([data-heading="2"])')) await Promise.race([bibliography(), late]);
  while (performance.now() < end && under.querySelector("[data-asked]")) await new Promise((done) => setTimeout(done, 50));
}

/** Prints one answer with its entries, working, limits and sources, and nothing else of the page. */
export async function printResult(section: HTMLElement): Promise<void> {
  const page = section.closest<HTMLElement>("[data-page]");
  if (!page) return;
  if (section.dataset.heading !== "2") await bibliography();
  await settled(section.parentElement ?? section);
  if (!section.querySelector(".co-answer__title")) return; // meanwhile the entries give none
  const marked = [section, ...all(section, "[data-input]").filter(empty)];
  for (const e of marked) e.dataset.alone = e === section ? "" : "empty";
  printAs(page, "result", () => {
    for (const e of marked) delete e.dataset.alone;
  });
}

/** A field that the answer did without. */
function empty(box: HTMLElement): boolean {
  return all<HTMLInputElement>(box, "[data-value]").every((e) => e.type === "radio" ? !e.checked : e.value === "");
}
