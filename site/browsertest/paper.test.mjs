// On paper and without script. Chromium alone can print without a window and switch script off.
// SHOTS=folder keeps what was printed, to be looked at.

import assert from "node:assert/strict";
import { writeFile } from "node:fs/promises";
import path from "node:path";
import test, { after } from "node:test";
import { on, openPage } from "./scenarios/reading.mjs";
import { Sheet } from "./scenarios/worksheets.mjs";
import { open } from "./support/engines.mjs";
import { filePlace, serve, source } from "./support/handbook.mjs";
import { until } from "./support/page.mjs";

const server = await serve();
after(() => server.stop());

const procedure = "stages/evacuate-and-hold";
const frost = { pressure: ["1500", "micron"] };
const papers = { A4: 680, Letter: 703 }; // px between the margins

/** A worksheet as it stands inside the procedure. */
function embedded(p, place, id) {
  const sheet = new Sheet(p, place, id);
  sheet.at = `${on(procedure)} [data-worksheet="${id}"]`;
  return sheet;
}

async function answered(sheet, inputs) {
  await sheet.enterAll(inputs);
  await sheet.press();
  await sheet.waitForAnswer();
}

async function saturation(p, place) {
  const sheet = new Sheet(p, place, "saturation");
  await sheet.open();
  await answered(sheet, { refrigerant: "R-407C", pressure: ["5.5", "barg"], "line-temperature": ["16", "C"] });
  return sheet;
}

async function waterPoint(p, place) {
  await openPage(p, place, procedure);
  const sheet = embedded(p, place, "water-point");
  await p.run((s) => document.querySelector(s).scrollIntoView(), sheet.at);
  await until("the form to start", () => p.visible(`${sheet.at} [data-form]`));
  await answered(sheet, frost);
  return sheet;
}

/** Presses a button that prints. What it prints can then be looked at. */
async function pressed(p, selector) {
  await p.run(() => {
    window.__printed = false;
    window.print = () => (window.__printed = true);
  });
  await p.tap(selector);
  await p.until(`${selector} to print`, () => window.__printed);
}

// What the test prints: how to get there, and what must be on the paper besides.
const sheets = {
  "the front page": { open: (p, place) => openPage(p, place, "index"), has: [/The job in ten stages/] },
  "a procedure": { open: (p, place) => openPage(p, place, procedure), has: [/Where the numbered links lead/, /Sources/] },
  "the steps of a procedure alone": {
    open: async (p, place) => {
      await openPage(p, place, procedure);
      await pressed(p, "[data-print-steps]");
    },
    has: [/DANGER[^]*Oxygen, air or fuel gas/i, /Write down the pressure after\s2, 5 and\s10\sminutes/, /The steps alone/], lacks: [/Why/, /Where the numbered links lead/, /\nSources/, /\[1\]/], sheets: 16,
  },
  "a procedure with an answer": { open: waterPoint, has: [/Sources of this answer/, /IAPWS/, /source[^\n]* \[1\]/] },
  "a result inside a procedure": {
    open: async (p, place) => pressed(p, `${(await waterPoint(p, place)).at} [data-print-result]`),
    has: [/1500/, /When not to rely/, /Working and sources/, /Sources of this answer/, /IAPWS/, /source[^\n]* \[1\]/],
    lacks: [/Where the numbered links lead/, /Pump down|Vacuum hold/, /The job/], sheets: 1,
  },
  "a worksheet with an answer": { open: saturation, has: [/5\.5/, /source[^\n]* \[\d+\]/, /When not to rely/] },
  "a result": {
    open: async (p, place) => pressed(p, `${(await saturation(p, place)).at} [data-print-result]`),
    has: [/R-407C/, /5\.5/, /When not to rely/, /source[^\n]* \[\d+\]/, /Sources/], lacks: [/Used in/, /Worked example/], sheets: 2,
  },
  "a worksheet with an error": {
    open: async (p, place) => {
      const sheet = new Sheet(p, place, "saturation");
      await sheet.open();
      await sheet.enterAll({ refrigerant: "R-32", pressure: ["high", "barg"] });
      await sheet.press();
      await sheet.waitForError("pressure");
    },
    has: [/high/], lacks: [/No answer yet/],
  },
  "a blank form": {
    open: async (p, place) => {
      const sheet = new Sheet(p, place, "saturation");
      await sheet.open();
      await pressed(p, `${sheet.at} [data-blank-form]`);
    },
    has: [/Done by/, /Sources/],
  },
  "a table": { open: (p, place) => openPage(p, place, "tables/r-410a"), has: [/Sources/] },
  "the job file": {
    open: async (p, place) => {
      await openPage(p, place, "job");
      await until("the job page", () => p.run(() => !!document.querySelector("[data-job-import]")));
      await p.upload("[data-job-import]", path.join(source(), "testdata", "report", "job.json"));
      await until("the job in the list, or open", () => p.run(() => !!document.querySelector('[data-job-row="invented-1"] button, [data-job-open="invented-1"]')));
      if (await p.run(() => !!document.querySelector('[data-job-row="invented-1"] button'))) await p.tap('[data-job-row="invented-1"] button');
      await until("the job to be open", () => p.run(() => !!document.querySelector('[data-job-open="invented-1"]')));
    },
    has: [/Harbour/i, /Pressure, bar gauge\s+Temperature, °C/], lacks: [/[;_]barg|;temperature/, /superheat-low/],
  },
  "an assessment": {
    open: async (p, place) => {
      await openPage(p, place, "stages/assess");
      await p.until("the questions", () => !!document.querySelector('[data-assess] [data-finding="superheat-low"] input'));
      for (const id of ["superheat-low", "suction-low-wet", "iced"]) {
        await p.run((s) => (document.querySelector(s).closest("details").open = true), `[data-finding="${id}"]`);
        await p.tap(`[data-finding="${id}"] input[value="present"]`);
      }
      await p.until("the outcome", () => /fact/.test(document.querySelector("[data-said] .co-verdict__title")?.textContent) || !!document.querySelector("svg.co-chain"));
    },
    has: [/fact/],
  },
  "the glossary": { open: (p, place) => openPage(p, place, "about/glossary"), has: [/micron/] },
};

for (const dark of [false, true]) test(`printed pages hold no controls, and say where and when they are from${dark ? ", in the dark too" : ""}`, { timeout: 900_000 }, async (t) => {
  const p = await open("chromium", { dark });
  try {
    for (const [name, sheet] of Object.entries(sheets)) {
      await t.test(name, async () => {
        await sheet.open(p, server.place);
        await printed(p, sheet, `${name}${dark ? "-dark" : ""}`);
      });
    }
    if (dark) return;
    await t.test("the button of the page prints it, with the answers that were kept", async () => {
      await waterPoint(p, server.place);
      await p.reload();
      await p.run(() => {
        window.__printed = null;
        window.print = () => (window.__printed = document.querySelector('[data-worksheet="water-point"] .co-answer__title') !== null);
      });
      await p.tap("[data-print]");
      await p.until("the page to print with the answer", () => window.__printed === true);
    });
    await t.test("after a result, the page is printed whole again", async () => {
      const { at } = await saturation(p, server.place);
      await pressed(p, `${at} [data-print-result]`);
      assert.ok((await p.run(() => document.querySelectorAll("[data-printing], [data-alone]").length)) > 1);
      await p.press("Shift");
      assert.equal(await p.run(() => document.querySelectorAll("[data-printing], [data-alone]").length), 0);
      assert.ok(await p.run((s) => document.activeElement === document.querySelector(s), `${at} [data-print-result]`), "the keyboard keeps its place");
    });
    await t.test("a result without answer cannot be printed", async () => {
      const sheet = new Sheet(p, server.place, "saturation");
      await sheet.open();
      assert.equal(await p.visible(`${sheet.at} [data-print-result]`), false);
    });
    await t.test("without the bibliography the paper says where the sources are", async () => {
      const lost = await p.tab.evaluateOnNewDocument(() => {
        const real = window.fetch;
        window.fetch = (to, how) => String(to).includes("about/sources") ? Promise.reject(new TypeError("no signal")) : real(to, how);
      });
      const { at } = await waterPoint(p, server.place);
      await p.run(() => dispatchEvent(new Event("beforeprint")));
      assert.match(await p.run((s) => document.querySelector(s).textContent, `${at} .co-worksheet__cited`), /own page: http.*worksheets\/water-point/);
      await p.run(() => dispatchEvent(new Event("afterprint")));
      await p.tab.removeScriptToEvaluateOnNewDocument(lost.identifier);
    });
    await t.test("the report keeps its own printing", async () => {
      await sheets["the job file"].open(p, server.place);
      await openPage(p, server.place, "report");
      await p.until("the report", () => document.querySelector("[data-report]")?.dataset.ready === "");
      assert.equal(await p.visible("[data-print]"), false);
    });
    for (const name of ["the front page", "a procedure with an answer", "a result inside a procedure", "a table"]) {
      await t.test(`${name}, in the single file`, async () => {
        await sheets[name].open(p, filePlace());
        await printed(p, sheets[name], `${name}-single`);
      });
    }
  } finally {
    await p.close();
  }
});

async function printed(p, sheet, name) {
  const { width, height } = p.tab.viewport();
  await p.tab.emulateMediaType("print");
  try {
    await look(p, sheet, name);
  } finally {
    await p.tab.emulateMediaType(undefined);
    await p.tab.setViewport({ width, height });
  }
}

/** Looks at the page as the printer gets it, then prints it. */
async function look(p, { has, lacks = [], sheets: most = 40 }, name) {
  for (const [paper, wide] of Object.entries(papers)) {
    if (paper !== "A4" && /-(dark|single)$/.test(name)) continue; // neither the theme nor the file changes the width
    await p.tab.setViewport({ width: wide, height: 900 });
    await p.run(() => dispatchEvent(new Event("beforeprint")));
    const seen = await p.run((wide) => {
      const shown = (e) => e.getClientRects().length > 0 && e.getBoundingClientRect().width > 1 && getComputedStyle(e).visibility !== "hidden";
      const name = (e) => `<${e.tagName.toLowerCase()} class="${e.className}"> ${e.textContent.trim().slice(0, 30)}`;
      const every = [...document.body.querySelectorAll("*")].filter((e) => !(e instanceof SVGElement) && shown(e));
      const field = every.filter((e) => e.matches("input, select, textarea"));
      const measure = document.createElement("canvas").getContext("2d");
      const cut = (e) => {
        const style = getComputedStyle(e);
        measure.font = style.font;
        const text = e.tagName === "SELECT" ? e.selectedOptions[0]?.textContent ?? "" : e.value;
        if (e.tagName === "TEXTAREA") return e.scrollHeight > e.clientHeight + 1; // its lines wrap
        return !["radio", "checkbox"].includes(e.type) && measure.measureText(text).width > e.clientWidth - parseFloat(style.paddingLeft) - parseFloat(style.paddingRight) + 1;
      };
      const color = (e) => getComputedStyle(e).color.match(/[\d.]+/g).map(Number);
      return {
        text: document.body.innerText,
        controls: every.filter((e) => e.matches("button, textarea:not(.co-job__box), input[type=search], input[type=file], input[type=range], .co-dock, [data-offline-state], [data-timers], [data-update], [data-find], .co-skip, .co-turn")
          || (e.matches("summary") && getComputedStyle(e, "::before").display !== "none")).map(name),
        boxes: field.filter((e) => getComputedStyle(e).appearance !== "none" || (!["radio", "checkbox"].includes(e.type) && parseFloat(getComputedStyle(e).borderTopWidth) > 0)).map(name),
        cut: field.filter(cut).map((e) => `${name(e)} ${e.value}`),
        over: every.filter((e) => e.matches(".co-input__error") && e.getBoundingClientRect().bottom > e.closest(".co-input").getBoundingClientRect().bottom + 1).map(name),
        broken: every.filter((e) => e.matches(".co-facts dt, th")).filter((e) => {
          measure.font = getComputedStyle(e).font;
          return e.textContent.split(/[\s\u00ad‑-]+/).some((word) => measure.measureText(word).width > e.clientWidth + 1);
        }).map(name),
        wide: every.filter((e) => e.getBoundingClientRect().right > wide + 1 && !e.closest("td, th")?.closest(".co-hidden")).map(name).slice(0, 5),
        hidden: every.filter((e) => ["hidden", "auto", "scroll", "clip"].includes(getComputedStyle(e).overflowX) && e.scrollWidth > e.clientWidth + 1 && e.clientWidth > 2).map(name),
        pale: every.filter((e) => e.childNodes.length > 0 && [...e.childNodes].some((n) => n.nodeType === 3 && n.data.trim()) && color(e).slice(0, 3).some((c) => c > 60) && getComputedStyle(e).backgroundColor === "rgba(0, 0, 0, 0)").map((e) => `${name(e)} ${getComputedStyle(e).color}`),
        paper: getComputedStyle(document.body).backgroundColor,
        marks: [...document.querySelectorAll(".co-footnotes__mark")].filter(shown).map((e) => e.textContent),
        notes: [...document.querySelectorAll(".co-footnotes__list li")].filter(shown).length,
        heads: [...document.querySelectorAll("thead")].filter((e) => shown(e) && getComputedStyle(e).display !== "table-header-group").map(name),
      };
    }, wide);
    const { text, marks, notes, ...wrong } = seen;
    assert.deepEqual(wrong, { controls: [], boxes: [], cut: [], over: [], broken: [], wide: [], hidden: [], pale: [], paper: seen.paper, heads: [] }, `${name} on ${paper}`);
    assert.match(seen.paper, /rgb\(255, 255, 255\)|rgba\(0, 0, 0, 0\)/);
    for (const words of [/Version \w+, built 2026-11-25/, /Printed on \d+ \w+ \d{4} at \d+:\d\d/, ...has]) assert.ok(words.test(text), `${name} on ${paper} lacks ${words}`);
    for (const words of lacks) assert.ok(!words.test(text), `${name} on ${paper} has ${words.exec(text)}`);
    assert.equal(Math.max(0, ...marks.map((m) => Number(m.match(/\d+/)[0]))), notes, "each number has its line");
    const pdf = Buffer.from(await p.tab.pdf({ format: paper, preferCSSPageSize: true, timeout: 60_000 }));
    if (process.env.SHOTS) await writeFile(path.join(process.env.SHOTS, `${name.replaceAll(/[^\w-]+/g, "-")}-${paper}.pdf`), pdf);
    if (process.env.SHOTS) await writeFile(path.join(process.env.SHOTS, `${name.replaceAll(/[^\w-]+/g, "-")}-${paper}.txt`), text);
    const count = pdf.toString("latin1").match(/\/Type\s*\/Page\b/g)?.length ?? 0;
    assert.ok(count >= 1 && count <= most, `${count} sheets of ${paper}`);
    await p.run(() => dispatchEvent(new Event("afterprint")));
    assert.equal(await p.run(() => document.querySelectorAll(".co-footnotes, .co-footer__printed, .co-worksheet__cited").length), 0, "afterwards all is as it was");
  }
}

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
      assert.ok(await p.visible(`${at} a[href="../worksheets/vacuum-hold.html"]`), "the way to its worked example shows instead");
      assert.deepEqual(await p.run(() => [...document.querySelectorAll(".co-dock__link")].filter((e) => e.getClientRects().length > 0).map((e) => e.textContent)), ["Contents", "Find", "Worksheets", "Tables", "Job"]);
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
