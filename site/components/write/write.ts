// Fields to write down: what is typed is kept at each key press, in this browser, for this page.

import { loadRecord, onJobChange, onOtherTab, onUnsaved, saveRecord } from "../../module/store.ts";
import { all, make } from "../../module/dom.ts";
import { pages } from "../../module/root.ts";
import { readingsKey } from "../steps/steps.ts";
import { ownUnit } from "./oddity.ts";

/** What is kept about a reading: label, unit, time. */
export const aboutKey = (page: string): string => `about:${page}`;

export function write(): void {
  for (const page of pages()) {
    const key = readingsKey(page.dataset.page ?? "");
    const fields = all<HTMLInputElement>(page, "[data-write]");
    if (fields.length === 0) continue;
    const draw = (): void => {
      const readings = loadRecord(key);
      for (const f of fields) {
        const kept = readings[f.dataset.write ?? ""] ?? "";
        if (f !== document.activeElement && f.value !== kept) f.value = kept; // writing what stands there costs a layout
      }
    };
    for (const f of fields) {
      f.addEventListener("input", () => {
        const readings = loadRecord(key);
        const name = f.dataset.write ?? "";
        if (f.value === "") delete readings[name];
        else readings[name] = f.value;
        saveRecord(key, readings);
        const about = loadRecord(aboutKey(page.dataset.page ?? ""));
        const unit = unitOf(f.parentElement?.querySelector<HTMLElement>(".co-write__unit"));
        about[name] = [f.labels?.[0]?.textContent ?? "", ownUnit(f.value, unit) ? "" : unit, new Date().toISOString()].join("\t");
        saveRecord(aboutKey(page.dataset.page ?? ""), about);
      });
    }
    onOtherTab((changed) => {
      if (changed === key) draw();
    });
    onJobChange(draw);
    page.addEventListener("changeout:cleared", draw);
    draw();
  }
  onUnsaved((sentence) => {
    const header = document.querySelector(".co-header");
    header?.classList.add("co-header--says");
    header?.append(make("p", { class: "co-header__state", role: "alert" }, sentence));
  });
}

/** The unit behind a field: the one chosen (units.ts), or the only one. */
const unitOf = (shown: HTMLElement | null | undefined): string => (shown instanceof HTMLSelectElement ? shown.value : shown?.textContent ?? "");
