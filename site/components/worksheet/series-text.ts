// A log as text: rows of cells, with a header row of column names or without. The text is what the module reads; the
// boxes on the page are drawn from it and written back to it. No number is read here.

import { dataIn } from "./data.ts";

export interface Series {
  header: string[] | null;
  rows: string[][];
}

/** Tab, semicolon, comma or spaces: the first of these that the first lines hold. */
export function separatorOf(text: string): string {
  const sample = text.split("\n").slice(0, 20).filter((l) => l.trim() !== "" && !l.trimStart().startsWith("#")).join("\n");
  for (const s of ["\t", ";", ","]) if (sample.includes(s)) return s;
  return " ";
}

export function parseSeries(text: string): Series {
  const clean = text.replace(/^\uFEFF/, "").replace(/\r\n?/g, "\n");
  const separator = separatorOf(clean);
  const rows: string[][] = [];
  for (const line of clean.split("\n")) {
    if (line.trim() === "" || line.trimStart().startsWith("#")) continue;
    rows.push((separator === " " ? line.trim().split(/\s+/) : line.split(separator)).map(unquote));
  }
  const first = rows[0];
  // A header names columns: none of its cells begins like a number.
  const header = first && first.some((c) => c !== "") && first.every((c) => c === "" || !/^[-+−.,]?\d/.test(c)) ? first : null;
  if (header) rows.shift();
  return { header, rows };
}

/** A declared column: its name in the text and its unit, of the metric and, where they differ, of the US units. */
export interface Column { id: string; label: string; unit: string; ip: string; ipUnit: string; pad?: string }

/** The columns that an input declares; none where it takes no series. */
export const columnsOf = (input: HTMLElement): Column[] => dataIn<Column[]>(input, "columns") ?? [];

/**
 * The names above the boxes. What the text says holds; a column that the boxes offered and nobody filled stays on offer.
 * Rows without a header are read in the first unit of each column, whatever the person's units are: a header put over
 * them later must not change what they mean.
 */
export function columnNames(s: Series, declared: Column[], system: string): string[] {
  const { header } = s;
  const own = (c: Column): string => (system === "ip" && c.ip ? c.ip : c.id);
  if (!header) return declared.map((c) => (s.rows.length === 0 ? own(c) : c.id));
  const named = (c: Column): boolean => header.includes(c.id) || (c.ip !== "" && header.includes(c.ip));
  if (!header.every((name) => declared.some((c) => name === c.id || name === c.ip))) return header; // another's header: what is missing is not known
  return [...header, ...declared.filter((c) => !named(c)).map(own)];
}

/** Where a row begins and ends in the text, counted from 1 as the boxes number it; null when there is none. */
export function placeOf(text: string, row: number): [number, number] | null {
  const lines = parseSeries(text).header ? row + 1 : row;
  let at = 0;
  let n = 0;
  for (const line of text.split("\n")) {
    if (line.trim() !== "" && !line.trimStart().startsWith("#") && ++n === lines) return [at, at + line.length];
    at += line.length + 1;
  }
  return null;
}

export const columnOf = (name: string, declared: Column[]): Column | undefined => declared.find((d) => d.id === name || (d.ip !== "" && d.ip === name));

/** What stands above a column of boxes. */
export function columnHead(name: string, declared: Column[]): string {
  const c = columnOf(name, declared);
  if (!c) return name;
  const unit = c.id === name ? c.unit : c.ipUnit;
  return unit ? `${c.label}, ${unit}` : c.label;
}

/** Writes rows under a header. Empty rows at the end and empty columns after the first two are left out. A decimal comma in a cell asks for semicolons. */
export function formatSeries(header: string[], rows: string[][]): string {
  let last = rows.length;
  while (last > 0 && (rows[last - 1] ?? []).every((c) => c.trim() === "")) last--;
  const kept = rows.slice(0, last).filter((r) => r.some((c) => c.trim() !== ""));
  if (kept.length === 0) return "";
  const columns = header.map((_, i) => i).filter((i) => i < 2 || kept.some((r) => (r[i] ?? "").trim() !== ""));
  const separator = kept.some((r) => r.some((c) => c.includes(","))) ? ";" : ",";
  return [header, ...kept].map((r) => columns.map((i) => (r[i] ?? "").trim()).join(separator)).join("\n") + "\n";
}

function unquote(cell: string): string {
  const c = cell.trim();
  return c.length > 1 && c.startsWith('"') && c.endsWith('"') ? c.slice(1, -1).replace(/""/g, '"').trim() : c;
}
