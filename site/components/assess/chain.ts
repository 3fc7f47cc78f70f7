// The chain from root cause to failed part: the drawing, and the same as a list with the same numbers.

import { make } from "../../module/dom.ts";
import { parseSVG } from "../worksheet/answer.ts";
import { fact, named } from "./view.ts";
import type { Scene } from "./view.ts";

export function chain(scene: Scene): HTMLElement | null {
  const { arrows, drawing, mechanisms } = scene.outcome;
  if (arrows.length === 0) return null;
  const svg = drawing === "" ? null : parseSVG(drawing);
  const mechanism = (id: string): string => mechanisms.get(id)?.name ?? id;
  const rows = arrows.map((a) => {
    const [from, to] = a.cause === null ? [mechanism(a.mechanism), "failed compressor"] : [named(scene.outcome, a.cause), mechanism(a.mechanism)];
    const facts = a.findings.flatMap((id, i) => [...(i > 0 ? ["; "] : []), ...fact(scene, id)]);
    return make("li", { class: a.proven ? "co-chained" : "co-chained co-chained--open" }, make("strong", {}, `${from} → ${to}. `),
      ...(a.proven ? ["Shown by ", ...facts, "."] : facts.length > 0 ? ["Not proven: one end has no finding. There is ", ...facts, "."] : ["Not proven: no finding backs it."]));
  });
  return make("section", { class: "co-assess__chain", "aria-labelledby": "assess-chain" }, make("h3", { class: "co-assess__head", id: "assess-chain" }, "The chain, as far as it is shown"),
    svg && make("figure", { class: "co-chain-frame" }, svg, make("figcaption", {}, "Full line: findings at both ends. Dashed with a question mark: not proven. Numbers are the findings of the list.")),
    make("ul", { class: "co-assess__list" }, ...rows));
}
