// The result: verdict first, then what does not fit, the next check, what was answered, the chain, the causes, the gate.

import { make } from "../../module/dom.ts";
import { when } from "../job/form.ts";
import { fromWorksheet } from "./answers.ts";
import { causes } from "./causes.ts";
import { chain } from "./chain.ts";
import { gate } from "./gate.ts";
import type { Removal } from "./gate.ts";
import { beforePart, nextCheck } from "./next.ts";
import { fact, fold, toQuestion } from "./view.ts";
import type { Scene } from "./view.ts";
import { count } from "./words.ts";
import type { Said } from "./words.ts";

export function drawResult(box: HTMLElement, scene: Scene, said: Said, facts: number, page: string, removes: Map<string, Removal>, changed: () => void): void {
  const focused = (document.activeElement as HTMLElement | null)?.closest<HTMLElement>("[data-key]");
  const key = focused && box.contains(focused) ? (focused.dataset.key ?? "") : "";
  const onSummary = document.activeElement?.tagName === "SUMMARY";
  const weighed = facts > 0 && scene.outcome.problem === "";
  const parts: (Node | null)[] = [
    make("div", { class: `co-verdict co-verdict--${said.tone}`, "data-said": "" }, make("p", { class: "co-verdict__title", tabindex: "-1" }, said.title), make("p", { class: "co-verdict__text" }, said.text)),
    conflicts(scene),
    nextCheck(scene, changed),
    beforePart(scene),
    answered(scene),
    ...(weighed ? [chain(scene), ...causes(scene)] : []),
    weighed ? gate(scene, page, removes) : null,
  ];
  box.replaceChildren(...parts.filter((p): p is Node => p !== null));
  if (key === "") return;
  const again = box.querySelector<HTMLElement>(`[data-key="${CSS.escape(key)}"]`);
  (onSummary ? again?.querySelector<HTMLElement>("summary") : again)?.focus({ preventScroll: true });
}

/** Answers that the others make improbable. */
function conflicts(scene: Scene): HTMLElement | null {
  // When the answers contradict each other outright the module names none: then all are to be looked at.
  const ids = scene.outcome.problem ? Object.keys(scene.found).filter((id) => scene.form.questions.has(id)) : scene.outcome.conflicts;
  if (ids.length === 0) return null;
  return make("section", { class: "co-assess__conflicts", "data-conflicts": "", "aria-labelledby": "assess-conflicts" },
    make("h3", { class: "co-assess__head", id: "assess-conflicts" }, ids.length === 1 ? "This does not fit the rest: look again" : "These do not fit the rest: look again"),
    make("ul", { class: "co-assess__list" }, ...ids.map((id) => make("li", {}, make("strong", {}, scene.found[id]?.state === "absent" ? "No: " : "Yes: "), toQuestion(scene.form, id, scene.form.questions.get(id)?.words ?? id)))));
}

/** What was answered, for a look back and for paper. */
function answered(scene: Scene): HTMLElement | null {
  const order = [...scene.form.questions.values()].filter((q) => scene.found[q.id]);
  if (order.length === 0) return null;
  const row = (id: string): HTMLElement => {
    const f = scene.found[id];
    const from = fromWorksheet(scene.sheet, id) ? "from a worksheet, " : "";
    return make("li", { class: "co-assess__answered" }, make("span", { class: "co-assess__said" }, ...fact(scene, id)), " ", make("span", { class: "co-assess__small" }, `${from}${f ? when(f.time) : ""}`), " ",
      make("span", { class: "co-assess__change" }, toQuestion(scene.form, id, "Change")), make("p", { class: "co-assess__noted", "data-noted": id }, f?.note ?? ""));
  };
  const present = order.filter((q) => scene.found[q.id]?.state === "present");
  const absent = order.filter((q) => scene.found[q.id]?.state === "absent");
  const block = (title: string, list: typeof order): (Node | null)[] => (list.length === 0 ? [] : [make("p", { class: "co-assess__sub" }, title), make("ul", { class: "co-assess__list" }, ...list.map((q) => row(q.id)))]);
  const d = fold(scene, "answered", "What was answered", `${count(present.length, "yes", "yes")}, ${count(absent.length, "no", "no")}`, ...block("Found", present), ...block("Looked for, and not there", absent));
  d.classList.add("co-assess__entered");
  return d;
}
