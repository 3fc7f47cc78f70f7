// The page keeps free what the bar at the thumb covers, however many timers stand in it. The room is written on the two
// elements that need it, and as --dock where a component keeps something just above the bar: on the root the variable
// would make the browser work out the style of the whole page again.

import { all } from "../../module/dom.ts";

export function dockHeight(): void {
  const dock = document.querySelector<HTMLElement>(".co-dock");
  if (!dock || !("ResizeObserver" in window)) return;
  new ResizeObserver(() => {
    const height = Math.ceil(dock.getBoundingClientRect().height);
    document.body.style.paddingBottom = `max(4.5rem, ${height}px)`;
    document.documentElement.style.scrollPaddingBottom = `calc(max(4rem, ${height}px) + 1rem)`;
    for (const e of all(document, "[data-assess]")) e.style.setProperty("--dock", `${height}px`);
  }).observe(dock);
}
