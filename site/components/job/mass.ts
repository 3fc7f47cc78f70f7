// The ledger adds up weighings. A weight is read here and nowhere else on the page: a plain number, a point or a comma
// before the decimals. A comma before three digits can mean thousands, so it is asked about and never guessed.

import type { LedgerEntry, Mass, MassUnit } from "./schema.ts";

/** Kilograms of one unit. The pound is 0.45359237 kg by definition (NIST SP 811, appendix B). */
const kilograms: Record<MassUnit, number> = { kg: 1, g: 0.001, lb: 0.45359237, oz: 0.45359237 / 16 };
export const massUnits = Object.keys(kilograms) as MassUnit[];

const most = 20000; // kg, as the refrigerant log worksheet allows

export type ReadMass = { kg: number } | { reason: string };

export function readMass(mass: Mass): ReadMass {
  const text = mass.value.trim();
  if (text === "") return { reason: "Mass: nothing is given. Type a number, such as 2.4." };
  if (/^\d{1,3},\d{3}$/.test(text) && !text.startsWith("0,")) {
    return { reason: `Mass: “${text}” can mean two things. Type ${text.replace(",", ".")} or ${text.replace(",", "")}.` };
  }
  if (!/^\d+([.,]\d+)?$/.test(text)) return { reason: `Mass: “${text}” is given. Allowed is a plain number without a sign, such as 2.4.` };
  const kg = Number(text.replace(",", ".")) * kilograms[mass.unit];
  if (!(kg > 0 && kg <= most)) return { reason: `Mass: ${text} ${mass.unit} is given. Allowed is more than 0 and up to ${most} kg.` };
  return { kg };
}

export interface Balance { refrigerant: string; in: number; out: number; unread: number } // kg; unread: entries without a weight that can be read

/** Sums in kg for each refrigerant, in the order they first stand in the ledger. Names that differ only in writing are one. */
export function balances(ledger: LedgerEntry[]): Balance[] {
  const found = new Map<string, Balance>();
  for (const e of ledger) {
    const name = e.refrigerant.toUpperCase().replace(/[\s-]/g, "");
    const b = found.get(name) ?? { refrigerant: e.refrigerant.trim(), in: 0, out: 0, unread: 0 };
    found.set(name, b);
    const m = readMass(e.mass);
    if ("reason" in m) b.unread++;
    else b[e.direction] += m.kg;
  }
  return [...found.values()];
}

/** Three decimals: a scale on site shows 5 g at best. Never "−0.000". */
export function kg(value: number): string {
  const rounded = Math.round(value * 1000) / 1000;
  return `${rounded < 0 ? "−" : ""}${Math.abs(rounded).toFixed(3)} kg`;
}
