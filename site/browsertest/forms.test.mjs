// What all worksheet forms share. Chromium; everything.mjs runs the forms themselves in every engine.

import assert from "node:assert/strict";
import { writeFile } from "node:fs/promises";
import path from "node:path";
import test from "node:test";
import { boxesFit, choosesUnits, clearGivesBack, copiesInstead, copiesText, entries, linkCarriesEntries, linkCarriesLog, movement, takesReadings } from "./scenarios/forms.mjs";
import { on, openPage, saved } from "./scenarios/reading.mjs";
import { charge } from "./scenarios/everything.mjs";
import { computesLikeCommandLine, Sheet } from "./scenarios/worksheets.mjs";
import { open } from "./support/engines.mjs";
import { filePlace, serve } from "./support/handbook.mjs";
import { plain, until } from "./support/page.mjs";

/** Every worksheet there is, from the page of checks, not from the list that a test below judges. */
async function worksheetIDs(place) {
  const page = await (await fetch(place.url("about/checked"))).text();
  return [...new Set([...page.matchAll(/worksheets\/([a-z0-9-]+)\.html/g)].map((m) => m[1]))];
}
const shots = process.env.SHOTS;

test("an answer to what was entered before is not shown beside what is entered now", { timeout: 240_000 }, async () => {
  const server = await serve();
  const p = await open("chromium");
  try {
    // A calculator that takes long, and stays beside the page.
    await p.tab.evaluateOnNewDocument(() => {
      const Real = Worker;
      window.Worker = class extends Real {
        postMessage(message, ports) {
          if (message.what !== "module") setTimeout(() => super.postMessage(message, ports), window.__slow ?? 0);
        }
      };
    });
    const sheet = new Sheet(p, server.place, "saturation");
    await sheet.open();
    await sheet.enterAll({ refrigerant: "R-32", pressure: ["940", "kPag"] });
    await sheet.waitForAnswer();
    const row = `${sheet.at} [data-answer] .co-result--main`;
    const figure = () => p.run((s) => {
      const value = document.querySelector(`${s} .co-result__value`);
      return { text: value.textContent, unit: document.querySelector(`${s} select`).value, seen: getComputedStyle(value.closest(".co-results")).opacity === "1" };
    }, row);
    const first = await figure();
    assert.equal(first.seen, true);
    await p.run(() => (window.__slow = 1500));
    const pressure = `${sheet.input("pressure")} input[data-value]`;

    await p.fill(pressure, "990");
    await until("the old answer to go", async () => !(await figure()).seen);
    assert.equal(await p.visible(`${sheet.at} [data-keep]`), false, "and with it the way to keep it");
    assert.equal((await figure()).text, first.text, "while the new one is not there");
    await until("the new answer", async () => (await figure()).seen && (await figure()).text !== first.text);
    assert.equal(await p.visible(`${sheet.at} [data-keep]`), true);

    // Two changes one after the other: the answer to the first one is never shown.
    await p.run((s) => {
      window.__shown = [];
      new MutationObserver(() => window.__shown.push(document.querySelector(`${s} .co-result__value`).textContent)).observe(document.querySelector(s), { subtree: true, childList: true, characterData: true });
    }, row);
    await p.fill(pressure, "1200");
    await p.fill(pressure, "940");
    await until("the answer to the second", async () => (await figure()).seen && (await figure()).text === first.text);
    assert.deepEqual(await p.run(() => window.__shown), [first.text]);

    // A unit that was picked, and taken back by the switch of all units before the answer came.
    const other = await p.run((s) => [...document.querySelector(`${s} select`).options].find((o) => !o.selected).value, row);
    await p.choose(`${row} select`, other);
    assert.equal((await figure()).text, "…", "no figure of one unit before the name of another");
    await p.tap(`${sheet.at} [data-system-set="${first.unit === "C" ? "ip" : "si"}"]`);
    await p.tap(`${sheet.at} [data-system-set="${first.unit === "C" ? "si" : "ip"}"]`);
    await until("figure and unit as at first", async () => (await figure()).seen && (await figure()).text !== "…");
    assert.deepEqual(await figure(), first);
  } finally {
    await p.close();
    await server.stop();
  }
});

test("kept on the phone, a form with a slow calculator shows with the answer that was kept or without one, and a long list with the kept choice alone", { timeout: 240_000 }, async () => {
  const server = await serve();
  const p = await open("chromium");
  try {
    await openPage(p, server.place, "index");
    await saved(p);
    const sheet = new Sheet(p, server.place, "saturation");
    await sheet.open();
    await sheet.enterAll({ refrigerant: "R-448A", pressure: ["9.4", "barg"] });
    await sheet.waitForAnswer();
    await p.tab.evaluateOnNewDocument(() => {
      const Real = Worker;
      window.Worker = class extends Real {
        postMessage(message, ports) {
          setTimeout(() => super.postMessage(message, ports), 4000);
        }
      };
      window.requestIdleCallback = () => 0; // so that the list stays as it was drawn first
    });
    const answer = () => p.run((at) => ({ title: !!document.querySelector(`${at} .co-answer__title`), text: document.querySelector(`${at} .co-result__value`)?.textContent ?? "" }), sheet.at);
    const first = await answer();
    await p.reload();
    await until("the answer that was kept with the same entries", async () => (await answer()).text === first.text, 3500);
    await p.fill(`${sheet.input("pressure")} input[data-value]`, "9.9");
    await until("the answer to other entries, from the calculator", async () => (await answer()).title && (await answer()).text !== first.text);
    await openPage(p, server.place, "index");
    await p.run(() => localStorage.removeItem(Object.keys(localStorage).find((key) => key.endsWith(":answer:saturation"))));
    await p.goto(server.place.url("worksheets/saturation"));
    const form = `${sheet.at} [data-form]`;
    await until("the form", () => p.run((s) => document.querySelector(s)?.checkVisibility({ contentVisibilityAuto: false, visibilityProperty: true }) ?? false, form), 3500);
    const list = `${sheet.input("refrigerant")} select`;
    assert.deepEqual(await p.run((s, at) => [document.querySelector(s).value, document.querySelectorAll(`${s} > option`).length, !!document.querySelector(`${at} .co-answer__title`)], list, sheet.at), ["R-448A", 2, false]);
    await p.run((s) => document.querySelector(s).focus(), list);
    const whole = await p.run((s) => [document.querySelector(s).value, [...document.querySelector(s).options].map((o) => o.value)], list);
    assert.equal(whole[0], "R-448A");
    assert.ok(whole[1].length > 100 && new Set(whole[1]).size === whole[1].length, `the whole list, each once; got ${whole[1].length}, ${new Set(whole[1]).size} different`);
    await sheet.waitForAnswer();
    assert.deepEqual(await p.troubles(), []);
  } finally {
    await p.close();
    await server.stop();
  }
});

test("a link carries the entries", { timeout: 600_000 }, async (t) => {
  const server = await serve();
  const p = await open("chromium");
  try {
    let url = "";
    await t.test("it fills the form, says so, and what was there comes back", async () => (url = await linkCarriesEntries(p, server.place)));
    await t.test("a log and the answers about it", () => linkCarriesLog(p, server.place));
    await t.test("clipboard or a marked field", () => copiesInstead(p, server.place));
    await t.test("clearing loses nothing", () => clearGivesBack(p, server.place));
    await t.test("a worksheet takes over what the steps have written down", () => takesReadings(p, server.place));
    await t.test("a field of a step has the person's unit", () => choosesUnits(p, server.place));
    await t.test("the boxes of a log fit what they hold", () => boxesFit(p, server.place));
    await t.test("without the server", async () => {
      await openPage(p, server.place, "index");
      await saved(p);
      await server.stop();
      await p.goto(url);
      const sheet = new Sheet(p, server.place, "saturation");
      await until("the entries of the link", async () => (await entries(sheet)).pressure?.join() === "250,psig");
      await sheet.waitForAnswer();
    });
    assert.deepEqual(await p.troubles(), []);
    assert.deepEqual(await p.strangers(server.place.allowed), [], "nothing goes anywhere else");
  } finally {
    await p.close();
    await server.stop();
  }
});

test("the single file copies text", { timeout: 240_000 }, async () => {
  const p = await open("chromium");
  try {
    await copiesText(p, filePlace());
    assert.deepEqual(await p.troubles(), []);
  } finally {
    await p.close();
  }
});

/** Units of fields and columns after US units were chosen: what is wrong, and how many columns were read. */
const unitsShown = (sheet) => sheet.p.run((s) => {
  const wrong = [];
  let columns = 0;
  for (const e of document.querySelectorAll(`${s} [data-input]`)) {
    const unit = e.querySelector("select[data-unit]");
    if (unit?.querySelector('[data-system="ip"]') && unit.selectedOptions[0].dataset.system !== "ip") wrong.push(`${e.dataset.input} in ${unit.value}`);
    if (unit && e.querySelector("[data-bounds-shown]").textContent !== unit.selectedOptions[0].dataset.bounds) wrong.push(`${e.dataset.input} shows the bounds of another unit`);
    const declared = JSON.parse(e.querySelector("[data-columns]")?.textContent ?? "[]");
    const heads = [...e.querySelectorAll("thead th")].map((h) => h.textContent);
    declared.forEach((c, i) => {
      columns++;
      const want = [c.label, c.ipUnit || c.unit].filter(Boolean).join(", ");
      if (heads[i] !== want) wrong.push(`${e.dataset.input}: column "${heads[i]}", want "${want}"`);
    });
  }
  return { wrong, columns };
}, sheet.at);

const dateFields = (sheet) => sheet.p.run((name) => [...document.querySelectorAll("input[type=date]")].filter((e) => {
  for (let b = e; b; b = b.parentElement) if (b.hidden) b.hidden = false;
  return true;
}).map((e) => {
  const box = e.getBoundingClientRect();
  return { name: `${name} ${e.id}`, height: Math.round(box.height), right: Math.round(box.right), kind: e.inputMode };
}), sheet.id);

/** Prints the blank form: found.blank gets its number of sheets, found.blanks what is wrong with it. */
async function blankForm(sheet, found) {
  const { p, id } = sheet;
  await p.run(() => (window.print = () => (window.__printed = true)));
  await p.tap(`${sheet.at} [data-blank-form]`);
  await p.tab.emulateMediaType("print");
  const seen = await p.run((s) => {
    const blank = document.querySelector(".co-blank");
    const shown = (e) => e.getClientRects().length > 0;
    return {
      printed: window.__printed === true,
      text: blank.innerText,
      labels: [...document.querySelectorAll(`${s} [data-input]`)].map((e) => e.dataset.label),
      results: JSON.parse(document.querySelector(`${s} [data-outputs]`).textContent).map((o) => o.label),
      others: [...document.querySelectorAll("main > *")].filter((e) => shown(e) && e !== blank).length,
      controls: [...document.querySelectorAll("button, select, input")].filter(shown).length,
      rules: blank.querySelectorAll(".co-blank__rule").length,
      version: shown(document.querySelector(".co-footer__version")),
      wide: [...blank.querySelectorAll("*")].filter((e) => e.getBoundingClientRect().right > blank.getBoundingClientRect().right + 1).map((e) => e.className),
    };
  }, sheet.at);
  const wrong = (words) => found.blanks.push(`${id}: ${words}`);
  if (!seen.printed) wrong("is not printed");
  for (const label of [...seen.labels, ...seen.results, "Date and time", "Done by", "Verdict"]) if (!seen.text.includes(label)) wrong(`lacks ${label}`);
  if (seen.others !== 0 || seen.controls !== 0 || !seen.version || seen.wide.length > 0) wrong(`something else on the sheet: ${JSON.stringify({ ...seen, text: "" })}`);
  if (seen.rules < seen.results.length + 5) wrong(`${seen.rules} lines to write on`);
  const bytes = Buffer.from(await p.tab.pdf({ format: "A4", preferCSSPageSize: true }));
  if (shots) await writeFile(path.join(shots, `blank-${id}.pdf`), bytes);
  found.blank[id] = bytes.toString("latin1").match(/\/Type\s*\/Page\b/g)?.length ?? 0;
  await p.tab.emulateMediaType(undefined);
  await p.press("Shift");
  const left = await p.run(() => document.querySelectorAll(".co-blank, [data-printing]").length);
  if (left !== 0) wrong("stays after the next hand on the page");
}

test("forms", { timeout: 900_000 }, async (t) => {
  const server = await serve();
  const p = await open("chromium");
  const place = server.place;
  try {
    const all = await worksheetIDs(place);
    assert.ok(all.length >= 17, `${all.length} worksheets`);

    // One visit to each worksheet gathers what four tests below judge. Its order: paper, typing, units, and last the dates,
    // for which hidden parts are shown.
    const found = { blank: {}, blanks: [], moved: [], typed: 0, units: [], columns: 0, dates: [] };
    await t.test("every worksheet is read once", async () => {
      for (const id of all) {
        const sheet = new Sheet(p, place, id);
        await sheet.open("si");
        await blankForm(sheet, found);
        await p.run(() => scrollTo(0, 0));
        const input = await p.run((s) => [...document.querySelectorAll(`${s} [data-input][data-kind=quantity]:not([hidden])`)].find((e) => e.getClientRects().length > 0)?.dataset.input ?? "", sheet.at);
        if (input) {
          found.typed++;
          const m = await movement(sheet, input, "high");
          if (m.document !== 0 || m.window !== 0) found.moved.push(`${id} ${input}: ${m.document} px in the page, ${m.window} px in the window: ${m.error}`);
        }
        // Volts and ohms are the same everywhere: such a form has no switch.
        if (await p.visible(`${sheet.at} [data-system-set="ip"]`)) await p.tap(`${sheet.at} [data-system-set="ip"]`);
        await p.reload();
        await until("the form to start again", () => p.visible(`${sheet.at} [data-form]`));
        const units = await unitsShown(sheet);
        found.columns += units.columns;
        found.units.push(...units.wrong.map((w) => `${id}: ${w}`));
        found.dates.push(...await dateFields(sheet));
      }
    });
    await t.test("a sentence that appears moves no button", () => {
      assert.ok(found.typed > 10, `${found.typed} fields typed into`);
      assert.deepEqual(found.moved, []);
    });
    await t.test("US units reach every field and column, and are remembered", () => {
      assert.ok(found.columns > 8, `${found.columns} columns`);
      assert.deepEqual(found.units, []);
    });
    await t.test("date fields fit a phone and a thumb", () => {
      assert.ok(found.dates.length > 0, "there are dates");
      assert.deepEqual(found.dates.filter((f) => f.height < 48 || f.right > 344 || f.kind !== ""), []);
    });
    await t.test("every worksheet prints a blank form", () => {
      assert.deepEqual(found.blanks, []);
      assert.equal(Object.keys(found.blank).length, all.length);
      if (shots) console.log(JSON.stringify(found.blank));
      assert.deepEqual(Object.entries(found.blank).filter(([, n]) => n < 1 || n > 4), [], "two sheets of paper at the most, printed on both sides");
    });

    await t.test("nor does a question with buttons, under the thumb", async () => {
      const sheet = new Sheet(p, place, "saturation");
      await sheet.open("si");
      await sheet.enterAll({ refrigerant: "R-134a", pressure: ["1", "kPag"] });
      const m = await movement(sheet, "pressure", "1,234");
      assert.ok(m.document > 40, `the buttons took room: ${m.document} px`);
      assert.ok(Math.abs(m.window) <= 1, `the button stayed in the window: ${m.window} px`);
    });

    await t.test("the hint shows the bounds in the chosen unit", async () => {
      const sheet = new Sheet(p, place, "saturation");
      await sheet.open("si");
      const hint = () => p.text(`${sheet.input("pressure")} [data-bounds-shown]`);
      const metric = await hint();
      assert.doesNotMatch(metric, /psi| or /);
      await p.choose(`${sheet.input("pressure")} select[data-unit]`, "psig");
      const us = await hint();
      assert.match(us, /^−?[\d.]+ to [\d,.\s]+psi gauge\.$/, us);
      await p.tap(`${sheet.at} [data-system-set="ip"]`);
      assert.match(await p.text(`${sheet.input("temperature")} [data-bounds-shown]`), /°F\.$/);
      await p.tap(`${sheet.at} [data-system-set="si"]`);
      assert.match(await p.text(`${sheet.input("temperature")} [data-bounds-shown]`), /°C\.$/);
    });

    await t.test("rows in inches and feet are computed as such", async () => {
      const sheet = new Sheet(p, place, "charge-adjustment");
      await sheet.open("ip");
      await sheet.enterAll({ system: "inverter-multi-split", method: "weight", refrigerant: "R-410A", nameplate: ["23", "lb"] });
      const cells = `${sheet.input("lines")} tbody tr:first-child td`;
      await p.fill(`${cells}:nth-child(1) input`, "1/2");
      await p.fill(`${cells}:nth-child(2) input`, "100");
      const text = await p.value(`${sheet.input("lines")} textarea`);
      assert.equal(text, "size_in,length_ft\n1/2,100\n");
      await p.tap(`${sheet.at} [data-system-set="si"]`);
      assert.equal(await p.value(`${sheet.input("lines")} textarea`), text, "what was typed stays");
      assert.match(await p.text(`${sheet.input("lines")} thead`), /in.*ft/);
    });

    await t.test("cells that say their unit are not asked about", () => computesLikeCommandLine(new Sheet(p, place, "charge-adjustment"),
      { ...charge, lines: "size,length,factor\n12.7 mm,30 m,\n3/8 in,45 m,0.054 kg/m\n" }, "si"));

    await t.test("Enter goes from field to field, into a group without a choice, and down the rows of a log", async () => {
      const sheet = new Sheet(p, place, "charge-adjustment");
      await sheet.open("si");
      const at = () => p.run(() => document.activeElement.closest("[data-input]")?.dataset.input ?? document.activeElement.type);
      await sheet.enterAll({ system: "inverter-multi-split", method: "weight", refrigerant: "R-410A" });
      const cells = `${sheet.input("lines")} tbody tr`;
      await p.tap(`${cells}:nth-child(4) td:last-child input`);
      await p.press("Enter");
      assert.notEqual(await at(), "lines", "an empty row ends the log");
      await p.tap(`${cells}:nth-child(4) td:first-child input`);
      for (const text of ["12.7", "30", "0.1"]) {
        await p.keys("", text);
        await p.press("Enter");
      }
      assert.equal(await at(), "lines");
      assert.equal(await p.run((s) => [...document.querySelectorAll(s)].findIndex((tr) => tr.contains(document.activeElement)), cells), 4, "in a fifth row");
    });

    await t.test("an error in a log leads to its box, and a column nobody filled stays on offer", async () => {
      const sheet = new Sheet(p, place, "vacuum-hold");
      await sheet.open("si");
      const boxes = `${sheet.input("log")} tbody tr`;
      assert.equal(await p.run((s) => document.querySelectorAll(s).length, boxes), 8, "rows on paper");
      const cell = (row, column) => `${boxes}:nth-child(${row}) td:nth-child(${column}) input`;
      // The third row stays empty: rows are counted as they are named.
      for (const [row, time, pressure] of [[1, "0", "300"], [2, "5", "310"], [4, "10", "abc"]]) {
        if (row === 4) await p.run((s) => document.querySelector(s).focus(), cell(4, 1));
        await p.fill(cell(row, 1), time);
        await p.fill(cell(row, 2), pressure);
      }
      await sheet.press();
      const error = await sheet.waitForError("log");
      assert.match(error.text, /^Hold log: row 3, pressure: “abc” is not a number in micron\.$/);
      await p.tap(`${sheet.at} [data-summary] a`);
      const focused = await p.run(() => {
        const e = document.activeElement;
        return [e.value, e.getAttribute("aria-label"), e.getAttribute("aria-invalid"), document.getElementById(e.getAttribute("aria-describedby"))?.textContent];
      });
      assert.deepEqual(focused, ["abc", "Pressure, micron, row 3", "true", error.text]);
      assert.equal(await p.run((s) => document.querySelectorAll(`${s} [aria-invalid]`).length, `${sheet.input("log")} table`), 1, "no other box");
      await p.fill(cell(4, 2), "315");
      await until("the mark to go", () => p.run((s) => !document.querySelector(`${s} [aria-invalid]`), sheet.input("log")));
      await p.reload();
      await until("the columns of before", async () => /Ambient/.test(await p.text(`${sheet.input("log")} thead`)));
    });

    await t.test("an answer is announced for whoever keeps it", async () => {
      const sheet = new Sheet(p, place, "saturation");
      await sheet.open("si");
      await p.run(() => {
        window.__answers = [];
        document.addEventListener("changeout:answer", (e) => window.__answers.push({ at: e.target.dataset.worksheet, ...e.detail }));
      });
      await sheet.enterAll({ refrigerant: "R-410A", pressure: ["250", "psig"] });
      await sheet.press();
      const shown = await sheet.waitForAnswer();
      const got = await p.run(() => window.__answers.at(-1));
      assert.equal(got.at, "saturation");
      assert.equal(got.worksheet, "saturation");
      assert.equal(got.title, "Saturation");
      assert.deepEqual(got.inputs.find((i) => i.id === "pressure"), { id: "pressure", label: await p.run((s) => document.querySelector(s).dataset.label, sheet.input("pressure")), text: "250", unit: "psig", shown: "250 psi gauge" });
      assert.deepEqual(Object.fromEntries(got.outputs.map((o) => [o.id, plain(o.text)])), shown.outputs);
      assert.ok(got.outputs.every((o) => Number.isFinite(Number(o.value)) && o.label !== "" && o.unit !== undefined));
      assert.ok(await p.run((s) => {
        const keep = document.querySelector(`${s} [data-keep]`);
        return keep?.previousElementSibling.matches("[data-answer]");
      }, sheet.at), "a place for it after the answer");
      await p.fill(`${sheet.input("pressure")} input[data-value]`, "high");
      await sheet.waitForError("pressure");
      assert.ok(await p.run(() => window.__answers.every((a) => a.inputs.find((i) => i.id === "pressure").text !== "high")), "no answer, no event");
    });

    await t.test("the list of worksheets names each once, by stage", async () => {
      await openPage(p, place, "worksheets");
      const seen = await p.run((s) => ({
        links: [...document.querySelectorAll(`${s} .co-shelf .co-row`)].map((a) => a.getAttribute("href").replace(/^.*worksheets\/|\.html$/g, "")),
        groups: [...document.querySelectorAll(`${s} .co-shelf h2`)].map((h) => h.textContent),
      }), on("worksheets"));
      assert.deepEqual([...seen.links].sort(), [...all].sort());
      assert.ok(seen.groups.length > 3, seen.groups.join());
      const numbers = seen.groups.map((g) => Number.parseInt(g, 10)).filter((n) => n > 0);
      assert.deepEqual(numbers, [...numbers].sort((a, b) => a - b), "in the order of the job");
    });

    assert.deepEqual(await p.troubles(), []);
  } finally {
    await p.close();
    await server.stop();
  }
});
