// The job file in each engine: on the site, over an update of the handbook, and in the single file.

import assert from "node:assert/strict";
import { readFile, writeFile } from "node:fs/promises";
import path from "node:path";
import test from "node:test";
import { jobFile } from "./scenarios/job.mjs";
import { on, openPage, saved } from "./scenarios/reading.mjs";
import { engines, open } from "./support/engines.mjs";
import { filePlace, ownContent, serve } from "./support/handbook.mjs";
import { until } from "./support/page.mjs";

for (const engine of engines) {
  test(`${engine}: the job file on the site`, { timeout: 1200_000 }, async (t) => {
    const content = await ownContent();
    const server = await serve({ content, base: "/job/" });
    const p = await open(engine);
    const place = server.place;
    const update = async () => {
      await openPage(p, place, "job");
      await saved(p);
      const summary = () => p.text(`${on("job")} .co-title__summary`);
      const before = await summary();
      await server.stop();
      const file = path.join(content, "job.md");
      const text = await readFile(file, "utf8");
      assert.ok(text.includes(before));
      await writeFile(file, text.replace(before, "Everything of one change-out, in a newer version."));
      await server.start();
      await p.reload();
      await until("the notice of the newer version", () => p.visible("[data-update] button"), 240_000);
      await p.tap("[data-update] button");
      await until("the newer version", async () => (await summary()) === "Everything of one change-out, in a newer version.", 60_000);
    };
    try {
      await jobFile(t, p, place, { update, whole: engine !== "firefox" });
      await t.test("no errors, nothing that the policy stopped, no other host", async () => {
        assert.deepEqual((await p.troubles()).filter((s) => !/QuotaExceeded|no room/.test(s)), []);
        assert.deepEqual(await p.strangers(place.allowed), []);
      });
    } finally {
      await p.close();
      await server.stop();
    }
  });

  // The single file's ways in each engine are single-file.test.mjs; that it carries the job file is the same script everywhere.
  if (engine === "chromium") test(`${engine}: the job file in the single file`, { timeout: 1200_000 }, async (t) => {
    const p = await open(engine);
    const place = filePlace();
    try {
      await jobFile(t, p, place, { whole: false });
      await t.test("no errors, nothing that the policy stopped, no other address", async () => {
        assert.deepEqual((await p.troubles()).filter((s) => !/QuotaExceeded|no room/.test(s)), []);
        assert.deepEqual(await p.strangers(place.allowed), []);
      });
    } finally {
      await p.close();
    }
  });
}
