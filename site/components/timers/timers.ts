// Waits with a clock. Each wait on a page gets a button, and waits that belong together one more; every page shows the
// running timers in the bar at the thumb (bar.ts). When one ends the page says so in words, and by sound, vibration and
// title where the browser allows it, again and again until it is noted. One that ended while no page was open says when.

import { button, make, all } from "../../module/dom.ts";
import { pages } from "../../module/root.ts";
import { flashTitle, keepScreenOn, prepareSound, ring, silence, wakeSound } from "./alarm.ts";
import { timerBar } from "./bar.ts";
import { ago, clockSet, clockTime, clockWatch, left, ringDue, ringFor } from "./clock.ts";
import { currentJob, onJobChange } from "../../module/store.ts";
import { dropTimer, onTimersChange, putTimer, timerId, timersNow } from "./running.ts";
import type { Timer } from "./running.ts";

const opened = Date.now();

type Draw = (list: Timer[], now: number) => void;

const begun = new Set<string>(); // ids of timers started on this page since it was opened
const status = make("p", { class: "co-hidden", role: "status" }); // what a tap has done, for who does not see it

export function timers(): void {
  const draws = pages().flatMap(waitsOf);
  let clock: number | undefined;
  let lastRing = -Infinity; // by performance.now(), which nobody sets anew
  let screenNote = "";
  let warned = "";
  let watch = clockWatch();
  let inSight = false; // since the last tick
  const said = new Set<string>();
  const alert = make("p", { class: "co-hidden", role: "alert" });
  document.body.append(alert, status);
  const visible = (): boolean => document.visibilityState === "visible";

  const tick = (): void => {
    const now = Date.now();
    const list = timersNow().sort((a, b) => a.end - b.end);
    for (const draw of draws) draw(list, now);

    const sounds = list.some((t) => now - t.end < ringFor); // or will
    const set = clockSet(watch(now, performance.now(), inSight));
    inSight = visible();
    const quiet = silence(sounds);
    const warning = `${set} ${quiet}`.trim();
    if (warning && warning !== warned) status.textContent = warning;
    warned = warning;
    drawBar(list, now, warning || (list.some((t) => t.end > now) ? screenNote : ""), !!warning);

    const over = list.filter((t) => t.end <= now);
    const news = over.filter((t) => !said.has(t.id + t.end));
    for (const t of news) said.add(t.id + t.end);
    if (news[0]) alert.textContent = news.map((t) => sentence(t, now)).join(" ");
    const first = over[0];
    flashTitle(first ? `Over: ${first.title}` : null);
    void keepScreenOn(sounds, (on) => {
      screenNote = on
        ? "If locked, this phone may not ring."
        : "This browser lets the screen sleep. The time runs on, but a sleeping page cannot sound.";
    });
    if (list.length === 0) {
      clearInterval(clock);
      clock = undefined;
      watch = clockWatch();
    } else clock ??= window.setInterval(second, 1000);
  };
  const second = (): void => {
    tick();
    const now = Date.now();
    const steady = performance.now();
    if (!timersNow().some((t) => ringDue(now - t.end, steady - lastRing))) return;
    lastRing = steady;
    ring();
  };
  const drawBar = timerBar(tick);
  onTimersChange(tick);
  onJobChange(tick);
  document.addEventListener("visibilitychange", () => {
    inSight = false; // it may have slept
    if (visible()) {
      void wakeSound();
      lastRing = -Infinity; // what is over rings for who comes back
    }
    tick();
  });
  for (const event of ["pointerup", "keydown"]) addEventListener(event, () => void (clock && prepareSound()), { passive: true });
  tick();
}

function sentence(t: Timer, now: number): string {
  const when = clockTime(t.end, now);
  if (t.end < opened && !begun.has(t.id)) return `${t.title}: the time is over. It ended at ${when}, ${ago(now - t.end)} ago, while this page was closed.`;
  return `${t.title}: the time is over. It ended at ${when}.`;
}

interface Wait { box: HTMLElement; id: () => string; begin: (at: number) => void; draw: Draw }

/** The waits of a page, and a button before each group of them. The first of a group gives the group its name. */
function waitsOf(page: HTMLElement): Draw[] {
  const waits = all(page, "[data-wait]").map((box) => waitBox(page, box));
  const groups = waits.map(({ box }) => waits.filter((w) => w.box.dataset.together === box.dataset.wait));
  return [...waits.map((w) => w.draw), ...groups.filter((g) => g[0]).map(together)];
}

/** One button for waits that count from the same moment, until one of them runs. */
function together(waits: Wait[]): Draw {
  const begin = (at: number): void => {
    for (const w of waits) w.begin(at);
    status.textContent = `${waits.length} timers run.`;
    waits[0]?.box.querySelector<HTMLElement>("button:not([hidden])")?.focus(); // the keyboard's place: what was pressed is hidden now
  };
  const start = button(`Start all ${waits.length} timers`, "co-button", () => begin(Date.now()));
  const buttons = make("div", { class: "co-wait__buttons co-wait__together" }, start, earlier(begin));
  waits[0]?.box.before(buttons);
  return (list) => void (buttons.hidden = list.some((t) => waits.some((w) => w.id() === t.id)));
}

/** For who taps late: what was started some minutes ago. Folded, and made when it is unfolded, because it is rare. */
function earlier(begin: (at: number) => void): HTMLElement {
  const fold = make("details", { class: "co-wait__earlier" }, make("summary", {}, "It started earlier"));
  fold.addEventListener("toggle", () => {
    const field = make("input", { type: "number", min: "0", max: "20000", required: "" }); // the longest wait has 20160 minutes
    const go = (): void => {
      if (!field.reportValidity()) return; // the browser says what is wrong, at the field
      begin(Date.now() - field.valueAsNumber * 60e3);
      fold.open = false;
      field.value = "";
    };
    field.addEventListener("keydown", (event) => {
      if (event.key !== "Enter") return;
      event.preventDefault(); // or the same key presses the button that gets the focus
      go();
    });
    fold.append(make("div", { class: "co-write" }, make("label", {}, "Minutes ago", field), button("Start it from then", "co-button co-button--quiet", go)));
  }, { once: true });
  return fold;
}

/** Gives a wait on the page its clock and buttons. */
function waitBox(page: HTMLElement, box: HTMLElement): Wait {
  const seconds = Number(box.dataset.seconds);
  const id = (): string => timerId(page.dataset.page ?? "", box.dataset.wait ?? "");
  const title = box.querySelector(".co-wait__title")?.textContent ?? "Timer";
  const length = box.querySelector<HTMLElement>(".co-wait__length");
  const clock = make("p", { class: "co-wait__clock", role: "timer", "aria-label": `Time left: ${title}` });
  const state = make("p", { class: "co-wait__state" });
  let stopped: Timer | undefined; // by a tap on this page, which may have been a slip
  const say = (): void => void (status.textContent = `${title}: ${state.textContent}`);
  const begin = (at: number): void => {
    prepareSound();
    begun.add(id());
    const job = currentJob();
    putTimer({ id: id(), page: page.dataset.page ?? "", wait: box.id, title, start: at, end: at + seconds * 1000, ...(job && { job: job.id, jobTitle: job.title }) });
    say();
  };
  const now = (): void => begin(Date.now());
  const start = button(`Start the timer: ${title}`, box.dataset.together ? "co-button co-button--quiet" : "co-button", now);
  const stop = button("Stop the timer", "co-button co-button--quiet", () => {
    stopped = timersNow().find((t) => t.id === id());
    dropTimer(id());
    state.textContent = `Stopped with ${clock.textContent} left. Started at ${clockTime(stopped?.start ?? 0, Date.now())}.`;
    say();
  });
  const back = button("Put it back", "co-button", () => {
    if (stopped) putTimer(stopped);
    say();
  });
  const noted = button("Noted", "co-button", () => dropTimer(id()));
  const again = button("Start again", "co-button co-button--quiet", now);
  const late = earlier(begin);
  (length ?? box.lastElementChild)?.after(clock); // the time left stands where the length stood
  box.append(state, make("div", { class: "co-wait__buttons" }, start, stop, back, noted, again, late));
  const draw: Draw = (list, now) => {
    const own = id();
    const t = list.find((x) => x.id === own);
    if (t) stopped = undefined;
    const over = !!t && t.end <= now;
    const kept = stopped?.id === own ? stopped : undefined;
    const focus = document.activeElement;
    if (length) length.hidden = !!t;
    clock.hidden = !t || over;
    state.hidden = !t && !kept;
    start.hidden = !!t || !!kept;
    stop.hidden = !t || over;
    back.hidden = !kept;
    noted.hidden = !over;
    again.hidden = !over && !kept;
    late.hidden = !!t;
    box.classList.toggle("co-wait--over", over);
    if (t) {
      clock.textContent = left(t.end - now);
      state.textContent = over ? sentence(t, now).slice(title.length + 2).replace(/^t/, "T") : `Ends at ${clockTime(t.end, now)}. Started at ${clockTime(t.start, now)}.`;
    }
    // A button that was just pressed and hides must not lose the keyboard's place.
    if (box.contains(focus) && focus?.closest("[hidden]")) (over ? noted : t ? stop : kept ? back : start).focus();
  };
  return { box, id, begin, draw };
}
