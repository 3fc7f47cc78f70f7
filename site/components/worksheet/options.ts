// A long list of choices waits in a template inside its select: laying out 150 refrigerants costs a slow phone as much as the
// rest of the form. One that is chosen is put in alone; the whole list comes when somebody goes to it, or the page is idle.

/** Puts the whole list in. */
export function allOptions(select: HTMLSelectElement): void {
  const rest = select.querySelector("template");
  if (!rest) return;
  const chosen = select.value;
  for (const alone of select.querySelectorAll("[data-alone]")) alone.remove();
  rest.replaceWith(rest.content);
  select.value = chosen;
}

/** Puts one choice in, if the list that waits has it. */
export function oneOption(select: HTMLSelectElement, value: string): void {
  const rest = select.querySelector("template");
  if (!rest || Array.from(select.options).some((o) => o.value === value)) return;
  const option = Array.from(rest.content.querySelectorAll("option")).find((o) => o.value === value)?.cloneNode(true) as HTMLOptionElement | undefined;
  if (!option) return;
  option.dataset.alone = "";
  rest.before(option);
}

export function whenNeeded(select: HTMLSelectElement): void {
  if (!select.querySelector("template")) return;
  const fill = (): void => allOptions(select);
  for (const sign of ["pointerdown", "focusin", "keydown"]) select.addEventListener(sign, fill, { once: true });
  if ("requestIdleCallback" in window) requestIdleCallback(fill, { timeout: 4000 });
  else setTimeout(fill, 1000);
}
