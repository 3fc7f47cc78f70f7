// The job file as a person uses it. p: the browser, place: where the handbook is.

import assert from "node:assert/strict";
import { readFile, writeFile } from "node:fs/promises";
import path from "node:path";
import { deflateSync } from "node:zlib";
import { folder } from "../support/handbook.mjs";
import { until } from "../support/page.mjs";
import { on, openPage } from "./reading.mjs";
import { pressHere } from "./steps.mjs";
import { Sheet } from "./worksheets.mjs";

const at = on("job");
const procedure = "stages/evacuate-and-hold";

export class JobPage {
  constructor(p, place) {
    Object.assign(this, { p, place });
  }
  async open() {
    await openPage(this.p, this.place, "job");
    await this.ready();
  }
  async ready() {
    await until("the job file", () => this.p.run((s) => [...document.querySelectorAll(`${s} [data-job-file] h2`)].some((h) => h.textContent === "New job"), at));
  }
  /** Taps the first shown button or label with these words, below a selector. */
  async tap(words, under = "", again = 2) {
    await until(`a button “${words}”`, () => this.p.run((s, w) => {
      document.querySelectorAll('[data-test="tap"]').forEach((e) => e.removeAttribute("data-test"));
      const found = [...document.querySelectorAll(`${s} button, ${s} label`)].find((e) => e.getClientRects().length > 0 && (e.getAttribute("aria-label") ?? e.textContent).trim() === w);
      found?.setAttribute("data-test", "tap");
      return !!found;
    }, `${at} ${under}`, words));
    try {
      await this.p.tap('[data-test="tap"]');
    } catch (error) {
      // In the single file the page is drawn anew a moment after it came to the front; the button that was found is gone then.
      if (again === 0 || !/nothing to tap|NoSuchElement/.test(`${error.name} ${error.message}`)) throw error;
      await this.tap(words, under, again - 1);
    }
  }
  /** Presses a button by keyboard and gives what holds the keyboard then: "BODY" is nothing. */
  async pressed(words, under) {
    await until(`a button “${words}” to press`, () => this.p.run((s, w) => {
      const b = [...document.querySelectorAll(`${s} button`)].find((e) => e.getClientRects().length > 0 && (e.getAttribute("aria-label") ?? e.textContent).trim() === w);
      b?.focus();
      return !!b && document.activeElement === b;
    }, `${at} ${under}`, words));
    await pressHere(this.p);
    return this.p.run(() => {
      const e = document.activeElement;
      return e === document.body ? "BODY" : e.getAttribute("aria-label") ?? e.dataset.name ?? e.textContent;
    });
  }
  said() {
    return this.p.text(`${at} [data-job-said]`);
  }
  async says(pattern) {
    await until(`the page to say ${pattern}, it says “${await this.said()}”`, async () => pattern.test((await this.said()) ?? ""), 30_000);
  }
  async opened(title) {
    await until(`the job ${title} to be open`, async () => (await this.p.text(`${at} [data-job-open] h2`)) === title);
  }
  async unfold(part) {
    await until(`the part ${part}`, () => this.p.run((s) => {
      const d = document.querySelector(s);
      if (d) d.open = true;
      return !!d;
    }, this.part(part)));
  }
  part(name) {
    return `${at} [data-part="${name}"]`;
  }
  box(name, part) {
    return `${part ? this.part(part) : at} [data-name="${name}"]`;
  }
  async make(title) {
    await this.p.fill(`${at} form[aria-label="New job"] [data-name="title"]`, title);
    await this.tap("Make the job");
    await this.opened(title);
  }
  async add(part, values, send) {
    await this.unfold(part);
    const form = `${this.part(part)} form:last-of-type`;
    for (const [name, value] of Object.entries(values)) {
      const box = `${form} [data-name="${name}"]`;
      if (await this.p.run((s) => document.querySelector(s).tagName === "SELECT" || document.querySelector(s).type === "date", box)) await this.p.choose(box, value);
      else await this.p.fill(box, value);
    }
    await this.tap(send, `[data-part="${part}"]`);
  }
  /** How many entries a list shows. */
  entries(part) {
    return this.p.run((s) => document.querySelectorAll(`${s} .co-job__list > .co-job__entry`).length, this.part(part));
  }
  async has(part, number) {
    await until(`${number} entries in ${part}`, async () => (await this.entries(part)) === number);
  }
  /** The file that a tap on a button gives, read where it leaves the page. */
  async fileOf(words, under) {
    await this.p.run(() => {
      window.__file = null;
      const make = URL.createObjectURL;
      URL.createObjectURL = (blob) => {
        if (blob.type === "application/json") {
          const reader = new FileReader();
          reader.onload = () => (window.__file = reader.result);
          reader.readAsText(blob);
        }
        return make.call(URL, blob);
      };
      HTMLAnchorElement.prototype.click = function () {
        window.__name = this.download; // the download itself leaves the page
      };
    });
    await this.tap(words, under);
    await this.p.until("the file", () => !!window.__file);
    return this.p.run(() => ({ text: window.__file, name: window.__name }));
  }
  async openFile(text, name = "job.json") {
    const file = path.join(folder(), `${Math.random().toString(36).slice(2)}-${name}`);
    await writeFile(file, text);
    await this.p.upload(`${at} [data-job-import]`, file);
  }
  titles() {
    return this.p.run((s) => [...document.querySelectorAll(`${s} [data-job-open] h2, ${s} [data-job-row] .co-job__first`)].map((e) => e.firstChild.textContent).sort(), at);
  }
}

/** A picture with detail like a photo's, larger than the phone keeps: PNG, 2400 × 1800. */
async function picture() {
  const [width, height] = [2400, 1800];
  const rows = Buffer.alloc((width * 3 + 1) * height);
  let seed = 7;
  for (let y = 0; y < height; y++) {
    for (let x = 0; x < width; x++) {
      seed = (seed * 1103515245 + 12345) & 0x7fffffff;
      const noise = (seed >> 16) & 31;
      rows.set([Math.min(255, ((x >> 4) & 127) + noise + 60), Math.min(255, ((y >> 3) & 127) + noise + 40), (x * y) >> 14 & 255], y * (width * 3 + 1) + 1 + x * 3);
    }
  }
  const crcs = Int32Array.from({ length: 256 }, (_, n) => {
    for (let k = 0; k < 8; k++) n = n & 1 ? 0xedb88320 ^ (n >>> 1) : n >>> 1;
    return n;
  });
  const chunk = (type, data) => {
    const body = Buffer.concat([Buffer.from(type), data]);
    let c = -1;
    for (const b of body) c = crcs[(c ^ b) & 255] ^ (c >>> 8);
    const out = Buffer.alloc(body.length + 8);
    out.writeUInt32BE(data.length, 0);
    body.copy(out, 4);
    out.writeInt32BE(~c, body.length + 4);
    return out;
  };
  const head = Buffer.alloc(13);
  head.writeUInt32BE(width, 0);
  head.writeUInt32BE(height, 4);
  head.set([8, 2, 0, 0, 0], 8);
  const file = path.join(folder(), "plate.png");
  await writeFile(file, Buffer.concat([Buffer.from([137, 80, 78, 71, 13, 10, 26, 10]), chunk("IHDR", head), chunk("IDAT", deflateSync(rows, { level: 1 })), chunk("IEND", Buffer.alloc(0))]));
  return file;
}

/** What a file holds, without the moment it was saved. */
function content(text) {
  const file = JSON.parse(text);
  delete file.saved;
  for (const job of file.jobs) delete job.updated;
  return file;
}

const ticked = (p) => p.run((s) => [...document.querySelectorAll(`${s} [data-tick]`)].filter((b) => b.checked).map((b) => b.dataset.tick), on(procedure));

/** whole: false leaves out what is the same script wherever it came from and whichever browser runs it, and keeps what storage, addresses and files can change. */
export async function jobFile(t, p, place, { update, whole = true } = {}) {
  const page = new JobPage(p, place);
  const part = (name, fn) => t.test(name, { timeout: 480_000 }, fn);
  let tick, reading;

  await part("ticks made before there is a job are offered to the first one, and are not lost", async () => {
    await openPage(p, place, procedure);
    [tick] = await p.run((s) => [...document.querySelectorAll(`${s} [data-tick]`)].map((b) => b.dataset.tick), on(procedure));
    await p.tap(`${on(procedure)} [data-tick="${tick}"]`);
    await page.open();
    await page.make("Harbour office, roof unit");
    await until("the offer", () => p.visible(`${at} [data-job-loose]`));
    assert.match(await p.text(`${at} [data-job-loose]`), /1 tick/);
    await page.tap("Take them into this job");
    await until("the offer to go", async () => !(await p.visible(`${at} [data-job-loose]`)));
    await page.ready();
    await openPage(p, place, procedure);
    assert.deepEqual(await ticked(p), [tick]);
    assert.match(await p.text("[data-job-line]"), /^Job: Harbour office, roof unit$/);
  });

  await part("ticks, readings, system, history, ledger, notes", async () => {
    reading = await p.run((s) => document.querySelector(`${s} [data-write]`).dataset.write, on(procedure));
    await p.fill(`${on(procedure)} [data-write="${reading}"]`, "87,5");
    await page.open();
    await page.unfold("details");
    await p.fill(page.box("title", "details"), "Harbour office");
    assert.match(await p.text("[data-job-line]"), /^Job: Harbour office$/);
    await p.fill(page.box("title", "details"), "Harbour office, roof unit");
    await p.fill(page.box("site", "details"), "Harbour, pier 4");
    await p.fill(page.box("refrigerant", "details"), "R-410A");
    await p.fill(page.box("charge", "details"), "10,5");
    await page.add("failures", { date: "2026-08-14", what: "Locked rotor <b>on start</b>", told: "The owner" }, "Add the failure");
    await page.has("failures", 1);
    await page.add("readings", { what: "Suction pressure", value: "8,1", unit: "bar gauge", instrument: "Gauge 3" }, "Add the reading");
    await page.has("readings", 1);
    await page.add("ledger", { mass: "1,234" }, "Add to the ledger");
    const sentence = `${page.part("ledger")} [role="alert"]`;
    await until("the question what 1,234 means", async () => /1\.234 or 1234/.test((await p.text(sentence)) ?? ""));
    assert.equal(await page.entries("ledger"), 0, "nothing doubtful is added");
    await page.add("ledger", { mass: "9.2", direction: "out", refrigerant: "R-410A", cylinder: "RC-7" }, "Add to the ledger");
    await page.has("ledger", 1);
    await page.add("ledger", { mass: "10,5", direction: "in" }, "Add to the ledger");
    await page.has("ledger", 2);
    assert.match(await p.text(`${page.part("ledger")} [data-job-balance]`), /in less out 1\.300 kg/);
    await page.add("notes", { text: "Ask about the drain." }, "Add the note");
    await page.has("notes", 1);
  });

  await part("a worksheet answer is kept with a tap", async () => {
    const sheet = new Sheet(p, place, "saturation");
    await sheet.open();
    await sheet.enterAll({ refrigerant: "R-410A", pressure: ["9.4", "barg"], "line-temperature": ["17", "C"] });
    await sheet.press();
    await sheet.waitForAnswer();
    const keep = `${sheet.at} [data-keep]`;
    await until("the offer to keep it", () => p.visible(`${keep} button`));
    assert.match(await p.text(keep), /Keep in the job file.*Harbour office/);
    await p.tap(`${keep} button`);
    await until("the words that it is kept", async () => /Kept in the job “Harbour office, roof unit”/.test((await p.text(keep)) ?? ""));
    assert.equal(await p.visible(`${keep} > button`), false, "the same answer is not offered twice");
    await sheet.enter("pressure", ["9.9", "barg"]);
    await until("the offer for another answer", () => p.visible(`${keep} > button`));
  });

  await part("a photo is made small, captioned and tied to a step", async () => {
    await page.open();
    await page.unfold("photos");
    await p.upload(`${page.part("photos")} [data-photo="files"]`, await picture());
    await page.has("photos", 1);
    await until("the picture", () => p.run((s) => document.querySelector(s)?.naturalWidth > 0, `${page.part("photos")} img`));
    const img = await p.run((s) => {
      const e = document.querySelector(s);
      return [e.naturalWidth, e.naturalHeight, Math.round((e.src.length - e.src.indexOf(",") - 1) * 0.75), e.src.slice(0, 15)];
    }, `${page.part("photos")} img`);
    assert.ok(img[0] <= 1600 && img[0] >= 800 && Math.abs(img[0] / img[1] - 4 / 3) < 0.01, `size ${img}`);
    assert.ok(img[2] <= 300_003 && img[2] > 20_000, `got ${img[2]} bytes, want at most 300,000`);
    assert.equal(img[3], "data:image/jpeg");
    await p.fill(page.box("caption", "photos"), "Plate of the outdoor unit");
    await p.choose(page.box("link", "photos"), `step ${procedure}#${tick}`);
    await p.upload(`${page.part("photos")} [data-photo="files"]`, path.join(folder(), "handbook.html"));
    await until("the sentence for a file that is no picture", async () => /cannot read handbook\.html.*as a picture/.test((await p.text(`${page.part("photos")} .co-job__state`)) ?? ""));
    assert.equal(await page.entries("photos"), 1);
  });

  await part("everything is there after a reload", async () => {
    await p.reload();
    await page.ready();
    await everythingThere();
  });

  async function everythingThere() {
    for (const [name, number] of [["failures", 1], ["results", 1], ["readings", 1], ["photos", 1], ["ledger", 2], ["notes", 1]]) {
      await page.unfold(name);
      await page.has(name, number);
    }
    await page.unfold("details");
    assert.equal(await p.value(page.box("site", "details")), "Harbour, pier 4");
    assert.equal(await p.value(page.box("charge", "details")), "10,5");
    assert.equal(await p.value(page.box("caption", "photos")), "Plate of the outdoor unit");
    assert.equal(await p.value(page.box("link", "photos")), `step ${procedure}#${tick}`);
    await until("the picture", () => p.run((s) => document.querySelector(s)?.naturalWidth > 0, `${page.part("photos")} img`));
    assert.match(await p.text(page.part("failures")), /Locked rotor <b>on start<\/b>/, "what was typed is text");
    await page.unfold("pages");
    assert.match(await p.text(page.part("pages")), /87,5.*1 step ticked/);
    assert.match(await p.text(page.part("results")), /Saturation.*9\.4|Saturation/);
    assert.match(await p.text(`${at} [data-job-room]`), /about [\d.]+ (KB|MB)/);
  }

  await part("a second job has its own ticks and readings", async () => {
    await page.make("Second job");
    await openPage(p, place, procedure);
    assert.deepEqual(await ticked(p), []);
    assert.equal(await p.value(`${on(procedure)} [data-write="${reading}"]`), "");
    const second = await p.run((s) => [...document.querySelectorAll(`${s} [data-tick]`)][1].dataset.tick, on(procedure));
    await p.tap(`${on(procedure)} [data-tick="${second}"]`);
    await page.open();
    await page.tap("Open Harbour office, roof unit");
    await page.opened("Harbour office, roof unit");
    await openPage(p, place, procedure);
    assert.deepEqual(await ticked(p), [tick]);
    assert.equal(await p.value(`${on(procedure)} [data-write="${reading}"]`), "87,5");
    await page.open();
  });

  if (update) {
    await part("the job survives an update of the handbook", async () => {
      await update();
      await page.open();
      await page.opened("Harbour office, roof unit");
      await everythingThere();
    });
  }

  await part("an entry that is taken away can be brought back", async () => {
    await page.unfold("notes");
    await page.tap("Take away: Ask about the drain.", '[data-part="notes"]');
    await page.tap("Bring it back", '[data-part="notes"]');
    await until("the note", async () => /Ask about the drain/.test((await p.text(page.part("notes"))) ?? ""));
    const pressed = (words) => page.pressed(words, '[data-part="notes"]');
    assert.equal(await pressed("Change: Ask about the drain."), "text");
    assert.equal(await pressed("Leave it as it was"), "Change: Ask about the drain.", "the keyboard keeps its place");
    await pressed("Change: Ask about the drain.");
    assert.equal(await pressed("Keep the change"), "Change: Ask about the drain.");
    assert.equal(await pressed("Take away: Ask about the drain."), "Bring it back");
    assert.equal(await pressed("Bring it back"), "Take away: Ask about the drain.");
    await p.reload();
    await page.ready();
    await page.unfold("notes");
    await page.has("notes", 1);
  });

  if (whole) await part("an entry that goes for good takes no word from who writes the next one", async () => {
    await page.unfold("notes");
    await page.add("notes", { text: "Not this one." }, "Add the note");
    await page.has("notes", 2);
    const field = `${page.part("notes")} form:last-of-type [data-name="text"]`;
    const row = `${page.part("notes")} .co-job__list > li:nth-child(2)`;
    await page.tap("Take away: Not this one.", '[data-part="notes"]');
    await p.tap(field);
    const high = await p.run((s) => {
      window.__field = document.querySelector(s);
      return window.__field.getBoundingClientRect().top;
    }, field);
    await p.keys(field, "The drain ");
    await until("the entry to be gone", async () => !(await p.visible(row)), 30_000);
    const held = await p.run(() => [document.activeElement === window.__field, window.__field.value, window.__field.getBoundingClientRect().top]);
    assert.deepEqual(held.slice(0, 2), [true, "The drain "]);
    assert.ok(Math.abs(held[2] - high) < 2, `the field stays where it is: ${high} and ${held[2]}`);
    assert.equal(await page.entries("notes"), 1);
  });

  let saved;
  await part("save, delete, bring back, delete, open the file: the same", async () => {
    saved = await page.fileOf("Save this job as a file");
    assert.match(saved.name, /^job-harbour-office-roof-unit-\d{4}-\d\d-\d\d\.json$/);
    const job = JSON.parse(saved.text).jobs[0];
    assert.deepEqual([job.results.length, job.photos.length, job.ledger.length, Object.keys(job.ticks).length, Object.keys(job.fields).length], [1, 1, 2, 1, 1]);
    assert.equal(Object.values(job.fields)[0].value, "87,5");
    assert.ok(Object.values(job.fields)[0].label !== "" && Object.values(job.ticks)[0].text !== "", "labels and words of steps go along");
    assert.ok(job.results[0].inputs.some((i) => i.id === "pressure" && i.text === "9.4" && i.unit === "barg"));

    await page.tap("Delete this job");
    await page.tap("Keep it");
    await page.opened("Harbour office, roof unit");
    await page.tap("Delete this job");
    await page.tap("Delete it");
    await page.says(/is deleted\. For ten seconds/);
    assert.deepEqual(await page.titles(), ["Second job"]);
    await page.tap("Bring it back");
    await until("the job again", async () => (await page.titles()).length === 2);
    await page.tap("Open Harbour office, roof unit");
    await page.opened("Harbour office, roof unit");
    await page.tap("Delete this job");
    await page.tap("Delete it");
    await page.says(/roof unit” is deleted\.$/);
    await p.reload();
    await page.ready();
    assert.deepEqual(await page.titles(), ["Second job"]);
    await openPage(p, place, procedure);
    assert.deepEqual(await ticked(p), [], "its ticks went with it");

    await page.open();
    await page.openFile(saved.text);
    await page.opened("Harbour office, roof unit");
    const again = await page.fileOf("Save this job as a file");
    assert.deepEqual(content(again.text), content(saved.text));
    await openPage(p, place, procedure);
    assert.deepEqual(await ticked(p), [tick]);
    await page.open();
  });

  if (whole) await part("a file of a job that is here stands beside it, after a question", async () => {
    await page.openFile(saved.text);
    await page.says(/is on this phone already/);
    await page.tap("Leave it out");
    await page.says(/Nothing was changed/);
    await page.openFile(saved.text);
    await page.says(/is on this phone already/);
    await page.tap("Keep both");
    await page.opened("Harbour office, roof unit (from a file)");
    assert.deepEqual(await page.titles(), ["Harbour office, roof unit", "Harbour office, roof unit (from a file)", "Second job"]);
    await page.tap("Delete this job");
    await page.tap("Delete it");
    await page.says(/from a file\)” is deleted\.$/);
    await page.tap("Open Harbour office, roof unit");
    await page.opened("Harbour office, roof unit");
  });

  if (whole) await part("bad files are refused with the reason, and nothing changes", async () => {
    const spoilt = (change) => {
      const file = JSON.parse(saved.text);
      change(file, file.jobs[0]);
      return JSON.stringify(file);
    };
    const before = await page.fileOf("Save all 2 jobs as one file");
    for (const [text, says] of [
      ["", /not JSON/],
      [saved.text.slice(0, -100), /not JSON/],
      ['{"format":"other"}', /format is “other”/],
      [spoilt((f) => (f.version = 9)), /version 9, made by a newer handbook/],
      [spoilt((_, j) => (j.made = "soon")), /made: “soon” is given, a time/],
      [spoilt((_, j) => delete j.ledger), /jobs\[1\]\.ledger is missing/],
      [spoilt((_, j) => (j.photos[0].data = "PHNjcmlwdD4=")), /photos\[1\]\.data/],
    ]) {
      await page.openFile(text);
      await page.says(says);
      assert.match(await page.said(), /^Not opened: .* Nothing was changed\.$/);
    }
    const after = await page.fileOf("Save all 2 jobs as one file");
    assert.deepEqual(content(after.text), content(before.text));
  });

  await part("a full disk is said, and what could not be kept can be saved", async () => {
    await p.run(() => {
      window.__put = IDBObjectStore.prototype.put;
      IDBObjectStore.prototype.put = () => {
        throw new DOMException("no room", "QuotaExceededError");
      };
      window.__set = Storage.prototype.setItem;
      const set = window.__set;
      Storage.prototype.setItem = function (key, value) {
        if (key.includes(":jobs/")) throw new DOMException("no room", "QuotaExceededError");
        return set.call(this, key, value);
      };
    });
    await page.add("notes", { text: "Written on a full phone." }, "Add the note");
    await until("the sentence", async () => /storage of this browser is full.*Save the job as a file now/.test((await p.text(`${at} [data-job-trouble]`)) ?? ""));
    // Only Chromium's driver lets a page ask before it is left: the others answer for the person.
    if (p.asksBeforeLeaving) assert.ok(await p.asksBeforeLeaving(), "leaving now would lose the last change, so the page asks");
    const file = await page.fileOf("Save everything as a file");
    assert.ok(JSON.parse(file.text).jobs.some((j) => j.notes.some((n) => n.text === "Written on a full phone.")), "the file holds what the phone could not keep");
    await page.openFile(saved.text.replaceAll(JSON.parse(saved.text).jobs[0].id, "another-job"));
    await page.says(/Not opened: the storage of this browser is full\. Nothing was changed/);
    await p.run(() => {
      IDBObjectStore.prototype.put = window.__put;
      Storage.prototype.setItem = window.__set;
    });
    await page.add("notes", { text: "There is room again." }, "Add the note");
    await page.has("notes", 3);
    // Shown at once, kept a moment later: until then the page would ask before it is left.
    await until("the sentence to go", async () => !(await p.visible(`${at} [data-job-trouble]`)));
    await page.says(/Everything is kept on this phone now/);
    await p.reload();
    await page.ready();
    await page.unfold("notes");
    await page.has("notes", 3);
    assert.match(await p.text(page.part("notes")), /Written on a full phone.*There is room again/);
  });

  await part("the demonstration job says everywhere that it is invented", async () => {
    await page.tap("Open the demonstration job");
    await until("it", async () => /\(demonstration\)$/.test((await p.text(`${at} [data-job-open] h2`)) ?? ""));
    assert.match(await p.text(`${at} [data-job-open]`), /Invented.*This job is invented/);
    assert.match(await p.text("[data-job-line]"), /Invented/);
    for (const name of ["failures", "findings", "results", "readings", "photos", "ledger", "pages", "notes"]) {
      await page.unfold(name);
      assert.ok(((await p.text(page.part(name))) ?? "").length > 60, name);
    }
    const logs = await p.run((s) => {
      for (const d of document.querySelectorAll(`${s} details`)) d.open = true;
      return {
        heads: [...document.querySelectorAll(`${s} .co-job__log`)].map((t) => [...t.querySelectorAll("th")].map((e) => e.textContent).join("|")),
        raw: [...document.querySelectorAll(`${s} dd`)].map((e) => e.textContent).filter((t) => /\n|,micron/.test(t)),
        cut: [...document.querySelectorAll(`${s} dd, ${s} .co-job__log`)].filter((e) => e.getBoundingClientRect().right > document.documentElement.clientWidth).map((e) => e.textContent),
        ragged: [...document.querySelectorAll(`${s} dd:not(.co-job__wide)`)].filter((e) => Math.abs(e.getBoundingClientRect().right - e.parentElement.getBoundingClientRect().right) > 1).map((e) => e.textContent),
      };
    }, page.part("results"));
    assert.deepEqual(logs, { heads: ["Minutes|Micron", "Size, mm|Length, m|Factor, kg/m"], raw: [], cut: [], ragged: [] }, "a log is a table, whole");
    await openPage(p, place, procedure);
    assert.match(await p.text("[data-job-line]"), /Invented/);
    const own = JSON.parse(await readFile(path.join(folder(), "source/site/components/job/demonstration.json"), "utf8"));
    await page.open();
    const file = await page.fileOf("Save this job as a file");
    const { handbook: _, ...mine } = content(JSON.stringify(own));
    const { handbook: __, ...theirs } = content(file.text);
    const sorted = (f) => ({ ...f, jobs: f.jobs.map((j) => ({ ...j, timers: [...j.timers].sort((a, b) => a.start - b.start) })) });
    for (const name of Object.keys(mine.jobs[0])) assert.deepEqual(sorted(theirs).jobs[0][name], sorted(mine).jobs[0][name], `${name} goes out as it came in`);
    assert.deepEqual(sorted(theirs), sorted(mine), "it goes out as it came in");
    await page.tap("Close this job");
    await until("no job to be open", async () => !(await p.visible(`${at} [data-job-open]`)));
    await until("its row to say so", async () => /Invented/.test((await p.text(`${at} [data-job-row="demo-rehearsal-hall"]`)) ?? ""));
    assert.equal(await p.visible("[data-job-line]"), false);
  });
}
