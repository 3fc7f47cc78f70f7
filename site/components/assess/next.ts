// The next check worth making, and the checks that come before a part is condemned.

import { button, make } from "../../module/dom.ts";
import { aside, noneAside, setAside } from "./answers.ts";
import type { Check } from "./outcome.ts";
import { effort, fold, how, toQuestion } from "./view.ts";
import type { Scene } from "./view.ts";
import { count, wouldSay } from "./words.ts";

const others = 4; // further checks in the list

/** The checks that can still be made, best first. The module names those that tell something; a part's own checks come with them. */
export function open(scene: Scene): Check[] {
  const away = aside();
  return scene.outcome.checks.filter((c) => scene.form.questions.has(c.finding) && !scene.found[c.finding] && !away.has(c.finding));
}

export function nextCheck(scene: Scene, changed: () => void): HTMLElement {
  const checks = open(scene);
  const first = checks[0];
  const q = first && scene.form.questions.get(first.finding);
  const away = aside();
  const back = away.size === 0 ? null : make("p", { class: "co-assess__more" }, `${count(away.size, "check", "checks")} set aside as not possible here. `, button("Bring them back", "co-assess__add", () => {
    noneAside();
    changed();
  }));
  if (!first || !q) {
    return make("section", { class: "co-assess__next", "aria-label": "Next check" }, make("h3", { class: "co-assess__head" }, "Next check"),
      make("p", {}, scene.outcome.problem ? "Look at the answers again first." : "No check that is left would tell much more."), back);
  }
  const rest = checks.slice(1, 1 + others);
  const box = make("section", { class: "co-assess__next", "aria-label": "Next check worth making", "data-next": q.id },
    make("h3", { class: "co-assess__head" }, "Next check worth making"),
    make("p", { class: "co-assess__ask" }, q.words),
    make("p", { class: q.risk > 1 ? "co-assess__effort co-assess__effort--danger" : "co-assess__effort" }, effort(q)),
    how(q) && make("p", { class: "co-assess__howto" }, "How: ", how(q)),
    make("dl", { class: "co-assess__say" },
      make("div", {}, make("dt", {}, "Yes"), make("dd", {}, `${wouldSay(scene.outcome, first, "yes")}.`)),
      make("div", {}, make("dt", {}, "No"), make("dd", {}, `${wouldSay(scene.outcome, first, "no")}.`))),
    make("p", { class: "co-assess__buttons" }, toQuestion(scene.form, q.id, "Answer it", "co-button"),
      keyed(button("Not possible here", "co-button co-button--quiet", () => {
        setAside(q.id, true);
        changed();
      }), "aside")),
    back);
  if (rest.length > 0) {
    box.append(fold(scene, "others", "Other checks worth making", count(rest.length, "check", "checks"), make("ul", { class: "co-assess__list" },
      ...rest.map((c) => {
        const other = scene.form.questions.get(c.finding);
        return make("li", {}, toQuestion(scene.form, c.finding, other?.words ?? c.finding), make("span", { class: "co-assess__small" }, other ? effort(other) : ""));
      }))));
  }
  return box;
}

/** Checks that must be answered before any part is condemned. */
export function beforePart(scene: Scene): HTMLElement | null {
  const left = [...scene.form.questions.values()].filter((q) => q.before && !scene.found[q.id]);
  if (left.length === 0) return null;
  return fold(scene, "before", "Before a part is condemned", count(left.length, "check open", "checks open"), make("p", {}, "Answer these first. They find what looks like a dead part and is not, and what would kill the next one at once."),
    make("ul", { class: "co-assess__list" }, ...left.map((q) => make("li", {}, toQuestion(scene.form, q.id, q.words), make("span", { class: "co-assess__small" }, effort(q))))));
}

function keyed<T extends HTMLElement>(element: T, key: string): T {
  element.dataset.key = key;
  return element;
}
