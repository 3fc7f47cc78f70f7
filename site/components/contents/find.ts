// Search over pages, their steps and headings, worksheets, tables and words, from one small index, with or without signal.

import { all, make } from "../../module/dom.ts";
import { root, singleFile } from "../../module/root.ts";
import { rank } from "./rank.ts";
import type { Entry, Hit } from "./rank.ts";

const kinds: Record<string, string> = { procedure: "Procedure", worksheet: "Worksheet", table: "Table", reference: "Page", term: "Word" };

export function find(): void {
  let index: Promise<Entry[]> | null = null;
  const entries = (): Promise<Entry[]> => {
    index ??= read().catch((error: unknown) => {
      index = null;
      throw error;
    });
    return index;
  };
  for (const box of all<HTMLFormElement>(document, "[data-find]")) {
    const input = box.querySelector("input");
    const count = box.querySelector<HTMLElement>("[data-find-count]");
    const list = box.querySelector<HTMLElement>("[data-find-hits]");
    if (!input || !count || !list) continue;
    box.hidden = false;
    const search = async (): Promise<void> => {
      const asked = input.value;
      if (asked.trim() === "") {
        list.hidden = true;
        count.textContent = "";
        return;
      }
      let hits: Hit[];
      try {
        hits = rank(await entries(), asked, 30);
      } catch {
        count.textContent = "The search needs the list of pages, and it could not be loaded. Use the contents.";
        return;
      }
      if (input.value !== asked) return;
      count.textContent = hits.length === 0 ? "Nothing found. Try one shorter word." : hits.length === 1 ? "1 place found" : `${hits.length}${hits.length === 30 ? " or more" : ""} places found`;
      list.replaceChildren(...hits.map(line));
      list.hidden = hits.length === 0;
    };
    input.addEventListener("input", () => void search());
    input.addEventListener("focus", () => void entries().catch(() => undefined), { once: true });
    box.addEventListener("submit", (event) => {
      event.preventDefault();
      void search().then(() => (list.hidden ? input : list.querySelector("a"))?.focus());
    });
    if (input.value) void search();
  }
}

async function read(): Promise<Entry[]> {
  const inside = document.getElementById("co-search");
  if (inside) return JSON.parse(inside.textContent ?? "[]") as Entry[];
  const response = await fetch(root(document.documentElement.dataset.search ?? ""));
  if (!response.ok) throw new Error(String(response.status));
  return (await response.json()) as Entry[];
}

function line({ entry, part }: Hit): HTMLElement {
  const address = part ? entry.u + (singleFile ? "/" : "#") + part[0] : entry.u;
  const kind = kinds[entry.k] ?? "Page";
  const where = part ? (entry.n ? `Stage ${entry.n}, ${entry.t}` : entry.t) : entry.n ? `${kind}, stage ${entry.n}` : kind;
  return make("li", {}, make("a", { class: "co-row", href: singleFile ? address : root(address) },
    make("span", { class: "co-row__title" }, part ? part[1] : entry.t),
    " ", make("span", { class: "co-find__where" }, where)));
}
