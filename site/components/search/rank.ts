// Which places answer what was asked, best first. Each word asked must be found, by itself or in one of the ways below;
// a place holds at least one of them, the title of its page may hold the rest.

import { answers } from "./quantity.ts";
import type { Quantity } from "./quantity.ts";
import { common, plain, quantities } from "./index.ts";
import type { Index, Place, Said } from "./index.ts";
import { letters, nearLetters, slips, stem, words } from "./words.ts";

export interface Hit { place: Place; score: number; marks: [number, number][] }
export interface Found {
  hits: Hit[];
  /** How many places there are, hits or not. */
  all: number;
  /** True when no place holds every word, and these hold some. */
  partly: boolean;
}

// How good a way of finding a word is. Exact words first, then bent and begun ones, what people say, slips of the finger.
const exact = 1;
const bent = 0.9;
const begun = 0.85;
const meant = 0.6;
const slipped = 0.4;
const further = 0.05; // less for each: a second slip, another first letter, a word that goes on
const inTable = 0.9;
const borrowed = 0.75; // of the goodness, when only the page's title holds the word

/** What is gained by the kind of place: a step before a heading, before what stands round them. A P is the page itself. */
const worth: Record<string, number> = { s: 22, P: 12, d: 16, h: 12, g: 12, w: 14, f: 13, i: 12, t: 9, x: 8, c: 7, y: 6 };

/** What answers one word or quantity asked: how well each place does, and the title of each page. */
interface Term { good: Float32Array; titles: Float32Array; words: Set<number> }
interface Scored { place: number; score: number }

export function rank(x: Index, asked: string, most: number): Found {
  const asking = part(x, asked);
  let terms = asking.terms(false);
  let scored = search(x, terms, false);
  if (scored.length === 0) {
    const again = asking.terms(true);
    scored = search(x, again, false);
    if (scored.length > 0) terms = again;
  }
  const partly = scored.length === 0 && terms.length > 1;
  if (partly) scored = search(x, terms, true);
  // Who asks how long wants a time.
  if (/\bhow long\b/i.test(asked)) {
    const times = new Set<number>();
    for (const a of quantities(x)) if (a.quantity.kind === "duration") times.add(a.place);
    for (const s of scored) if (times.has(s.place) && /[swdf]/.test((x.places[s.place] as Place).kind)) s.score += 20;
  }
  const phrase = asking.words.join(" ");
  if (asking.words.length > 1) {
    const explain = /\bwhat|\bmean/i.test(asked) ? asking.telling.join(" ") : phrase;
    for (const s of scored) {
      const place = x.places[s.place] as Place;
      const text = level(place.text);
      if (text.includes(phrase)) s.score += 8;
      // A word of several that the glossary explains stands before the page that has it in a longer title.
      if (place.kind === "g" && (text === phrase || text === explain)) s.score += 24;
    }
  }
  // The order of the job breaks ties; pages beside the stages come after it.
  const stage = (s: Scored): number => x.pages[(x.places[s.place] as Place).page]?.stage || 99;
  scored.sort((a, b) => b.score - a.score || stage(a) - stage(b) || a.place - b.place);
  const hits: Hit[] = [];
  const seen = new Set<string>();
  for (const s of scored) {
    const place = x.places[s.place] as Place;
    // A place is shown once, by the best of the texts that lead there.
    const address = `${place.page}#${place.id}`;
    if (seen.has(address)) continue;
    seen.add(address);
    if (hits.length < most) hits.push({ place, score: s.score, marks: marks(x, place.text, terms, asking.amounts) });
  }
  return { hits, all: seen.size, partly: partly && hits.length > 0 };
}

/** The places that hold every term, or with some those that hold any; rare words weigh more then. */
function search(x: Index, terms: Term[], some: boolean): Scored[] {
  const scored: Scored[] = [];
  if (terms.length === 0) return scored;
  const weights = terms.map((t) => (some ? Math.log(2 + x.places.length / (1 + t.good.reduce((n, g) => n + (g > 0 ? 1 : 0), 0))) : 1));
  const total = weights.reduce((a, b) => a + b, 0);
  x.places.forEach((place, number) => {
    let sum = 0;
    let worst = 1;
    let inTitle = 0;
    let own = false;
    for (let i = 0; i < terms.length; i++) {
      const { good, titles } = terms[i] as Term;
      const here = good[number] as number;
      const title = titles[place.page] as number;
      let best = Math.max(here, (place.kind === "P" ? 1 : borrowed) * title);
      if (best === 0 && !some) return;
      if (here > 0) own = true;
      if (best > 0) worst = Math.min(worst, best);
      if (best > 0 && some) best = (1 + best) / 2; // which words there are counts more than how they were found
      sum += best * (weights[i] as number);
      inTitle += title && Math.max(title, meant);
    }
    if (!own) return;
    const share = sum / total;
    // What people say and slips sink below whatever holds the words as asked; within a level the kind of place decides.
    let score = (some ? 100 * share : 100 * worst + 10 * share) + (worth[place.kind] ?? 5) - Math.min(4, Math.floor(place.text.length / 80));
    // The page whose title is asked for stands first, also when people say it in other words.
    if (place.kind === "P" && inTitle > 0) score += (20 * inTitle) / terms.length + 4 * Math.min(1, inTitle / place.text.split(" ").length);
    scored.push({ place: number, score });
  });
  return scored;
}

/** A text as it would be typed, near enough for "the words stand in a row". */
const level = (text: string): string => text.toLowerCase().replace(/[\s\-‐‑]+/g, " ");

/** Asks for the size or the sense of something, not for a place with the word: "how long to hold", "what does dew mean". */
const question = /\bhow (?:long|many|much|often|far|deep)\b|\bmean(?:s|ing)?\b/gi;

interface Question { words: string[]; telling: string[]; amounts: Quantity[]; terms(slipsToo: boolean): Term[] }

/** Parts what was asked into quantities, phrases that people say, and words. */
function part(x: Index, typed: string): Question {
  const asked = tidy(x, typed);
  const amounts = x.units.find(asked, true);
  let rest = asked;
  for (const q of amounts) rest = rest.replace(asked.slice(q.start, q.end), " ");
  let list = plain(rest.replace(question, " "));
  if (list.length === 0) list = plain(rest);
  const some = amounts.length > 0 || list.some((w) => !common.has(w));
  return {
    words: plain(asked),
    telling: list.filter((w) => !common.has(w)),
    amounts,
    terms(slipsToo) {
      const terms = amounts.map((q) => amount(x, q, plain(asked.slice(q.start, q.end))));
      for (let i = 0; i < list.length; ) {
        const last = i === list.length - 1 && !amounts.some((q) => q.end === asked.trimEnd().length);
        const saying = said(x, list[i] as string).find(({ phrase }) => phrase.every((w, k) => stem(list[i + k] ?? "") === stem(w)));
        const length = saying?.phrase.length ?? 1;
        if (!saying && some && common.has(list[i] as string)) {
          i++;
          continue;
        }
        const term = length > 1 ? all(x, list.slice(i, i + length), exact) : one(x, list[i] as string, slipsToo, last);
        terms.push(saying ? join(term, meaning(x, saying.means, meant)) : term);
        i += length;
      }
      return terms;
    },
  };
}

const said = (x: Index, word: string): Said[] => x.said.get(stem(word)) ?? [];
const has = (x: Index, word: string): boolean => x.words[find(x.words, word.toLowerCase())] === word.toLowerCase();

/** What was typed as pages write it: 1 1/8 as 1.125 in, 28" hg as 28 inHg, R 410 A as R410A, a unit without its slip. */
function tidy(x: Index, typed: string): string {
  return typed
    .replace(/\b(?:r|h[cf]{1,3}o?)[\s-]*(\d{2,4}[a-z]*)(?:[\s-]([a-z]{1,2})(?![a-z\d]))?/gi, (_, n: string, more = "") => "r" + n + (more && (has(x, "r" + n + more) ? more : " " + more)))
    .replace(/\b(\d{3,4})[\s-]([a-z]{1,2})\b/gi, (as, n: string, more: string) => (has(x, "r" + n + more) ? n + more : as))
    .replace(/(^|[^\d/.,])(?:(\d{1,2})[\s-]+)?(\d{1,2})\/(2|4|8|16|32)(?![\d/])/g, (as, before: string, whole: string | undefined, n: string, d: string, at: number, s: string) => {
      if (+n >= +d) return as;
      const unit = x.units.find("1" + s.slice(at + as.length), true)[0]?.start === 0 || /^\s*["”″]/.test(s.slice(at + as.length));
      return before + (+(whole ?? 0) + +n / +d) + (unit ? "" : " in");
    })
    .replace(/(\d)\s*(?:["”″]|'')/g, "$1 in ")
    .replace(/\b(?:in|inch|inches)\.?\s*(?:of\s+)?(?:hg|mercury)(v?)\b/gi, "inhg$1")
    .replace(/\bdeg(?:ree)?s?\.?\s*(?=[cf]\b)/gi, "")
    .replace(/(\d\s*)([a-zµ]{3,})(?=\s|$)/gi, (as, digit: string, word: string, at: number, s: string) => {
      if (has(x, word)) return as;
      const unit = said(x, word.toLowerCase()).find((s) => s.phrase.length === 1)?.means[0]?.join(" ");
      return digit + ((unit && x.units.meant(unit, false)) ?? x.units.meant(word.toLowerCase(), at + as.length === s.length) ?? word);
    });
}

/** Places that hold the amount, in any unit. A word such as 410a is also looked up as it was typed. */
function amount(x: Index, asked: Quantity, typed: string[]): Term {
  const term = typed.length === 1 ? all(x, typed, exact) : empty(x);
  // A table of pressures and temperatures answers for every one of them, if something else leads to it.
  if (/absolute|gauge|either|temperature/.test(asked.kind)) x.pages.forEach((p, n) => p.kind === "t" && better(term.titles, n, inTable));
  for (const loose of [false, true]) {
    for (const held of quantities(x)) better(term.good, held.place, answers(asked, held.quantity, loose));
    if (term.good.some((g) => g > 0)) break;
    asked.loose = true;
  }
  return term;
}

function meaning(x: Index, means: string[][], how: number): Term {
  // The first meaning is the nearest one.
  return means.reduce((term, m, n) => join(term, all(x, m, how - 0.02 * n)), empty(x));
}

/** Places that hold all words of a phrase. */
function all(x: Index, phrase: string[], how: number): Term {
  const [first, ...others] = phrase.map((w) => bend(x, w, how));
  if (!first) return empty(x);
  for (const o of others) {
    for (let i = 0; i < first.good.length; i++) first.good[i] = Math.min(first.good[i] as number, o.good[i] as number);
    for (let i = 0; i < first.titles.length; i++) first.titles[i] = Math.min(first.titles[i] as number, o.titles[i] as number);
    for (const w of o.words) first.words.add(w);
  }
  return first;
}

/** The word itself and its bent forms. */
function bend(x: Index, word: string, how: number): Term {
  const term = empty(x);
  const at = find(x.words, word);
  if (x.words[at] === word) take(x, term, at, how);
  const root = stem(word);
  // A title names the work, in whatever form: "evacuation" asks for "Evacuate and hold". Short roots can part: wind, winding.
  const inTitle = root.length > 4 ? how : how * bent;
  for (const n of x.stems.get(root) ?? []) if (x.words[n] !== word) take(x, term, n, how * bent, inTitle);
  return term;
}

/** A word as it was typed: itself, bent, begun, and where that gives nothing with slips. */
function one(x: Index, word: string, slipsToo: boolean, last: boolean): Term {
  const term = bend(x, word, exact);
  // A single letter begins too many words, unless it is the last and more may come.
  const single = said(x, word).some((s) => s.phrase.length === 1);
  const whole = term.words.size > 0 || single;
  // What people say for something is no other word cut short, once it is done.
  if ((word.length > 1 && !single) || last) {
    // 500 does not begin 5000, unless it is still being typed; r410 begins r410a.
    const number = !last && /\d$/.test(word);
    for (let n = find(x.words, word); n < x.words.length && (x.words[n] as string).startsWith(word); n++) {
      if (x.words[n] !== word && !(number && /\d/.test((x.words[n] as string).charAt(word.length)))) take(x, term, n, begun);
    }
  }
  // A word that is done and only begins others may be one of them cut short, or one with a slip.
  if ((!whole && (term.words.size === 0 || (!last && word.length > 3))) || (slipsToo && !has(x, word))) slip(x, term, word, last);
  return term;
}

/** Words that differ by a slip or two, and what people mean by such a word. Numbers are never guessed. */
function slip(x: Index, term: Term, word: string, last: boolean): void {
  const limit = /\d/.test(word) || word.length < 3 ? 0 : word.length < 7 ? 1 : 2;
  if (limit === 0) return;
  const mine = letters(word);
  const open = last && word.length > 3;
  for (let n = 0; n < x.words.length; n++) {
    const other = x.words[n] as string;
    const theirs = x.letters[n] as number;
    if (other.length < 3 || other === word || !nearLetters(mine, theirs, limit) || (!open && !nearLetters(theirs, mine, limit))) continue;
    const d = slips(word, other, limit, open);
    if (d > limit) continue;
    // The first letter is seldom the wrong one; in short words it must be right.
    const start = other[0] === word[0];
    if (!start && word.length < 5) continue;
    const goesOn = open && slips(word, other, limit) > limit;
    take(x, term, n, slipped - further * (d - 1 + (start ? 0 : 1) + (goesOn ? 1 : 0)));
  }
  for (const list of x.said.values()) {
    for (const { phrase: [first = "", more], means } of list) {
      if (!more && first !== word && nearLetters(mine, letters(first), 1) && slips(word, first, 1) < 2) join(term, meaning(x, means, slipped - 2 * further));
    }
  }
}

function take(x: Index, term: Term, n: number, how: number, inTitle = how): void {
  term.words.add(n);
  for (const place of x.held[n] ?? []) better(term.good, place, how);
  for (const page of x.titled.get(n) ?? []) better(term.titles, page, inTitle);
}

function better(list: Float32Array, at: number, how: number): void {
  if (how > (list[at] as number)) list[at] = how;
}

function join(term: Term, other: Term): Term {
  for (let i = 0; i < term.good.length; i++) better(term.good, i, other.good[i] as number);
  for (let i = 0; i < term.titles.length; i++) better(term.titles, i, other.titles[i] as number);
  for (const w of other.words) term.words.add(w);
  return term;
}

const empty = (x: Index): Term => ({ good: new Float32Array(x.places.length), titles: new Float32Array(x.pages.length), words: new Set() });

/** The first place in the sorted list that is not before the word. */
function find(list: string[], word: string): number {
  let low = 0;
  let high = list.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((list[middle] as string) < word) low = middle + 1;
    else high = middle;
  }
  return low;
}

/** Where in a text the words and quantities stand that were asked for. */
function marks(x: Index, text: string, terms: Term[], amounts: Quantity[]): [number, number][] {
  const list: [number, number][] = [];
  for (const w of words(text)) {
    const n = find(x.words, w.text);
    if (x.words[n] === w.text && terms.some((t) => t.words.has(n))) list.push([w.start, w.end]);
  }
  if (amounts.length > 0) for (const held of x.units.find(text)) if (amounts.some((q) => answers(q, held, q.loose) > 0)) list.push([held.start, held.end]);
  list.sort((a, b) => a[0] - b[0] || b[1] - a[1]);
  const merged: [number, number][] = [];
  for (const [start, end] of list) {
    const before = merged[merged.length - 1];
    if (before && start <= before[1]) before[1] = Math.max(before[1], end);
    else merged.push([start, end]);
  }
  return merged;
}
