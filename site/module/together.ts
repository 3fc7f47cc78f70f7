// What the calculator says, kept together on a line as build/internal/typeset keeps the words of a page: a number and its unit,
// the name of a refrigerant. Half a number at the end of a line reads as another number.

import { make } from "./dom.ts";

/** As IsUnit of build/internal/typeset; the test holds the two together. */
export const units = new Set(("% °C °F K V kV mV A mA W kW Ω kΩ MΩ Hz Pa kPa MPa bar barg bara mbar psi psig psia kPag kPaa micron microns torr Torr mm cm m µm in ft g kg lb " +
  "oz N kN N·m L l mL ml m³ s min h L/min m³/h cfm ft³/h ppm minute minutes hour hours second seconds day days g/m kg/m kg/m³ µF uF J kJ rpm").split(" "));
const afterNumber = /([\d¼-¾⅐-⅞]) (?=(\S+?)[.,;:!?)]*(?:\s|$))/gu;
const name = /(R-\d+\w*(?:\([EZ]\))?)/;

/** The sentence as what stands in an element: text, and a span around each name. */
export function together(sentence: string): (string | HTMLElement)[] {
  return keep(sentence).split(name).map((part, i) => (i % 2 === 1 ? make("span", { class: "co-name" }, part) : part));
}

/** The sentence with its numbers and units kept together. */
export const keep = (sentence: string): string => sentence.replace(afterNumber, (all, figure: string, word: string) => (units.has(word) ? `${figure}\u00a0` : all));
