// Measures in Chromium, slowed down four times as a phone is, and prints one JSON object for "make bench". The browser slows
// down the page alone, not the calculator's worker, which on a phone runs on another core of the same slow processor.
//
//   keyPressMs, keyPressEachMs, keyPressWorstMs   from the input event of a key to the new answer in the page; median, median of each refrigerant, worst
//   searchMs, searchWorstMs       from the input event of a key in the search to its results in the page; median and worst
//   searchFirstMs                 from the first tap on "Find" to the results of a key pressed at once: script, index, reading it
//   coldMs                        the browser started anew and done with its own start, no server: from opening a worksheet with
//                                 new values, which a link brings, to the answer on the screen; median of five
//   coldKeptMs                    the same with the values of last time, whose answer is kept
//
// Needs a folder as run.mjs makes it, in CHANGEOUT_TEST.

import { mkdtemp, rm } from "node:fs/promises";
import path from "node:path";
import { openPage, saved } from "./scenarios/reading.mjs";
import { Sheet } from "./scenarios/worksheets.mjs";
import { folder, serve } from "./support/handbook.mjs";
import { pause, until } from "./support/page.mjs";
import { launch } from "./support/puppeteer.mjs";

const slowdown = 4;
const median = (list) => [...list].sort((a, b) => a - b)[Math.floor(list.length / 2)];

async function slow(p) {
  const session = await p.tab.createCDPSession();
  await session.send("Emulation.setCPUThrottlingRate", { rate: slowdown });
}

/** Types digits into a pressure and takes them back, many times, for a pure fluid and two blends. */
async function keyPresses(p, place) {
  const times = [];
  const each = {};
  const sheet = new Sheet(p, place, "saturation");
  for (const refrigerant of ["R-32", "R-410A", "R-448A"]) {
    await sheet.open();
    await sheet.enterAll({ refrigerant, pressure: ["9.4", "barg"], "line-temperature": ["17", "C"] });
    await sheet.waitForAnswer();
    await p.run((at) => (document.querySelector(`${at} [data-working]`).open = false), sheet.at); // as it is for a person
    await slow(p);
    await p.run((at) => {
      window.__times = [];
      let began = 0;
      document.addEventListener("input", () => (began = performance.now()), true);
      new MutationObserver(() => {
        if (began > 0) window.__times.push(performance.now() - began);
        began = 0;
      }).observe(document.querySelector(`${at} [data-answer]`), { childList: true, subtree: true, characterData: true });
    }, sheet.at);
    const field = `${sheet.input("pressure")} input[data-value]`;
    await p.run((s) => {
      const e = document.querySelector(s);
      e.focus();
      e.setSelectionRange(9, 9);
    }, field);
    const presses = 40;
    for (let i = 0; i < presses; i++) {
      const seen = await p.run(() => window.__times.length);
      await p.press(i % 2 === 0 ? String((i % 9) + 1) : "Backspace");
      await until("the answer to a key", async () => (await p.run(() => window.__times.length)) > seen, 5000);
    }
    // The first presses run code that the browser has not compiled yet; they are part of the worst, not of the median's cause.
    const own = await p.run(() => window.__times);
    times.push(...own);
    each[refrigerant] = Math.round(10 * median(own)) / 10;
  }
  return { times, each };
}

/** Searches as people type: words, an amount, slips, a phrase that nothing holds; each key is one time. */
async function searches(p, place) {
  await openPage(p, place, "stages/braze-with-nitrogen");
  await slow(p);
  await p.run(() => {
    window.__times = [];
    let began = 0;
    document.addEventListener("input", () => (began = performance.now()), true);
    window.__opened = 0;
    document.addEventListener("click", () => (window.__opened ||= performance.now()), true);
    // The list is drawn and laid out when the count has changed and a frame was made.
    const watch = () => {
      const panel = document.querySelector("[data-find-panel]");
      if (!panel) return void requestAnimationFrame(watch);
      new MutationObserver(() => {
        if (began > 0) window.__times.push(performance.now() - began + (panel.getBoundingClientRect().height, 0));
        window.__firstFound ||= performance.now();
        began = 0;
      }).observe(panel.querySelector("[data-find-hits]"), { childList: true });
    };
    watch();
  });
  const field = "[data-find-panel] input";
  await p.tap("[data-find-open]");
  await until("the field", () => p.run((s) => document.activeElement === document.querySelector(s), field));
  await p.press("n");
  const first = await until("the first results", () => p.run(() => (window.__firstFound ? window.__firstFound - window.__opened : 0)), 20_000);
  for (const words of ["nitrogen purge", "vacuum hold", "500 micron", "75 psig", "vaccum guage", "megged", "brasing joint", "liquid slugging", "how long to wait", "eev"]) {
    await p.run((s) => document.querySelector(s).select(), field);
    for (const key of words) {
      await p.press(key);
      await pause(60);
    }
    await pause(200);
  }
  return { first, times: await p.run(() => window.__times) };
}

async function coldOpen(profile, place, fragment = "") {
  const p = await launch("chromium", { profile });
  try {
    await p.tab.evaluateOnNewDocument(() => {
      // Asking for a frame to look in would make the browser lay out the page more often than it does for a person.
      new MutationObserver((_, watch) => {
        if (!document.querySelector("[data-answer] .co-answer__title")) return;
        watch.disconnect();
        requestAnimationFrame(() => setTimeout(() => (window.__answered = performance.now()))); // drawn
      }).observe(document, { childList: true, subtree: true });
    });
    await pause(3000); // a desktop browser builds its own window for 2 s, which takes as much of the machine as the page
    await slow(p);
    await p.goto(place.url("worksheets/saturation") + fragment);
    const answered = await p.until("the first answer", () => window.__answered ?? 0);
    await openPage(p, place, "index");
    await pause(500); // the browser writes what the page left keeps
    return answered;
  } finally {
    await p.close();
  }
}

const profile = await mkdtemp(path.join(folder(), "profile-"));
const server = await serve();
try {
  const place = server.place;
  const p = await launch("chromium", { profile });
  await openPage(p, place, "index");
  await saved(p);
  const keys = await keyPresses(p, place);
  const found = await searches(p, place);
  await pause(500); // the browser writes what it keeps a little later
  await p.close();
  await server.stop();
  const cold = [];
  const kept = [];
  for (let i = 0; i < 5; i++) {
    cold.push(await coldOpen(profile, place, `#fill?refrigerant=R-410A&pressure=${8 + i / 10}&pressure.unit=barg&line-temperature=12&line-temperature.unit=C`));
    kept.push(await coldOpen(profile, place));
  }
  console.log(JSON.stringify({ keyPressMs: median(keys.times), keyPressEachMs: keys.each, keyPressWorstMs: Math.max(...keys.times), presses: keys.times.length, searchMs: median(found.times), searchWorstMs: Math.max(...found.times), searchPresses: found.times.length, searchFirstMs: found.first, coldMs: median(cold), coldWorstMs: Math.max(...cold), coldKeptMs: median(kept), coldKeptWorstMs: Math.max(...kept), slowdown }));
} finally {
  await server.stop();
  await rm(profile, { recursive: true, force: true, maxRetries: 5 });
}
