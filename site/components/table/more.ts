// Lets a table that fits the width scroll with the page, and says at the edge of one that does not how much of it lies beyond.
// For the eye alone: to a screen reader the table is whole, so the words are content of the style (table.css).

import { all } from "../../module/dom.ts";

export function tableMore(): void {
  // In a frame of its own: what it writes would make the observer tell again at once, which is an error.
  const sizes = new ResizeObserver((seen) => void requestAnimationFrame(() => seen.forEach((s) => say(s.target.closest(".co-scroll") as Element))));
  const watch = (): void => all(document, ".co-scroll").forEach((box) => {
    sizes.observe(box);
    if (box.firstElementChild) sizes.observe(box.firstElementChild); // larger letters
  });
  watch();
  addEventListener("changeout:unfolded", watch); // a packed page of the single file
  addEventListener("scroll", (e) => (e.target as Element).matches?.(".co-scroll") && say(e.target as Element), { capture: true, passive: true });
}

function say(box: Element): void {
  if (box.checkVisibility?.({ contentVisibilityAuto: true }) === false) return; // far down and not laid out: the observer tells when it is
  const table = box.querySelector("table");
  box.toggleAttribute("data-fits", !!table && table.offsetWidth <= box.clientWidth + 1);
  const down = box.scrollHeight > box.clientHeight + 1;
  if (!table?.tHead || (!down && box.scrollWidth <= box.clientWidth + 1)) return box.removeAttribute("data-more");
  const edge = box.getBoundingClientRect();
  // What shows by half counts as seen; the words themselves cover half a row.
  const count = (cells: Iterable<Element>, what: string, way: string, beyond: (r: DOMRect) => boolean): string => {
    const n = [...cells].filter((c) => beyond(c.getBoundingClientRect())).length;
    return n > 0 ? ` ${n} ${what}${n > 1 ? "s" : ""} ${way}` : "";
  };
  box.setAttribute("data-more",
    count(table.rows, "row", "↓", (r) => down && r.top + r.bottom > 2 * edge.bottom - 48) +
    count(table.tHead.querySelectorAll("tr:last-child > th"), "column", "→", (r) => r.left + r.right > 2 * edge.right));
}
