// Ticks, readings and timers: what a person did is still there after a reload.

import assert from "node:assert/strict";
import { until } from "../support/page.mjs";
import { on, openPage } from "./reading.mjs";

export const procedure = "stages/evacuate-and-hold";

/** Presses the button that holds the focus. Firefox, driven, may say that its window is not in use, and then Enter clicks no button. */
export async function pressHere(p) {
  if (await p.run(() => document.hasFocus())) await p.press("Enter");
  else await p.run(() => document.activeElement.click());
}

/** Starts from an empty page: earlier scenarios of the same browser leave ticks behind. */
async function clear(p) {
  await p.run(() => {
    for (const key of Object.keys(localStorage)) if (/:(ticks|readings|last|timers)/.test(key)) localStorage.removeItem(key);
  });
  await p.reload();
}

const ticked = (p) => p.run((s) => [...document.querySelectorAll(`${s} [data-tick]`)].filter((b) => b.checked).map((b) => b.dataset.tick), on(procedure));

export async function tickWriteTime(p, place) {
  await openPage(p, place, procedure);
  await clear(p);
  const at = on(procedure);
  const names = await p.run((s) => [...document.querySelectorAll(`${s} [data-tick]`)].slice(0, 3).map((b) => b.dataset.tick), at);
  assert.equal(names.length, 3);
  for (const name of [names[0], names[2]]) await p.tap(`${at} [data-tick="${name}"]`);
  assert.deepEqual(await ticked(p), [names[0], names[2]]);
  const progress = await p.text(`${at} [data-progress-text]`);
  assert.match(progress, /^2 of \d+ steps/);

  const reading = await p.run((s) => document.querySelector(`${s} [data-write]`).dataset.write, at);
  await p.fill(`${at} [data-write="${reading}"]`, "87,5");

  const wait = await p.run((s) => document.querySelector(`${s} [data-wait]`).dataset.wait, at);
  const box = `${at} [data-wait="${wait}"]`;
  await p.tap(`${box} .co-wait__buttons button:not([hidden])`);
  await until("the clock of the wait", async () => /^\d+:\d\d/.test((await p.text(`${box} .co-wait__clock`)) ?? ""));
  assert.ok(await p.visible("[data-timers]"), "the running timer is shown at the foot of the page");

  await p.reload();
  await openPage(p, place, procedure);
  assert.deepEqual(await ticked(p), [names[0], names[2]], "ticks survive a reload");
  assert.equal(await p.text(`${at} [data-progress-text]`), progress);
  assert.equal(await p.value(`${at} [data-write="${reading}"]`), "87,5", "a reading survives a reload");
  await until("the clock after the reload", async () => /^\d+:\d\d/.test((await p.text(`${box} .co-wait__clock`)) ?? ""));

  // The next step that is open, from the bar at the thumb.
  await until("the bar to lead to the first open step", async () => {
    await p.run((s) => document.querySelector(`${s} [data-step]`).scrollIntoView(), at); // the browser may have gone back to where the page was
    return (await p.text("[data-next-step]")) === "Next: step 2";
  });

  // Away from the page: the timer goes with the person, the front page leads back.
  await openPage(p, place, "index");
  assert.ok(await p.visible("[data-timers]"), "other pages show the running timer");
  assert.match(await p.text(`${on("index")} [data-resume]`), /2 of \d+ steps/);
  return { wait, box };
}

/** The end of a wait is a time of day in storage: the test moves it near and waits for the page to say so. */
export async function timerEnds(p, place, { box }) {
  await openPage(p, place, procedure);
  const moved = await p.run(() => {
    const key = Object.keys(localStorage).find((k) => k.endsWith(":timers"));
    const list = JSON.parse(localStorage.getItem(key));
    list[0].end = Date.now() + 2500;
    localStorage.setItem(key, JSON.stringify(list));
    return list.length;
  });
  assert.equal(moved, 1);
  await p.reload();
  await until("the page to say that the time is over", async () => /: over since \d/.test((await p.text("[data-timers]")) ?? ""), 20_000);
  assert.match(await p.run(() => [...document.querySelectorAll('[role="alert"]')].map((e) => e.textContent).join(" ")), /time is over\. It ended at/i, "it is read aloud too");
  assert.match(await p.text(`${box} .co-wait__state`), /time is over/i);

  // One that ended while nobody looked says when.
  await p.run(() => {
    const key = Object.keys(localStorage).find((k) => k.endsWith(":timers"));
    const list = JSON.parse(localStorage.getItem(key));
    list[0].end = Date.now() - 3 * 60_000;
    localStorage.setItem(key, JSON.stringify(list));
  });
  await p.reload();
  await until("the page to say how long ago", async () => /3 minutes ago, while this page was closed/.test((await p.text(`${box} .co-wait__state`)) ?? ""));
  const top = () => p.run(() => document.querySelector("[data-timers] button").getBoundingClientRect().top);
  const silent = await top();
  await until("the bar to say why it is silent, or to sound", async () => (await p.text("[data-timers] .co-timers__note")) !== "" || p.run(() => navigator.userActivation?.isActive));
  assert.equal(await top(), silent, "nothing moves under the finger when the bar speaks");
  await p.tap("[data-timers] button");
  await until("the noted timer to go", async () => !(await p.visible("[data-timers]")));
}
