// Buttons beside a numeric pad. Those of some phones have digits and a decimal sign and nothing else: no minus, no letters.

import { button } from "../../module/dom.ts";

/** Makes the number in the box negative, or positive again. */
export function otherSign(box: HTMLInputElement): void {
  const text = box.value.trim();
  box.value = /^[-−]/.test(text) ? text.slice(1) : "-" + text.replace(/^\+/, "");
  box.dispatchEvent(new Event("input", { bubbles: true }));
}

/** Lets the box keep the caret, and with it the pad, while the button is pressed. */
export function besidePad(b: HTMLElement, press: () => void): void {
  b.addEventListener("pointerdown", (event) => event.preventDefault());
  b.addEventListener("click", press);
}

export function signButton(name: string, box: () => HTMLInputElement | null | undefined): HTMLButtonElement {
  const b = button("+/−", "co-input__sign", () => undefined);
  b.setAttribute("aria-label", `Change the sign of ${name}`);
  besidePad(b, () => {
    const at = box();
    if (at) otherSign(at);
  });
  return b;
}

/** Brings the keyboard with letters in place of the pad, and back: a meter may show OL. */
export function lettersButton(name: string, box: HTMLInputElement): HTMLButtonElement {
  const b = button("ABC", "co-input__sign", () => {
    const letters = box.inputMode === "decimal";
    box.inputMode = letters ? "text" : "decimal";
    b.setAttribute("aria-pressed", String(letters));
    box.blur(); // a phone looks at the kind of keyboard when the box is entered
    box.focus();
  });
  b.setAttribute("aria-label", `Keyboard with letters for ${name}`);
  b.setAttribute("aria-pressed", "false");
  return b;
}
