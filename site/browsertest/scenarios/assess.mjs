// The assessment of the cause as a technician goes through it: nothing, a story of floodback, a finding that does not fit,
// a reload, clearing and bringing back, the gate.

import assert from "node:assert/strict";
import { plain, until } from "../support/page.mjs";
import { on, openPage } from "./reading.mjs";
import { Sheet } from "./worksheets.mjs";

const page = "stages/assess";
const at = `${on(page)} [data-assess]`;
const question = (id) => `${at} [data-finding="${id}"]`;

const verdict = (p) => p.text(`${at} [data-said] .co-verdict__title`);
const said = (p, words) => until(`the verdict ${words}`, async () => words.test((await verdict(p)) ?? ""));

async function openAssessment(p, place) {
  await openPage(p, place, page);
  await p.until("the result", (s) => !!document.querySelector(`${s} [data-said]`), at);
}

/** Answers a question as a thumb does: unfolds its heading, taps the answer. */
async function answer(p, id, mark) {
  await p.run((s) => (document.querySelector(s).closest("details").open = true), question(id));
  await p.tap(`${question(id)} input[value="${mark}"]`);
  await until(`${id} to be ${mark}`, () => p.run((s) => document.querySelector(s).checked, `${question(id)} input[value="${mark}"]`));
}

const nextCheck = (p) => p.run((s) => document.querySelector(`${s} [data-next]`)?.dataset.next ?? "", at);

export async function assessment(t, p, place) {
  const part = (name, fn) => t.test(name, { timeout: 240_000 }, fn);

  await part("nothing entered names no cause, and offers a check", async () => {
    await openAssessment(p, place);
    await said(p, /^Not determined yet: nothing entered$/);
    assert.notEqual(await nextCheck(p), "");
    assert.equal(await p.run((s) => document.querySelectorAll(`${s} svg.co-chain, ${s} [data-gate]`).length, at), 0, "no chain and no gate without a fact");
  });

  await part("the first answer leaves its question under the finger", async () => {
    const top = (s) => document.querySelector(s).getBoundingClientRect().top;
    const q = question("failed-before");
    const before = await p.run((s) => {
      const e = document.querySelector(s);
      e.closest("details").open = true;
      scrollBy({ top: e.getBoundingClientRect().top - 280, behavior: "instant" });
      e.querySelector('input[value="present"]').click();
      return e.getBoundingClientRect().top;
    }, q);
    await said(p, /1 fact entered$/);
    const after = await p.run(top, q);
    assert.ok(Math.abs(after - before) < 3, `the question moved from ${before} to ${after}`);
    await answer(p, "failed-before", "unknown");
    await said(p, /nothing entered$/);
  });

  await part("the strip leads to the next check, and an answer brings another", async () => {
    const first = await nextCheck(p);
    await p.tap(`${at} .co-assess__go`);
    await p.until("the question to have the focus", (s) => document.activeElement === document.querySelector(s), question(first));
    await answer(p, first, "absent");
    await until("another next check", async () => !["", first].includes(await nextCheck(p)));
    await said(p, /^Not determined yet: 1 fact entered$/);
    await answer(p, first, "unknown");
    await said(p, /nothing entered$/);
  });

  await part("a check that is not possible here gives way, and can be brought back", async () => {
    const first = await nextCheck(p);
    await p.tap(`${at} .co-assess__next [data-key="aside"]`);
    await until("another next check", async () => !["", first].includes(await nextCheck(p)));
    await p.tap(`${at} .co-assess__next .co-assess__more button`);
    await until("the first check again", async () => (await nextCheck(p)) === first);
  });

  await part("by keyboard: a question is answered with the arrow keys, and the result is reached", async () => {
    await p.run((s) => {
      document.querySelector(s).closest("details").open = true;
      document.querySelector(`${s} input[value="unknown"]`).focus();
    }, question("failed-before"));
    await p.press("ArrowLeft");
    await until("No, the answer on the left", () => p.run((s) => document.querySelector(s).checked, `${question("failed-before")} input[value="absent"]`));
    await said(p, /^Not determined yet: 1 fact entered$/);
    await p.press("ArrowRight");
    await said(p, /nothing entered$/);
  });

  await part("a story of floodback: one fact makes it probable at most, more make it the cause", async () => {
    await answer(p, "filters-blocked", "present");
    await said(p, /^(Probable: .*airflow|Not determined yet: 1 fact)/i);
    await answer(p, "superheat-low", "present");
    await said(p, /^Probable: .*airflow/i);
    await answer(p, "suction-low-wet", "present");
    await answer(p, "iced", "present");
    await said(p, /^Cause: .*airflow/i);
    const state = await p.run((s) => {
      const all = (q) => [...document.querySelectorAll(`${s} ${q}`)];
      const own = (e) => e.querySelector("summary").innerText.replace(/\s+/g, " ");
      return {
        percent: /%/.test(document.querySelector(`${s} [data-said]`).innerText),
        causes: all("[data-cause]").map(own),
        drawn: all("svg.co-chain .co-chain__number").map((n) => n.textContent),
        listed: all(".co-assess__arrows li").map((n) => n.innerText.replace(/\s+/g, " ")),
        gate: all("[data-gate]").map((n) => n.dataset.gate),
        gone: all("[data-cause].co-assess__cause--excluded").map((n) => n.dataset.cause),
        width: [document.documentElement.scrollWidth, innerWidth],
      };
    }, at);
    assert.equal(state.percent, false, "no percentage in the verdict");
    assert.ok(state.drawn.length > 0 && state.drawn.length <= state.listed.length, `the list holds every arrow of the drawing: ${state.drawn} / ${state.listed}`);
    assert.ok(state.listed.some((l) => /supported by/.test(l)), `an arrow is supported: ${state.listed}`);
    assert.ok(state.gate.includes("airflow"), `the gate holds the cause: ${state.gate}`);
    assert.deepEqual(state.gate.filter((g) => state.gone.includes(g)), [], "nothing excluded stands at the gate");
    assert.ok(state.width[0] <= state.width[1], `nothing wider than the screen: ${state.width}`);
    await until("the verdict to be said aloud", async () => /^Cause: /.test(await p.run((s) => document.querySelector(`${s} [data-assess-announce]`).textContent, at)));
  });

  await part("the question stays where it is while the result above it grows", async () => {
    const q = question("head-low");
    await p.run((s) => (document.querySelector(s).closest("details").open = true), q);
    await p.tap(`${q} input[value="present"]`);
    const before = await p.run((s) => document.querySelector(s).getBoundingClientRect().top, q);
    await p.until("the weighing", (s) => document.querySelector(`${s} [data-finding="head-low"] input[value="present"]`).checked && /head|pressure low/i.test(document.querySelector(`${s} .co-assess__entered`)?.textContent ?? ""), at);
    const after = await p.run((s) => document.querySelector(s).getBoundingClientRect().top, q);
    assert.ok(Math.abs(after - before) < 3, `the question moved from ${before} to ${after}`);
  });

  await part("a finding that does not fit is pointed out", async () => {
    await answer(p, "superheat-high", "present");
    await answer(p, "discharge-hot", "present");
    await until("the words that it does not fit", async () => /does not fit the rest|do not fit the rest/.test((await p.text(`${at} [data-conflicts]`)) ?? ""));
    await answer(p, "superheat-high", "unknown");
    await answer(p, "discharge-hot", "unknown");
    await said(p, /^Cause: .*airflow/i);
  });

  await part("answers, a note and a tick of the gate survive a reload", async () => {
    await p.tap(`${question("iced")} .co-assess__add`);
    await p.keys(`${question("iced")} textarea`, "thick on the suction header");
    await p.tap(`${at} [data-gate="airflow"]`);
    await p.reload();
    await said(p, /^Cause: .*airflow/i);
    await p.run((s) => (document.querySelector(s).closest("details").open = true), question("iced"));
    assert.equal(await p.value(`${question("iced")} textarea`), "thick on the suction header");
    assert.equal(await p.run((s) => document.querySelector(s).checked, `${at} [data-gate="airflow"]`), true);
    assert.match(plain((await p.text(`${at} .co-assess__gatestate`)) ?? ""), /^1 of \d+ ticked/);
  });

  await part("clearing takes everything and brings it back", async () => {
    await p.tap(`${at} [data-assess-clear]`);
    await said(p, /nothing entered$/);
    await p.reload();
    await said(p, /nothing entered$/);
    await p.tap(`${at} .co-assess__clear button:not([data-assess-clear])`);
    await said(p, /^Cause: .*airflow/i);
    assert.equal(await p.value(`${question("iced")} textarea`), "thick on the suction header");
    await p.tap(`${at} [data-assess-clear]`);
    await said(p, /nothing entered$/);
  });
}

/** An invented coil that gets half of its air. */
const airflow = { refrigerant: "R-410A", unit: "stopped", flow: ["500", "m3/h"], "rated-flow": ["1000", "m3/h"], "air-on": ["27", "C"], "on-relative": "50", "rated-capacity": ["5", "kW"] };

/** A worksheet's answer, kept in the job, answers the question; a person overrules it, and takes it back. */
export async function fedByWorksheet(p, place) {
  const sheet = new Sheet(p, place, "airflow");
  await sheet.open("si");
  await sheet.enterAll(airflow);
  await sheet.press();
  await sheet.waitForAnswer();
  const keep = `${sheet.at} [data-keep] button`;
  await p.until("the button that keeps the answer", (s) => !!document.querySelector(s)?.getClientRects().length, keep);
  await p.tap(keep);
  await until("the answer to be kept", async () => /^Kept in/.test((await p.text(`${sheet.at} [data-keep] [role="status"]`)) ?? ""));

  await openAssessment(p, place);
  const q = question("airflow-low");
  const from = `${q} [data-assess-from]`;
  await p.run((s) => (document.querySelector(s).closest("details").open = true), q);
  await until("the answer from the worksheet", () => p.run((s) => document.querySelector(s).checked, `${q} input[value="present"]`));
  assert.match((await p.text(from)) ?? "", /^From the worksheet .*: .*%/);
  await said(p, /1 fact entered$|^Probable/);

  await answer(p, "airflow-low", "absent");
  await until("the words that the own answer counts", async () => /^Your own answer counts. The worksheet .* says yes/.test((await p.text(from)) ?? ""));
  await p.reload();
  await until("the own answer after a reload", () => p.run((s) => document.querySelector(s).checked, `${q} input[value="absent"]`));
  await answer(p, "airflow-low", "unknown");
  await p.reload();
  await until("“Not looked” after a reload", () => p.run((s) => document.querySelector(s).checked && /says yes/.test(document.querySelector(s).closest("fieldset").textContent), `${q} input[value="unknown"]`));
  await p.run((s) => (document.querySelector(s).closest("details").open = true), q);
  await p.tap(`${from} button`);
  await until("the worksheet's answer taken", () => p.run((s) => document.querySelector(s).checked, `${q} input[value="present"]`));
}
