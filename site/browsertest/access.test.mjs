// axe-core finds nothing on any page, in light and dark, and text stands out by 7 to 1. The rules read the page's tree,
// which is the same in every engine, so one engine is enough.

import assert from "node:assert/strict";
import { readFile } from "node:fs/promises";
import { createRequire } from "node:module";
import test, { after } from "node:test";
import { levelling } from "./scenarios/everything.mjs";
import { JobPage } from "./scenarios/job.mjs";
import { on, openPage } from "./scenarios/reading.mjs";
import { Sheet } from "./scenarios/worksheets.mjs";
import { open } from "./support/engines.mjs";
import { filePlace, pagesToRead, serve, wholeTable } from "./support/handbook.mjs";
import { until } from "./support/page.mjs";

const axe = await readFile(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");

/** Of every weight, minor ones too. rules: only these. */
async function faults(p, { rules } = {}) {
  await p.run(axe);
  return p.run(async (only) => {
    const result = await window.axe.run(document, {
      resultTypes: ["violations"],
      preload: !only, // for the rules of colour the style need not be fetched again
      rules: { "color-contrast-enhanced": { enabled: true } }, // it finds what lies between 4.5 and 7 to 1, the other rule what lies below
      ...(only && { runOnly: only }),
    });
    return result.violations.map((v) => ({
      rule: v.id, help: v.help, count: v.nodes.length, where: v.nodes.slice(0, 3).map((n) => `${n.target.join(" ")}: ${n.failureSummary.split("\n").slice(1).join(" ").trim()}`),
    }));
  }, rules ?? null);
}

const server = await serve();
after(() => server.stop());

test("axe-core sees a fault that is planted", { timeout: 240_000 }, async () => {
  const p = await open("chromium");
  try {
    await openPage(p, server.place, "index");
    await p.run(() => {
      const b = document.createElement("button");
      document.querySelector("main").append(b);
      const words = document.createElement("p");
      words.textContent = "hardly to be read";
      words.style.cssText = "color: #999; background: #fff"; // 2.8 to 1
      const paler = document.createElement("p");
      paler.textContent = "enough for a desk, not for the sun";
      paler.style.cssText = "color: #6a6a6a; background: #fff"; // 5.4 to 1
      document.querySelector("main").append(words, paler);
    });
    assert.deepEqual((await faults(p)).map((f) => f.rule).sort(), ["button-name", "color-contrast", "color-contrast-enhanced"]);
  } finally {
    await p.close();
  }
});

/** Folded parts are parts of the page. */
/** Opens all that is folded, and has all of the page drawn: what waits to be come near is measured over what follows it. */
const unfold = () => {
  const all = new CSSStyleSheet();
  all.replaceSync("* { content-visibility: visible !important }");
  document.adoptedStyleSheets.push(all);
  document.querySelectorAll("details").forEach((d) => (d.open = true));
  return new Promise((done) => setTimeout(() => requestAnimationFrame(() => requestAnimationFrame(done)), 50));
};

const shorten = () => document.querySelectorAll("tbody").forEach((b) => [...b.rows].slice(3).forEach((row) => row.remove()));

test("axe-core, every kind of page in light and dark", { timeout: 1_800_000 }, async () => {
  const p = await open("chromium");
  try {
    const pages = await pagesToRead(server.out);
    assert.ok(pages.length > 50, `there are pages: ${pages.length}`);
    const found = {};
    for (const page of pages) {
      await openPage(p, server.place, page);
      await p.run(unfold);
      if (page.startsWith("tables/r-") && page !== wholeTable) await p.run(shorten);
      const all = await bothFaults(p);
      if (all.length > 0) found[page] = all;
    }
    assert.deepEqual(found, {});
  } finally {
    await p.close();
  }
});

const darkly = (p, on) => p.tab.emulateMediaFeatures([{ name: "prefers-color-scheme", value: on ? "dark" : "light" }]);

/** Light and whole, then what the colours of the dark change. */
async function bothFaults(p) {
  const light = await faults(p);
  await darkly(p, true);
  assert.equal(await p.run(() => matchMedia("(prefers-color-scheme: dark)").matches), true);
  const night = await faults(p, { rules: ["color-contrast", "color-contrast-enhanced"] });
  await darkly(p, false);
  return [...light, ...night];
}

/** What scripts draw while somebody works; place: where the handbook is. */
async function atWork(t, p, place) {
  const part = (name, fn) => t.test(name, async () => {
    await fn();
    await p.run(unfold);
    assert.deepEqual(await bothFaults(p), []);
  });
  await part("a worksheet with an answer", async () => {
    const sheet = new Sheet(p, place, "vacuum-hold");
    await sheet.open();
    await sheet.enter("log", levelling);
    await sheet.press();
    await sheet.waitForAnswer();
  });
  await part("its result in large figures", () => p.tap(".co-glance-open"));
  await p.press("Escape");
  await p.until("the way back to be as before", () => !history.state?.glance);
  await part("a running timer", async () => {
    await openPage(p, place, "stages/braze-with-nitrogen");
    await p.tap(`${on("stages/braze-with-nitrogen")} [data-wait] .co-wait__buttons button`);
  });
  await part("a timer that is over", async () => {
    await p.run(() => {
      const key = Object.keys(localStorage).find((k) => k.endsWith(":timers"));
      localStorage.setItem(key, JSON.stringify(JSON.parse(localStorage.getItem(key)).map((timer) => ({ ...timer, end: Date.now() - 60_000 }))));
    });
    await p.reload();
    await until("it to be said", async () => /over since/.test((await p.text("[data-timers]")) ?? ""));
  });
  await p.tap("[data-timers] button");
  await part("a worksheet with an error", async () => {
    const sheet = new Sheet(p, place, "saturation");
    await sheet.open();
    await sheet.enterAll({ refrigerant: "R-32", pressure: ["high", "barg"] });
    await sheet.press();
    await sheet.waitForError("pressure");
  });
  await part("the search with places found", async () => {
    await p.tap("[data-find-open]");
    await until("the field", () => p.run(() => document.activeElement?.matches("[data-find-panel] input") ?? false));
    await p.keys("[data-find-panel] input", "hold");
    await until("places", () => p.run(() => document.querySelectorAll("[data-find-panel] [data-find-hits] a").length > 3));
  });
  await p.press("Escape");
  await part("an assessment with a cause", async () => {
    await openPage(p, place, "stages/assess");
    await p.until("the questions", () => !!document.querySelector("[data-assess] [data-said]"));
    await p.run(() => document.querySelectorAll("[data-assess] details").forEach((d) => (d.open = true)));
    for (const id of await p.run(() => [...document.querySelectorAll("[data-assess] [data-finding]")].slice(0, 4).map((q) => q.dataset.finding))) await p.tap(`[data-assess] [data-finding="${id}"] input[value="present"]`);
    await until("the answers to count", () => p.run(() => !/nothing entered/.test(document.querySelector("[data-assess] [data-said] .co-verdict__title")?.textContent ?? "nothing entered")));
  });
  await part("the demonstration job", async () => {
    const page = new JobPage(p, place);
    await page.open();
    await page.tap("Open the demonstration job");
    await until("it", async () => /\(demonstration\)$/.test((await p.text(`${on("job")} [data-job-open] h2`)) ?? ""));
  });
  await part("its report", async () => {
    await openPage(p, place, "report");
    await p.until("the report", () => document.querySelector("[data-report]")?.dataset.ready === "");
  });
}

test("axe-core while at work", { timeout: 600_000 }, async (t) => {
  const p = await open("chromium");
  try {
    await t.test("on the site", (u) => atWork(u, p, server.place));
    // The whole handbook is one tree there, and the rules read all of it: one page stands for the rest.
    await t.test("in the single file", async () => {
      await openPage(p, filePlace(), "stages/braze-with-nitrogen");
      assert.deepEqual(await bothFaults(p), []);
    });
  } finally {
    await p.close();
  }
});
