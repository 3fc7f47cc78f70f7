// Finding a step from anywhere: by words, by what people say, by an amount, with slips, with the keyboard alone.

import assert from "node:assert/strict";
import { until } from "../support/page.mjs";
import { asked } from "./asked.mjs";
import { on, openPage } from "./reading.mjs";

const start = "stages/braze-with-nitrogen";
const panel = "[data-find-panel]";
const field = `${panel} input`;

/** The hits as a person sees them: address without the page's folder part, text, where it says they are, what is marked. */
const hits = (p, box = panel) => p.run((s) => [...document.querySelectorAll(`${s} [data-find-hits] a`)].map((a) => ({
  href: a.getAttribute("href"), text: a.querySelector(".co-find__text").textContent, where: a.querySelector(".co-find__where").textContent,
  marks: [...a.querySelectorAll("mark")].map((m) => m.textContent),
})), box);

/** Opens the panel from the bar, as a thumb does. */
async function openPanel(p, place) {
  await openPage(p, place, start);
  await p.tap("[data-find-open]");
  await until("the panel with the field in focus", () => p.run((s) => document.activeElement === document.querySelector(s), field));
}

/** Types in place of what the field holds, and waits for the answer to it. */
async function ask(p, words) {
  await p.run((s) => {
    const e = document.querySelector(s);
    e.focus();
    e.select();
  }, field);
  await p.keys(field, words);
  await until(`an answer to "${words}"`, async () => (await p.value(field)) === words && /found|place/i.test((await p.text(`${panel} [data-find-count]`)) ?? ""));
  // The last key's answer: the list belongs to the whole text once it stays the same.
  let before = "";
  await until("the list to come to rest", async () => {
    const now = JSON.stringify(await hits(p));
    const same = now === before;
    before = now;
    return same;
  });
  return hits(p);
}

export async function findsWords(p, place) {
  await openPanel(p, place);
  const found = await ask(p, "gauge farthest pump");
  assert.match(found[0].href, /stages\/evacuate-and-hold(\.html#|\/)step-gauge-far-end$/, JSON.stringify(found.slice(0, 3)));
  assert.deepEqual(found[0].marks.map((m) => m.toLowerCase()), ["gauge", "farthest", "pump"]);
  assert.match(found[0].where, /^Step, stage 8, Evacuate and hold$/);
  assert.match(await p.text(`${panel} [data-find-count]`), /^\d+ places? found/);
  await closes(p);
}

/** Escape puts the person back where they were. */
async function closes(p) {
  await p.press("Escape");
  await until("the panel closed", async () => !(await p.visible(".co-find-panel")));
}

const texts = (list) => list.map((h) => h.text + " " + h.where).join("\n");

/** What needs each part of the index: its words, what people say, slips, amounts, pages. */
async function findsInShort(p) {
  assert.match(texts(await ask(p, "meg test")), /insulation/i, "what people say");
  assert.match(texts(await ask(p, "EXV")), /electronic (expansion )?valve/i, "an abbreviation");
  assert.match(texts(await ask(p, "vaccum guage")), /vacuum gauge/i, "slips of the finger");
  assert.match(texts(await ask(p, "r410a 75 psig")), /R-410A pressure and temperature/);
}

export async function findsAgain(p, place) {
  await openPanel(p, place);
  await findsInShort(p);
  await closes(p);
}

export async function findsOtherWays(p, place) {
  await openPanel(p, place);
  await findsInShort(p);
  const amount = await ask(p, "500 micron");
  assert.ok(amount.length > 3 && amount.every((h) => h.marks.length > 0), JSON.stringify(amount.slice(0, 3)));
  assert.ok(amount.some((h) => h.marks.some((m) => /500\smicron/.test(m))), "the amount itself is marked");
  const other = await ask(p, "66.7 Pa");
  assert.ok(other.some((h) => h.marks.some((m) => /micron/.test(m))), "the same amount in another unit");
  assert.match(texts(await ask(p, "vacuum hold")), /^Vacuum hold Worksheet/);
  // However it is asked for, the procedure is among the first three.
  for (const asked of ["vacuum hold", "how to vacuum hold", "hold vacuum", "pull vacuum", "evacuation", "how long to hold vacuum", "stage 8", "decay test"]) {
    const top = (await ask(p, asked)).slice(0, 3);
    assert.ok(top.some((h) => /stages\/evacuate-and-hold(\.html)?$/.test(h.href)), `${asked}: ${JSON.stringify(top)}`);
  }
  assert.match(texts(await ask(p, "standing pressure")), /^standing pressure Word, Glossary\nStanding pressure test Worksheet/);
  assert.match(texts(await ask(p, "stored charge")), /^stored charge Word, Glossary\n/);
  assert.deepEqual(await ask(p, "zzqx"), []);
  assert.match(await p.text(`${panel} [data-find-count]`), /^Nothing found/);
  await closes(p);
}

/** The rows of asked.mjs. */
export async function findsAsked(p, place) {
  await openPanel(p, place);
  const lost = [];
  for (const [words, target] of asked) {
    const top = (await ask(p, words)).slice(0, 3).map((h) => h.href.replace(/^(\.\.\/)*#?/, "").replace(/\.html/, ""));
    // In the single file a place is page/id.
    if (!top.some((h) => target.test(h) || target.test(h.replace(/\/(?=[^/]+$)/, "#")))) lost.push(`${words}: ${top.join(" ") || "nothing"}`);
  }
  assert.deepEqual(lost, []);
  await closes(p);
}

/** To a step by taps: the panel closes, the step is in sight. */
export async function tapsToStep(p, place) {
  await openPanel(p, place);
  await ask(p, "gauge farthest pump");
  await p.tap(`${panel} [data-find-hits] a`);
  const step = place.name === "single file" ? '[id="stages/evacuate-and-hold/step-gauge-far-end"]' : "#step-gauge-far-end";
  await until("the step in sight", () => p.run((s) => {
    const box = document.querySelector(s)?.getBoundingClientRect();
    return !!box && box.height > 0 && box.top >= 0 && box.top < innerHeight;
  }, step));
  assert.equal(await p.visible(".co-find-panel"), false, "the panel is closed");
}

/** By keyboard alone, and what a screen reader is told. */
export async function keyboardAlone(p, place) {
  await openPage(p, place, start);
  // Not while something is typed elsewhere.
  await p.run(() => document.body.focus());
  await p.press("/");
  await until("the panel", () => p.run((s) => document.activeElement === document.querySelector(s), field));
  // In the single file the panel still holds what was asked last, selected, so that typing replaces it.
  assert.ok(!(await p.value(field)).includes("/"), "the key that opens is not typed");
  await ask(p, "nitrogen");
  const state = () => p.run((s) => {
    const input = document.querySelector(s);
    const active = document.getElementById(input.getAttribute("aria-activedescendant") ?? "");
    const list = document.getElementById(input.getAttribute("aria-controls"));
    return { role: input.getAttribute("role"), expanded: input.getAttribute("aria-expanded"), list: list?.getAttribute("role"), named: !!list?.getAttribute("aria-label"),
      at: active ? [...list.children].indexOf(active) : -1, selected: [...list.children].filter((o) => o.getAttribute("aria-selected") === "true").length,
      options: [...list.children].every((o) => o.getAttribute("role") === "option"), status: document.querySelector("[data-find-panel] [role=status]").textContent,
      seen: !active || (active.getBoundingClientRect().top >= 0 && active.getBoundingClientRect().bottom <= innerHeight + 1) };
  }, field);
  let now = await state();
  assert.deepEqual({ ...now, status: "" }, { role: "combobox", expanded: "true", list: "listbox", named: true, at: -1, selected: 0, options: true, status: "", seen: true });
  assert.match(now.status, /places found/);
  for (const [key, at] of [["ArrowDown", 0], ["ArrowDown", 1], ["ArrowDown", 2], ["ArrowUp", 1], ["ArrowUp", 0], ["ArrowUp", -1], ["ArrowUp", 29], ["ArrowDown", -1], ["ArrowDown", 0]]) {
    await p.press(key);
    now = await state();
    assert.deepEqual([now.at, now.selected, now.seen], [at, at < 0 ? 0 : 1, true], key);
  }
  const href = (await hits(p))[0].href;
  await p.press("Enter");
  await until("the place that was chosen", () => p.run((h) => location.href.endsWith(h) || location.href === h, href.replace(/^.*\/(?=[^/]+\/[^/]+$)/, "")));
  await openPage(p, place, start);
  await p.press("/");
  await until("the panel again", () => p.visible(field));
  await closes(p);
}

/** Big enough for a thumb, and no wider than a small phone. */
export async function fits(p, place) {
  await p.resize(320, 640);
  await openPanel(p, place);
  await ask(p, "nitrogen");
  const faults = await p.run((s) => {
    const list = [];
    if (document.documentElement.scrollWidth > innerWidth) list.push(`page ${document.documentElement.scrollWidth} px wide`);
    const dialog = document.querySelector(".co-find-panel");
    if (dialog.scrollWidth > innerWidth) list.push(`panel ${dialog.scrollWidth} px wide`);
    for (const e of document.querySelectorAll(`${s} input, ${s} button, ${s} a`)) {
      const box = e.getBoundingClientRect();
      if (box.height < 47.5) list.push(`${e.tagName} ${e.textContent.slice(0, 20)} ${box.height} px high`);
    }
    return list;
  }, panel);
  assert.deepEqual(faults, []);
  await closes(p);
  await p.resize(360, 740);
}

/** whole: false leaves out keys, sizes and further words, which no way of loading can change; rows: true asks the long list of asked.mjs. */
export async function search(t, p, place, { whole = true, rows = false } = {}) {
  const part = (name, fn) => t.test(name, { timeout: 240_000 }, () => fn(p, place));
  await part("words lead to the step, marked", findsWords);
  await part("what people say, abbreviations, slips, amounts in any unit", whole ? findsOtherWays : findsAgain);
  await part("a tap goes to the step", tapsToStep);
  if (!whole) return;
  if (rows) await part("what people in the field type leads there", findsAsked);
  await part("the keyboard alone", keyboardAlone);
  await part("320 px and a thumb", fits);
}
