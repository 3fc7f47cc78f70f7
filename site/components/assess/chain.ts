// The chain from root cause to failed part: the drawing, and the same as a list with the same numbers.

import { make } from "../../module/dom.ts";
import { parseSVG } from "../worksheet/answer.ts";
import { fact, named, number } from "./view.ts";
import type { Scene } from "./view.ts";

export function chain(scene: Scene): HTMLElement | null {
  const { arrows, drawing, mechanisms } = scene.outcome;
  if (arrows.length === 0) return null;
  const svg = drawing === "" ? null : parseSVG(drawing);
  const mechanism = (id: string): string => mechanisms.get(id)?.name ?? id;
  const numbers = (ids: string[]): (Node | string)[] => ids.flatMap((id, i) => [...(i > 0 ? [" "] : []), number(scene, id)]);
  const rows = arrows.map((a) => {
    const [from, to] = a.cause === null ? [mechanism(a.mechanism), "failed compressor"] : [named(scene.outcome, a.cause), mechanism(a.mechanism)];
    return make("li", { class: a.proven ? "co-chained" : "co-chained co-chained--open" }, make("strong", {}, `${from} → ${to}: `),
      ...(a.proven ? ["supported by ", ...numbers(a.findings)] : a.findings.length > 0 ? ["not proven; evidence so far: ", ...numbers(a.findings)] : ["not proven, no finding backs it"]));
  });
  const backing = new Set(arrows.flatMap((a) => a.findings));
  const legend = [...scene.numbers.keys()].filter((id) => backing.has(id)).map((id) => make("li", {}, ...fact(scene, id)));
  return make("section", { class: "co-assess__chain", "aria-labelledby": "assess-chain" }, make("h3", { class: "co-assess__head", id: "assess-chain" }, "The chain, as far as it is shown"),
    svg && make("figure", { class: "co-chain-frame" }, svg, make("figcaption", {}, "Full line: a finding that points at it, or two that are independent. Dashed with a question mark: not proven. Numbers are the findings below.")),
    make("ul", { class: "co-assess__list co-assess__arrows" }, ...rows),
    legend.length === 0 ? null : make("div", { class: "co-assess__legend" }, make("p", { class: "co-assess__sub" }, "The findings by number"), make("ul", { class: "co-assess__list" }, ...legend)));
}
