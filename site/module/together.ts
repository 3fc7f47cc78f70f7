// What the calculator says, kept together on a line as build/internal/typeset keeps the words of a page: a number and its unit,
// the name of a refrigerant. Half a number at the end of a line reads as another number.

import { make } from "./dom.ts";

const unit = String.raw`(?:%|°[CF]|K|[kmM]?(?:Pa|V|W|A|N|J|L|m|g|Ω)(?:/\S+|[ga²³])?|µ\S+|[mM]?bar[ga]?|psi[ga]?|micron|in|ft[²³]?|lb(?:/\S+)?|oz|mm|cm|kg(?:/\S+)?|min|h|s|Hz|cfm|ppm|rpm)(?=[\s.,;:!?)]|$)`;
const beforeUnit = new RegExp(String.raw`(?<=[\d½¼¾]) (?=${unit})`, "gu");
const name = /(R-\d+\w*(?:\([EZ]\))?)/;

/** The sentence as what stands in an element: text, and a span around each name. */
export function together(sentence: string): (string | HTMLElement)[] {
  return keep(sentence).split(name).map((part, i) => (i % 2 === 1 ? make("span", { class: "co-name" }, part) : part));
}

/** The sentence with its numbers and units kept together. */
export const keep = (sentence: string): string => sentence.replace(beforeUnit, "\u00a0");
