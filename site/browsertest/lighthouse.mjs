// Prints Lighthouse's scores for a phone: three runs' median on the front page, a procedure and a worksheet, with what
// keeps a score below 100. Ends with 1 when one is below. make lighthouse
//
// Needs a folder as run.mjs makes it, in CHANGEOUT_TEST. RUNS=1 for a quick look; pages can be named: lighthouse.mjs index

import lighthouse from "lighthouse";
import { serve } from "./support/handbook.mjs";
import { launch } from "./support/puppeteer.mjs";

const runs = Number(process.env.RUNS ?? 3);
const given = process.argv.slice(2);
const pages = given.length > 0 ? given : ["index", "stages/evacuate-and-hold", "worksheets/saturation"];
const categories = ["performance", "accessibility", "best-practices", "seo"];
const median = (list) => [...list].sort((a, b) => a - b)[Math.floor(list.length / 2)];

const server = await serve();
let low = 0;
try {
  for (const page of pages) {
    const seen = [];
    for (let i = 0; i < runs; i++) {
      const p = await launch("chromium"); // a browser of its own for each run: nothing cached, no worker
      try {
        const port = Number(new URL(p.browser.wsEndpoint()).port);
        const result = await lighthouse(server.place.url(page), { port, output: "json", logLevel: "error", onlyCategories: categories });
        if (result.lhr.runtimeError) throw new Error(`${page}: ${result.lhr.runtimeError.message}`);
        seen.push(result.lhr);
      } finally {
        await p.close();
      }
    }
    const scores = categories.map((c) => [c, median(seen.map((lhr) => Math.round(lhr.categories[c].score * 100)))]);
    const audit = (name) => median(seen.map((lhr) => lhr.audits[name].numericValue));
    console.log(`${page}: ${scores.map(([c, s]) => `${c} ${s}`).join(", ")}; shift ${audit("cumulative-layout-shift").toFixed(4)}, ` +
      `largest paint ${Math.round(audit("largest-contentful-paint"))} ms, blocked ${Math.round(audit("total-blocking-time"))} ms (median of ${runs})`);
    low += scores.filter(([, s]) => s < 100).length;
    const last = seen.at(-1);
    const short = new Set();
    for (const c of categories) for (const ref of last.categories[c].auditRefs) {
      const a = last.audits[ref.id];
      if (ref.weight > 0 && a.score !== null && a.score < 1) short.add(`  ${c}: ${a.title}${a.displayValue ? ` (${a.displayValue})` : ""}`);
    }
    for (const line of short) console.log(line);
  }
} finally {
  await server.stop();
}
process.exit(low > 0 ? 1 : 0);
