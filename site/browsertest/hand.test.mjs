// In the hand: the result stays in sight while fields are filled, fills the screen on a tap, and the screen stays on.

import assert from "node:assert/strict";
import test, { after } from "node:test";
import { on, openPage } from "./scenarios/reading.mjs";
import { levelling } from "./scenarios/everything.mjs";
import { Sheet } from "./scenarios/worksheets.mjs";
import { engines, open } from "./support/engines.mjs";
import { serve } from "./support/handbook.mjs";
import { pause, until } from "./support/page.mjs";

const glance = "dialog.co-glance[open]";

/** Counts what the page asks of the screen, in place of the browser's own lock, which a browser without a screen refuses. */
const countLocks = () => {
  window.__locks = { asked: 0, held: 0 };
  const lock = () => {
    window.__locks.asked++;
    window.__locks.held++;
    const sentinel = Object.assign(new EventTarget(), {
      released: false,
      async release() {
        if (sentinel.released) return;
        sentinel.released = true;
        window.__locks.held--;
        sentinel.dispatchEvent(new Event("release"));
      },
    });
    window.__last = sentinel;
    return Promise.resolve(sentinel);
  };
  Object.defineProperty(navigator, "wakeLock", { configurable: true, value: { request: lock } });
};

/** As if the person had looked at another app and come back: the browser takes the lock away meanwhile. */
const lookAway = async () => {
  const seen = (state) => {
    Object.defineProperty(document, "visibilityState", { configurable: true, get: () => state });
    document.dispatchEvent(new Event("visibilitychange"));
  };
  seen("hidden");
  await window.__last.release();
  seen("visible");
  delete document.visibilityState;
};

/** A sound and a vibration that count, in place of the browser's own: a machine without loudspeaker may give none. */
const countRings = () => {
  window.__rings = { tones: 0, shakes: 0, gives: true };
  const node = () => ({ connect: (to) => to, frequency: {}, gain: { setValueAtTime() {}, exponentialRampToValueAtTime() {} }, start: () => window.__rings.tones++, stop() {} });
  window.AudioContext = class {
    state = "suspended";
    currentTime = 0;
    createOscillator = node;
    createGain = node;
    constructor() {
      window.__sound = this;
    }
    async resume() {
      if (window.__rings.gives) this.state = "running";
      else await new Promise(() => {});
    }
  };
  Object.defineProperty(navigator, "vibrate", { configurable: true, value: () => window.__rings.shakes++ });
};

const server = await serve();
after(() => server.stop());

for (const engine of engines) {
  test(`${engine}: in the hand`, { timeout: 480_000 }, async (t) => {
    const p = await open(engine);
    try {
      const sheet = new Sheet(p, server.place, "saturation");
      await sheet.open();
      await sheet.enterAll({ refrigerant: "R-410A", pressure: ["9.4", "barg"], "line-temperature": ["17", "C"] });
      // The first answer may be one to a part of what was typed: the line's temperature is in the last.
      await until("the answer to all that was typed", async () => !!(await sheet.answer())?.outputs.superheat);
      const answer = await p.text(`${sheet.at} .co-result--main .co-result__value`);

      await t.test("the main figure stays in sight while a field is filled", async () => {
        await p.run((s) => document.querySelector(s).scrollIntoView({ block: "center" }), `${sheet.input("line-temperature")} input`);
        await until("the strip", () => p.visible(`${sheet.at} .co-strip`));
        assert.ok((await p.text(`${sheet.at} .co-strip`)).includes(answer), "with the figure of the answer");
        const covered = await p.run((s) => {
          const field = document.querySelector(s);
          field.scrollIntoView({ block: "start" });
          field.focus();
          const strip = document.querySelector(".co-strip__go").getBoundingClientRect();
          return { field: field.getBoundingClientRect().top, strip: strip.bottom, top: strip.top };
        }, `${sheet.input("line-temperature")} input`);
        assert.ok(covered.field >= covered.strip - 1 && covered.top >= -1, `a field comes to lie below it: ${JSON.stringify(covered)}`);
        // Only the figure changes: the strip follows it.
        const strip = async () => (await p.text(`${sheet.at} .co-strip`)) ?? "";
        const figure = () => p.run((s) => document.querySelector(s).textContent, `${sheet.at} .co-result--main .co-result__value`);
        await p.fill(`${sheet.input("pressure")} input`, "9.1");
        await until("another answer", async () => (await figure()) !== answer);
        const inSight = () => p.run((s) => document.querySelector(s).scrollIntoView({ block: "center" }), `${sheet.input("line-temperature")} input`);
        await inSight();
        await until("the strip with it", async () => (await strip()).includes(await figure()) && !(await strip()).includes(answer));
        await p.fill(`${sheet.input("pressure")} input`, "9.4");
        await inSight();
        await until("the first answer again", async () => (await figure()) === answer && (await strip()).includes(answer));
        await p.run(() => document.querySelector(".co-strip__go").click());
        await until("the strip to go once the answer is there", async () => !(await p.visible(`${sheet.at} .co-strip`)));
      });

      await t.test("it fills the screen and goes by Esc, by the way back and by its button", async () => {
        await p.run(countLocks);
        for (const way of ["Escape", "back", "button"]) {
          await p.tap(`${sheet.at} .co-glance-open`);
          await until("the large figure", () => p.visible(glance));
          assert.equal(await p.text(`${glance} .co-glance__number`), answer);
          const size = await p.run((s) => {
            const box = document.querySelector(s).getBoundingClientRect();
            const n = document.querySelector(`${s} .co-glance__number`);
            return { wide: box.width >= innerWidth - 1, tall: box.height >= innerHeight - 1, letters: parseFloat(getComputedStyle(n).fontSize), inside: n.scrollWidth <= innerWidth };
          }, glance);
          assert.ok(size.wide && size.tall && size.inside && size.letters >= 64, JSON.stringify(size));
          assert.match(await p.text(`${glance} .co-glance__time`), /^Worked out at \d/);
          await until("the screen to be kept on", () => p.run(() => window.__locks.held === 1));
          if (way === "Escape") await p.press("Escape");
          if (way === "back") await p.run(() => history.back());
          if (way === "button") await p.tap(`${glance} .co-glance__close`);
          await until(`it to close by ${way}`, async () => !(await p.visible(glance)));
          await until("the screen to be let go", () => p.run(() => window.__locks.held === 0));
          assert.equal(await p.text(`${sheet.at} .co-result--main .co-result__value`), answer, "the page is where it was");
          await until("the way back to lead where it led before", () => p.run(() => !history.state?.glance));
        }
      });

      await t.test("opened again before the step back is taken, it stays, and one step back closes it", async () => {
        for (const wait of ["none", "closed"]) {
          const length = await p.run(() => history.length);
          // All in one task of the page, where no driver is quick enough: close, and open at once or as soon as it is gone.
          await p.run(async (open, w) => {
            const tap = (s) => document.querySelector(s).click();
            tap(open);
            await new Promise((done) => setTimeout(done, 100));
            tap(".co-glance__close");
            while (w === "closed" && document.querySelector("dialog.co-glance")) await new Promise((done) => setTimeout(done));
            tap(open);
          }, `${sheet.at} .co-glance-open`, wait);
          await pause(1000); // for a step back that comes late
          assert.equal(await p.run((s) => document.querySelectorAll(s).length, glance), 1, `it is open still (${wait})`);
          assert.equal(await p.run(() => history.state?.glance), true);
          await p.run(() => history.back());
          await until("it to close by one step back", async () => !(await p.visible(glance)));
          await until("the way back to lead where it led before", () => p.run(() => !history.state?.glance));
          assert.ok((await p.run(() => history.length)) <= length + 1, "and to hold no step that leads nowhere");
        }
      });

      await t.test("a best estimate never stands without its upper bound", async () => {
        const hold = new Sheet(p, server.place, "vacuum-hold");
        await hold.open();
        await hold.enter("log", levelling);
        await hold.press(); // at once, and not again after a pause in typing
        await hold.waitForAnswer();
        const mains = await p.run((s) => [...document.querySelectorAll(`${s} .co-result--main dt`)].map((e) => e.textContent), hold.at);
        assert.ok(mains.length > 1, `several main figures: ${mains.join(", ")}`);
        await p.tap(`${hold.at} .co-glance-open`);
        const shown = await p.run((s) => [...document.querySelectorAll(`${s} .co-glance__label`)].map((e) => e.textContent), glance);
        assert.deepEqual(shown, mains);
        assert.ok(await p.visible(`${glance} .co-verdict__title`));
      });

      const page = "stages/evacuate-and-hold";
      await openPage(p, server.place, page);
      await p.run(countLocks);
      const lines = () => p.run(() => [...document.querySelectorAll("[data-timers] .co-timer")].map((e) => e.textContent));
      const fold = "[data-timers] [aria-expanded]";
      /** The kept timers by their ends; with a word, the first is made to have ended. */
      const kept = (change) => p.run((change) => {
        const key = Object.keys(localStorage).find((k) => k.endsWith(":timers"));
        const list = JSON.parse(localStorage.getItem(key) ?? "[]").sort((a, b) => a.end - b.end);
        if (change) localStorage.setItem(key, JSON.stringify(list.map((t, i) => (i === 0 ? { ...t, end: Date.now() - 90_000 } : t))));
        return list;
      }, change ?? null);
      await t.test("four timers start with one tap, fold into one line, and stay so on every page", async () => {
        await p.tap(".co-wait__together button");
        await until("one line in the bar", async () => (await lines()).length === 1);
        const list = await kept();
        assert.equal(list.length, 4);
        assert.ok(list.every((one) => one.start === list[0].start), "they count from the same moment");
        assert.ok(!(await p.visible(".co-wait__together")));
        assert.match((await lines())[0], /^Hold, 1\sminute.*and 3 more$/);
        await until("the screen to be kept on", () => p.run(() => window.__locks.held === 1));
        await p.run(lookAway);
        await until("the screen to be asked for again", () => p.run(() => window.__locks.held === 1 && window.__locks.asked === 2));
        const place = () => p.run((s) => Math.round(document.querySelector(s).getBoundingClientRect().bottom), fold);
        const before = await place();
        await p.tap(fold);
        await until("all four", async () => (await lines()).length === 4);
        assert.ok(Math.abs((await place()) - before) <= 2, "the button stays under the finger");
        assert.equal(await p.run((s) => document.activeElement === document.querySelector(s), fold), true);
        for (const other of ["index", "worksheets/saturation", "tables/r-410a", "job"]) {
          await openPage(p, server.place, other);
          await until(`four timers on ${other}`, async () => (await lines()).length === 4);
        }
        await p.tap(fold);
        await until("one line again", async () => (await lines()).length === 1);
        await p.reload();
        await until("one line after a reload", async () => (await lines()).length === 1);
      });
      const noted = () => p.run(() => {
        const note = document.querySelector(".co-timers__note");
        return { words: note.hidden ? "" : note.textContent, read: [...document.querySelectorAll("[role=status]")].map((e) => e.textContent).join(" ") };
      });
      const untilTap = "No sound until you tap this page.";
      await t.test("a page that cannot sound says so, and any tap brings the sound", async () => {
        await openPage(p, server.place, "worksheets/saturation");
        await p.run(countRings);
        await until("the silence to be told", async () => (await noted()).words === untilTap);
        assert.ok((await noted()).read.includes(untilTap), "it is read aloud too");
        await p.tap(`${on("worksheets/saturation")} h1`);
        await until("it to go with a tap", async () => !(await noted()).words.includes(untilTap));
        // A call comes in, the browser gives nothing back by itself.
        await p.run(() => {
          window.__rings.gives = false;
          window.__sound.state = "interrupted";
        });
        await until("the silence to be told again", async () => (await noted()).words === untilTap);
        await p.run(() => (window.__rings.gives = true));
        await p.run(() => document.dispatchEvent(new Event("visibilitychange")));
        await until("it to go when the page is seen again", async () => !(await noted()).words.includes(untilTap));
      });
      await t.test("a clock that is set anew is told", async () => {
        await p.run(() => {
          const real = Date.now;
          Date.now = () => real() - 720_000;
        });
        const words = "The phone's clock was set back by 12 minutes. Timers that ran then end that much later.";
        await until("the clock to be told", async () => (await noted()).words.startsWith(words));
        assert.ok((await noted()).read.includes(words), "it is read aloud too");
      });
      await t.test("a time that is over rings until it is noted, and again for who comes back", async () => {
        await kept("the first is over");
        await openPage(p, server.place, "worksheets/saturation");
        await p.run(countRings);
        await until("the silence to be told", async () => (await noted()).words === untilTap); // from then on a tap counts
        await p.tap(`${on("worksheets/saturation")} h1`);
        await until("the tap to bring the sound", async () => (await noted()).words !== untilTap);
        const rings = () => p.run(() => window.__rings);
        await p.run(() => document.dispatchEvent(new Event("visibilitychange")));
        await until("tones and a vibration", async () => (await rings()).tones > 0 && (await rings()).shakes > 0);
        const before = await rings();
        await p.run(() => document.dispatchEvent(new Event("visibilitychange")));
        await until("them again", async () => (await rings()).tones > before.tones && (await rings()).shakes > before.shakes);
      });
      await t.test("the keyboard stays on its timer when another one ends", async () => {
        const all = await kept();
        const store = (list) => p.run((list) => localStorage.setItem(Object.keys(localStorage).find((k) => k.endsWith(":timers")), JSON.stringify(list)), list);
        const focused = () => p.run(() => document.activeElement.textContent);
        const over = (n) => until(`${n} to be over`, () => p.run((n) => document.querySelectorAll(".co-timer--over").length === n, n));
        await p.run(() => document.querySelector("[data-timers] .co-timer--over a").focus());
        const name = await focused();
        await store(all.map((t, i) => (i === 1 ? { ...t, end: all[0].end - 1000 } : t))); // it comes to stand first
        await over(2);
        assert.equal(await focused(), name);
        await p.run(() => document.querySelector("[data-timers] .co-timer--over:nth-child(2) button").focus());
        await store(all);
        await over(1);
        assert.equal(await focused(), "Noted", "a button stays a button");
      });
      await t.test("one that is over comes first, and the tab says so before the page's own title", async () => {
        await kept("the first is over");
        await openPage(p, server.place, page);
        const own = await p.run(() => document.querySelector("h1").textContent);
        await until("the time that is over, and the next", async () => {
          const [first, second, none] = await lines();
          return /^Hold, 1\sminute: over since \d\d:\d\d\.Noted$/.test(first) && /^Hold, 10\sminutes.*and 2 more$/.test(second) && !none;
        });
        await until("the tab's title", () => p.run((own) => document.title.startsWith(`Over: Hold, 1\u00a0minute · ${own}`), own));
        await until("the page's own title alone", () => p.run((own) => document.title.startsWith(own), own));
        await p.run((s) => document.querySelector(s).focus(), "[data-timers] .co-timer--over button");
        // Firefox, driven, says that its window is not in use, and then Enter clicks no button.
        if (engine === "firefox") await p.run(() => document.activeElement.click());
        else await p.press("Enter");
        await until("the next alone", async () => (await lines()).length === 1);
        assert.equal(await p.run(() => document.activeElement.textContent), "Hold, 10\u00a0minutes", "the keyboard goes on from the next timer");
      });
      const ten = '[data-wait="hold-10-minutes"]';
      const press = (box, words) => p.run((s, w) => [...document.querySelectorAll(`${s} button`)].find((b) => b.textContent === w && !b.hidden).click(), box, words);
      await t.test("a timer stopped by a slip goes on from its own start", async () => {
        const start = async () => (await kept()).find((one) => one.title === "Hold, 10\u00a0minutes")?.start;
        const before = await start();
        await press(ten, "Stop the timer");
        assert.equal(await start(), undefined);
        assert.match(await p.text(`${ten} .co-wait__state`), /^Stopped with \d+:\d\d left\. Started at \d\d:\d\d\.$/);
        await press(ten, "Put it back");
        assert.equal(await start(), before);
        await p.reload();
        assert.equal(await start(), before);
        await p.run(countRings); // from here on every engine can sound
      });
      await t.test("a timer may have started earlier", async () => {
        const night = '[data-wait="overnight-hold"]';
        await p.tap(`${night} summary`);
        await p.until("the field", (s) => !!document.querySelector(`${s} input`), night);
        await press(night, "Start it from then");
        assert.equal((await kept()).length, 3, "not without a number");
        await p.tap(`${night} input`);
        await p.keys(`${night} input`, "12");
        await p.press("Enter");
        const list = await until("the timer", async () => (await kept()).find((one) => one.title === "Overnight hold"));
        assert.ok(Math.abs(Date.now() - 12 * 60_000 - list.start) < 30_000 && list.end - list.start === 12 * 3600_000, JSON.stringify(list));
        assert.match(await p.text(`${night} .co-wait__state`), /^Ends at \d\d:\d\d( on .*)?\. Started at \d\d:\d\d/);
      });
      await t.test("on its side the phone keeps one line, but not over a field in use", async () => {
        await until("the sound, for to be told of none takes a line more", async () => !(await p.visible(".co-timers__note--warns")));
        await p.resize(740, 360);
        const seen = () => p.run(() => {
          const bar = document.querySelector(".co-timers").getBoundingClientRect();
          return { top: bar.top, bottom: bar.bottom, screen: innerHeight };
        });
        const field = "[data-write]";
        await p.run((s) => document.querySelector(s).scrollIntoView({ block: "center" }), field);
        const line = await seen();
        assert.ok(line.bottom <= line.screen + 1 && line.bottom - line.top <= 60, JSON.stringify(line));
        await p.tap(field);
        // Firefox and WebKit, driven, say that their window is not in use; then no field of it is.
        if (await p.run(() => document.hasFocus())) await until("the bar to make room for who types", async () => (await seen()).top >= line.screen);
        else assert.notEqual(engine, "chromium");
        await p.run(() => document.activeElement.blur());
        await p.resize(360, 740);
        assert.ok((await seen()).bottom <= 740);
      });
      await t.test("the bar leads on from what is on the screen", async () => {
        // What is scrolled to can turn out elsewhere once it is laid out: a person scrolls on, so this does too.
        const next = async (n, scroll) => until(`the bar to name step ${n}`, async () => {
          if (scroll) await p.run(scroll);
          return (await p.text("[data-next-step]")) === `Next: step ${n}`;
        });
        await p.run(() => scrollTo(0, 0));
        // Over the cautions, one at a time, to the first step.
        const cautions = await p.run(() => [...document.querySelectorAll(".co-caution")].filter((e) => e.compareDocumentPosition(document.querySelector("[data-step]")) & Node.DOCUMENT_POSITION_FOLLOWING).length);
        assert.ok(cautions >= 2, `${cautions} cautions stand before the first step`);
        for (let i = 0; i < cautions; i++) {
          await until(`the bar to name caution ${i + 1}`, () => p.run((i) => document.querySelector("[data-next-step]").textContent === "Next: caution" && (i === 0 || document.activeElement === document.querySelectorAll(".co-caution")[i - 1]), i));
          await p.tap("[data-next-step]");
          await until(`caution ${i + 1}`, () => p.run((i) => { const top = document.querySelectorAll(".co-caution")[i].getBoundingClientRect().top; return top >= 0 && top < innerHeight / 4; }, i));
        }
        await next(1);
        const far = await p.run(() => document.querySelector('[data-wait="hold-10-minutes"]').closest("[data-step]").querySelector(".co-step__number").textContent).then(Number);
        await next(far + 1, () => document.querySelector('[data-wait="hold-10-minutes"]').closest("[data-step]").scrollIntoView());
        await p.tap("[data-next-step]");
        await next(far + 2);
        await p.run(() => scrollTo(0, 0));
        await until("the first caution again", async () => (await p.text("[data-next-step]")) === "Next: caution");
      });
      await t.test("what keeps is the strong answer, and what clears is not under the finger", async () => {
        await p.tap("[data-tick]");
        const at = await p.run(() => {
          const box = document.querySelector("[data-progress-clear]").getBoundingClientRect();
          document.querySelector("[data-progress-clear]").click();
          const [keep, clear] = document.querySelectorAll("[data-progress] [role=group] button");
          const c = clear.getBoundingClientRect();
          return { words: [keep.textContent, clear.textContent], quiet: [keep, clear].map((b) => b.classList.contains("co-button--quiet")), apart: c.top >= box.bottom || c.bottom <= box.top || c.left >= box.right || c.right <= box.left };
        });
        assert.deepEqual(at, { words: ["Keep them", "Clear them"], quiet: [false, true], apart: true });
        await press("[data-progress]", "Clear them");
      });
      await t.test("the front page leads on to the next open step", async () => {
        await openPage(p, server.place, page);
        const step = await p.run(() => {
          const boxes = [...document.querySelectorAll("[data-tick]")];
          for (const b of boxes.slice(0, 3)) b.click();
          return boxes[3].closest("[data-step]").id;
        });
        await openPage(p, server.place, "index");
        assert.match(await p.text(`${on("index")} [data-resume]`), /^Go on at step 4: .*, 3 of \d+ steps ticked$/);
        await p.tap(`${on("index")} [data-resume] a`);
        await until("the step to be in sight", () => p.run((id) => {
          const top = document.getElementById(id)?.getBoundingClientRect().top ?? -1;
          return top >= 0 && top < innerHeight / 2;
        }, step));
      });
    } finally {
      await p.close();
    }
  });
}
