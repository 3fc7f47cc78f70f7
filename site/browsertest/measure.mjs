// Times what a person waits for, in Chromium slowed down four times: the answer after a key press, and the first answer
// after a cold start without a server. Prints one line of JSON; make bench reads it.

import { rm } from "node:fs/promises";
import { open } from "./support/engines.mjs";
import { serve } from "./support/handbook.mjs";
import { pause, until } from "./support/page.mjs";

const slowdown = 4;

/** Sets fields the way a paste does, without a driver's own delays, and resolves when the answer shows. */
function fillAndTime(fields) {
  return new Promise((done) => {
    const start = performance.now();
    const box = document.querySelector("[data-answer]");
    const before = box.innerText;
    const watch = new MutationObserver(() => {
      if (box.innerText === before || !/kPa|psi|°C|°F/.test(box.innerText)) return;
      watch.disconnect();
      done(performance.now() - start);
    });
    watch.observe(box, { childList: true, subtree: true, characterData: true });
    for (const [id, value] of fields) {
      const e = document.getElementById(id);
      e.value = value;
      e.dispatchEvent(new Event("input", { bubbles: true }));
      e.dispatchEvent(new Event("change", { bubbles: true }));
    }
  });
}

const server = await serve();
const p = await open("chromium");
try {
  await p.goto(server.place.url("worksheets/saturation"));
  await until("the handbook to be saved", async () => /^Saved/.test((await p.text("[data-offline-state]")) ?? ""), 60_000);
  const cdp = await p.tab.createCDPSession();
  await cdp.send("Emulation.setCPUThrottlingRate", { rate: slowdown });
  await p.run(fillAndTime, [["saturation-refrigerant", "R-448A"], ["saturation-temperature", "20"]]);
  const keys = [];
  for (let i = 0; i < 41; i++) keys.push(await p.run(fillAndTime, [["saturation-temperature", String(20 + (i % 2) + i / 10)]]));
  keys.sort((a, b) => a - b);
  await server.stop();
  const cold = [];
  for (let i = 0; i < 3; i++) {
    await p.tab.goto("about:blank");
    await pause(500);
    const start = Date.now();
    await p.tab.goto(server.place.url("worksheets/saturation"), { waitUntil: "domcontentloaded" });
    await until("the form", () => p.run(() => !document.querySelector("[data-form]")?.hidden));
    await p.run(fillAndTime, [["saturation-refrigerant", "R-410A"], ["saturation-temperature", String(25 + i)]]);
    cold.push(Date.now() - start);
  }
  cold.sort((a, b) => a - b);
  console.log(JSON.stringify({ keyPressMs: keys[20], keyPressWorstMs: keys[40], coldMs: cold[1] }));
} finally {
  await p.close();
  await server.stop();
  if (process.env.MEASURE_CLEAN) await rm(process.env.CHANGEOUT_TEST, { recursive: true, force: true });
}
