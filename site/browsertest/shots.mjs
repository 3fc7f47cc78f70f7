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
try {
  for (const dark of [false, true]) {
    const p = await open("chromium", { dark });
    const shot = (name, fullPage = false) => p.tab.screenshot({ path: path.join(folder, `${name}-${dark ? "dark" : "light"}.png`), fullPage });
    await openPage(p, server.place, "index");
    await shot("front");
    await openPage(p, server.place, "stages/evacuate-and-hold");
    await shot("procedure-top");
    for (const [name, selector] of [["caution", ".co-caution"], ["step", "[data-step]"], ["decision", ".co-decision"], ["wait", "[data-wait]"]]) {
      await p.run((s) => document.querySelector(s).scrollIntoView({ block: "start" }), selector);
      await shot(`procedure-${name}`);
    }
    await openPage(p, server.place, "tables/r-410a");
    await shot("table");
    for (const [id, inputs] of Object.entries(answers)) {
      const sheet = new Sheet(p, server.place, id);
      await sheet.open();
      await shot(`${id}-form`);
      await sheet.enterAll(inputs);
      await sheet.press();
      await sheet.waitForAnswer();
      await shot(`${id}-answer`);
      await shot(`${id}-whole`, true);
    }
    if (!dark) {
      for (const page of ["stages/evacuate-and-hold", "tables/r-410a", "worksheets/saturation"]) {
        await openPage(p, server.place, page);
        await writeFile(path.join(folder, `${page.replace("/", "-")}.pdf`), await p.tab.pdf({ format: "A4", preferCSSPageSize: true }));
      }
    }
    await p.close();
  }
  console.log(`pictures and printed pages are in ${folder}`);
} finally {
  await server.stop();
}
