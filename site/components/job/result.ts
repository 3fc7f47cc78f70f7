// Turns a worksheet's answer into what the job holds.

import type { Answer } from "./load.ts";
import type { Result } from "./schema.ts";

/** The answer as the job holds it. A number that is none is null, never NaN. */
export function resultOf(a: Answer, id: string, time: string, version: string): Result {
  return {
    id, worksheet: a.worksheet, title: a.title, page: a.page, system: a.system, time, version, note: "",
    inputs: a.inputs.map((i) => ({ id: i.id, label: i.label, text: i.text, unit: i.unit, shown: i.shown ?? "" })),
    outputs: a.outputs.map((o) => {
      const si = o.value.trim() === "" ? NaN : Number(o.value);
      return { id: o.id, label: o.label, si: Number.isFinite(si) ? si : null, siUnit: Number.isFinite(si) ? o.unit : "", text: o.text, main: o.main };
    }),
    verdict: a.verdict && { id: a.verdict.id, tone: a.verdict.tone, title: a.verdict.title, text: a.verdict.text },
    warnings: a.warnings,
  };
}
