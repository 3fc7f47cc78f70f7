// Each cause with what speaks for it, against it and what is missing; causes that act together; what findings speak against.

import { make } from "../../module/dom.ts";
import { againstIt, wordFor } from "../report/judge.ts";
import type { Judged } from "../report/assessment.ts";
import { bar, fact, fold, named, toQuestion } from "./view.ts";
import type { Scene } from "./view.ts";
import { count, list, odds, standingWords, weight } from "./words.ts";

const worthTelling = 0.05; // probability from which a set of causes is listed, as the drawing and the words are: editorial

export function causes(scene: Scene): Node[] {
  const byP = [...scene.outcome.causes].sort((a, b) => b.p - a.p);
  const named = byP.filter((j) => ["cause", "probable", "possible"].includes(wordFor(j)));
  const open = byP.filter((j) => wordFor(j) === "not determined");
  const excluded = byP.filter((j) => wordFor(j) === "excluded");
  const parts: Node[] = [];
  if (named.length > 0) parts.push(make("h3", { class: "co-assess__head co-assess__head--causes" }, "Causes that the facts speak for"), ...named.map((j) => one(scene, j)));
  const mix = together(scene);
  if (mix) parts.push(mix);
  if (open.length > 0) parts.push(fold(scene, "open", "Not determined", count(open.length, "cause", "causes"), ...open.map((j) => one(scene, j))));
  if (excluded.length > 0) parts.push(fold(scene, "excluded", "Findings speak against these", count(excluded.length, "cause", "causes"), ...excluded.map((j) => one(scene, j))));
  return parts;
}

function one(scene: Scene, j: Judged): HTMLElement {
  const word = wordFor(j);
  const test = word === "excluded" ? j.against[0] : undefined;
  const d = fold(scene, `cause-${j.id}`, j.name, standingWords[word],
    test ? make("p", {}, "Most against it: ", ...fact(scene, test.finding), ".") : null,
    weighed(scene, "For", j.for, "Nothing yet."),
    j.against.length > 0 || word !== "excluded" ? weighed(scene, "Against", j.against, "Nothing yet.") : null,
    j.missing.length === 0 ? null : make("div", {}, make("p", { class: "co-assess__sub" }, "Missing"), make("ul", { class: "co-assess__list" },
      ...j.missing.map((id) => make("li", {}, toQuestion(scene.form, id, scene.form.questions.get(id)?.words ?? id))))),
    make("p", { class: "co-assess__small" }, `By this model ${odds(j.p)}. That ranks the causes; it is no measured frequency.`));
  d.classList.add("co-assess__cause", `co-assess__cause--${word.replace(" ", "-")}`);
  d.dataset.cause = j.id;
  const line = bar(j.p);
  if (line) d.querySelector("summary")?.append(line);
  if (word === "probable" && j.standing === "cause") d.querySelector("summary")?.after(make("p", {}, `Not called the cause, because this speaks against it: ${list(againstIt(j).map((id) => `“${scene.outcome.findings.get(id)?.name ?? id}”`))}.`));
  return d;
}

function weighed(scene: Scene, title: string, facts: { finding: string; factor: number }[], none: string): HTMLElement {
  return make("div", {}, make("p", { class: "co-assess__sub" }, title),
    facts.length === 0 ? make("p", { class: "co-assess__none" }, none) : make("ul", { class: "co-assess__list" }, ...facts.map((w) => make("li", {}, ...fact(scene, w.finding), " ", make("span", { class: "co-assess__small" }, weight(w.factor))))));
}

function together(scene: Scene): HTMLElement | null {
  const sets = scene.outcome.together.filter((t) => t.p >= worthTelling && t.causes.length > 0);
  if (!sets.some((t) => t.causes.length > 1)) return null;
  return fold(scene, "together", "Acting alone or together", count(sets.length, "set", "sets"),
    make("p", {}, "Failures are often a mix. These sets of causes fit the facts best."),
    make("ul", { class: "co-assess__list" }, ...sets.map((t) => make("li", {}, t.causes.length > 1 ? `${list(t.causes.map((c) => named(scene.outcome, c)))} together` : `${named(scene.outcome, t.causes[0] ?? "")} alone`, " ", make("span", { class: "co-assess__small" }, odds(t.p))))));
}
