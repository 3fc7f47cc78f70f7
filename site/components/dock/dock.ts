// The page keeps free what the bar at the thumb covers, however many timers stand in it.

export function dockHeight(): void {
  const dock = document.querySelector<HTMLElement>(".co-dock");
  if (!dock || !("ResizeObserver" in window)) return;
  new ResizeObserver(() => {
    document.documentElement.style.setProperty("--dock", `${Math.ceil(dock.getBoundingClientRect().height)}px`);
  }).observe(dock);
}
