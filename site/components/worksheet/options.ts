// A long list of choices waits as data inside its select: laying out 150 refrigerants costs a slow phone as much as the
// rest of the form. One that is chosen is put in alone; the whole list comes when somebody goes to it, or the page is idle.

import { all, make } from "../../module/dom.ts";
import { afterwards } from "../../module/begins.ts";
import { dataIn } from "./data.ts";

interface Shelf { label: string; options: [id: string, label: string][] }

const waiting = (select: HTMLSelectElement): Shelf[] | null => dataIn<Shelf[]>(select, "choices");

/** Puts the whole list in. */
export function allOptions(select: HTMLSelectElement): void {
  const shelves = waiting(select);
  if (!shelves) return;
  const chosen = select.value;
  for (const lone of all(select, "[data-lone]")) lone.remove();
  select.querySelector("script")?.replaceWith(...shelves.map((s) => make("optgroup", { label: s.label }, ...s.options.map(([id, label]) => new Option(label, id)))));
  select.value = chosen;
}

/** Puts one choice in, if the list that waits has it. */
export function oneOption(select: HTMLSelectElement, value: string): void {
  if (Array.from(select.options).some((o) => o.value === value)) return;
  const found = waiting(select)?.flatMap((s) => s.options).find(([id]) => id === value);
  if (found) select.append(make("option", { value, "data-lone": "" }, found[1]));
}

export function whenNeeded(select: HTMLSelectElement): void {
  if (!waiting(select)) return;
  const fill = (): void => allOptions(select);
  for (const sign of ["pointerdown", "focusin", "keydown"]) select.addEventListener(sign, fill, { once: true });
  afterwards(() => {
    if ("requestIdleCallback" in window) requestIdleCallback(fill, { timeout: 4000 });
    else setTimeout(fill, 1000);
  });
}
