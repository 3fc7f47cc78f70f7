// The search in each engine: from the server, with the server stopped, and in the single file.

import assert from "node:assert/strict";
import test from "node:test";
import { openPage, saved } from "./scenarios/reading.mjs";
import { search } from "./scenarios/search.mjs";
import { engines, open } from "./support/engines.mjs";
import { filePlace, serve } from "./support/handbook.mjs";

for (const engine of engines) {
  test(`${engine}: search`, { timeout: 1200_000 }, async (t) => {
    const server = await serve();
    const p = await open(engine);
    try {
      await t.test("nothing of the search is loaded before somebody begins", async () => {
        await openPage(p, server.place, "stages/braze-with-nitrogen");
        const loaded = await p.run(() => performance.getEntriesByType("resource").map((r) => r.name).filter((n) => /search/.test(n)));
        assert.deepEqual(loaded, []);
      });
      // What is first does not depend on the engine.
      await t.test("online", (u) => search(u, p, server.place, { rows: engine === "chromium" }));
      await t.test("the handbook is saved", async () => {
        await openPage(p, server.place, "index");
        await saved(p);
      });
      await t.test("no errors, nothing that the policy stopped", async () => assert.deepEqual(await p.troubles(), []));
      await server.stop();
      p.forget();
      await t.test("with the server stopped", (u) => search(u, p, server.place, { whole: false }));
      // The single file's ways in each engine are single-file.test.mjs; that it carries the search is the same script everywhere.
      if (engine === "chromium") await t.test("the single file", (u) => search(u, p, filePlace(), { whole: false }));
      await t.test("no errors", async () => assert.deepEqual(await p.troubles(), []));
    } finally {
      await p.close();
      await server.stop();
    }
  });
}
