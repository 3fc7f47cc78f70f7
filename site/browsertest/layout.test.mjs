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

/**
 * The numeric pad of some phones has digits and a decimal sign and nothing else. Read from the page as it is served, since
 * what is far down waits: where it opens, the field holds no words, lists, times or fractions, and a minus or letters have a button.
 */
const padFaults = (p) => p.run(async () => {
  const page = new DOMParser().parseFromString(await (await fetch(location.href)).text(), "text/html");
  const faults = [];
  for (const f of page.querySelectorAll("[data-write][inputmode=decimal]")) {
    const unit = page.getElementById(f.id + "-unit");
    const label = page.querySelector(`label[for="${f.id}"]`).textContent;
    const wants = /°|^K$|gauge/.test(unit.textContent) ? "sign" : /Ω/.test(unit.textContent) ? "letters" : "";
    if (wants && unit.dataset.keys !== wants) faults.push(`${label}, ${unit.textContent}: no button for ${wants}`);
    if (/, each$|^Each|three phases|U–V, V–W|name and|, and | and reversed|bore/i.test(label)) faults.push(`${label}: more than a figure`);
  }
  const parts = [page, ...[...page.querySelectorAll("template")].map((t) => t.content)];
  for (const part of parts) {
    for (const f of part.querySelectorAll(".co-input__value[inputmode=decimal]")) {
      const box = f.closest("[data-input]");
      const allowed = [...box.querySelectorAll("[data-bounds]")].filter((o) => !/vacuum/.test(o.textContent)).map((o) => o.dataset.bounds).concat(box.querySelector("[data-bounds-shown]")?.textContent ?? "");
      if (allowed.some((t) => /^[-−]/.test(t)) && !box.querySelector("[data-sign]")) faults.push(`${f.id}: ${allowed[0]}, but no sign`);
      if (/outside diameter|^bore|pipe size/i.test(box.querySelector(".co-input__label").textContent)) faults.push(`${f.id}: a fraction cannot be typed`);
    }
    for (const columns of part.querySelectorAll("[data-columns]")) for (const c of JSON.parse(columns.textContent)) {
      const wants = /^date/.test(c.id) ? "date" : /^(time|size|bore)/.test(c.id) ? "" : /°/.test(c.unit) ? "signed" : "number";
      if (c.pad !== wants) faults.push(`column ${c.id}: ${c.pad}, not ${wants}`);
    }
  }
  return faults;
});

/** Links in a line of text are exempt: their lines cannot be 48 px apart. */
const small = (p) => p.run(() => {
  const targets = document.querySelectorAll("button, select, summary, textarea, input:not([type=hidden]):not([type=file]):not([type=radio]):not([type=checkbox]), .co-summary a, .co-timer__name, .co-footer a, .co-title__crumb a, label.co-radio, label.co-step__tick, .co-row, .co-button, .co-dock__link, .co-turn__link");
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
        if (engine === "chromium") faults.push(...(await padFaults(p)).map((f) => `${page}: ${f}`));
        if (!some.includes(page)) continue;
        await p.resize(640, 640); // half of a common screen: letters twice as large, as zoom or the phone's setting makes them
        await p.run(() => (document.documentElement.style.fontSize = "200%"));
        let large = await wide(p);
        for (let i = 0; large && i < 20; i++) { // a table gets its own box once the browser has told of its new width
          await pause(100);
          large = await wide(p);
        }
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
      const open = await small(p);
      if (open.length > 0) faults.push(`vacuum hold with its answer: smaller than 48 px: ${open.join(", ")}`);
      // Fields of steps with their units; a running timer; errors, with a sentence that is long.
      await openPage(p, server.place, "stages/evacuate-and-hold");
      await p.run(() => document.querySelector("#write-hold-air-start, label[for=write-hold-air-start]").closest("[data-step]").scrollIntoView());
      await p.until("the unit of a step field", () => !!document.querySelector("select#write-hold-air-start-unit"));
      await p.tap("[data-wait] button");
      await p.until("the timer", () => !!document.querySelector(".co-timer__name"));
      for (const s of [await wide(p), ...await small(p)]) if (s) faults.push(`a step with a unit, and a timer: ${s}`);
      const wrong = new Sheet(p, server.place, "saturation");
      await wrong.open();
      await wrong.press();
      await p.until("the summary", () => !!document.querySelector(".co-summary a")?.getClientRects().length);
      for (const s of await small(p)) faults.push(`errors: ${s}`);
      const gap = await p.run(() => {
        const said = [...document.querySelectorAll("[data-error]:not([hidden])")].find((e) => e.closest("[data-input]").nextElementSibling?.matches("[data-input]:not([hidden])"));
        said.textContent = "A sentence that is far longer than the two lines which are kept for it. ".repeat(4);
        return said.closest("[data-input]").nextElementSibling.querySelector(".co-input__label").getBoundingClientRect().top - said.getBoundingClientRect().bottom;
      });
      if (!(gap >= 4)) faults.push(`a long sentence stands ${gap} px above the next label`);
      assert.deepEqual(faults, []);
    } finally {
      await p.close();
    }
  });
}

for (const engine of engines) {
  test(`${engine}: a table shows where it ends`, { timeout: 240_000 }, async () => {
    const p = await open(engine, { width: 360, height: 740 });
    const more = () => p.run(() => document.querySelector(".co-scroll").getAttribute("data-more"));
    try {
      // One that fits scrolls with the page, and its head stays at the top of the window.
      await openPage(p, server.place, "tables/r-410a");
      await p.until("the table to be measured", () => !!document.querySelector(".co-scroll[data-fits]"));
      await p.run(() => document.querySelectorAll(".co-scroll tbody tr")[30].scrollIntoView({ block: "center" }));
      await p.until("the head to stick to the window", () => Math.abs(document.querySelector(".co-scroll thead").getBoundingClientRect().top) < 1);
      assert.deepEqual(await p.run(() => [...document.querySelectorAll(".co-scroll")].map((b) => [b.scrollHeight - b.clientHeight, b.getAttribute("data-more")])), [[0, null], [0, null]]);
      // A wider one says how much lies beyond its edges, and no more once the end is reached.
      await openPage(p, server.place, "tables/water-boiling-point");
      await p.until("words for rows and columns", () => /\d+ rows ↓ \d columns? →/.test(document.querySelector(".co-scroll").getAttribute("data-more")));
      await p.run(() => document.querySelector(".co-scroll").scrollTo(0, 200));
      await p.until("head and first column to stick in the box", () => {
        const [box, head] = [".co-scroll", ".co-scroll thead"].map((s) => document.querySelector(s).getBoundingClientRect());
        return Math.abs(head.top - box.top) < 4;
      });
      const rows = Number((await more()).match(/\d+/)[0]);
      assert.ok(rows > 0 && rows < 24, `${rows} rows are left`);
      await p.run(() => document.querySelector(".co-scroll").scrollTo(1e4, 1e4));
      await p.until("no words at the end", () => document.querySelector(".co-scroll").getAttribute("data-more") === "");
      // Words stand as cards, and stay a table.
      await openPage(p, server.place, "causes/findings");
      assert.deepEqual(await p.run(() => {
        const cell = document.querySelector(".co-table--words td:nth-child(2)");
        return [getComputedStyle(cell).display, cell.getAttribute("role"), cell.dataset.label, cell.closest("tr").getAttribute("role"), cell.closest("table").getAttribute("role")];
      }), ["block", "cell", "Question", "row", "table"]);
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
    // A hundredth of what counts as good; on the page of what is stored, which fills in figures of unknown length, a fifth.
    const most = { "about/offline": 0.02 };
    const look = async (page, state) => {
      await session.send("Emulation.setCPUThrottlingRate", { rate: 4 });
      await openPage(p, server.place, page);
      await pause(1500);
      const moved = await p.run(() => window.__moved);
      await session.send("Emulation.setCPUThrottlingRate", { rate: 1 });
      const sum = moved.reduce((total, m) => total + m.by, 0);
      if (sum > (most[page] ?? 0.001)) faults.push(`${page}, ${state}: ${sum.toFixed(3)} ${JSON.stringify(moved)}`);
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
