import { mkdtemp, rm } from "node:fs/promises";
import path from "node:path";
import { serve } from "./support/handbook.mjs";
import { launch } from "./support/puppeteer.mjs";
import { openPage, saved } from "./scenarios/reading.mjs";
import { Sheet } from "./scenarios/worksheets.mjs";
const builds = process.argv.slice(2); const N = Number(process.env.N ?? 6); const made = [];
for (const b of builds) {
  process.env.CHANGEOUT_TEST = b;
  const profile = await mkdtemp(path.join(b, "profile-"));
  const server = await serve(); const place = server.place;
  const p = await launch("chromium", { profile });
  await openPage(p, place, "index"); await saved(p);
  const sheet = new Sheet(p, place, "saturation"); await sheet.open();
  await sheet.enterAll({ refrigerant: "R-448A", pressure: ["9.4", "barg"], "line-temperature": ["17", "C"] }); await sheet.waitForAnswer();
  await new Promise(r=>setTimeout(r,500)); await p.close(); await server.stop();
  made.push({ b, profile, place, r: { 4: [], 1: [] } });
}
for (let i = 0; i < N; i++) for (const rate of [4, 1]) for (const m of made) {
  const q = await launch("chromium", { profile: m.profile });
  const s = await q.tab.createCDPSession();
  await q.tab.evaluateOnNewDocument(() => {
    new MutationObserver((_, o) => { if (document.querySelector("[data-answer] .co-answer__title")) { o.disconnect(); window.__in = performance.now(); requestAnimationFrame(() => setTimeout(() => { window.__answered = performance.now(); })); } }).observe(document, { subtree: true, childList: true });
  });
  await s.send("Emulation.setCPUThrottlingRate", { rate });
  await q.goto(m.place.url("worksheets/saturation"));
  await q.until("answer", () => window.__answered ?? 0);
  m.r[rate].push(await q.run(() => [window.__in, window.__answered, performance.getEntriesByName("first-contentful-paint")[0]?.startTime ?? 0]));
  await q.close();
}
const med = (a) => a.sort((x, y) => x - y)[a.length >> 1].toFixed(0);
for (const m of made) { for (const rate of [4, 1]) console.log(m.b, "rate", rate, "in", med(m.r[rate].map(x=>x[0])), "shown", med(m.r[rate].map(x=>x[1])), "fcp", med(m.r[rate].map(x=>x[2]))); await rm(m.profile, { recursive: true, force: true }); }
