// Writes pictures and printed pages into a folder, to be looked at: SHOTS=folder node site/browsertest/run.mjs

import { mkdir, writeFile } from "node:fs/promises";
import path from "node:path";
import { charge, levelling } from "./scenarios/everything.mjs";
import { openPage } from "./scenarios/reading.mjs";
import { Sheet } from "./scenarios/worksheets.mjs";
import { open } from "./support/engines.mjs";
import { serve } from "./support/handbook.mjs";

const folder = process.argv[2];
await mkdir(folder, { recursive: true });
const server = await serve();
const answers = {
  saturation: { refrigerant: "R-407C", pressure: ["5.5", "barg"], "line-temperature": ["16", "C"] },
  "charge-adjustment": charge,
  "vacuum-hold": { log: levelling, "ambient-start": ["21", "C"], "ambient-end": ["20", "C"] },
};
const sizes = { phone: [360, 740], tablet: [768, 1024], desk: [1280, 800] };
const kinds = ["index", "contents", "worksheets", "tables", "stages/evacuate-and-hold", "stages/assess", "tables/r-410a", "tables/compare", "worksheets/saturation", "about/limits", "about/glossary", "about/offline", "job"];
const parts = [["caution", ".co-caution"], ["step", "[data-step]"], ["decision", ".co-decision"], ["wait", "[data-wait]"]];
try {
  for (const dark of [false, true]) for (const [size, [width, height]] of Object.entries(sizes)) {
    const p = await open("chromium", { dark, width, height });
    const shot = (name, fullPage = false) => p.tab.screenshot({ path: path.join(folder, `${name.replaceAll("/", "-")}-${size}-${dark ? "dark" : "light"}.png`), fullPage });
    for (const page of kinds) {
      await openPage(p, server.place, page);
      await shot(page);
      if (page !== "stages/evacuate-and-hold") continue;
      for (const [name, selector] of parts) {
        await p.run((s) => document.querySelector(s).scrollIntoView({ block: "start" }), selector);
        await shot(`${page}-${name}`);
      }
      await p.tap("[data-wait] .co-wait__buttons button");
      await shot(`${page}-timer`);
      await p.tap("[data-wait] .co-wait__buttons button:not([hidden])");
    }
    for (const [id, inputs] of Object.entries(answers)) {
      const sheet = new Sheet(p, server.place, id);
      await sheet.open();
      await sheet.enterAll(inputs);
      await sheet.waitForAnswer();
      await shot(`${id}-filled`);
      await sheet.press();
      await sheet.waitForAnswer();
      await shot(`${id}-answer`);
      if (size === "phone") await shot(`${id}-whole`, true);
      await p.tap(`${sheet.at} .co-glance-open`);
      await shot(`${id}-large`);
      await p.press("Escape");
      await p.until("the way back to be as before", () => !history.state?.glance);
      if (!dark && size === "phone") await writeFile(path.join(folder, `${id}-answer.pdf`), await p.tab.pdf({ format: "A4", preferCSSPageSize: true }));
    }
    if (!dark && size === "phone") {
      for (const page of kinds) {
        await openPage(p, server.place, page);
        await writeFile(path.join(folder, `${page.replaceAll("/", "-")}.pdf`), await p.tab.pdf({ format: "A4", preferCSSPageSize: true }));
      }
    }
    await p.close();
  }
  console.log(`pictures and printed pages are in ${folder}`);
} finally {
  await server.stop();
}
