// The worksheets as a person uses them. Good answers are compared with the command line, which is another program
// (native Go, not the WebAssembly module) behind another door.

import assert from "node:assert/strict";
import { compute } from "../support/handbook.mjs";
import { plain, until } from "../support/page.mjs";
import { on, openPage } from "./reading.mjs";

/** A worksheet on its own page. */
export class Sheet {
  constructor(p, place, id) {
    Object.assign(this, { p, place, id, page: `worksheets/${id}`, at: `${on(`worksheets/${id}`)} [data-worksheet="${id}"]` });
  }
  async open(system = "si") {
    await openPage(this.p, this.place, this.page);
    await until("the form to start", () => this.p.visible(`${this.at} [data-form]`));
    if (await this.p.visible(`${this.at} [data-clear]`)) await this.p.tap(`${this.at} [data-clear]`);
    // Volts and ohms are the same everywhere: such a form has no switch.
    if (await this.p.visible(`${this.at} [data-system]`)) await this.p.tap(`${this.at} [data-system-set="${system}"]`);
  }
  input(id) {
    return `${this.at} [data-input="${id}"]`;
  }
  /** Enters one value: text, [text, unit id], or an option id, as the kind of the input asks. */
  async enter(id, given) {
    const [text, unit] = Array.isArray(given) ? given : [given];
    const kind = await this.p.run((s) => {
      const e = document.querySelector(s);
      if (!e || e.hidden) return "not shown";
      const value = e.querySelector("[data-value]");
      return value.type === "radio" ? "radio" : value.tagName;
    }, this.input(id));
    switch (kind) {
      case "radio":
        return this.p.tap(`${this.input(id)} label:has(input[value="${text}"])`);
      case "SELECT":
        return this.p.choose(`${this.input(id)} select[data-value]`, text);
      case "TEXTAREA":
        await this.p.run((s) => (document.querySelector(s).open = true), `${this.input(id)} [data-paste]`);
        return this.p.paste(`${this.input(id)} textarea`, text);
      case "INPUT":
        if (unit) await this.p.choose(`${this.input(id)} select[data-unit]`, unit);
        return this.p.fill(`${this.input(id)} input[data-value]`, text);
      default:
        throw new Error(`${this.id} shows no input ${id}`);
    }
  }
  async enterAll(inputs) {
    for (const [id, given] of Object.entries(inputs)) await this.enter(id, given);
  }
  async press() {
    await this.p.tap(`${this.at} button[type="submit"]`);
  }
  /** What the answer shows, or null while there is none. The working is opened for it: only then is it listed. */
  async answer() {
    const a = await this.p.run(async (s) => {
      const box = document.querySelector(`${s} [data-answer]`);
      if (!box || "asked" in box.dataset || !box.querySelector(".co-answer__title")) return null; // asked: another answer is on its way
      const working = box.querySelector("[data-working]");
      if (working && !working.open) {
        const opened = new Promise((done) => working.addEventListener("toggle", done, { once: true }));
        working.open = true;
        await opened;
      }
      const list = (q) => [...box.querySelectorAll(q)];
      return {
        verdict: box.querySelector("[data-verdict]")?.dataset.verdict ?? "",
        outputs: Object.fromEntries(list("[data-output]").map((o) => {
          const unit = o.querySelector("select")?.selectedOptions[0].textContent ?? o.querySelector(".co-result__unit")?.textContent ?? "";
          return [o.dataset.output, `${o.querySelector(".co-result__value").textContent} ${unit}`];
        })),
        warnings: list(".co-notes--warn li").map((li) => li.textContent),
        steps: list(".co-working li").map((li) => li.querySelector(".co-working__value").textContent),
        // Every source named in the working is listed on the page.
        lost: list(".co-working__source").filter((a) => !document.getElementById(decodeURIComponent(a.hash.slice(1)))).map((a) => a.hash),
        charts: list("svg.co-chart, .co-chart-frame svg").map((svg) => ({ width: svg.getBoundingClientRect().width, paths: svg.querySelectorAll("path, polyline, line").length })),
        text: box.textContent,
      };
    }, this.at);
    if (!a) return null;
    a.outputs = Object.fromEntries(Object.entries(a.outputs).map(([k, v]) => [k, plain(v)]));
    return a;
  }
  async waitForAnswer() {
    return this.explain(until(`an answer of ${this.id}`, () => this.answer()));
  }
  /** The message at an input, and whether it is tied to the field for a screen reader. */
  async error(id) {
    return this.p.run((s) => {
      const box = document.querySelector(s);
      const message = box.querySelector("[data-error]");
      if (!message || message.hidden || message.getClientRects().length === 0) return null;
      const field = box.querySelector("[data-value]");
      const describer = box.querySelector("[aria-describedby]");
      return {
        text: message.textContent,
        invalid: field.getAttribute("aria-invalid") === "true",
        described: (describer?.getAttribute("aria-describedby") ?? "").split(/\s+/).includes(message.id),
      };
    }, this.input(id));
  }
  async waitForError(id) {
    return this.explain(until(`a sentence at ${this.id} ${id}`, () => this.error(id)));
  }
  /** A wait that fails says what the form holds and shows. */
  async explain(waiting) {
    try {
      return await waiting;
    } catch (error) {
      const state = await this.p.run((s) => ({
        values: [...document.querySelectorAll(`${s} [data-input]:not([hidden])`)].map((e) => `${e.dataset.input}=${[...e.querySelectorAll("input[type=radio]:checked, select, [data-value]:not([type=radio])")].map((v) => v.value).join(" ")}`),
        errors: [...document.querySelectorAll(`${s} [data-error]:not([hidden])`)].map((e) => e.textContent),
        answer: document.querySelector(`${s} [data-answer]`).innerText.slice(0, 300),
      }), this.at).catch(() => null);
      error.message += `; the form: ${JSON.stringify(state)}`;
      throw error;
    }
  }
}

/** The command line's form of what was entered: text and unit in one word. */
function words(inputs) {
  return Object.fromEntries(Object.entries(inputs).map(([id, given]) => [id, Array.isArray(given) ? given.join(" ") : given]));
}

/** Enters, presses, and compares everything shown with the command line. */
export async function computesLikeCommandLine(sheet, inputs, system) {
  await sheet.open(system);
  await sheet.enterAll(inputs);
  await sheet.press();
  const got = await sheet.waitForAnswer();
  const want = await compute(sheet.id, words(inputs));
  assert.equal(want.code, 0, `the command line refused: ${want.sentence}`);
  const shown = Object.fromEntries(Object.entries(want.answer.outputs).map(([id, o]) => [id, plain(o.text)]));
  assert.ok(Object.keys(shown).length > 0 || want.answer.verdict, "the command line gave an answer");
  assert.deepEqual(got.outputs, shown, "every output on the page is the command line's");
  assert.equal(got.verdict, want.answer.verdict);
  assert.deepEqual(got.warnings.map(plain), want.answer.warnings.map(plain));
  assert.deepEqual(got.steps.map(plain), want.answer.steps.map((s) => plain(s.value)), "the working is the command line's");
  assert.deepEqual(got.lost, [], "every source of the working is listed on the page");
  assert.doesNotMatch(got.text, /NaN|Inf\b|undefined|null/);
  return got;
}

/** Bad input: one sentence with field, given and allowed, tied to the field; nothing typed is lost; no answer is shown. */
export async function refuses(sheet, inputs, bad, { given, allowed }) {
  await sheet.open("si");
  await sheet.enterAll(inputs);
  await sheet.press();
  const error = await sheet.waitForError(bad);
  const label = await sheet.p.run((s) => document.querySelector(s).dataset.label, sheet.input(bad));
  assert.ok(error.text.toLowerCase().includes(label.toLowerCase()), `the sentence names the field "${label}": ${error.text}`);
  assert.ok(plain(error.text).includes(given), `the sentence says what was given, "${given}": ${error.text}`);
  assert.match(plain(error.text), allowed, "the sentence says what is allowed");
  assert.ok(error.invalid, "the field is marked as invalid");
  assert.ok(error.described, "the sentence is tied to the field with aria-describedby");
  assert.equal(await sheet.answer(), null, "no answer is shown beside an error");
  const shown = await sheet.p.text(`${sheet.at} [data-answer]`);
  assert.match(shown, /^No answer yet/, "an empty result says so in words and never looks like a zero");
  // The sentence at the field may come before the press has been answered; the list of problems comes with it.
  const link = await sheet.explain(until("the list of problems", () => sheet.p.run((s) => document.querySelector(`${s} [data-summary] a`)?.getAttribute("href") ?? "", sheet.at)));
  const field = await sheet.p.run((s) => document.querySelector(`${s} [data-value]`).id || document.querySelector(`${s} [data-value]`).closest("[id]").id, sheet.input(bad));
  assert.equal(decodeURIComponent(link), "#" + field, "the list of problems leads to the field");
  for (const [id, g] of Object.entries(inputs)) await kept(sheet, id, Array.isArray(g) ? g[0] : g);
}

async function kept(sheet, id, text) {
  const value = await sheet.p.run((s) => {
    const e = document.querySelector(s);
    const radio = e.querySelector("input[type=radio]:checked");
    return radio ? radio.value : e.querySelector("[data-value]").value;
  }, sheet.input(id));
  assert.equal(value.trim(), text.trim(), `what was typed into ${id} is still there`);
}

/** Values and units survive a reload. */
export async function remembersUnits(sheet) {
  await sheet.open("si");
  await sheet.enterAll({ refrigerant: "R-32", pressure: ["118", "psig"] });
  await sheet.p.reload();
  await until("the form to start again", () => sheet.p.visible(`${sheet.at} [data-form]`));
  await until("the unit that was chosen", async () => (await sheet.p.value(`${sheet.input("pressure")} select[data-unit]`)) === "psig");
  await kept(sheet, "pressure", "118");
  const got = await sheet.waitForAnswer();
  const want = (await compute("saturation", { refrigerant: "R-32", pressure: "118 psig" })).answer;
  // The output is shown in the chosen system: metric here, so degrees Celsius from the kelvins of the command line.
  const celsius = (want.outputs["dew-temperature"].value - 273.15).toFixed(1).replace("-", "−");
  assert.equal(got.outputs["dew-temperature"], `${celsius} °C`);
}

/** 1,234 can be two numbers: the page asks, and a tap answers. 7,5 cannot: it is understood. */
export async function asksAboutComma(sheet) {
  await sheet.open("si");
  await sheet.enterAll({ refrigerant: "R-134a", pressure: ["7,5", "barg"] });
  // While somebody types, the answer to a part of the number may show for a moment.
  const point = (await compute("saturation", { refrigerant: "R-134a", pressure: "7.5 barg" })).answer;
  await until("7,5 bar to be read as 7.5", async () => (await sheet.answer())?.outputs["dew-temperature"] === plain(point.outputs["dew-temperature"].text));

  await sheet.enter("pressure", ["1,234", "kPag"]);
  const error = await sheet.waitForError("pressure");
  assert.match(plain(error.text), /1,234/);
  await kept(sheet, "pressure", "1,234");
  const choices = await sheet.p.run((s) => [...document.querySelectorAll(`${s} [data-suggest] button`)].map((b) => b.textContent), sheet.input("pressure"));
  assert.equal(choices.length, 2, `two readings are offered: ${choices.join(" | ")}`);
  await sheet.p.tap(`${sheet.input("pressure")} [data-suggest] button:last-child`);
  const value = await sheet.p.value(`${sheet.input("pressure")} input[data-value]`);
  const got = await sheet.waitForAnswer();
  const want = await compute("saturation", { refrigerant: "R-134a", pressure: `${value} kPag` });
  assert.equal(want.code, 0, want.sentence);
  assert.equal(got.outputs["bubble-temperature"], plain(want.answer.outputs["bubble-temperature"].text));
}

/** A pasted log gets a verdict and a chart. */
export async function judgesHold(sheet, log) {
  await sheet.open("si");
  await sheet.enter("log", log);
  await sheet.enterAll({ "ambient-start": ["21", "C"], "ambient-end": ["20", "C"] });
  await sheet.press();
  const got = await sheet.waitForAnswer();
  const want = await compute("vacuum-hold", { log: log.trim().split("\n").join(" / "), "ambient-start": "21 C", "ambient-end": "20 C" });
  assert.equal(want.code, 0, want.sentence);
  assert.equal(got.verdict, want.answer.verdict);
  assert.deepEqual(got.outputs, Object.fromEntries(Object.entries(want.answer.outputs).map(([id, o]) => [id, plain(o.text)])));
  assert.equal(got.charts.length, 1, "the log is drawn");
  assert.ok(got.charts[0].width > 200 && got.charts[0].paths > 2, `the chart holds lines and fits the phone: ${JSON.stringify(got.charts[0])}`);
  return got;
}

/** A column without its unit is asked about; a tap settles it. */
export async function asksAboutColumns(sheet) {
  await sheet.open("si");
  const log = "minutes,pressure\n0,310\n10,420\n20,515\n30,600\n45,700\n60,790\n";
  await sheet.enter("log", log);
  await sheet.press();
  const error = await sheet.waitForError("log");
  assert.ok(error.text.length > 20, error.text);
  await kept(sheet, "log", log);
  const choices = await sheet.p.run((s) => document.querySelectorAll(`${s} [data-suggest] button`).length, sheet.input("log"));
  assert.ok(choices > 0, `the page offers what the columns may be: ${error.text}`);
  await sheet.p.tap(`${sheet.input("log")} [data-suggest] button`);
  await sheet.waitForAnswer();
}
