// A worksheet's own page that is kept on the phone shows the form together with its first answer: laid out once instead of
// twice, and nothing that can wait goes before it. early.ts begins the wait, worksheet.ts ends it, data-begins on <html> tells
// the style of it.

import { drawn } from "./drawn.ts";

const html = document.documentElement;
const longest = 2000; // ms; then the form shows, whatever became of its script

export function begins(): void {
  html.dataset.begins = "";
  setTimeout(stands, longest);
}

/** The form stands, with its answer or without. */
export function stands(): void {
  if (!("begins" in html.dataset)) return;
  delete html.dataset.begins;
  document.dispatchEvent(new Event("changeout:stands"));
}

/**
 * Takes the form out of the page until it stands. A browser that fills in forms lays out every form that it finds when the
 * scripts have run, hidden or not.
 */
export function aside(form: Element): void {
  if (!("begins" in html.dataset)) return;
  const place = document.createComment("");
  form.replaceWith(place);
  document.addEventListener("changeout:stands", () => place.replaceWith(form), { once: true });
}

/** Calls start once the form stands and is drawn; at once where nothing waits for one. */
export function afterwards(start: () => void): void {
  if ("begins" in html.dataset) document.addEventListener("changeout:stands", () => void drawn().then(start), { once: true });
  else start();
}
