// Reads the index (build/internal/searchindex describes its lines) and makes from its text what a search looks up.

import { Units } from "./quantity.ts";
import type { Quantity } from "./quantity.ts";
import { eachWord, letters, stem, words } from "./words.ts";

/** A page: its address without .html, kind (p procedure, w worksheet, t table, "" other), stage 0 for none. */
export interface Page { address: string; kind: string; stage: number; title: string; summary: string }
/** A place on a page. The page itself is a place too, of kind P. */
export interface Place { page: number; kind: string; id: string; text: string }

export interface Said { phrase: string[]; means: string[][] }

export interface Index {
  pages: Page[];
  places: Place[];
  units: Units;
  /** What people say: the stem of a phrase's first word to the phrases, longest first, each with what it means. */
  said: Map<string, Said[]>;
  /** All words in order, with the bits of their letters, and for each the places that hold it. */
  words: string[];
  letters: number[];
  held: number[][];
  /** Word number to the pages whose title holds it. */
  titled: Map<number, Set<number>>;
  /** Stem to word numbers. */
  stems: Map<string, number[]>;
  /** The amounts in all places, as far as they were read; see quantities. */
  amounts: { place: number; quantity: Quantity }[];
  amountsTo: number;
}

/** Words that stand everywhere and tell nothing: they are searched only if nothing else is asked. */
export const common = new Set("a all am an and any are as at be by can cant could did do does doesnt dont for from get go goes going got had has have how i if in into is isnt it its just make makes making me my need no not of off on or out please really should size so than that the then there this to too up us was we what whats when where which why will with wont would you your".split(" "));

export function read(text: string): Index {
  const steps = reading(text);
  for (;;) {
    const { done, value } = steps.next();
    if (done) return value;
  }
}

/** The same in pieces of a millisecond or so, for a phone that somebody types on meanwhile. */
export function* reading(text: string): Generator<undefined, Index> {
  const x: Index = { pages: [], places: [], units: new Units(), said: new Map(), words: [], letters: [], held: [], titled: new Map(), stems: new Map(), amounts: [], amountsTo: 0 };
  for (const line of text.split("\n")) {
    if (line === "") continue;
    const fields = line.split("\t").map(unescape);
    const first = fields[0] ?? "";
    if (first === "U") x.units.add(fields.slice(1));
    else if (first === "S") say(x, fields[1] ?? "", fields[2] ?? "");
    else if (first === "P") {
      const [, address = "", kind = "", stage = "", title = "", summary = ""] = fields;
      x.places.push({ page: x.pages.length, kind: "P", id: "", text: title });
      x.pages.push({ address, kind, stage: Number(stage), title, summary });
    } else if (x.pages.length > 0) {
      const page = x.pages.length - 1;
      const before = x.places[x.places.length - 1];
      const [kind, code, text = ""] = [first.charAt(0), first.slice(1), fields[1]];
      x.places.push({ page, kind, id: code ? id((x.pages[page] as Page).address, kind, code, text) : before?.page === page ? before.id : "", text });
    }
  }
  yield;
  yield* look(x);
  return x;
}

const begins: Record<string, string> = { s: "step-", f: "write-", c: "caution-", d: "decide-", w: "wait-", g: "term-", x: "table-" };

/** The id that a code stands for; build/internal/searchindex/place.go writes the codes. */
function id(address: string, kind: string, code: string, text: string): string {
  const name = address.slice(address.lastIndexOf("/") + 1);
  const begin = kind === "i" ? name + "-" : begins[kind] ?? "";
  if (code.startsWith("#")) return code.slice(1);
  if (code !== "=") return begin + code;
  if (kind === "x") return "worksheet-" + name;
  const slug = (text.split(" · ")[0] as string).replace(/['’]/g, "").toLowerCase().match(/[a-z0-9]+/g) ?? [];
  return begin + (kind === "d" ? slug.slice(0, 6) : slug).join("-");
}

const unescape = (field: string): string => (field.includes("\\") ? field.replace(/\\(.)/g, (_, c) => (c === "l" ? "<" : c)) : field);

function say(x: Index, said: string, means: string): void {
  const meanings = means.split("|").map((m) => plain(m.replace(/\bthe\b/g, "")));
  for (const phrase of said.split("|").map(plain)) {
    const [first] = phrase;
    if (first === undefined) continue;
    const list = x.said.get(stem(first)) ?? [];
    list.push({ phrase, means: meanings });
    list.sort((a, b) => b.phrase.length - a.phrase.length);
    x.said.set(stem(first), list);
  }
}

/** The words of a phrase, hyphens read as spaces. */
export const plain = (phrase: string): string[] => words(phrase.replace(/[-‐‑]/g, " ")).map((w) => w.text);

/** What people call a page or a place of a kind; they find it by that too. */
const called: Record<string, string> = { p: "procedure", w: "worksheet calculator calculate", t: "table chart" };
const timer = " wait timer";

/** Makes the lists of words. */
function* look(x: Index): Generator<undefined, void> {
  const numbers = new Map<string, number>();
  const unsorted: string[] = [];
  const held: number[][] = [];
  const titled = new Map<number, Set<number>>();
  for (let number = 0; number < x.places.length; number++) {
    if (number % 50 === 49) yield;
    const place = x.places[number] as Place;
    const isPage = place.kind === "P";
    const page = isPage ? x.pages[place.page] : undefined;
    // A page is also found by its stage: "stage 8" is as good as its title.
    const title = page?.stage ? `${place.text} stage ${page.stage}` : place.text;
    eachWord(page ? `${title} ${page.summary} ${called[page.kind] ?? ""}` : place.kind === "w" ? place.text + timer : place.text, (word, start) => {
      let n = numbers.get(word);
      if (n === undefined) {
        n = unsorted.length;
        numbers.set(word, n);
        unsorted.push(word);
        held.push([]);
      }
      const list = held[n] as number[];
      if (list[list.length - 1] !== number) list.push(number);
      if (isPage && start < title.length) {
        const pages = titled.get(n) ?? new Set<number>();
        pages.add(place.page);
        titled.set(n, pages);
      }
    });
  }
  yield;
  unsorted.sort().forEach((word, n) => {
    const old = numbers.get(word) as number;
    x.words.push(word);
    x.letters.push(letters(word));
    x.held.push(held[old] as number[]);
    const pages = titled.get(old);
    if (pages) x.titled.set(n, pages);
    const s = stem(word);
    const same = x.stems.get(s);
    if (same) same.push(n);
    else x.stems.set(s, [n]);
  });
}

/** The amounts in all places, or with a limit in the next few: they are read after the words, before anybody asks. */
export function quantities(x: Index, limit = Infinity): Index["amounts"] {
  for (const end = Math.min(x.places.length, x.amountsTo + limit); x.amountsTo < end; x.amountsTo++) {
    for (const quantity of x.units.find((x.places[x.amountsTo] as Place).text)) x.amounts.push({ place: x.amountsTo, quantity });
  }
  return x.amounts;
}
