// The gate: root causes not excluded that would kill the next compressor too. Each is removed or excluded, and ticked, before
// the new one may start. A tick is kept as the ticks of steps are, so the job file and the report have it.

import { make } from "../../module/dom.ts";
import { loadRecord, saveRecord } from "../../module/store.ts";
import { wordFor } from "../report/judge.ts";
import type { Judged } from "../report/assessment.ts";
import { address, fold, toQuestion } from "./view.ts";
import type { Scene } from "./view.ts";
import { count, standingWords } from "./words.ts";

export interface Removal { words: string; address: string }

const name = (cause: string): string => `gate-${cause}`;

export function gate(scene: Scene, page: string, removes: Map<string, Removal>): HTMLElement | null {
  const causes = scene.outcome.causes.filter((j) => j.recurs && wordFor(j) !== "excluded").sort((a, b) => b.p - a.p);
  if (causes.length === 0) return null;
  const near = causes.filter((j) => wordFor(j) !== "not determined");
  const far = causes.filter((j) => wordFor(j) === "not determined");
  const state = make("p", { class: "co-assess__gatestate", role: "status" });
  const far2 = far.length === 0 ? null : fold(scene, "gate", "Not excluded yet", "", ...[make("ul", { class: "co-gate" }, ...far.map(item))]);
  const note = far2?.querySelector("summary") ?? null;
  const noted = make("span", { class: "co-assess__count" });
  note?.append(noted);
  const ticked = (list: Judged[]): number => {
    const ticks = loadRecord(`ticks:${page}`);
    return list.filter((j) => name(j.id) in ticks).length;
  };
  const draw = (): void => {
    const n = ticked(causes);
    state.textContent = n === causes.length ? "Every cause of this list is ticked." : `${n} of ${causes.length} ticked. The new compressor does not start yet.`;
    noted.textContent = `${ticked(far)} of ${far.length} ticked`;
  };

  function item(j: Judged): HTMLElement {
    const box = make("input", { type: "checkbox", "data-gate": j.id, "data-key": name(j.id) });
    box.checked = name(j.id) in loadRecord(`ticks:${page}`);
    box.addEventListener("change", () => {
      const ticks = loadRecord(`ticks:${page}`);
      const words = loadRecord(`words:${page}`);
      if (box.checked) {
        ticks[name(j.id)] = new Date().toISOString();
        words[name(j.id)] = `${j.name}: removed or excluded before the new compressor started`;
      } else delete ticks[name(j.id)];
      saveRecord(`ticks:${page}`, ticks);
      saveRecord(`words:${page}`, words);
      draw();
    });
    const r = removes.get(j.id);
    const test = wordFor(j) === "cause" ? undefined : j.missing[0];
    return make("li", { class: "co-gate__row" }, make("label", { class: "co-gate__tick" }, box, make("span", {}, make("strong", {}, j.name), wordFor(j) === "not determined" ? "" : ` (${standingWords[wordFor(j)]})`)),
      make("div", { class: "co-gate__how" },
        r ? make("p", {}, r.words) : null,
        r?.address ? make("p", { class: "co-gate__test" }, make("a", { class: "co-assess__link", href: address(r.address), "aria-label": `How to remove it: ${j.name}` }, "How to remove it")) : null,
        test ? make("p", { class: "co-gate__test" }, "Or exclude it: ", toQuestion(scene.form, test, scene.form.questions.get(test)?.words ?? test)) : null));
  }

  const box = make("section", { class: "co-assess__gate", "aria-labelledby": "assess-gate" },
    make("h3", { class: "co-assess__head", id: "assess-gate" }, "Before the new compressor may start"),
    make("p", {}, `${count(causes.length, "root cause is", "root causes are")} not excluded and would kill the next compressor too. Remove each, or exclude it by a test. Then tick it.`), state,
    near.length > 0 ? make("ul", { class: "co-gate" }, ...near.map(item)) : null, far2);
  draw();
  return box;
}
