// Numbers with a unit, found in a text and compared across units: 500 micron is 66.7 Pa, 75 psig is 517 kPa gauge.
// The units come with the index, from calc/unit. This decides only what a search shows; no worksheet uses it.

import { slips } from "./words.ts";

export interface Quantity { kind: string; low: number; high: number; start: number; end: number; coarse?: number; loose?: boolean }
interface Unit { kind: string; factor: number; offset: number }

const suction = 85; // Pa, a quarter of a tenth of an inch of mercury
const fractions: Record<string, number> = { "¼": 1 / 4, "½": 1 / 2, "¾": 3 / 4, "⅛": 1 / 8, "⅜": 3 / 8, "⅝": 5 / 8, "⅞": 7 / 8 };
const number = /[-−]?(?:\d{1,3}(?:[,\u00a0\u202f]\d{3})+(?:\.\d+)?|\d+(?:[.,]\d+)?[¼½¾⅛⅜⅝⅞]?|[¼½¾⅛⅜⅝⅞])/g;
// Between the two ends of a range, and before a unit.
const between = /^\s*(?:–|-|to|or|and)\s*$/;
const unitWords = /^\s*([^\s\d,;:()[\]]+)(?:\s([a-zA-Z]+))?/;

export class Units {
  private readonly exact = new Map<string, Unit>();
  private readonly folded = new Map<string, Unit>();

  /** kind, factor, offset, spellings: the fields of a U record. */
  add([kind = "", factor = "", offset = "", ...spellings]: string[]): void {
    const unit = { kind, factor: Number(factor), offset: Number(offset) };
    for (const spelling of spellings) {
      this.exact.set(spelling, unit);
      const folded = spelling.toLowerCase();
      if (!this.folded.has(folded)) this.folded.set(folded, unit);
    }
  }

  /** All quantities of a text; "2 to 5 min" is one, from 2 to 5. In asked text a unit of one letter may be in either case. */
  find(text: string, asked = false): Quantity[] {
    const found: Quantity[] = [];
    let before: { text: string; start: number; end: number } | null = null; // a number that had no unit of its own
    number.lastIndex = 0;
    for (let match = number.exec(text); match; match = number.exec(text)) {
      let [digits] = match;
      let start = match.index;
      const end = start + digits.length;
      // A hyphen behind a letter or a figure is no minus, and a number inside a word is none: R-410A, A5, 2-5.
      if (/[-−]/.test(digits.charAt(0)) && /[\p{L}\d]/u.test(text.charAt(start - 1))) {
        if (!/\d/.test(text.charAt(start - 1))) {
          before = null;
          continue;
        }
        digits = digits.slice(1);
        start++;
      }
      if (/[\p{L}.]/u.test(text.charAt(start - 1))) {
        before = null;
        continue;
      }
      const [unit, length] = this.unit(text.slice(end, end + 24), asked);
      if (!unit) {
        before = { text: digits, start, end };
        continue;
      }
      const range = before !== null && between.test(text.slice(before.end, start));
      const to = si(digits, unit);
      const from = range && before ? si(before.text, unit) : to;
      if (Number.isFinite(from) && Number.isFinite(to)) {
        found.push({ kind: unit.kind, low: Math.min(from, to), high: Math.max(from, to), start: range && before ? before.start : start, end: end + length, coarse: unit.factor < 0 ? suction : 0 });
      }
      before = null;
    }
    return found;
  }

  /** The unit that a text begins with, and how long it is there: of one word, or of two such as "psi gauge". */
  private unit(text: string, asked: boolean): [Unit | null, number] {
    const match = unitWords.exec(text);
    if (!match) return [null, 0];
    const [whole, first = "", second] = match;
    const one = first.replace(/[.!?”"’]+$/, "");
    const at = whole.indexOf(first);
    if (second !== undefined && one === first) {
      const unit = this.named(`${first} ${second}`, asked);
      if (unit) return [unit, whole.length];
    }
    return [this.named(one, asked), at + one.length];
  }

  /** The spelling of a unit that a word is, or that somebody meant: still being typed, or with one slip. */
  meant(word: string, last: boolean): string | undefined {
    if (this.folded.has(word)) return word;
    const all = [...this.folded.keys()];
    return (last && all.find((s) => s.startsWith(word))) || (word.length > 3 ? all.find((s) => s.length > 3 && slips(word, s, 1) < 2) : undefined);
  }

  private named(spelling: string, asked: boolean): Unit | null {
    return this.exact.get(spelling) ?? (asked || spelling.length > 1 ? this.folded.get(spelling.toLowerCase()) : undefined) ?? null;
  }
}

function si(text: string, unit: Unit): number {
  const sign = /^[-−]/.test(text) ? -1 : 1;
  let digits = text.replace(/^[-−]/, "");
  const fraction = fractions[digits.slice(-1)] ?? 0;
  if (fraction) digits = digits.slice(0, -1) || "0";
  digits = /^\d{1,3}([,\u00a0\u202f]\d{3})+/.test(digits) ? digits.replace(/[,\u00a0\u202f]/g, "") : digits.replace(",", ".");
  return (sign * (Number(digits) + fraction) + unit.offset) * unit.factor;
}

/**
 * How well what a text holds answers a quantity that was asked: 1 the same, down to 0.9 for as near as a rounded figure,
 * 0.7 inside a range, 0 not. A wide range spans nearly everything that is asked, so it answers only a loose question, as
 * does what is nearly as much. A pressure whose zero is not said may be either; one that is gauge is never absolute.
 */
export function answers(asked: Quantity, held: Quantity, loose = false): number {
  if (asked.kind !== held.kind && (asked.coarse || !(either(asked, held) || either(held, asked)))) return 0;
  const heat = asked.kind === "temperature";
  // The least that counts is what a compound gauge can show of a vacuum: 29.9 in Hg may be 540 micron, or 300.
  const near = heat ? 0.6 : Math.max(0.02 * Math.abs(asked.low), asked.coarse ?? 0);
  const off = Math.min(Math.abs(asked.low - held.low), Math.abs(asked.low - held.high));
  if (off <= near) return 1 - (0.1 * off) / (near || 1);
  if (loose && off <= 10 * near) return 0.8 - (0.03 * off) / near;
  const narrow = loose || (heat ? held.high - held.low <= 20 : held.high <= 3 * held.low);
  return narrow && held.low < asked.low && asked.low < held.high ? 0.7 : 0;
}

const either = (a: Quantity, b: Quantity): boolean => a.kind === "either" && (b.kind === "gauge" || b.kind === "absolute");
