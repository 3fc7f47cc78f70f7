// What all worksheet forms share: entries that travel in a link, units, room for a sentence, Enter, dates, paper.

import assert from "node:assert/strict";
import { plain, until } from "../support/page.mjs";
import { on, openPage } from "./reading.mjs";
import { Sheet } from "./worksheets.mjs";

/** Takes the place of the phone's sharing and of the clipboard, which a browser without a window has not; null: there is none. */
export function catchSharing(p, { share = true, clipboard = true } = {}) {
  return p.run((withShare, withClipboard) => {
    window.__shared = [];
    Object.defineProperty(navigator, "share", { configurable: true, value: withShare ? async (what) => void window.__shared.push(what) : undefined });
    if (!withShare) delete Navigator.prototype.share;
    Object.defineProperty(navigator, "clipboard", { configurable: true, value: withClipboard ? { writeText: async (text) => void window.__shared.push({ text }) } : undefined });
  }, share, clipboard);
}

export const shared = (p) => p.run(() => window.__shared.at(-1) ?? null);

/** The entries as the form holds them: { input: [text, unit] }. */
export function entries(sheet) {
  return sheet.p.run((s) => Object.fromEntries([...document.querySelectorAll(`${s} [data-input]`)].map((e) => {
    const radio = e.querySelector("input[type=radio]:checked");
    const value = radio ? radio.value : e.querySelector("[data-value]").type === "radio" ? "" : e.querySelector("[data-value]").value;
    return [e.dataset.input, [value, e.querySelector("select[data-unit]")?.value ?? ""]];
  })), sheet.at);
}

export async function shareLink(sheet) {
  await catchSharing(sheet.p);
  await sheet.p.tap(`${sheet.at} [data-share]`);
  return until("something to be shared", () => shared(sheet.p));
}

const typed = { refrigerant: "R-410A", pressure: ["250", "psig"], "line-temperature": ["17,5", "C"] };
const own = { refrigerant: "R-32", pressure: ["8", "barg"] };

/** A link fills the form, says so, and gives back what was there. */
export async function linkCarriesEntries(p, place) {
  const sheet = new Sheet(p, place, "saturation");
  await sheet.open("si");
  await sheet.enterAll(typed);
  const answered = await sheet.waitForAnswer();
  const { title, url } = await shareLink(sheet);
  assert.equal(title, "Saturation");
  assert.match(url, /worksheets\/saturation(\.html)?(#|\/)fill\?/);
  assert.match(url, /refrigerant=R-410A&.*pressure=250&pressure\.unit=psig.*line-temperature=17,5&line-temperature\.unit=C/);

  await sheet.open("si");
  await sheet.enterAll(own);
  await sheet.waitForAnswer();
  const before = await entries(sheet);
  await p.goto(url);
  await until("the entries of the link", async () => (await entries(sheet)).pressure[0] === "250");
  const filled = await entries(sheet);
  assert.deepEqual(filled.pressure, ["250", "psig"]);
  assert.deepEqual(filled["line-temperature"], ["17,5", "C"]);
  assert.deepEqual(filled.refrigerant[0], "R-410A");
  assert.match(await p.text(`${sheet.at} [data-notice]`), /came with a link.*Kept from before: Refrigerant/);
  await until("the answer of the link", async () => (await sheet.answer())?.outputs["dew-temperature"] === answered.outputs["dew-temperature"]);
  assert.doesNotMatch(await p.run(() => location.href), /fill/, "a reload must not fill the form again");

  // One tap puts back what was there, another what the link brought: nothing is lost either way, nor over a reload.
  const back = `${sheet.at} [data-notice] button`;
  await p.tap(back);
  assert.deepEqual(await entries(sheet), { ...before, "line-temperature": (await entries(sheet))["line-temperature"] });
  assert.equal((await entries(sheet))["line-temperature"][0], "");
  await p.reload();
  await until("the form to start again", () => p.visible(`${sheet.at} [data-form]`));
  await until("the offer after the reload", () => p.visible(back));
  assert.deepEqual((await entries(sheet)).pressure, ["8", "barg"]);
  await p.tap(back);
  await until("the link's entries again", async () => (await entries(sheet)).pressure.join() === "250,psig");
  assert.deepEqual((await entries(sheet))["line-temperature"], ["17,5", "C"]);

  // An entry that has no place is said, not swallowed.
  await p.goto(url.replace("pressure=250&pressure.unit=psig", "pressure=260&pressure.unit=furlong&colour=red"));
  await until("the second link", async () => (await entries(sheet)).pressure[0] === "260");
  assert.match(await p.text(`${sheet.at} [data-notice]`), /Not used.*260 furlong; colour red/);
  return url;
}

/** What was written down in the steps of a page goes into its worksheet with one tap, and what it replaces comes back with another. */
export async function takesReadings(p, place) {
  const procedure = "stages/evacuate-and-hold";
  const at = on(procedure);
  await openPage(p, place, procedure);
  const sheet = Object.assign(new Sheet(p, place, "vacuum-hold"), { at: `${at} [data-worksheet="vacuum-hold"]` });
  await p.run((s) => document.querySelector(s).scrollIntoView(), sheet.at);
  await until("the form", () => p.visible(`${sheet.at} [data-form]`));
  const take = `${sheet.at} .co-worksheet__take button`;
  await p.tap(take);
  assert.match(await p.text(`${sheet.at} [data-notice]`), /hold no reading/);
  await sheet.enter("target", ["400", "micron"]);
  for (const [id, text] of [["hold-0", "300"], ["hold-1", "318,5"], ["hold-5", "335"], ["hold-10", "338"], ["hold-30", "340"], ["hold-air-start", "21"], ["hold-air-60", "20"]]) {
    const field = `${at} [data-write="${id}"]`;
    await p.run((s) => document.querySelector(s)?.closest("[data-step]")?.scrollIntoView(), `${at} #write-${id}, ${at} label[for="write-${id}"]`);
    await until(`the field ${id}`, () => p.run((s) => !!document.querySelector(s), field));
    await p.fill(field, text);
  }
  await p.tap(take);
  assert.match(await p.text(`${sheet.at} [data-notice]`), /Taken over: Ambient at the start 21 °C; Ambient at the end 20 °C; Hold log with 5 rows\./);
  const taken = await entries(sheet);
  assert.equal(taken.log[0], "time_min;pressure_micron\n0;300\n1;318,5\n5;335\n10;338\n30;340\n");
  assert.deepEqual(taken["ambient-start"], ["21", "C"]);
  assert.deepEqual(taken.target, ["400", "micron"], "what the steps do not hold stays");
  await sheet.waitForAnswer();
  await p.tap(`${sheet.at} [data-notice] button`);
  assert.equal((await entries(sheet)).log[0], "", "put back what was there");
  assert.deepEqual((await entries(sheet)).target, ["400", "micron"]);
}

/**
 * A field of a step is written in the unit that the person reads: it begins with the person's system, stays with the reading,
 * and goes with it into the worksheet. A reading that was kept before there was a choice keeps the unit it was typed in.
 */
export async function choosesUnits(p, place) {
  const procedure = "stages/evacuate-and-hold";
  const at = on(procedure);
  await openPage(p, place, procedure);
  await p.run((page, prefix) => {
    const key = Object.keys(localStorage).find((k) => k.endsWith("system")) ?? prefix + "system";
    localStorage.setItem(key, "ip");
    localStorage.setItem(key.replace(/system$/, `readings:${page}`), JSON.stringify({ "hold-air-start": "-3" })); // as an older version kept it
    localStorage.removeItem(key.replace(/system$/, `about:${page}`));
  }, procedure, "changeout:" + new URL(place.url("index")).pathname + ":");
  await p.reload();
  const field = (id) => `${at} [data-write="${id}"]`;
  const unit = (id) => `${at} select[id$="write-${id}-unit"]`;
  const near = async (id) => {
    await p.run((s) => document.querySelector(s).closest("[data-step]").scrollIntoView(), `${at} label[for$="write-${id}"]`);
    await until(`the unit of ${id}`, () => p.run((s) => !!document.querySelector(s), unit(id)));
  };
  await near("hold-air-start");
  assert.deepEqual([await p.value(field("hold-air-start")), await p.value(unit("hold-air-start"))], ["-3", "°C"], "an old reading");
  await near("hold-air-60");
  assert.equal(await p.value(unit("hold-air-60")), "°F", "US units were chosen");
  await p.fill(field("hold-air-60"), "68");
  await p.tap(`${at} .co-write__row:has([data-write="hold-air-60"]) .co-input__sign`);
  assert.equal(await p.value(field("hold-air-60")), "-68");
  await p.tap(`${at} .co-write__row:has([data-write="hold-air-60"]) .co-input__sign`);
  for (const [id, text] of [["hold-0", "300"], ["hold-1", "40"], ["hold-5", "335"]]) {
    await near(id);
    await p.fill(field(id), text);
  }
  await p.run((s) => {
    const select = document.querySelector(s);
    select.value = "Pa";
    select.dispatchEvent(new Event("change", { bubbles: true }));
  }, unit("hold-1"));
  await p.fill(field("hold-5"), "335 Pa");
  await p.run((s) => document.querySelector(s).dispatchEvent(new Event("change", { bubbles: true })), field("hold-5"));
  const said = await p.run((s) => {
    const box = document.querySelector(s);
    return box.getAttribute("aria-describedby").split(" ").map((id) => document.getElementById(id)?.textContent ?? "?").pop();
  }, field("hold-5"));
  assert.match(said, /This field is in micron: type the figure in micron, or choose its unit beside it/, "tied to the field");
  await p.fill(field("hold-5"), "335");
  await p.reload();
  await near("hold-1");
  assert.deepEqual([await p.value(field("hold-1")), await p.value(unit("hold-1"))], ["40", "Pa"], "over a reload");
  const sheet = Object.assign(new Sheet(p, place, "vacuum-hold"), { at: `${at} [data-worksheet="vacuum-hold"]` });
  await p.run((s) => document.querySelector(s).scrollIntoView(), sheet.at);
  await until("the form", () => p.visible(`${sheet.at} [data-form]`));
  await p.tap(`${sheet.at} .co-worksheet__take button`);
  const taken = await entries(sheet);
  assert.deepEqual([taken["ambient-start"], taken["ambient-end"]], [["-3", "C"], ["68", "F"]]);
  assert.equal(taken.log[0], "time_min,pressure_micron\n0,300\n1,40 Pa\n5,335\n");
  await sheet.waitForAnswer();
  await p.tap(`${sheet.at} [data-system-set="si"]`);
}

/** The boxes of a log: a day is picked, a sign has a button, a time of day has letters and a colon; a pasted log stays whole. */
export async function boxesFit(p, place) {
  const log = new Sheet(p, place, "refrigerant-log");
  await log.open("si");
  const boxes = (sheet) => p.run((s) => [...document.querySelectorAll(`${s} .co-series__table tbody tr:first-child input`)].map((b) => [b.type, b.inputMode, b.value]), sheet.input("log"));
  assert.deepEqual((await boxes(log)).map((b) => b.slice(0, 2)), [["date", ""], ["text", "decimal"], ["text", "decimal"]]);
  await log.enter("log", "date,added_kg,recovered_kg\n2026/09/11,2.4,0\n2026-10-11,1,0\n");
  assert.deepEqual((await boxes(log))[0], ["text", "", "2026/09/11"], "a date that the browser writes otherwise");
  const second = `${log.input("log")} .co-series__table tbody tr:nth-child(2) input`;
  assert.equal(await p.value(second), "2026-10-11");
  await p.fill(`${log.input("log")} .co-series__table tbody tr:nth-child(2) td:nth-child(2) input`, "1.5");
  assert.equal((await entries(log)).log[0], "date,added_kg,recovered_kg\n2026/09/11,2.4,0\n2026-10-11,1.5,0\n");

  const hold = new Sheet(p, place, "vacuum-hold");
  await hold.open("si");
  assert.deepEqual((await boxes(hold)).map((b) => b.slice(0, 2)), [["text", ""], ["text", "decimal"], ["text", "decimal"]]);
  const air = `${hold.input("log")} .co-series__table tbody tr:first-child td:nth-child(3) input`;
  const sign = `${hold.input("log")} .co-series__buttons .co-input__sign`;
  assert.equal(await p.visible(sign), false, "nothing to change the sign of yet");
  await p.fill(air, "4");
  await p.run((s) => document.querySelector(s).focus(), air);
  await p.tap(sign);
  assert.equal(await p.value(air), "-4");
  assert.match((await entries(hold)).log[0], /,-4\n$/);
  assert.match(await p.run((s) => document.querySelector(s).getAttribute("aria-label"), sign), /Change the sign of Ambient, °C, row 1/);
}

/** "Clear" keeps what it clears. */
export async function clearGivesBack(p, place) {
  const sheet = new Sheet(p, place, "saturation");
  await sheet.open("si");
  await sheet.enterAll(own);
  await sheet.waitForAnswer();
  const before = await entries(sheet);
  await p.tap(`${sheet.at} [data-clear]`);
  assert.equal((await entries(sheet)).pressure[0], "");
  await p.tap(`${sheet.at} [data-notice] button`);
  assert.deepEqual(await entries(sheet), before);
  await sheet.waitForAnswer();
}

/** A log with answers about its columns travels whole. */
export async function linkCarriesLog(p, place) {
  const sheet = new Sheet(p, place, "vacuum-hold");
  await sheet.open("si");
  const log = "minutes,pressure\n0,310\n10,420\n20,515\n30,600\n45,700\n60,790\n";
  await sheet.enter("log", log);
  await sheet.press();
  await sheet.waitForError("log");
  await p.tap(`${sheet.input("log")} [data-suggest] button`);
  const verdict = (await sheet.waitForAnswer()).verdict;
  const { url } = await shareLink(sheet);
  await p.tap(`${sheet.at} [data-clear]`);
  await p.goto(url);
  await until("the log of the link", async () => (await entries(sheet)).log[0] === log);
  assert.equal((await sheet.waitForAnswer()).verdict, verdict, "without asking about the columns again");
}

/** Without the phone's sharing the clipboard; without a clipboard a marked field. */
export async function copiesInstead(p, place) {
  const sheet = new Sheet(p, place, "saturation");
  await sheet.open("si");
  await sheet.enterAll(own);
  await catchSharing(p, { share: false });
  await p.tap(`${sheet.at} [data-share]`);
  const copied = await until("the clipboard", () => shared(p));
  assert.match(copied.text, /^http.*#fill\?/);
  assert.match(await p.text(`${sheet.at} [data-shared]`), /link is copied.*nothing went to a server/);
  await catchSharing(p, { share: false, clipboard: false });
  await p.tap(`${sheet.at} [data-share]`);
  await until("a field to copy from", () => p.visible(`${sheet.at} [data-copy] textarea`));
  const field = await p.run((s) => {
    const e = document.querySelector(`${s} [data-copy] textarea`);
    return { text: e.value, marked: e.selectionEnd - e.selectionStart };
  }, sheet.at);
  assert.equal(field.text, copied.text);
  assert.equal(field.marked, field.text.length, "all of it is marked");
}

/** In the single file on a phone an address leads nowhere: the entries go as text. */
export async function copiesText(p, place) {
  const sheet = new Sheet(p, place, "saturation");
  await sheet.open("si");
  await sheet.enterAll(typed);
  assert.equal(await p.text(`${sheet.at} [data-share]`), "Copy the entries as text");
  await catchSharing(p);
  await p.tap(`${sheet.at} [data-share]`);
  const { text } = await until("the clipboard", () => shared(p));
  assert.match(plain(text), /^Saturation Refrigerant: R-410A.* 250 psi gauge.* 17,5 °C/);
  // A link into the file fills it all the same.
  await p.tap(`${sheet.at} [data-clear]`);
  await p.goto(place.url("worksheets/saturation", "fill?refrigerant=R-32&pressure=9&pressure.unit=barg"));
  await until("the entries", async () => (await entries(sheet)).pressure.join() === "9,barg");
  assert.ok(await p.visible(`${on("worksheets/saturation")} h1`), "the page of the worksheet is shown");
}

/** Types without leaving the field, waits for the sentence, and measures how far the button went, in the document and in the window. */
export async function movement(sheet, id, text) {
  const { p } = sheet;
  const box = `${sheet.input(id)} [data-value]`;
  await p.tap(box);
  await p.run((s) => document.querySelector(s).select?.(), box);
  const where = () => p.run((s) => {
    const top = document.querySelector(`${s} button[type=submit]`).getBoundingClientRect().top;
    return { window: Math.round(top), document: Math.round(top + scrollY) };
  }, sheet.at);
  const from = await where();
  await p.keys(box, text);
  const error = await sheet.waitForError(id);
  const to = await where();
  return { error: error.text, document: to.document - from.document, window: to.window - from.window };
}
