// The lists of a job that are typed in by hand: what each asks and how an entry reads.

import { make } from "../../module/dom.ts";
import { words } from "../report/evidence.ts";
import type { Kind } from "./entries.ts";
import { count, today, when } from "./form.ts";
import { oddReading } from "./odd-reading.ts";
import { balances, kg, massUnits, readMass } from "./mass.ts";
import type { Job, MassUnit } from "./schema.ts";

const said = (values: Record<string, string>, name: string): string => (values[name] ?? "").trim();

export const failures: Kind<"failures"> = {
  part: "failures",
  title: "History of failures",
  count: (n) => count(n, "entry", "entries"),
  empty: "Write down each failure of this circuit, the oldest first. Two in a row mean that a cause is still there.",
  send: "Add the failure",
  asks: () => [
    { name: "date", label: "When", kind: "text", help: "As exactly as somebody knows, such as 2026-08-14 or summer 2024.", most: 100 },
    { name: "what", label: "What failed, and what was done", kind: "long" },
    { name: "told", label: "Who was told", kind: "text", help: "Their part in the job is enough, such as the owner." },
  ],
  blank: () => ({}),
  values: (f) => ({ date: f.date, what: f.what, told: f.told }),
  item: (id, v) => (said(v, "what") === "" ? { name: "what", reason: "What failed: nothing is given. Write at least a few words." } : { id, date: said(v, "date"), what: said(v, "what"), told: said(v, "told") }),
  lines: (f) => [f.what, f.date, f.told && `Told: ${f.told}`],
};

export const readings: Kind<"readings"> = {
  part: "readings",
  title: "Readings",
  count: (n) => count(n, "reading", "readings"),
  empty: "A reading that stands on no page and in no worksheet: write it here, with the instrument.",
  send: "Add the reading",
  asks: (job) => [
    { name: "what", label: "What, and where", kind: "text", help: "Such as suction pressure at the service port." },
    { name: "value", label: "Value", kind: "reading" },
    { name: "unit", label: "Unit", kind: "text", help: "A pressure says gauge or absolute.", suggest: ["kPa gauge", "bar gauge", "psi gauge", "micron", "Pa", "°C", "°F", "K", "A", "V", "MΩ", "Ω", "Hz", "kg", "lb"] },
    { name: "instrument", label: "Instrument", kind: "text", help: "Which one, and when it was last checked.", suggest: [...new Set(job.readings.map((r) => r.instrument).filter((i) => i !== ""))] },
    { name: "step", label: "Belongs to", kind: "choice", options: [["", "No step"], ...Object.entries(job.ticks).map(([place, t]): [string, string] => [place, t.text.slice(0, 80) || words(place.split("#")[1] ?? place)])] },
  ],
  blank: (job) => ({ instrument: job.readings[job.readings.length - 1]?.instrument ?? "" }),
  values: (r) => ({ what: r.what, value: r.value, unit: r.unit, instrument: r.instrument, step: r.step }),
  item(id, v, before) {
    if (said(v, "what") === "") return { name: "what", reason: "What, and where: nothing is given. Name the quantity and the place." };
    if (said(v, "value") === "") return { name: "value", reason: "Value: nothing is given. Write what the instrument showed." };
    const odd = oddReading(said(v, "what"), said(v, "value"), said(v, "unit"));
    if (odd) return odd;
    const same = before && before.value === said(v, "value") && before.unit === said(v, "unit");
    return {
      id, what: said(v, "what"), value: said(v, "value"), unit: said(v, "unit"), si: same ? before.si : null, siUnit: same ? before.siUnit : "",
      time: before?.time ?? new Date().toISOString(), instrument: said(v, "instrument"), step: said(v, "step"),
    };
  },
  lines: (r) => [`${r.what}: ${r.value} ${r.unit}`.trim(), [when(r.time), r.instrument].filter((t) => t !== "").join(", ")],
};

export const notes: Kind<"notes"> = {
  part: "notes",
  title: "Notes",
  count: (n) => count(n, "note", "notes"),
  empty: "Anything that the next person should know.",
  send: "Add the note",
  asks: () => [{ name: "text", label: "Note", kind: "long" }],
  blank: () => ({}),
  values: (n) => ({ text: n.text }),
  item: (id, v, before) => (said(v, "text") === "" ? { name: "text", reason: "Note: nothing is given." } : { id, time: before?.time ?? new Date().toISOString(), text: said(v, "text") }),
  lines: (n) => [n.text, when(n.time)],
};

export const ledger: Kind<"ledger"> = {
  part: "ledger",
  title: "Refrigerant in and out",
  count: (n) => count(n, "entry", "entries"),
  empty: "Write down each weighing, with the cylinder. The law asks for these figures in many places.",
  send: "Add to the ledger",
  asks: () => [
    { name: "date", label: "Date", kind: "date" },
    { name: "direction", label: "Direction", kind: "choice", options: [["out", "Out of the system"], ["in", "Into the system"]] },
    { name: "mass", label: "Mass", kind: "number", most: 20 },
    { name: "unit", label: "Unit", kind: "choice", options: massUnits.map((u) => [u, u]) },
    { name: "refrigerant", label: "Refrigerant", kind: "text", most: 40 },
    { name: "cylinder", label: "Cylinder", kind: "text", help: "Its number, and whether it is for recovery.", most: 100 },
    { name: "note", label: "Note", kind: "text" },
  ],
  blank: (job) => ({ date: today(), direction: "out", unit: job.ledger[job.ledger.length - 1]?.mass.unit ?? job.nameplate.unit, refrigerant: job.ledger[job.ledger.length - 1]?.refrigerant ?? job.refrigerant }),
  values: (e) => ({ date: e.date, direction: e.direction, mass: e.mass.value, unit: e.mass.unit, refrigerant: e.refrigerant, cylinder: e.cylinder, note: e.note }),
  item(id, v) {
    const mass = { value: said(v, "mass"), unit: (massUnits.includes(v.unit as MassUnit) ? v.unit : "kg") as MassUnit };
    const read = readMass(mass);
    if ("reason" in read) return { name: "mass", reason: read.reason };
    if (said(v, "refrigerant") === "") return { name: "refrigerant", reason: "Refrigerant: nothing is given. Write it as the nameplate or the cylinder does." };
    return { id, date: said(v, "date"), direction: v.direction === "in" ? "in" : "out", mass, refrigerant: said(v, "refrigerant"), cylinder: said(v, "cylinder"), note: said(v, "note") };
  },
  lines: (e) => [`${e.direction === "in" ? "In" : "Out"}: ${e.mass.value} ${e.mass.unit} ${e.refrigerant}`, [e.date, e.cylinder, e.note].filter((t) => t !== "").join(", ")],
  above: balance,
};

/** Sums of the weighings: nothing is estimated. */
function balance(job: Job): Node | null {
  if (job.ledger.length === 0) return null;
  const sums = balances(job.ledger);
  const unread = sums.reduce((n, b) => n + b.unread, 0);
  const lines = sums.flatMap((b): [string, string][] => [[`${b.refrigerant}, in`, kg(b.in)], [`${b.refrigerant}, out`, kg(b.out)], [`${b.refrigerant}, in less out`, kg(b.in - b.out)]]);
  return make("div", { "data-job-balance": "" }, make("dl", { class: "co-pairs", "aria-label": "Balance by this ledger" }, ...lines.map(([name, value]) => make("div", {}, make("dt", {}, name), make("dd", {}, value)))),
    unread > 0 ? make("p", { class: "co-notes--warn" }, `${count(unread, "entry has", "entries have")} no mass that can be read, and ${unread === 1 ? "is" : "are"} not in these sums.`) : null);
}
