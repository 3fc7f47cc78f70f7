// What is odd about a reading beside its unit, in one sentence, or "". No figure is read here.

/** The words behind a figure, which can only be its unit; undefined when there are none. */
export const unitIn = (text: string): string | undefined => /\d\s*([a-zµμ°Ω][^\d]*)$/i.exec(text.trim())?.[1]?.trim();

/** Whether the text names a unit, and another than the field's. */
export function ownUnit(text: string, unit: string): boolean {
  const own = unitIn(text);
  const plain = (u: string): string => u.replace(/[°\s]|auge$|bsolute$/g, "").toLowerCase(); // psig is psi gauge
  return own !== undefined && plain(own) !== plain(unit);
}

export const past = /^(ol|o\.l\.?|over|off scale|open)\b/i; // what a meter shows beyond its range

/** choice: another unit can be chosen beside the field. */
export function oddity(value: string, unit: string, choice = false): string {
  const text = value.trim();
  if (text === "" || unit === "" || past.test(text)) return "";
  if (!/\d/.test(text)) return `“${text}” holds no figure. This field is in ${unit}. It is kept as you typed it.`;
  if (ownUnit(text, unit)) return `“${text}” has a unit of its own. This field is in ${unit}: type the figure in ${unit}${choice ? ", or choose its unit beside it" : ""}. It is kept as you typed it.`;
  return "";
}
