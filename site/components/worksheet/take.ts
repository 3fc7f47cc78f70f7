// Readings that were written down in the steps further up: what a hand has typed once is not typed again. The page's template
// data-take lists them (build/internal/markup/take.go): field, input, row of a log, unit. Values come from the phone's storage,
// since what is far up a page may not be laid out.

import { all } from "../../module/dom.ts";
import { loadRecord } from "../../module/store.ts";
import { readingsKey } from "../steps/steps.ts";
import { aboutKey } from "../write/write.ts";
import { ownUnit } from "../write/oddity.ts";
import type { Entries } from "./entries.ts";
import type { Field } from "./fields.ts";
import { columnsOf, formatSeries } from "./series-text.ts";

export interface Taken { entries: Entries; said: string[] }

/** What the steps of the page hold for a worksheet; null when no step of the page is meant for it. */
export function taking(page: HTMLElement, worksheet: string): ((fields: Field[]) => Taken) | null {
  const list = page.querySelector<HTMLElement>(`template[data-take="${worksheet}"]`)?.dataset.from;
  if (!list) return null;
  return (fields) => {
    const readings = loadRecord(readingsKey(page.dataset.page ?? ""));
    const about = loadRecord(aboutKey(page.dataset.page ?? ""));
    const taken: Taken = { entries: { values: {}, units: {} }, said: [] };
    const logs = new Map<Field, { unit: string; rows: string[][] }>();
    for (const [write = "", input = "", row = "", declared = ""] of list.split(";").map((part) => part.split("|"))) {
      const value = readings[write]?.trim() ?? "";
      const field = fields.find((f) => f.id === input);
      if (value === "" || !field) continue;
      const unit = ownUnit(value, "") ? "" : about[write]?.split("\t")[1] || declared; // the one it was typed in
      if (row !== "") {
        const log = logs.get(field) ?? { unit: declared, rows: [] };
        log.rows.push([row, unit === declared ? value : `${value} ${unit}`.trim()]);
        logs.set(field, log);
        continue;
      }
      taken.entries.values[input] = value;
      const id = all<HTMLOptionElement>(field.box, "[data-unit] option").find((o) => o.textContent === unit)?.value;
      if (id) taken.entries.units[input] = id;
      else if (unit !== "" && unit !== declared) taken.entries.values[input] = `${value} ${unit}`; // calc reads it
      taken.said.push(`${field.label} ${value} ${unit}`.trim());
    }
    for (const [field, { unit, rows }] of logs) {
      const columns = columnsOf(field.box);
      const header = [columns[0], columns.find((c) => c.unit === unit)].map((c) => c?.id ?? "");
      taken.entries.values[field.id] = formatSeries(header, rows);
      taken.said.push(`${field.label} with ${rows.length} ${rows.length === 1 ? "row" : "rows"}`);
    }
    return taken;
  };
}
