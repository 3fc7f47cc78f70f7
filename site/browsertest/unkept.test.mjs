// What was done last leads back from the front page; what the browser does not keep is said, and goes along while it can.

import assert from "node:assert/strict";
import test, { after } from "node:test";
import { on, openPage } from "./scenarios/reading.mjs";
import { pressHere, procedure } from "./scenarios/steps.mjs";
import { Sheet } from "./scenarios/worksheets.mjs";
import { engines, open } from "./support/engines.mjs";
import { serve } from "./support/handbook.mjs";
import { until } from "./support/page.mjs";

const server = await serve();
after(() => server.stop());

const warning = '.co-header [role="alert"]';

// What is noted does not depend on the engine.
for (const engine of engines.slice(0, 1)) {
  test(`${engine}: back to where the person was`, { timeout: 480_000 }, async (t) => {
    const p = await open(engine);
    const resume = async () => {
      await openPage(p, server.place, "index");
      return (await p.visible("[data-resume]")) ? p.text("[data-resume]") : "";
    };
    try {
      await t.test("a reading, without a tick", async () => {
        assert.equal(await resume(), "");
        await openPage(p, server.place, procedure);
        const [id, step] = await p.run(() => {
          const row = document.querySelector(".co-write").closest("[data-step]");
          row.scrollIntoView(); // a field far down is not in the page before
          return [row.id, row.querySelector(".co-step__number").textContent];
        });
        assert.notEqual(step, "1");
        await until("the field", () => p.visible(`#${id} [data-write]`));
        await p.fill(`#${id} [data-write]`, "21");
        assert.equal(await resume(), `Go on at step ${step}: Evacuate and hold`);
      });
      await t.test("a timer", async () => {
        await openPage(p, server.place, procedure);
        const step = await p.run(() => document.querySelector("[data-step] [data-wait]").closest("[data-step]").querySelector(".co-step__number").textContent);
        await p.tap("[data-step] [data-wait] .co-wait__buttons button:not([hidden])");
        assert.match(await resume(), new RegExp(`^Go on at step ${step}: `));
      });
      await t.test("a worksheet", async () => {
        const sheet = new Sheet(p, server.place, "saturation");
        await sheet.open();
        await sheet.enter("pressure", ["9.4", "barg"]);
        assert.equal(await resume(), "Go on: Saturation");
      });
      await t.test("entries that were cleared are put back and forgotten, and the keyboard has a place", async () => {
        await openPage(p, server.place, "worksheets/saturation");
        // A form that still begins may lose the first press.
        const press = (words) => until(`a place after “${words}”`, async () => {
          const there = await p.run((w) => {
            const b = [...document.querySelectorAll("[data-form] button")].find((e) => e.textContent === w && e.getClientRects().length > 0);
            b?.focus();
            return !!b;
          }, words);
          if (there) await pressHere(p);
          return p.run((w) => document.activeElement.textContent !== w && !!document.activeElement.closest("[data-form]"), words);
        });
        for (const words of ["Clear the fields", "Put them back", "Clear the fields", "Forget them"]) await press(words);
      });
      await t.test("an answer of the assessment", async () => {
        await openPage(p, server.place, "stages/assess");
        await p.run(() => void (document.querySelector("[data-assess] details").open = true));
        await p.tap('[data-assess] details[open] input[value="present"]');
        assert.match(await resume(), /^Go on: Weigh the causes/);
      });
      await t.test("a page that is done leads to the next one of the job", async () => {
        await openPage(p, server.place, procedure);
        const steps = await p.run(() => {
          dispatchEvent(new Event("beforeprint")); // every box is in the page
          const boxes = [...document.querySelectorAll("[data-tick]")];
          for (const b of boxes) b.click();
          return boxes.length;
        });
        assert.equal(await resume(), `Go on with: Charge by weight and adjust. All ${steps} steps of Evacuate and hold are ticked`);
        await p.tap("[data-resume] a");
        await until("the next page", () => p.visible(on("stages/charge")));
      });
      await t.test("a page that is started again is not offered, and the keyboard has a place", async () => {
        await openPage(p, server.place, procedure);
        for (const b of ["[data-progress-clear]", "[data-progress] [role=group] button:last-child"]) {
          await until(b, () => p.run((s) => {
            document.querySelector(s)?.focus();
            return document.activeElement === document.querySelector(s);
          }, b));
          await pressHere(p);
        }
        await until("the ticks to be cleared", async () => /^0 of/.test(await p.text("[data-progress-text]")));
        assert.equal(await p.run(() => document.activeElement.id), "main");
        assert.equal(await resume(), "");
      });
    } finally {
      await p.close();
    }
  });

  test(`${engine}: what the browser does not keep`, { timeout: 480_000 }, async (t) => {
    const p = await open(engine);
    const at = on(procedure);
    const ticked = () => p.run((s) => [...document.querySelectorAll(`${s} [data-tick]`)].filter((b) => b.checked).length, at);
    const tick = async (nth) => p.tap(`${at} [data-tick="${await p.run((s, n) => document.querySelectorAll(`${s} [data-tick]`)[n].dataset.tick, at, nth)}"]`);
    try {
      await t.test("a full storage: ticks go along in this tab, which is said on each page, and are kept once there is room", async () => {
        await openPage(p, server.place, procedure);
        await tick(0);
        await p.run(() => {
          for (let n = 1 << 23, i = 0; n > 0; n >>= 1) {
            try {
              localStorage.setItem(`fill${i++}`, "x".repeat(n));
            } catch {
              // The half of it may fit.
            }
          }
        });
        await tick(1);
        const says = /^The storage of this browser is full\. What it has no room for is lost when you close this tab\. Write your readings down\.$/;
        await until("the sentence", async () => says.test((await p.text(warning)) ?? ""));
        await openPage(p, server.place, "index"); // nothing asks before that
        assert.match(await p.text(warning), says);
        await openPage(p, server.place, procedure);
        assert.equal(await ticked(), 2);
        await p.run(() => Object.keys(localStorage).filter((k) => k.startsWith("fill")).forEach((k) => localStorage.removeItem(k)));
        await p.reload();
        assert.equal(await p.visible(warning), false);
        await p.run(() => sessionStorage.clear());
        await p.reload();
        assert.equal(await ticked(), 2, "the storage has it now");
      });
      await t.test("no storage: it is said, the page asks before it is left, and the box stays ticked", async () => {
        await openPage(p, server.place, procedure);
        await p.run(() => {
          for (const name of ["localStorage", "sessionStorage"]) {
            Object.defineProperty(window, name, { get() {
              throw new DOMException("denied", "SecurityError");
            } });
          }
        });
        await tick(2);
        await until("the sentence", async () => (await p.text(warning)) === "This browser keeps nothing. What you tick and type is lost when you leave this page. Write your readings down.");
        if (p.asksBeforeLeaving) assert.ok(await p.asksBeforeLeaving(), "leaving now would lose the tick");
        assert.equal(await p.run((s) => document.querySelectorAll(`${s} [data-tick]`)[2].checked, at), true);
      });
    } finally {
      await p.close();
    }
  });
}
