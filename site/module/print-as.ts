// Printing a part of a page: the page is marked for the style, and loses the mark when the sheet is drawn.

/** Prints the page so marked that only a part of it comes out (data-printing in the styles). */
export function printAs(page: HTMLElement, part: string, after: () => void = () => undefined): void {
  page.dataset.printing = part;
  const done = (): void => {
    after();
    delete page.dataset.printing;
    for (const e of ends) removeEventListener(e, done, true);
  };
  // Some phones say "afterprint" before they have drawn the sheet; the screen does not show the mark, so it can wait for a hand.
  const ends = ["pointerdown", "pointermove", "keydown"];
  for (const e of ends) addEventListener(e, done, true);
  print();
}
