import path from "node:path";
import { openPage } from "./scenarios/reading.mjs";
import { open } from "./support/engines.mjs";
import { serve } from "./support/handbook.mjs";
import { until } from "./support/page.mjs";
const server = await serve();
try {
  for (const dark of [false, true]) {
    const p = await open("chromium", { dark });
    const shot = (name, fullPage = false) => p.tab.screenshot({ path: path.join("/tmp/job-helper/shots", `${name}-${dark ? "dark" : "light"}.png`), fullPage });
    await openPage(p, server.place, "job");
    await until("ready", () => p.run(() => !!document.querySelector("[data-job-file] h2")));
    await shot("empty");
    await p.run(() => [...document.querySelectorAll("button")].find((b) => /demonstration/.test(b.textContent)).click());
    await until("open", () => p.run(() => !!document.querySelector("[data-job-open]")));
    await new Promise((r) => setTimeout(r, 500));
    await shot("demo"); 
    await p.run(() => document.querySelectorAll("[data-part]").forEach((d) => (d.open = true)));
    await new Promise((r) => setTimeout(r, 500));
    await shot("demo-whole", true);
    console.log(await p.troubles(), await p.run(() => document.documentElement.scrollWidth));
    await openPage(p, server.place, "stages/evacuate-and-hold");
    await shot("procedure");
    await p.close();
  }
} finally { await server.stop(); }
