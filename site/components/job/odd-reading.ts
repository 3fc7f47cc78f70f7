import { past, unitIn } from "../write/oddity.ts";
import type { Wrong } from "./form.ts";

/** A reading that nobody could use later: no figure before a unit, a second unit, a pressure that is neither gauge nor absolute. */
export function oddReading(what: string, value: string, unit: string): Wrong | null {
  const difference = /\b(drop|differ\w*|across|vacuum)\b/i.test(what);
  if (unit !== "" && !/\d/.test(value) && !past.test(value)) return { name: "value", reason: `Value: “${value}” is given, in ${unit}. Allowed is a figure, or OL. Words stand without a unit.` };
  if (unit !== "" && unitIn(value) !== undefined) return { name: "value", reason: `Value: “${value}” is given, in ${unit}. Allowed is the figure alone; the unit has its own field.` };
  if (unit === "" && /\bpressure\b/i.test(what) && /^[\d.,\s-]+$/.test(value)) return { name: "unit", reason: "Unit: nothing is given for a pressure. Write one, with gauge or absolute, such as bar gauge." };
  if (!difference && /^(psi|bar|kpa|mpa)$/i.test(unit)) return { name: "unit", reason: `Unit: “${unit}” is given. Say gauge or absolute, such as ${unit} gauge.` };
  return null;
}
