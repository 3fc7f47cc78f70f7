// On paper and without script. Chromium alone can print without a window and switch script off.

import assert from "node:assert/strict";
import test, { after } from "node:test";
import { on, openPage } from "./scenarios/reading.mjs";
import { open } from "./support/engines.mjs";
import { serve } from "./support/handbook.mjs";

const server = await serve();
after(() => server.stop());

test("printed pages hold no controls", { timeout: 360_000 }, async (t) => {
  const p = await open("chromium");
  try {
    for (const page of ["stages/evacuate-and-hold", "tables/r-410a", "tables/water-boiling-point", "index"]) {
      await t.test(page, async () => {
        await openPage(p, server.place, page);
        await p.tab.emulateMediaType("print");
        const seen = await p.run(() => {
          const shown = (e) => e.getClientRects().length > 0 && getComputedStyle(e).visibility !== "hidden";
          return {
            controls: [...document.querySelectorAll("button, input[type=search], .co-dock, [data-offline-state], [data-timers], [data-update], [data-find], .co-skip, .co-turn")]
              .filter(shown).map((e) => `<${e.tagName.toLowerCase()} class="${e.className}"> ${e.textContent.trim().slice(0, 30)}`),
            text: document.querySelector("main").innerText.length,
            color: getComputedStyle(document.body).color,
          };
        });
        assert.deepEqual(seen.controls, []);
        assert.ok(seen.text > 400, `the page is there, ${seen.text} letters`);
        assert.equal(seen.color, "rgb(0, 0, 0)");
        const pdf = Buffer.from(await p.tab.pdf({ format: "A4", preferCSSPageSize: true })).toString("latin1");
        const sheets = pdf.match(/\/Type\s*\/Page\b/g)?.length ?? 0;
        assert.ok(pdf.startsWith("%PDF") && sheets >= 1, `${sheets} sheets`);
        await p.tab.emulateMediaType(undefined);
      });
    }
  } finally {
    await p.close();
  }
});

test("pages, tables and worked examples read without script", { timeout: 240_000 }, async (t) => {
  const p = await open("chromium", { script: false });
  // With script off in the page, the driver's own looks still run in it.
  try {
    await t.test("a procedure", async () => {
      await p.goto(server.place.url("stages/evacuate-and-hold"));
      const at = on("stages/evacuate-and-hold");
      assert.ok(await p.visible(`${at} .co-step__text`));
      assert.ok(await p.visible(`${at} .co-caution__word`));
      assert.ok((await p.text(at)).length > 5000);
      assert.equal(await p.visible(`${at} [data-form]`), false, "a form that cannot answer is not shown");
      assert.ok(await p.visible(`${at} [data-example] .co-verdict__title`), "the worked example shows instead");
    });
    await t.test("a table", async () => {
      await p.goto(server.place.url("tables/r-407c"));
      assert.ok(await p.visible(`${on("tables/r-407c")} tbody tr:last-child td`));
    });
    for (const id of ["saturation", "charge-adjustment", "vacuum-hold"]) {
      await t.test(`the worked example of ${id}`, async () => {
        await p.goto(server.place.url(`worksheets/${id}`));
        const at = on(`worksheets/${id}`);
        assert.ok(await p.visible(`${at} [data-example] .co-pairs dd`));
        assert.ok(await p.visible(`${at} [data-example] .co-working__value`), "with its working");
        assert.equal(await p.visible(`${at} [data-form]`), false);
      });
    }
    await t.test("a worksheet prints its blank form", async () => {
      await p.goto(server.place.url("worksheets/saturation"));
      await p.tab.emulateMediaType("print");
      const at = on("worksheets/saturation");
      assert.ok(await p.visible(`${at} [data-input="pressure"] .co-input__value`), "a line to write on");
      assert.match(await p.text(`${at} [data-input="pressure"]`), /Pressure.* to .*kPa gauge/, "with its bounds");
      assert.equal(await p.visible(`${at} button`), false);
      await p.tab.emulateMediaType(undefined);
    });
    await t.test("nothing that needs script is shown on the front page", async () => {
      await p.goto(server.place.url("index"));
      assert.equal(await p.visible("[data-find]"), false);
      assert.ok(await p.visible(`${on("index")} .co-row`));
    });
  } finally {
    await p.close();
  }
});
