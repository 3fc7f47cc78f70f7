// axe-core finds nothing serious, in light and dark, and text stands out by 7 to 1. The rules read the page's tree, which
// is the same in every engine, so one engine is enough.

import assert from "node:assert/strict";
import { readFile } from "node:fs/promises";
import { createRequire } from "node:module";
import test from "node:test";
import { levelling } from "./scenarios/everything.mjs";
import { openPage } from "./scenarios/reading.mjs";
import { Sheet } from "./scenarios/worksheets.mjs";
import { open } from "./support/engines.mjs";
import { serve } from "./support/handbook.mjs";

const axe = await readFile(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");

async function faults(p) {
  await p.run(axe);
  const found = await p.run(async () => {
    const result = await window.axe.run(document, {
      resultTypes: ["violations"],
      rules: { "color-contrast-enhanced": { enabled: true } },
    });
    return result.violations.filter((v) => v.impact === "serious" || v.impact === "critical").map((v) => ({
      rule: v.id, help: v.help, count: v.nodes.length, where: v.nodes.slice(0, 3).map((n) => `${n.target.join(" ")}: ${n.failureSummary.split("\n").slice(1).join(" ").trim()}`),
    }));
  });
  return found;
}

test("axe-core sees a fault that is planted", { timeout: 240_000 }, async () => {
  const server = await serve();
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
    await server.stop();
  }
});

for (const dark of [false, true]) {
  test(`axe-core, ${dark ? "dark" : "light"}`, { timeout: 480_000 }, async (t) => {
    const server = await serve();
    const p = await open("chromium", { dark });
    try {
      for (const page of ["index", "stages/evacuate-and-hold", "contents", "tables/r-407c"]) {
        await t.test(page, async () => {
          await openPage(p, server.place, page);
          assert.deepEqual(await faults(p), []);
        });
      }
      await t.test("a worksheet with an answer", async () => {
        const sheet = new Sheet(p, server.place, "vacuum-hold");
        await sheet.open();
        await sheet.enter("log", levelling);
        await sheet.press();
        await sheet.waitForAnswer();
        await p.run(() => document.querySelectorAll("details").forEach((d) => (d.open = true)));
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
      await server.stop();
    }
  });
}
