// Where the browsers are. Debian's places first; a variable such as CHROMIUM=/path overrides one.

import { access, constants } from "node:fs/promises";

const places = {
  chromium: ["/usr/bin/chromium", "/usr/bin/chromium-browser", "/usr/bin/google-chrome"],
  firefox: ["/usr/bin/firefox-esr", "/usr/bin/firefox"],
  minibrowser: ["x86_64", "aarch64"].flatMap((cpu) => ["4.1", "4.0", "6.0"].map((v) => `/usr/lib/${cpu}-linux-gnu/webkit${v === "6.0" ? "gtk-6.0" : `2gtk-${v}`}/MiniBrowser`)),
  webkitdriver: ["/usr/bin/WebKitWebDriver"],
  xvfb: ["/usr/bin/Xvfb"],
};

export async function program(name) {
  const given = process.env[name.toUpperCase()];
  for (const file of given ? [given] : places[name]) {
    try {
      await access(file, constants.X_OK);
      return file;
    } catch {
      // The next place.
    }
  }
  throw new Error(`${name} is not on this machine (looked at ${given ?? places[name].join(", ")}); "make tools" installs it`);
}
