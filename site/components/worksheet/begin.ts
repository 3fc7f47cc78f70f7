// When a worksheet starts, and when the module is compiled for it: not before somebody needs it, so that a procedure with
// eight worksheets opens as fast as one without.

import { prepare } from "../../module/calculator.ts";
import { begin, near } from "../../module/near.ts";
import { singleFile } from "../../module/root.ts";

/** Calls start when the section is near; at once where it is what the page is for. */
export function whenNear(section: HTMLElement, start: () => void): void {
  const later = section.querySelector<HTMLTemplateElement>("[data-form-later]");
  near(section, () => {
    later?.nextElementSibling?.remove(); // the room kept for it
    later?.replaceWith(later.content);
    start();
  });
  if (later || singleFile) return;
  // Stored: at once, since the form is what the page is for. On a first visit after the script itself, so that neither holds up a tap.
  if (navigator.serviceWorker?.controller) begin(section);
  else setTimeout(begin, 0, section);
}

/**
 * A handbook that is kept on the phone makes the calculator ready while the page is idle (early.ts has begun that where
 * it could). On the first visit it waits for the first sign of use, since the module still has to come over the air.
 */
export function prepareWhenIdle(): void {
  const whenIdle = (): void => {
    for (const sign of signs) removeEventListener(sign, whenIdle);
    if ("requestIdleCallback" in window) requestIdleCallback(prepare, { timeout: 3000 });
    else setTimeout(prepare, 500);
  };
  const signs = ["pointerdown", "keydown", "scroll"];
  if (navigator.serviceWorker?.controller) whenIdle();
  else for (const sign of signs) addEventListener(sign, whenIdle, { passive: true });
}
