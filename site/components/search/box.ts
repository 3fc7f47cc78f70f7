// One search box: a combobox with a listbox of links under it. Focus stays in the field while the arrow keys go through
// the list; a tap on a hit or Enter follows it. Results come as the person types.

import { make } from "../../module/dom.ts";
import { root, singleFile } from "../../module/root.ts";
import type { Index } from "./index.ts";
import { rank } from "./rank.ts";
import type { Hit } from "./rank.ts";

const most = 30;
const hint = "Words, short forms, or an amount with its unit: no oil, EEV, 75 psig.";
const kinds: Record<string, string> = { s: "Step", y: "Step", d: "Decision", h: "Section", g: "Word", f: "To write down", w: "Timer", i: "Worksheet entry", t: "Table", c: "Caution" };
const pageKinds: Record<string, string> = { p: "Procedure", w: "Worksheet", t: "Table" };

export function box(form: HTMLFormElement, index: () => Promise<Index>): void {
  const input = form.querySelector("input");
  const count = form.querySelector<HTMLElement>("[data-find-count]");
  const list = form.querySelector<HTMLElement>("[data-find-hits]");
  if (!input || !count || !list) return;
  list.id = input.id + "-hits";
  list.setAttribute("role", "listbox");
  list.setAttribute("aria-label", "Places found");
  for (const [name, value] of Object.entries({ role: "combobox", "aria-expanded": "false", "aria-controls": list.id, "aria-autocomplete": "list", "aria-haspopup": "listbox" })) input.setAttribute(name, value);

  let chosen = -1;
  const options = (): HTMLElement[] => Array.from(list.children) as HTMLElement[];
  const choose = (n: number): void => {
    const all = options();
    all[chosen]?.setAttribute("aria-selected", "false");
    chosen = n;
    const option = all[n];
    if (option) {
      option.setAttribute("aria-selected", "true");
      input.setAttribute("aria-activedescendant", option.id);
      option.scrollIntoView({ block: "nearest" });
    } else input.removeAttribute("aria-activedescendant");
  };
  const show = (on: boolean): void => {
    list.hidden = !on;
    input.setAttribute("aria-expanded", String(on));
    if (!on) choose(-1);
  };
  let shown: string | null = null; // what the list answers
  const search = async (): Promise<void> => {
    const asked = input.value.trim();
    if (asked === shown) return void show(list.childElementCount > 0);
    let x: Index;
    try {
      x = await index();
    } catch {
      count.textContent = "The search needs the list of pages, and it could not be loaded. Use the contents.";
      return;
    }
    if (input.value.trim() !== asked) return; // a later key is already on its way
    shown = asked;
    choose(-1);
    const { hits, all, partly } = asked === "" ? { hits: [], all: 0, partly: false } : rank(x, asked, most);
    list.replaceChildren(...hits.map((hit, n) => line(x, hit, `${list.id}-${n}`)));
    count.textContent = asked === "" ? hint : said(all, partly);
    show(hits.length > 0);
  };

  input.addEventListener("input", () => void search());
  input.addEventListener("focus", () => void search());
  form.addEventListener("submit", (event) => {
    event.preventDefault();
    // Without a choice the list takes the focus: a phone then puts its keyboard away, and the next Enter follows the first hit.
    void search().then(() => {
      const option = options()[Math.max(0, chosen)];
      if (list.hidden || !option) input.focus();
      else if (chosen >= 0) option.click();
      else option.focus();
    });
  });
  form.addEventListener("keydown", (event) => {
    const all = options();
    const focused = all.indexOf(document.activeElement as HTMLElement);
    const from = focused >= 0 ? focused : chosen;
    if ((event.key === "ArrowDown" || event.key === "ArrowUp") && all.length > 0 && (event.target === input || focused >= 0)) {
      event.preventDefault();
      const step = event.key === "ArrowDown" ? 1 : -1;
      if (list.hidden) show(true);
      // Past either end the field itself is next, as typing goes on there.
      const to = from + step < -1 ? all.length - 1 : from + step >= all.length ? -1 : from + step;
      if (focused >= 0) input.focus();
      choose(to);
    } else if (event.key === "Escape" && !form.closest("dialog")) {
      if (!list.hidden) event.preventDefault();
      if (list.hidden) input.value = "";
      show(false);
      count.textContent = "";
      input.focus();
    }
  });
  void search();
}

function said(all: number, partly: boolean): string {
  if (all === 0) return "Nothing found. Try one shorter word.";
  const places = all === 1 ? "1 place" : `${all} places`;
  const first = all > most ? `, the best ${most} shown` : "";
  return partly ? `No place holds every word. ${places} with some of them${first}` : `${places} found${first}`;
}

function line(x: Index, { place, marks }: Hit, id: string): HTMLElement {
  const page = x.pages[place.page];
  if (!page) throw new Error("search index");
  const of = pageKinds[page.kind] ?? "Page";
  const kind = place.kind === "P" ? of : place.kind === "x" ? of : kinds[place.kind] ?? "Section";
  const where = [kind, page.stage ? `stage ${page.stage}` : "", place.kind === "P" ? "" : page.title].filter(Boolean).join(", ");
  return make("a", { class: "co-row", role: "option", id, tabindex: "-1", "aria-selected": "false", href: address(page.address, place.id) },
    make("span", { class: "co-find__text" }, ...marked(place.text, marks)),
    " ", make("span", { class: "co-find__where" }, where));
}

function address(page: string, id: string): string {
  if (singleFile) return "#" + page + (id && "/" + id);
  return root(page + ".html" + (id && "#" + id));
}

/** The text with what was found in <mark>. A long text is cut round the first mark. */
function marked(text: string, marks: [number, number][]): (Node | string)[] {
  const long = 170; // four lines on a small phone
  let from = 0;
  let to = text.length;
  if (to > long) {
    const first = marks[0]?.[0] ?? 0;
    from = first > long * 0.6 ? text.lastIndexOf(" ", first - long * 0.3) + 1 : 0;
    to = from + long < text.length ? text.lastIndexOf(" ", from + long) : text.length;
    if (to <= from) to = Math.min(text.length, from + long);
  }
  const parts: (Node | string)[] = [];
  if (from > 0) parts.push("… ");
  let at = from;
  for (const [start, end] of marks) {
    if (start < at || end > to) continue;
    parts.push(text.slice(at, start), make("mark", {}, text.slice(start, end)));
    at = end;
  }
  parts.push(text.slice(at, to));
  if (to < text.length) parts.push(" …");
  return parts;
}
