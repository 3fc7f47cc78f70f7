// Ticked steps: a tick survives a reload and a closed tab, the page counts them, and the bar at the thumb leads to the next.

import { loadRecord, onJobChange, onOtherTab, save, saveRecord } from "../../module/store.ts";
import { all, button, keepPlace, make } from "../../module/dom.ts";
import { pages } from "../../module/root.ts";
import { nextOpen } from "./next.ts";
import { begin, setAside } from "../../module/near.ts";
import { currentPage, onPageChange } from "../../module/one-page.ts";

export const ticksKey = (page: string): string => `ticks:${page}`;
export const readingsKey = (page: string): string => `readings:${page}`;
const wordsKey = (page: string): string => `words:${page}`; // what a ticked step said, for the job file

/** before: the cautions and decisions between the step before and this one. */
interface Step { row: HTMLElement; box: HTMLInputElement; number: string; before: HTMLElement[] }

const inSight = 4; // steps at the head of a page: they keep their controls from the first
export const known = new Map<HTMLElement, Step[]>(); // of each page: a box that is set aside is not in the document

export function steps(): void {
  const redraw = new Map<string, () => void>();
  for (const page of pages()) {
    const draw = stepsOf(page);
    if (draw) redraw.set(ticksKey(page.dataset.page ?? ""), draw);
  }
  onOtherTab((key) => redraw.get(key)?.());
  onJobChange(() => redraw.forEach((draw) => draw()));
  onPageChange(drawNext);
  const next = document.querySelector<HTMLButtonElement>("[data-next-step]");
  next?.addEventListener("click", () => {
    const to = target; // what the button says, also when the page has moved since
    if (!to) return;
    const box = known.get(currentPage() as HTMLElement)?.find((s) => s.row === to)?.box;
    begin(to);
    to.scrollIntoView({ block: "start" });
    if (!box) to.tabIndex = -1;
    (box ?? to).focus({ preventScroll: true });
    led = to;
    reached.add(to); // the observer says so too, after the page has come to rest
    drawNext();
  });
  drawNext();
}

function stepsIn(page: HTMLElement): Step[] {
  let before: HTMLElement[] = [];
  return all(page, "[data-step], .co-caution, .co-decision").flatMap((row) => {
    const box = row.querySelector<HTMLInputElement>("[data-tick]");
    if (!row.matches("[data-step]")) {
      if (!row.closest("[data-worksheet]")) before.push(row);
    } else if (box) {
      const step = { row, box, number: row.querySelector(".co-step__number")?.textContent ?? "", before };
      before = [];
      return [step];
    }
    return [];
  });
}

let target: HTMLElement | undefined; // where the button in the bar leads: a step, or what must be read before it
const reached = new Set<Element>(); // what begins above the line, or on it
let led: Element | undefined; // where the button led last
let rest: number | undefined;
const lineAt = 0.09; // of the screen's height, from the top

// The line lies just below where a step comes to stand when the button leads to it. Everything above it counts as seen by the
// observer, so a step tells when it crosses, also in a jump, and nothing is measured while the page moves.
const line = "IntersectionObserver" in window
  ? new IntersectionObserver((entries) => {
    for (const e of entries) {
      // What it saw just before a press moved the page can be told after it: then the button would lead to where the page stands.
      const there = e.isIntersecting || (e.target === led && led.getBoundingClientRect().top < lineAt * innerHeight);
      reached[there ? "add" : "delete"](e.target);
    }
    clearTimeout(rest);
    rest = window.setTimeout(drawNext, 200); // a button does not change its words while the page still moves
  }, { rootMargin: `9999999px 0px -${100 - 100 * lineAt}%` })
  : null;

function drawNext(): void {
  const bar = document.querySelector<HTMLButtonElement>("[data-next-step]");
  const tables = document.querySelector<HTMLElement>("[data-dock-tables]");
  if (!bar) return;
  const page = currentPage();
  const step = nextOpen((page && known.get(page)) ?? [], reached);
  target = step?.before.find((e) => !reached.has(e)) ?? step?.row;
  bar.hidden = !step;
  bar.parentElement?.toggleAttribute("data-leads", !!step);
  if (tables) tables.hidden = !!step;
  if (step) bar.textContent = target === step.row ? `Next: step\u00a0${step.number}` : target?.matches(".co-caution") ? "Next: caution" : "Next: decision";
}

function stepsOf(page: HTMLElement): (() => void) | null {
  const id = page.dataset.page ?? "";
  const list = stepsIn(page);
  if (list.length === 0) return null;
  known.set(page, list);
  for (const s of list) for (const e of [s.row, ...s.before]) line?.observe(e);
  for (const s of list.slice(inSight)) for (const control of all(s.row, "[data-tick], [data-write]")) setAside(s.row, control);
  const progress = page.querySelector<HTMLElement>("[data-progress]");

  const draw = (): void => {
    const ticks = loadRecord(ticksKey(id));
    let done = 0;
    let next: Step | null = null;
    for (const s of list) {
      s.box.checked = (s.box.dataset.tick ?? "") in ticks;
      if (s.box.checked) done++;
      else next ??= s;
      s.row.classList.toggle("co-step--done", s.box.checked);
    }
    for (const s of list) s.row.classList.toggle("co-step--next", s === next && done > 0);
    const text = progress?.querySelector("[data-progress-text]");
    if (text) text.textContent = done === list.length ? `All ${done} steps ticked` : `${done} of ${list.length} steps ticked`;
    const clear = progress?.querySelector<HTMLElement>("[data-progress-clear]");
    if (clear) clear.hidden = done === 0 && Object.keys(loadRecord(readingsKey(id))).length === 0;
    drawNext();
  };

  for (const s of list) {
    s.box.addEventListener("change", () => {
      const ticks = loadRecord(ticksKey(id));
      const words = loadRecord(wordsKey(id));
      const name = s.box.dataset.tick ?? "";
      if (s.box.checked) {
        ticks[name] = new Date().toISOString();
        words[name] = s.row.querySelector(".co-step__text")?.textContent?.trim() ?? "";
      } else delete ticks[name];
      saveRecord(ticksKey(id), ticks);
      saveRecord(wordsKey(id), words);
      draw();
    });
  }
  if (progress) {
    progress.hidden = false;
    const clear = progress.querySelector<HTMLButtonElement>("[data-progress-clear]");
    clear?.addEventListener("click", () => askToClear(clear, () => {
      save(ticksKey(id), null);
      save(readingsKey(id), null);
      draw();
      page.dispatchEvent(new Event("changeout:cleared")); // for what was written down
    }));
  }
  draw();
  return draw;
}

/** Nothing typed is lost by one slip of the thumb: the button asks in its own place, and what keeps comes first. */
function askToClear(from: HTMLButtonElement, clear: () => void): void {
  const close = (): void => {
    ask.remove();
    from.hidden = false;
  };
  const no = button("Keep them", "co-button", () => {
    close();
    from.focus();
  });
  const yes = button("Clear them", "co-button co-button--quiet", () => {
    close();
    clear();
    keepPlace(from); // it goes when nothing is left to clear
  });
  const question = "Clear all ticks and readings of this page?";
  const ask = make("span", { class: "co-wait__buttons", role: "group", "aria-label": question },
    make("span", {}, question), no, yes);
  from.hidden = true;
  from.after(ask);
  no.focus();
}
