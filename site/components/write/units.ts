// What a field to write down gets once somebody is near: the choice of its unit, buttons that its numeric pad lacks, and the
// place where something odd is said. What was typed stays as it was typed when the unit changes: only calc converts.

import { all, make } from "../../module/dom.ts";
import { near } from "../../module/near.ts";
import { pages } from "../../module/root.ts";
import { loadRecord, onJobChange, onOtherTab } from "../../module/store.ts";
import { readingsKey } from "../steps/steps.ts";
import { lettersButton, signButton } from "./keys.ts";
import { oddity } from "./oddity.ts";
import { unitsOf } from "./unit-list.ts";
import { aboutKey } from "./write.ts";

export function stepUnits(system: () => string): void {
  for (const page of pages()) {
    const id = page.dataset.page ?? "";
    const lists: string[] = [];
    const drawn: (() => void)[] = [];
    for (const shown of all(page, ".co-write__unit")) {
      const [number = "", list] = (shown.dataset.units ?? "").split("=");
      if (list) lists[Number(number)] = list;
      const begin = (): void => {
        const field = shown.parentElement?.querySelector("input");
        if (field) drawn.push(beside(field, shown, lists[Number(number || NaN)]));
        else near(step, begin); // app.js puts it back, near the same step
      };
      const step = shown.closest("[data-step]") ?? shown;
      near(step, begin);
    }
    const draw = (): void => drawn.forEach((d) => d());

    onJobChange(draw);
    onOtherTab((key) => {
      if (key === readingsKey(id) || key === aboutKey(id) || key === "system") draw();
    });
    page.addEventListener("changeout:cleared", draw);
    page.addEventListener("click", (event) => {
      if ((event.target as Element).closest("[data-system-set]")) draw();
    });

    /** Wires one field and returns what draws its unit anew. */
    function beside(field: HTMLInputElement, shown: HTMLElement, list?: string): () => void {
      const name = field.labels?.[0]?.textContent ?? "";
      const said = make("span", { class: "co-write__said", role: "status", id: `${field.id}-said` });
      shown.parentElement?.after(said);
      field.setAttribute("aria-describedby", `${shown.id} ${said.id}`);
      if (shown.dataset.keys === "sign") field.before(signButton(name, () => field));
      if (shown.dataset.keys === "letters") field.before(lettersButton(name, field));
      const select = list ? make("select", { class: "co-input__unit co-write__unit", id: shown.id, "aria-label": `Unit of ${name}` }) : null;
      const doubt = (): void => {
        said.textContent = oddity(field.value, select?.value ?? shown.textContent ?? "", !!select);
      };
      field.addEventListener("change", doubt);
      if (!select || !list) return () => undefined;
      const own = shown.textContent ?? "";
      select.append(...unitsOf(list, "").units.map((u) => new Option(u, u)));
      shown.replaceWith(select);
      select.addEventListener("change", () => {
        field.dispatchEvent(new Event("input", { bubbles: true })); // kept with the reading
        doubt();
      });
      const draw = (): void => {
        const write = field.dataset.write ?? "";
        const kept = (loadRecord(aboutKey(id))[write] ?? "").split("\t")[1] ?? "";
        // A reading without a unit was typed when the field had one unit alone.
        select.value = kept || (write in loadRecord(readingsKey(id)) ? own : unitsOf(list, system()).first);
        if (select.selectedIndex < 0) select.value = own;
      };
      draw();
      return draw;
    }
  }
}
