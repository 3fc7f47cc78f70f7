// axe-core finds nothing on any page, in light and dark, and text stands out by 7 to 1. The rules read the page's tree,
// which is the same in every engine, so one engine is enough.

import assert from "node:assert/strict";
import { readFile } from "node:fs/promises";
import { createRequire } from "node:module";
import test, { after } from "node:test";
import { levelling } from "./scenarios/everything.mjs";
import { openPage } from "./scenarios/reading.mjs";
import { Sheet } from "./scenarios/worksheets.mjs";
import { open } from "./support/engines.mjs";
import { pagesToRead, serve, wholeTable } from "./support/handbook.mjs";

const axe = await readFile(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");

/** Of every weight, minor ones too. rules: only these. */
async function faults(p, { rules } = {}) {
  await p.run(axe);
  return p.run(async (only) => {
    const result = await window.axe.run(document, {
      resultTypes: ["violations"],
      preload: !only, // for the rules of colour the style need not be fetched again
      rules: { "color-contrast-enhanced": { enabled: true } },
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
  const dark = (on) => p.tab.emulateMediaFeatures([{ name: "prefers-color-scheme", value: on ? "dark" : "light" }]);
  try {
    const pages = await pagesToRead(server.out);
    assert.ok(pages.length > 50, `there are pages: ${pages.length}`);
    const found = {};
    for (const page of pages) {
      await openPage(p, server.place, page);
      await p.run(unfold);
      if (page.startsWith("tables/r-") && page !== wholeTable) await p.run(shorten);
      const light = await faults(p);
      await dark(true);
      assert.equal(await p.run(() => matchMedia("(prefers-color-scheme: dark)").matches), true);
      const night = await faults(p, { rules: ["color-contrast", "color-contrast-enhanced"] }); // all that the colours change
      await dark(false);
      if (light.length + night.length > 0) found[page] = { light, night };
    }
    assert.deepEqual(found, {});
  } finally {
    await p.close();
  }
});

for (const dark of [false, true]) {
  test(`axe-core while at work, ${dark ? "dark" : "light"}`, { timeout: 480_000 }, async (t) => {
    const p = await open("chromium", { dark });
    try {
      await t.test("a worksheet with an answer", async () => {
        const sheet = new Sheet(p, server.place, "vacuum-hold");
        await sheet.open();
        await sheet.enter("log", levelling);
        await sheet.press();
        await sheet.waitForAnswer();
        await p.run(unfold);
        assert.deepEqual(await faults(p), []);
      });
      await t.test("its result in large figures", async () => {
        await p.tap(".co-glance-open");
        assert.deepEqual(await faults(p), []);
        await p.press("Escape");
        await p.until("the way back to be as before", () => !history.state?.glance);
      });
      await t.test("a running timer", async () => {
        await openPage(p, server.place, "stages/braze-with-nitrogen");
        await p.tap("[data-wait] .co-wait__buttons button");
        assert.deepEqual(await faults(p), []);
      });
      await t.test("a worksheet with an error", async () => {
        const sheet = new Sheet(p, server.place, "saturation");
        await sheet.open();
        await sheet.enterAll({ refrigerant: "R-32", pressure: ["high", "barg"] });
        await sheet.press();
        await sheet.waitForError("pressure");
        assert.deepEqual(await faults(p), []);
      });
    } finally {
      await p.close();
    }
  });
}
