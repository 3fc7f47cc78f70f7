// Lets a table that fits the width scroll with the page, and says at the edge of one that does not how much of it lies beyond.
// For the eye alone: to a screen reader the table is whole, so the words are content of the style (table.css).

import { all } from "../../module/dom.ts";

export function tableMore(): void {
  const due = new Set<Element>();
  // In a frame of its own: what is written would make the observer tell again at once, which is an error. First everything is
  // measured, then everything is written: in turn, each table would cost a layout of the page.
  const sizes = new ResizeObserver((seen) => {
    if (due.size === 0) requestAnimationFrame(sayAll);
    for (const s of seen) due.add(s.target.closest(".co-scroll") as Element);
  });
  const sayAll = (): void => {
    const writes = [...due].map(say);
    due.clear();
    for (const write of writes) write?.();
  };
  const watch = (): void => all(document, ".co-scroll").forEach((box) => {
    sizes.observe(box);
    if (box.firstElementChild) sizes.observe(box.firstElementChild); // larger letters
  });
  watch();
  addEventListener("changeout:unfolded", watch); // a packed page of the single file
  addEventListener("scroll", (e) => (e.target as Element).matches?.(".co-scroll") && say(e.target as Element)?.(), { capture: true, passive: true });
}

/** Measures a table and gives what is to be written about it. */
function say(box: Element): (() => void) | undefined {
  const table = box.querySelector("table");
  if (table?.checkVisibility?.({ contentVisibilityAuto: true }) === false) return; // far down and not laid out: the observer tells when it is
  const fits = !!table && table.offsetWidth <= box.clientWidth + 1;
  const down = box.scrollHeight > box.clientHeight + 1;
  let more: string | undefined;
  if (table?.tHead && (down || box.scrollWidth > box.clientWidth + 1)) {
    const edge = box.getBoundingClientRect();
    // What shows by half counts as seen; the words themselves cover half a row.
    const count = (cells: Iterable<Element>, what: string, way: string, beyond: (r: DOMRect) => boolean): string => {
      const n = [...cells].filter((c) => beyond(c.getBoundingClientRect())).length;
      return n > 0 ? ` ${n} ${what}${n > 1 ? "s" : ""} ${way}` : "";
    };
    more = count(table.rows, "row", "↓", (r) => down && r.top + r.bottom > 2 * edge.bottom - 48) +
      count(table.tHead.querySelectorAll("tr:last-child > th"), "column", "→", (r) => r.left + r.right > 2 * edge.right);
  }
  return () => {
    box.toggleAttribute("data-fits", fits);
    if (more === undefined) box.removeAttribute("data-more");
    else box.setAttribute("data-more", more);
  };
}
