// What the page holds for the script alone stands in it as JSON (worksheet.tmpl): a long list of choices, the columns of a series,
// the units of results.

/** The data under an element in <script data-name type="application/json">, null where there is none. */
export function dataIn<T>(under: ParentNode, name: "choices" | "columns" | "outputs"): T | null {
  const text = under.querySelector(`script[data-${name}]`)?.textContent;
  return text ? (JSON.parse(text) as T) : null;
}
