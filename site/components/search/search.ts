// The search itself: reads the index once, and gives it to every search box and to the panel that opens on any page.

import { root, singleFile } from "../../module/root.ts";
import { box } from "./box.ts";
import { quantities, reading } from "./index.ts";
import type { Index } from "./index.ts";
import type { Search } from "./open.ts";
import { openPanel } from "./panel.ts";

let index: Promise<Index> | null = null;

/** The index; a failure is forgotten, so that the next touch tries again. */
function bring(): Promise<Index> {
  index ??= load().then(inSlices).catch((error: unknown) => {
    index = null;
    throw error;
  });
  return index;
}

/** Reads in slices, so that a key pressed meanwhile shows at once. */
async function inSlices(text: string): Promise<Index> {
  const steps = reading(text);
  for (let began = performance.now(); ; ) {
    const { done, value } = steps.next();
    if (done) {
      readAmounts(value);
      return value;
    }
    if (performance.now() - began > 12) {
      await new Promise((go) => setTimeout(go));
      began = performance.now();
    }
  }
}

/** After the words, the amounts, fifty places at a time. */
function readAmounts(x: Index): void {
  quantities(x, 50);
  if (x.amountsTo < x.places.length) setTimeout(() => readAmounts(x));
}

async function load(): Promise<string> {
  const inside = document.getElementById("co-search");
  if (inside) return inside.textContent ?? "";
  const response = await fetch(root(document.documentElement.dataset.search ?? ""));
  const text = await response.text();
  // A portal that answers with a page of its own must not be read as an index.
  if (!response.ok || !text.startsWith("U\t")) throw new Error(String(response.status));
  return text;
}

export function search(): void {
  const attached = new WeakSet<HTMLFormElement>();
  const attach = (form: HTMLFormElement): void => {
    if (attached.has(form)) return;
    attached.add(form);
    box(form, bring);
  };
  (globalThis as { changeoutSearch?: Search }).changeoutSearch = { attach, open: () => openPanel(attach) };
  if (!singleFile) void bring().catch(() => undefined); // somebody has begun; the single file holds this script from the start
}
