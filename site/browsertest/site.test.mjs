// The built site in each engine: everything with the server running, then everything again with the server stopped.

import assert from "node:assert/strict";
import test from "node:test";
import { everything } from "./scenarios/everything.mjs";
import { openPage, saved } from "./scenarios/reading.mjs";
import { engines, open } from "./support/engines.mjs";
import { serve } from "./support/handbook.mjs";
import { consoleWhileLoading } from "./support/webkit.mjs";

for (const engine of engines) {
  test(`${engine}: the site, then without its server`, { timeout: 1800_000 }, async (t) => {
    const server = await serve();
    const p = await open(engine);
    const place = server.place;
    try {
      await t.test("online", (u) => everything(u, p, { ...place, unseen: "tables/r-32" }));
      await t.test("the phone says that the handbook is saved", async () => {
        await openPage(p, place, "index");
        await saved(p);
      });
      await t.test("no errors, nothing that the policy stopped, no other host", async () => {
        assert.deepEqual(await p.troubles(), []);
        assert.deepEqual(await p.strangers(place.allowed), []);
      });
      await server.stop();
      p.forget();
      await t.test("with the server stopped", (u) => everything(u, p, { ...place, unseen: "tables/r-290" }, { whole: false }));
      await t.test("no errors without the server either", async () => assert.deepEqual(await p.troubles(), []));
    } finally {
      await p.close();
      await server.stop();
    }
  });
}

if (engines.includes("webkit")) {
  test("webkit: nothing is said on the console while pages load", { timeout: 360_000 }, async () => {
    const server = await serve();
    try {
      for (const page of ["index", "stages/evacuate-and-hold", "worksheets/vacuum-hold", "tables/water-boiling-point"]) {
        assert.deepEqual(await consoleWhileLoading(server.place.url(page)), [], page);
      }
    } finally {
      await server.stop();
    }
  });
}
