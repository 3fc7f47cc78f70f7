// The engines a test runs in: all three, or those named in ENGINES=chromium,webkit while somebody looks for a fault.

import { launch as launchPuppeteer } from "./puppeteer.mjs";
import { launch as launchWebKit } from "./webkit.mjs";

const all = ["chromium", "firefox", "webkit"];

export const engines = process.env.ENGINES ? process.env.ENGINES.split(",") : all;
for (const e of engines) if (!all.includes(e)) throw new Error(`there is no engine ${e}; there are ${all.join(", ")}`);

/** Opens a fresh browser with an empty profile. options: dark, script, width, height. */
export function open(engine, options = {}) {
  return engine === "webkit" ? launchWebKit(options) : launchPuppeteer(engine, options);
}
