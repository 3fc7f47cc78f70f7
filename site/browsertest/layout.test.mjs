// Fit for a small phone and a gloved thumb: nothing scrolls sideways at 320 px or at 200 % zoom, what is tapped is 48 px high,
// and nothing moves by itself while a page loads.

import assert from "node:assert/strict";
import test, { after } from "node:test";
import { JobPage } from "./scenarios/job.mjs";
import { openPage } from "./scenarios/reading.mjs";
import { levelling } from "./scenarios/everything.mjs";
import { Sheet } from "./scenarios/worksheets.mjs";
import { engines, open } from "./support/engines.mjs";
import { pagesOf, serve } from "./support/handbook.mjs";
import { pause } from "./support/page.mjs";

/** One of each kind everywhere; Chromium reads every page that is no table of a further refrigerant. */
const some = ["index", "contents", "worksheets", "tables", "stages/evacuate-and-hold", "worksheets/charge-adjustment", "tables/r-407c", "about/glossary"];

const wide = (p) => p.run(() => {
  const page = document.documentElement;
  if (page.scrollWidth <= innerWidth) return "";
  const outside = [...document.body.querySelectorAll("*")].filter((e) => e.getBoundingClientRect().right > innerWidth + 1 && !e.parentElement.closest(".co-scroll"));
  return `${page.scrollWidth} px wide; outside: ${outside.slice(0, 3).map((e) => `<${e.tagName.toLowerCase()} class="${e.className}">`).join(" ")}`;
});

/** Links in a line of text are exempt: their lines cannot be 48 px apart. */
const small = (p) => p.run(() => {
  const targets = document.querySelectorAll("button, select, summary, input:not([type=hidden]):not([type=file]):not([type=radio]):not([type=checkbox]), label.co-radio, label.co-step__tick, .co-row, .co-button, .co-dock__link, .co-turn__link");
  return [...targets].filter((e) => {
    const box = e.getBoundingClientRect();
    return box.width > 0 && box.height < 47.5;
  }).map((e) => `<${e.tagName.toLowerCase()} class="${e.className}"> ${Math.round(e.getBoundingClientRect().height)} px`).filter((s, i, all) => all.indexOf(s) === i);
});

const server = await serve();
after(() => server.stop());

for (const engine of engines) {
  test(`${engine}: fits 320 px and a thumb`, { timeout: 600_000 }, async () => {
    const p = await open(engine, { width: 320, height: 640 });
    try {
      let pages = some;
      if (engine === "chromium") {
        pages = [...new Set([...some, ...(await pagesOf(server.out)).filter((page) => !page.startsWith("tables/r-"))])];
        assert.ok(pages.length > 15, `there are pages: ${pages.length}`);
      }
      const faults = [];
      for (const page of pages) {
        await openPage(p, server.place, page);
        const w = await wide(p);
        if (w) faults.push(`${page}: ${w}`);
        const s = await small(p);
        if (s.length > 0) faults.push(`${page}: smaller than 48 px: ${s.join(", ")}`);
        if (!some.includes(page)) continue;
        await p.resize(640, 640); // half of a common screen: letters twice as large, as zoom or the phone's setting makes them
        await p.run(() => (document.documentElement.style.fontSize = "200%"));
        const large = await wide(p);
        await p.resize(320, 640);
        if (large) faults.push(`${page} with letters twice as large: ${large}`);
      }
      // With an answer, its chart and its working open.
      const sheet = new Sheet(p, server.place, "vacuum-hold");
      await sheet.open();
      await sheet.enter("log", levelling);
      await sheet.press();
      await sheet.waitForAnswer();
      await p.run(() => document.querySelectorAll("details").forEach((d) => (d.open = true)));
      const w = await wide(p);
      if (w) faults.push(`vacuum hold with its answer: ${w}`);
      assert.deepEqual(faults, []);
    } finally {
      await p.close();
    }
  });
}

// Chromium alone tells a page what has moved in it. At a phone's speed, because a script that is quick enough hides a jump.
if (engines.includes("chromium")) test("nothing moves by itself", { timeout: 300_000 }, async () => {
  const p = await open("chromium");
  try {
    const session = await p.tab.createCDPSession();
    await p.tab.evaluateOnNewDocument(() => {
      window.__moved = [];
      new PerformanceObserver((list) => {
        for (const e of list.getEntries()) if (!e.hadRecentInput) window.__moved.push({ by: e.value, what: e.sources.map((s) => s.node?.className ?? s.node?.nodeName) });
      }).observe({ type: "layout-shift", buffered: true });
    });
    const faults = [];
    // A fifth of what counts as good: the page of what is stored fills in figures of unknown length.
    const look = async (page, state) => {
      await session.send("Emulation.setCPUThrottlingRate", { rate: 4 });
      await openPage(p, server.place, page);
      await pause(1500);
      const moved = await p.run(() => window.__moved);
      await session.send("Emulation.setCPUThrottlingRate", { rate: 1 });
      const sum = moved.reduce((total, m) => total + m.by, 0);
      if (sum > 0.02) faults.push(`${page}, ${state}: ${sum.toFixed(3)} ${JSON.stringify(moved)}`);
    };
    const pages = ["index", "contents", "stages/evacuate-and-hold", "stages/assess", "worksheets/saturation", "tables/r-410a", "about/offline", "job"];
    for (const page of pages) await look(page, "no job");
    await p.run(() => { // the observer sees what is planted
      document.querySelector("main").prepend(Object.assign(document.createElement("p"), { textContent: "planted", style: "height: 300px" }));
    });
    await p.until("the planted jump to be seen", () => window.__moved.reduce((total, m) => total + m.by, 0) > 0.01);
    const jobs = new JobPage(p, server.place);
    await jobs.open();
    await jobs.make("Roof, unit 3");
    for (const page of pages.slice(0, 5)) await look(page, "a job is open");
    assert.deepEqual(faults, []);
  } finally {
    await p.close();
  }
});
