// Paper cannot be unfolded: everything folded on the page is opened for the print and folded again after it.

import { all } from "./dom.ts";

export function unfoldForPrint(): void {
  let opened: HTMLDetailsElement[] = [];
  addEventListener("beforeprint", () => {
    opened = all<HTMLDetailsElement>(document, "details:not([open]):not([data-paste]):not([data-example])");
    for (const d of opened) d.open = true;
  });
  addEventListener("afterprint", () => {
    for (const d of opened) d.open = false;
    opened = [];
  });
}
