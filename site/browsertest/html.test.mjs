// html-validate finds no error on any page of the built site. It reads the bytes as they are served, before any script.

import assert from "node:assert/strict";
import { readFile } from "node:fs/promises";
import path from "node:path";
import test from "node:test";
import { HtmlValidate } from "html-validate";
import { folder, pagesToRead } from "./support/handbook.mjs";

// Everything the tool recommends and everything it knows about whole documents, except what is named here with its reason.
const validator = new HtmlValidate({
  root: true,
  extends: ["html-validate:recommended", "html-validate:document"],
  rules: {
    // HTML lets the next row or cell end the one before. Tables leave those end tags out: a page is a tenth shorter.
    "no-implicit-close": "off",
    // Digests in the page guard against another host. There is none: the policy in each page forbids it.
    "require-sri": ["error", { target: "crossorigin" }],
    // The steps are an <ol> already; see meantAsList.
    "prefer-native-element": ["error", { exclude: ["list"] }],
  },
});

/** VoiceOver forgets that a list is one when CSS takes its numbers away; the role, redundant by the letter, keeps it. */
const meantAsList = (m) => m.ruleId === "no-redundant-role" && m.message === 'Redundant role "list" on <ol>';

/** So do browsers with a table whose rows CSS shows as cards. Left out before it is read: a message for each cell takes minutes. */
const tableRoles = /(<(?:table|thead|tbody|tr|td|th)\b[^>]*?) role="(?:table|rowgroup|row|cell|columnheader|rowheader)"/g;

async function faults(name, html) {
  const report = await validator.validateString(html.replace(tableRoles, "$1"), name);
  return report.results.flatMap((r) => r.messages).filter((m) => !meantAsList(m)).map((m) => `${name} ${m.ruleId}: ${m.message} at ${m.selector ?? `${m.line}:${m.column}`}`);
}

test("html-validate sees faults that are planted", async () => {
  const html = await readFile(path.join(folder(), "public", "tables", "r-410a.html"), "utf8");
  const planted = html.replace("</main>", '<ul><p>loose</p></ul><img src="a.png"><input id="main"></main>');
  const rules = new Set((await faults("planted", planted)).map((s) => s.split(" ")[1]));
  for (const rule of ["element-permitted-content:", "wcag/h37:", "no-dup-id:", "input-missing-label:"]) assert.ok(rules.has(rule), `${rule} is not among ${[...rules].join(" ")}`);
});

test("every kind of page of the site is valid", { timeout: 600_000 }, async () => {
  const root = path.join(folder(), "public");
  const pages = await pagesToRead(root);
  assert.ok(pages.length > 50, `there are pages: ${pages.length}`);
  const found = [];
  for (const page of pages) found.push(...(await faults(page, await readFile(path.join(root, `${page}.html`), "utf8"))));
  assert.deepEqual(found, []);
});
