// Small parts that the blocks of the result share.

import { make } from "../../module/dom.ts";
import type { Child } from "../../module/dom.ts";
import { pageAddress, root, singleFile } from "../../module/root.ts";
import type { Finding } from "../job/schema.ts";
import { parseSVG } from "../worksheet/answer.ts";
import type { Sheet } from "./answers.ts";
import type { Form, Question } from "./form.ts";
import type { Outcome } from "./outcome.ts";

/** What every block of the result draws from. */
export interface Scene {
  outcome: Outcome;
  found: Record<string, Finding>;
  sheet: Sheet;
  form: Form;
  numbers: Map<string, number>; // of the findings that are there, as the drawing counts them
  open: Set<string>; // folds that the person opened
}

const risks = ["a look", "tools or covers off", "danger: live parts, pressure, acid or height"];

export const effort = (q: Question): string => `${q.minutes} min, ${risks[q.risk] ?? risks[2]}`;

/** A part that folds and stays as the person left it. */
export function fold(scene: Scene, key: string, title: string, note: string, ...children: Child[]): HTMLDetailsElement {
  const d = make("details", { class: "co-fold co-assess__fold", "data-key": key }, make("summary", {}, make("span", {}, title), note === "" ? null : make("span", { class: "co-assess__count" }, note)), ...children);
  d.open = scene.open.has(key);
  d.addEventListener("toggle", () => (d.open ? scene.open.add(key) : scene.open.delete(key)));
  return d;
}

/** A link to a question of this page. */
export function toQuestion(form: Form, id: string, words: string, classes = "co-assess__link"): HTMLElement {
  const q = form.questions.get(id);
  if (!q) return make("span", {}, words);
  const a = make("a", { class: classes, href: `#${q.box.id}`, "data-key": `to-${id}-${words.length}` }, words);
  a.addEventListener("click", (event) => {
    event.preventDefault();
    form.show(id);
  });
  return a;
}

/** The link of a question to the step that says how. */
export function how(q: Question): HTMLElement | null {
  return q.how && make("a", { class: "co-assess__link", href: q.how.getAttribute("href") ?? "" }, q.how.textContent ?? "How to do it");
}

/** An address of the data file, which counts from the site's root: "stages/clean.html#step-wash". */
export function address(from: string): string {
  const [page = "", part = ""] = from.split("#");
  const id = page.replace(/\.html$/, "");
  if (singleFile) return `#${id}${part && "/" + part}`;
  return page.endsWith(".html") ? pageAddress(id) + (part && "#" + part) : root(from);
}

export const number = (scene: Scene, id: string): HTMLElement => make("span", { class: "co-assess__number" }, String(scene.numbers.get(id) ?? "?"));

/** A finding as it was answered: with its number when it is there. */
export function fact(scene: Scene, id: string): (Node | string)[] {
  const name = scene.outcome.findings.get(id)?.name || scene.found[id]?.text || id;
  const state = scene.found[id]?.state;
  return [...(scene.numbers.has(id) ? [number(scene, id), " "] : []), state === "absent" ? `No: ${name}` : name];
}

/** A bar as wide as a probability; the words beside it say the same. */
export function bar(p: number): Element | null {
  const share = p >= 0 && p <= 1 ? Math.round(p * 100) : 0;
  return parseSVG(`<svg class="co-assess__bar" viewBox="0 0 100 4" preserveAspectRatio="none" aria-hidden="true"><rect class="co-assess__rail" width="100" height="4"/><rect class="co-assess__share" width="${share}" height="4"/></svg>`);
}

export const named = (o: Outcome, cause: string): string => o.causeNames.get(cause) ?? cause;
