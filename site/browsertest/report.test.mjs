// The report of a job: on the page (preview, fields, files) and on paper. Chromium, which alone prints without a window.
// SHOTS=folder keeps the pages as PDF and pictures, to be looked at.

import assert from "node:assert/strict";
import { mkdtemp, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import path from "node:path";
import test, { after } from "node:test";
import { pathToFileURL } from "node:url";
import { openPage } from "./scenarios/reading.mjs";
import { engines, open } from "./support/engines.mjs";
import { serve, source } from "./support/handbook.mjs";
import { until } from "./support/page.mjs";

const invented = () => path.join(source(), "testdata", "report", "job.json");
const shots = process.env.SHOTS;

/** Opens the invented job of testdata/report. */
async function bringJob(p, place) {
  await openPage(p, place, "job");
  await until("the job page", () => p.run(() => !!document.querySelector("[data-job-import]")));
  await p.upload("[data-job-import]", invented());
  const row = '[data-job-row="invented-1"] button';
  await until("the job in the list, or open", () => p.run((r) => !!document.querySelector(r) || !!document.querySelector('[data-job-open="invented-1"]'), row));
  if (await p.run((r) => !!document.querySelector(r), row)) await p.tap(row);
  await until("the job to be open", () => p.run(() => !!document.querySelector('[data-job-open="invented-1"]')));
}

async function openReport(p, place) {
  await openPage(p, place, "report");
  await until("the report", () => p.run(() => document.querySelector("[data-report]")?.dataset.ready === "" && (document.querySelector(".co-report__frame")?.contentDocument?.body?.innerText.length ?? 0) > 500), 30_000);
}

const inFrame = (p, fn, ...args) => p.run((text, list) => new Function("d", "args", `return (${text})(d, ...args)`)(document.querySelector(".co-report__frame").contentDocument, list), fn.toString(), args);

/** What a tap on a save button gives: name and text, caught before the browser puts it away. */
async function saved(p, which) {
  await p.run(() => {
    window.__saved = [];
    if (window.__catching) return;
    window.__catching = true;
    const make = URL.createObjectURL.bind(URL);
    URL.createObjectURL = (blob) => (window.__blob = blob, make(blob));
    document.addEventListener("click", (e) => {
      const a = e.target.closest?.("a[download]");
      if (!a) return;
      e.preventDefault();
      void window.__blob.text().then((text) => window.__saved.push({ name: a.download, type: window.__blob.type, text }));
    }, true);
  });
  await p.tap(`[data-report-save="${which}"]`);
  return until("the file", () => p.run(() => window.__saved[0] ?? null));
}

const server = await serve();
after(() => server.stop());

test("the report", { timeout: 300_000 }, async (t) => {
  const p = await open("chromium");
  const place = server.place;
  const folder = shots ?? (await mkdtemp(path.join(tmpdir(), "changeout-report-")));
  try {
    await t.test("without a job it says so", async () => {
      await openPage(p, place, "report");
      await until("the sentence", async () => /No job is open/.test((await p.text("[data-report]")) ?? ""));
      const seen = await p.run(() => {
        const way = document.querySelector("[data-report] a.co-button");
        return { to: way.getAttribute("href"), height: way.getBoundingClientRect().height, room: document.querySelector("[data-report]").getBoundingClientRect().height };
      });
      assert.match(seen.to, /job\.html$/);
      assert.ok(seen.height >= 47.5 && seen.room < 300, `a button, and no empty half screen: ${JSON.stringify(seen)}`);
    });
    await bringJob(p, place);
    await openReport(p, place);

    await t.test("the preview is the report, dressed, and the words follow the evidence", async () => {
      const seen = await inFrame(p, (d) => ({ text: d.body.innerText, why: d.querySelector(".why").innerText, background: d.defaultView.getComputedStyle(d.documentElement).backgroundColor, brief: d.defaultView.getComputedStyle(d.querySelector(".brief")).borderTopStyle, charts: d.querySelectorAll("svg.co-chart").length, chain: d.querySelectorAll("svg.co-chain").length, photos: [...d.images].map((i) => i.complete && i.naturalWidth > 0), scripts: d.scripts.length }));
      assert.match(seen.why, /^The (probable )?cause is: low indoor airflow \(evidence [\d, and]+\)\./);
      assert.equal(seen.background, "rgb(255, 255, 255)");
      assert.equal(seen.brief, "solid");
      assert.equal(seen.charts, 4, "cycle before and after, standing pressure, vacuum hold");
      assert.equal(seen.chain, 1);
      assert.deepEqual(seen.photos, [true, true, true]);
      assert.equal(seen.scripts, 0);
      assert.match(seen.text, /<script>alert\('note'\)<\/script>/, "a script in a note stays text");
    });

    await t.test("what is filled in shows, and is kept", async () => {
      await p.run(() => [...document.querySelectorAll(".co-report__form details")].forEach((d) => (d.open = true)));
      const field = '[data-name="price-b"]';
      await p.run((f) => document.querySelector(f).select(), field);
      await p.keys(field, "9,111");
      await until("the price in the preview", () => inFrame(p, (d) => d.body.innerText.includes("EUR 9,111")));
      await p.choose('[data-name="recommend"]', "c");
      await until("the recommendation", () => inFrame(p, (d) => /technician’s choice/.test(d.body.innerText)));
      await openReport(p, place);
      assert.ok(await inFrame(p, (d) => d.body.innerText.includes("EUR 9,111")), "after a reload");
      assert.equal(await p.value('[data-name="recommend"]'), "c");
    });

    await t.test("the owner's page", async () => {
      await p.tap('[data-report-which="customer"]');
      await until("the owner's page", () => inFrame(p, (d) => /Too little air went through the indoor units/.test(d.body.innerText)));
      await p.tap('[data-report-which="report"]');
    });

    await t.test("the preview takes the whole screen and gives it back", async () => {
      await p.tap("[data-report-read]");
      const seen = await until("the whole screen", () => p.run(() => {
        const r = document.querySelector(".co-report__frame").getBoundingClientRect();
        return r.height > innerHeight * 0.8 && { wide: Math.round(r.width), screen: innerWidth, back: document.querySelector("[data-report-back]").getBoundingClientRect().bottom <= innerHeight };
      }));
      assert.ok(seen.wide > seen.screen - 20 && seen.back, JSON.stringify(seen));
      await p.tap("[data-report-back]");
      await until("the page again, the keyboard where it was", () => p.run(() => document.activeElement?.dataset.reportRead === "" && document.querySelector(".co-report__frame").getBoundingClientRect().height < innerHeight * 0.6));
      assert.ok(await inFrame(p, (d) => d.body.innerText.length > 500));
    });

    await t.test("print asks the frame, not the page", async () => {
      await p.run(() => {
        window.__printed = "";
        window.print = () => (window.__printed = "page");
        const frame = document.querySelector(".co-report__frame");
        const stub = () => (frame.contentWindow.print = () => (window.__printed = `frame ${frame.contentDocument.adoptedStyleSheets.length}`));
        frame.addEventListener("load", stub);
        stub();
      });
      await p.tap("[data-report-print]");
      await until("printing", () => p.run(() => window.__printed !== ""));
      assert.equal(await p.run(() => window.__printed), "frame 1");
    });

    await t.test("thumb-high controls, nothing wider than the phone, everything by keyboard", async () => {
      await p.run(() => [...document.querySelectorAll(".co-report__form details")].forEach((d) => (d.open = true)));
      const seen = await p.run(() => {
        const shown = [...document.querySelectorAll("[data-report] :is(button, input, select, textarea, summary)")].filter((e) => e.getClientRects().length > 0);
        return { wide: document.documentElement.scrollWidth, low: shown.filter((e) => e.getBoundingClientRect().height < 47.5).map((e) => e.outerHTML.slice(0, 80)), unreachable: shown.filter((e) => e.tabIndex < 0).length, unnamed: shown.filter((e) => !(e.labels?.length || e.textContent.trim() || e.getAttribute("aria-label"))).map((e) => e.outerHTML.slice(0, 80)), count: shown.length };
      });
      assert.ok(seen.wide <= 360, `the page is ${seen.wide} px wide`);
      assert.ok(seen.count > 30, `${seen.count} controls`);
      assert.deepEqual([seen.low, seen.unreachable, seen.unnamed], [[], 0, []]);
      assert.ok(await inFrame(p, (d) => d.documentElement.scrollWidth <= d.documentElement.clientWidth), "nor in the preview");
    });

    await t.test("the files", async () => {
      const files = {};
      for (const which of ["report", "customer", "job"]) files[which] = await saved(p, which);
      assert.match(files.report.name, /^report-invented-harbour-house-roof-unit-2-\d{4}-\d\d-\d\d\.html$/);
      assert.match(files.customer.name, /^owner-.*\.html$/);
      assert.match(files.job.name, /^job-.*\.json$/);
      const data = JSON.parse(files.job.text);
      assert.equal(data.format, "changeout-job-file");
      assert.equal(data.jobs[0].report.prices.b, "9,111", "the choices are in the job file");
      for (const which of ["report", "customer"]) await writeFile(path.join(folder, `${which}.html`), files[which].text);
      assert.deepEqual(await p.troubles(), []);
      assert.deepEqual(await p.strangers(place.allowed), [], "nothing goes anywhere else");
    });

    await t.test("on paper", async () => {
      const paper = await open("chromium");
      try {
        for (const [which, least, most] of [["report", 5, 12], ["customer", 1, 1]]) {
          await paper.goto(pathToFileURL(path.join(folder, `${which}.html`)).href);
          await paper.tab.emulateMediaType("print");
          const mark = await paper.run(() => {
            const e = document.querySelector(".mark");
            return { display: getComputedStyle(e).display, position: getComputedStyle(e).position, text: e.textContent };
          });
          // A fixed box is printed on every page; the margin of every page says the same.
          assert.deepEqual(mark, { display: "flex", position: "fixed", text: "Invented demonstration" });
          const pdf = Buffer.from(await paper.tab.pdf({ preferCSSPageSize: true }));
          if (shots) await writeFile(path.join(folder, `${which}.pdf`), pdf);
          const text = pdf.toString("latin1");
          const sheets = text.match(/\/Type\s*\/Page\b/g)?.length ?? 0;
          assert.ok(sheets >= least && sheets <= most, `${which}: ${sheets} sheets, ${least} to ${most} wanted`);
          // A4 is 210 mm × 297 mm: 595 × 842 points.
          const boxes = [...text.matchAll(/\/MediaBox\s*\[0 0 ([\d.]+) ([\d.]+)\]/g)].map((m) => `${Math.round(m[1])} ${Math.round(m[2])}`);
          assert.deepEqual([...new Set(boxes)], ["595 842"]);
          await paper.tab.emulateMediaType(undefined);
        }
        assert.deepEqual(await paper.troubles(), []);
      } finally {
        await paper.close();
      }
    });

    if (shots) {
      await p.run(() => scrollTo(0, 0));
      await p.tab.screenshot({ path: path.join(folder, "page.png"), fullPage: true });
      await p.tab.emulateMediaFeatures([{ name: "prefers-color-scheme", value: "dark" }]);
      await p.shot(path.join(folder, "page-dark.png"));
    }
  } finally {
    await p.close();
  }
});

for (const engine of engines) {
  test(`the handbook's own demonstration is marked (${engine})`, { timeout: 240_000 }, async () => {
    const p = await open(engine);
    try {
      await openPage(p, server.place, "job");
      await until("the button", () => p.run(() => {
        const b = [...document.querySelectorAll("[data-job-file] button")].find((x) => /demonstration/i.test(x.textContent));
        b?.click();
        return !!b;
      }));
      await until("the demonstration to be open", () => p.run(() => !!document.querySelector("[data-job-open]")));
      await openReport(p, server.place);
      const seen = await p.run(() => {
        const d = document.querySelector(".co-report__frame").contentDocument;
        return { text: d.body.innerText, mark: d.querySelector(".mark").textContent, dressed: d.defaultView.getComputedStyle(d.querySelector(".brief")).borderTopStyle };
      });
      assert.equal(seen.mark, "Invented demonstration");
      assert.equal(seen.dressed, "solid");
      assert.match(seen.text, /Invented demonstration\. No such site/);
      assert.doesNotMatch(seen.text, /undefined|NaN|\[object/);
      if (shots && engine === "chromium") await writeFile(path.join(shots, "demo.html"), (await saved(p, "report")).text);
      assert.deepEqual(await p.troubles(), []);
    } finally {
      await p.close();
    }
  });
}
