// The assessment of the cause in each engine: on the site, then from the single file on disk.

import assert from "node:assert/strict";
import test, { after } from "node:test";
import { assessment, fedByWorksheet } from "./scenarios/assess.mjs";
import { engines, open } from "./support/engines.mjs";
import { filePlace, serve } from "./support/handbook.mjs";

const server = await serve();
after(() => server.stop());

for (const engine of engines) {
  test(`${engine}: the cause assessment`, { timeout: 900_000 }, async (t) => {
    const p = await open(engine);
    try {
      await t.test("on the site", (u) => assessment(u, p, server.place));
      await t.test("a worksheet answers a question", { timeout: 240_000 }, () => fedByWorksheet(p, server.place));
      await t.test("no errors, nothing that the policy stopped, no other host", async () => {
        assert.deepEqual(await p.troubles(), []);
        assert.deepEqual(await p.strangers(server.place.allowed), []);
      });
      p.forget();
      // The single file's ways in each engine are single-file.test.mjs; that it carries the assessment is the same script everywhere.
      if (engine !== "chromium") return;
      await t.test("in the single file", (u) => assessment(u, p, filePlace()));
      await t.test("no errors in the single file", async () => assert.deepEqual(await p.troubles(), []));
    } finally {
      await p.close();
    }
  });
}
