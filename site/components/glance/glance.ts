// A worksheet's result at a glance. While the fields are in sight and the answer is not, a strip at the upper edge, where
// no keyboard covers it, holds the main figure. "Show it large" fills the screen with it, to be read from two metres. Both
// read the answer that stands on the page, whatever drew it.

import { button, make } from "../../module/dom.ts";
import { clockTime } from "../timers/clock.ts";
import { awake } from "./awake.ts";
import { read } from "./read.ts";
import type { Seen } from "./read.ts";

export function glances(): void {
  addEventListener("popstate", stepped);
  document.addEventListener("changeout:begun", (event) => {
    const section = event.target as HTMLElement;
    const form = section.querySelector<HTMLElement>("[data-form]");
    const answer = section.querySelector<HTMLElement>("[data-answer]");
    if (form && answer) glance(section, form, answer);
  });
}

function glance(section: HTMLElement, form: HTMLElement, answer: HTMLElement): void {
  let at = 0; // ms since 1970, when the answer was drawn
  let inSight = false; // the answer
  let passed = false; // the top of the form is above the screen

  const toAnswer = button("", "co-strip__go", () => {
    answer.scrollIntoView({ block: "start" });
    answer.querySelector<HTMLElement>(".co-answer__title")?.focus({ preventScroll: true });
  });
  const top = make("div");
  const strip = make("div", { class: "co-strip", hidden: "" }, toAnswer);
  form.before(top, strip);

  // Read when it is wanted: at each key press that would take longer than to write the figures.
  const seen = (): Seen | null => (answer.getAttribute("aria-busy") === "true" ? null : read(answer));
  const drawStrip = (): void => {
    const now = inSight || !passed ? null : seen();
    strip.hidden = !now;
    if (now) toAnswer.replaceChildren(...short(now));
  };
  const large = button("Show it large", "co-button co-button--quiet co-glance-open", () => {
    const now = seen();
    if (now) show(section.dataset.title ?? "", now, at, large);
  });
  const draw = (): void => {
    const place = answer.querySelector(".co-results") ?? answer.querySelector(".co-verdict");
    if (place?.nextElementSibling !== large) place?.after(large);
    drawStrip();
  };
  new MutationObserver(draw).observe(answer, { childList: true, attributes: true, attributeFilter: ["aria-busy"] });
  section.addEventListener("changeout:answer", () => {
    at = Date.now();
    draw(); // figures may be all that has changed
  });
  if ("IntersectionObserver" in window) {
    new IntersectionObserver(([entry]) => {
      inSight = entry?.isIntersecting ?? false;
      drawStrip();
    }, { rootMargin: "-10% 0px -25% 0px" }).observe(answer); // the edges are under the strip and the bar
    new IntersectionObserver(([entry]) => {
      passed = !!entry && !entry.isIntersecting && entry.boundingClientRect.top < 0;
      drawStrip();
    }).observe(top);
  }
  draw();
}

/**
 * How many figures belong together. Where a verdict decides, all main ones do: a best estimate alone could read better than
 * the answer is, so it never stands without its "at most". Where it only names what was found, the first figure leads.
 */
function together({ figures, verdict }: Seen): number {
  return verdict && verdict.tone !== "info" ? Math.max(1, figures.filter((f) => f.main).length) : 1;
}

function short({ figures, verdict }: Seen): Node[] {
  const main = together({ figures, verdict }) > 1 ? undefined : figures[0];
  const parts: Node[] = [];
  if (main) parts.push(make("span", { class: "co-strip__label" }, main.label), make("strong", { class: "co-strip__figure" }, [main.number, main.unit].join("\u00a0").trim()));
  if (verdict) parts.push(make(main ? "span" : "strong", { class: "co-strip__verdict" }, verdict.title));
  return parts;
}

const low = matchMedia("(max-height: 29.99em)"); // as in glance.css: a phone on its side has the figures beside each other

/** Fills the screen until Esc, the phone's way back, or the button. */
function show(title: string, seen: Seen, at: number, from: HTMLElement): void {
  if (typeof HTMLDialogElement !== "function") return;
  const count = together(seen);
  const mains = seen.figures.slice(0, count);
  const others = seen.figures.slice(count, count + (count > 1 ? 0 : 4));
  const main = mains[0];
  const values = mains.map((f) => make("span", { class: "co-glance__value" },
    make("span", { class: "co-glance__number" }, f.number), f.unit ? make("span", { class: "co-glance__unit" }, f.unit) : null));
  const figures = mains.map((f, i) => make("p", { class: "co-glance__figure" }, make("span", { class: "co-glance__label" }, f.label), values[i] ?? null));
  const verdict = seen.verdict && make("div", { class: `co-verdict co-verdict--${seen.verdict.tone}${main ? "" : " co-verdict--alone"}` },
    make("p", { class: "co-verdict__title" }, seen.verdict.title), main ? null : make("p", { class: "co-verdict__text" }, seen.verdict.text));
  // What the figure means stands above it when it decides what to do, below it when it only names it.
  const parts = seen.verdict && seen.verdict.tone !== "info" ? [verdict, ...figures] : [...figures, verdict];
  const box = make("dialog", { class: "co-glance", "aria-label": `${title}: result` },
    make("div", { class: "co-glance__head" }, make("p", { class: "co-glance__sheet" }, title),
      make("p", { class: "co-glance__time" }, `Worked out at ${clockTime(at, Date.now())}`)),
    ...parts.map((p) => p ?? null),
    others.length > 0 ? make("dl", { class: "co-glance__others" }, ...others.map((f) =>
      make("div", {}, make("dt", {}, f.label), make("dd", {}, make("span", {}, f.number), " ", make("span", {}, f.unit))))) : null,
    button("Close", "co-button co-glance__close", () => box.close()));
  const fit = (): void => {
    let share = low.matches ? 0.3 : 0.3 / count;
    do for (const value of values) fill(value, share);
    while (box.scrollHeight > box.clientHeight && (share *= 0.85) > 0.1); // smaller than that, a person scrolls
  };
  const sleep = awake();
  box.addEventListener("close", () => {
    removeEventListener("resize", fit);
    sleep();
    box.remove();
    if (shown === box) leave();
    if (from.isConnected) from.focus();
  });
  document.body.append(box);
  box.showModal();
  fit();
  addEventListener("resize", fit); // the phone is turned
  shown = box;
  enter();
}

// So that the phone's way back closes what fills the screen and leaves the page where it is, one step of the history stands
// for "open", whichever opening made it. A browser takes a step back some time after it was asked to, and the next opening
// can come first: then the one on the screen gets a step anew, and is never closed by the step of the one before. No step is
// made while one back is on its way: Firefox would drop that.
let shown: HTMLDialogElement | null = null;
let leaving = false; // a step back was asked for here and has not come

const entered = (): boolean => (history.state as { glance?: boolean } | null)?.glance === true;

function enter(): void {
  if (!entered()) history.pushState({ glance: true }, "");
}

function leave(): void {
  shown = null;
  if (!entered() || leaving) return; // by the phone's way back: the step is taken already
  leaving = true;
  history.back();
}

function stepped(): void {
  const own = leaving;
  leaving = false;
  if (!shown || entered()) return;
  if (own) enter();
  else shown.close();
}

/**
 * As large as the screen is wide, and at most that share of its height. The unit stands beside its figure unless that would
 * make the figure much smaller, then right under it. Words in place of a figure keep their size and break.
 */
function fill(value: HTMLElement, share: number): void {
  const number = value.firstElementChild as HTMLElement;
  value.style.fontSize = "";
  value.classList.remove("co-glance__value--over");
  value.classList.toggle("co-glance__value--words", /[^\d.,\s\u2212-]/.test(number.textContent ?? ""));
  if (value.classList.contains("co-glance__value--words")) return;
  const room = value.parentElement?.clientWidth ?? 0;
  const size = parseFloat(getComputedStyle(value).fontSize);
  const most = Math.min(innerHeight * share, 320);
  const alone = Math.min(most, (size * room) / number.getBoundingClientRect().width);
  const beside = Math.min(most, (size * room) / value.scrollWidth); // its box is never wider than the room
  const over = beside < 0.6 * alone;
  value.classList.toggle("co-glance__value--over", over);
  value.style.fontSize = `${Math.floor(over ? alone : beside)}px`;
}
