// The timers in the bar at the thumb, on every page. Those that are over come first and are always there; of several that
// run, the one that ends next, and a button that unfolds the others. The button stands in the last line, so that it stays
// where it was when it is tapped.

import { all, button, make } from "../../module/dom.ts";
import { currentPage } from "../../module/one-page.ts";
import { pageAddress, singleFile } from "../../module/root.ts";
import { currentJob, load, save } from "../../module/store.ts";
import { clockTime, left, ringFor } from "./clock.ts";
import { dropTimer } from "./running.ts";
import type { Timer } from "./running.ts";

/** Gives what draws the bar from the timers in the order of their ends; redraw is called when a person folds or unfolds it. */
export function timerBar(redraw: () => void): (list: Timer[], now: number, note: string, warns: boolean) => void {
  const bar = document.querySelector<HTMLElement>("[data-timers]");
  if (!bar) return () => undefined;
  const low = matchMedia("(max-height: 25.99em)"); // as in dock.css: there is room for one line, so what is unfolded elsewhere is not here
  const key = (): string => (low.matches ? "timers-low" : "timers-open");
  const lines = make("div", { class: "co-timers__list" });
  const below = make("p", { class: "co-timers__note" });
  const fold = button("", "co-button co-button--quiet", () => {
    save(key(), load(key()) ? null : "1");
    redraw();
  });
  let shape = "";
  bar.append(lines, below);
  return (list, now, note, warns) => {
    const next = list.findIndex((t) => t.end > now);
    const folds = next >= 0 && next < list.length - 1;
    const open = folds && !!load(key());
    const shown = folds && !open ? list.slice(0, next + 1) : list;
    const name = `${currentJob()?.id} ${list.length} ${open} ` + shown.map((t) => `${t.id} ${t.end} ${t.end <= now}`).join("|");
    if (shape !== name) {
      shape = name;
      const held = document.activeElement;
      const of = bar.contains(held) ? held?.closest<HTMLElement>(".co-timer")?.dataset.timer : undefined;
      lines.replaceChildren(...shown.map((t) => line(t, now)));
      const end = lines.lastElementChild;
      if (folds) end?.append(fold);
      end?.classList.toggle("co-timer--folds", folds);
      fold.textContent = open ? "Show fewer" : `and ${list.length - shown.length} more`;
      fold.ariaExpanded = String(open);
      bar.hidden = list.length === 0;
      // The keyboard keeps its place: on the same timer, or when that is gone, on the first one or the page.
      if (of) {
        const same = all(lines, ".co-timer").find((l) => l.dataset.timer === of);
        (held === fold && folds ? fold : same?.querySelector<HTMLElement>(held?.localName ?? "a") ?? (same ?? lines).querySelector("a") ?? currentPage())?.focus({ preventScroll: true });
      }
    }
    all(lines, ".co-timer__left").forEach((clock, i) => (clock.textContent = left((shown[next + i]?.end ?? 0) - now)));
    below.hidden = note === "" && list.every((t) => now - t.end >= ringFor); // else it keeps its line, so that nothing moves under the finger when it speaks
    below.classList.toggle("co-timers__note--warns", warns);
    if (below.textContent !== note) below.textContent = note;
  };
}

/** Says whose timer it is when another job is open. */
function ofOther(t: Timer): string {
  return (t.job ?? "") === (currentJob()?.id ?? "") ? "" : t.job ? ` (job ${t.jobTitle ?? "not named"})` : " (no job)";
}

function line(t: Timer, now: number): HTMLElement {
  const over = t.end <= now;
  const address = singleFile ? "#" + t.wait : `${pageAddress(t.page)}#${t.wait}`;
  return make("div", { class: over ? "co-timer co-timer--over" : "co-timer", "data-timer": t.id },
    make("a", { class: "co-timer__name", href: address }, (over ? `${t.title}: over since ${clockTime(t.end, now)}.` : t.title) + ofOther(t)),
    over ? button("Noted", "co-button", () => dropTimer(t.id)) : make("span", { class: "co-timer__left" }));
}
