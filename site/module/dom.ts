// Makes an element: name, properties by attribute name, children. Text is always text, never HTML.

export type Child = Node | string | null;

export function make<K extends keyof HTMLElementTagNameMap>(
  name: K,
  attributes: Record<string, string> = {},
  ...children: Child[]
): HTMLElementTagNameMap[K] {
  const element = document.createElement(name);
  for (const [key, value] of Object.entries(attributes)) element.setAttribute(key, value);
  for (const child of children) if (child !== null) element.append(child);
  return element;
}

export function button(text: string, classes: string, press: () => void): HTMLButtonElement {
  const b = make("button", { type: "button", class: classes }, text);
  b.addEventListener("click", press);
  return b;
}

export function all<T extends HTMLElement>(under: ParentNode, selector: string): T[] {
  return Array.from(under.querySelectorAll<T>(selector));
}

/** Gives the keyboard a place when what held it is gone: the first of these that is in sight, or the page itself. */
export function keepPlace(...places: (HTMLElement | null | undefined)[]): void {
  (places.find((p) => p?.offsetParent) ?? document.querySelector<HTMLElement>("[data-page]:not([hidden])"))?.focus({ preventScroll: true });
}
