// Waits with a clock. Each wait on a page gets a button; every page shows all running timers above the bar at the thumb.
// When one ends the page says so in words, and by sound, vibration and title where the browser allows it. One that
// ended while no page was open says when.

import { button, make, all } from "../../module/dom.ts";
import { pageAddress, pages, singleFile } from "../../module/root.ts";
import { flashTitle, keepScreenOn, prepareSound, ring } from "./alarm.ts";
import { ago, clockTime, left } from "./clock.ts";
import { currentJob, onJobChange } from "../../module/store.ts";
import { dropTimer, onTimersChange, putTimer, timerId, timersNow } from "./running.ts";
import type { Timer } from "./running.ts";

const opened = Date.now();
const ringEvery = 5e3;
const ringFor = 60e3;

export function timers(): void {
  const bar = document.querySelector<HTMLElement>("[data-timers]");
  const waits = pages().flatMap((page) => all(page, "[data-wait]").map((box) => waitBox(page, box)));
  let clock: number | undefined;
  let lastRing = 0;
  let screenNote = "";
  const said = new Set<string>();
  const alert = make("p", { class: "co-hidden", role: "alert" });
  document.body.append(alert);

  const tick = (): void => {
    const now = Date.now();
    const list = timersNow().sort((a, b) => a.end - b.end);
    for (const w of waits) w(list, now);
    if (bar) drawBar(bar, list, now, screenNote);

    const over = list.filter((t) => t.end <= now);
    for (const t of over) {
      const name = t.id + t.end;
      if (said.has(name)) continue;
      said.add(name);
      alert.textContent = sentence(t, now);
    }
    const fresh = over.some((t) => now - t.end < ringFor);
    if (fresh && now - lastRing >= ringEvery) {
      lastRing = now;
      ring();
    }
    const first = over[0];
    flashTitle(first ? `Over: ${first.title}` : null);
    void keepScreenOn(list.some((t) => t.end > now), (on) => {
      screenNote = on
        ? "The screen stays on while this page is open."
        : "This browser lets the screen sleep. The time runs on, but a sleeping page cannot sound.";
    });
    if (list.length > 0) soundAfterTap();
    if (list.length === 0) {
      clearInterval(clock);
      clock = undefined;
      lastRing = 0;
    } else clock ??= window.setInterval(tick, 1000);
  };
  onTimersChange(tick);
  onJobChange(tick);
  document.addEventListener("visibilitychange", tick);
  tick();
}

let listening = false;

/** A timer may have been started on another page: the first tap on this one is what lets it sound here. */
function soundAfterTap(): void {
  if (listening) return;
  listening = true;
  for (const event of ["pointerup", "keydown"]) addEventListener(event, prepareSound, { once: true, passive: true });
}

function sentence(t: Timer, now: number): string {
  const when = clockTime(t.end, now);
  if (t.end < opened) return `${t.title}: the time is over. It ended at ${when}, ${ago(now - t.end)} ago, while this page was closed.`;
  return `${t.title}: the time is over. It ended at ${when}.`;
}

function overShort(t: Timer, now: number): string {
  return `${t.title}: over since ${clockTime(t.end, now)}.`;
}

/** Gives a wait on the page its clock and buttons; returns what redraws them. */
function waitBox(page: HTMLElement, box: HTMLElement): (list: Timer[], now: number) => void {
  const seconds = Number(box.dataset.seconds);
  if (!(seconds > 0)) return () => undefined;
  const id = (): string => timerId(page.dataset.page ?? "", box.dataset.wait ?? "");
  const title = box.querySelector(".co-wait__title")?.textContent ?? "Timer";
  const length = box.querySelector<HTMLElement>(".co-wait__length");
  const clock = make("p", { class: "co-wait__clock", role: "timer", "aria-label": `Time left: ${title}` });
  const state = make("p", { class: "co-wait__state" });
  const begin = (): void => {
    prepareSound();
    const start = Date.now();
    const job = currentJob();
    putTimer({ id: id(), page: page.dataset.page ?? "", wait: box.id, title, start, end: start + seconds * 1000, ...(job && { job: job.id, jobTitle: job.title }) });
  };
  const start = button(`Start the timer: ${title}`, "co-button", begin);
  const again = button("Start again", "co-button co-button--quiet", begin);
  const stop = button("Stop the timer", "co-button co-button--quiet", () => dropTimer(id()));
  const noted = button("Noted", "co-button", () => dropTimer(id()));
  const buttons = make("div", { class: "co-wait__buttons" }, start, stop, noted, again);
  (length ?? box.lastElementChild)?.after(clock); // the time left stands where the length stood
  box.append(state, buttons);
  return (list, now) => {
    const own = id();
    const t = list.find((x) => x.id === own);
    const over = !!t && t.end <= now;
    const focus = document.activeElement;
    const held = focus === start || focus === stop || focus === noted || focus === again;
    if (length) length.hidden = !!t;
    clock.hidden = !t || over;
    state.hidden = !t;
    start.hidden = !!t;
    stop.hidden = !t || over;
    noted.hidden = again.hidden = !over;
    box.classList.toggle("co-wait--over", over);
    if (t) {
      clock.textContent = left(t.end - now);
      state.textContent = over ? sentence(t, now).slice(title.length + 2).replace(/^t/, "T") : `Ends at ${clockTime(t.end, now)}. Started at ${clockTime(t.start, now)}.`;
    }
    // A button that was just pressed and hides must not lose the keyboard's place.
    if (held && (focus as HTMLElement).hidden) (over ? noted : t ? stop : start).focus();
  };
}

function drawBar(bar: HTMLElement, list: Timer[], now: number, note: string): void {
  const shape = (currentJob()?.id ?? "") + list.map((t) => `${t.id} ${t.end} ${t.end <= now}`).join("|");
  if (bar.dataset.shape !== shape) {
    bar.dataset.shape = shape;
    bar.replaceChildren(...list.map((t) => row(t, now)), make("p", { class: "co-timers__note" }));
    bar.hidden = list.length === 0;
  }
  list.forEach((t, i) => {
    const clock = bar.children[i]?.querySelector(".co-timer__left");
    if (clock) clock.textContent = left(t.end - now);
  });
  const last = bar.lastElementChild as HTMLElement | null;
  if (last) {
    last.hidden = note === "" || list.every((t) => t.end <= now);
    if (last.textContent !== note) last.textContent = note;
  }
}

/** Says whose timer it is when another job is open. */
function ofOther(t: Timer): string {
  return (t.job ?? "") === (currentJob()?.id ?? "") ? "" : t.job ? ` (job ${t.jobTitle ?? "not named"})` : " (no job)";
}

function row(t: Timer, now: number): HTMLElement {
  const over = t.end <= now;
  const address = singleFile ? "#" + t.wait : `${pageAddress(t.page)}#${t.wait}`;
  return make("div", { class: over ? "co-timer co-timer--over" : "co-timer" },
    make("a", { class: "co-timer__name", href: address }, (over ? overShort(t, now) : t.title) + ofOther(t)),
    over ? button("Noted", "co-button", () => dropTimer(t.id)) : make("span", { class: "co-timer__left" }));
}
