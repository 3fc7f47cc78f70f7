// A newer version of the handbook: it is fetched and kept whole, and nothing changes under the person's hands until the tap.
// Served under a path, as a company would.

import assert from "node:assert/strict";
import { readFile, writeFile } from "node:fs/promises";
import path from "node:path";
import test from "node:test";
import { on, openPage, saved } from "./scenarios/reading.mjs";
import { engines, open } from "./support/engines.mjs";
import { ownContent, serve } from "./support/handbook.mjs";
import { until } from "./support/page.mjs";

const page = "stages/evacuate-and-hold";
const before = "Pull a vacuum that takes air and water out, then prove with an isolated hold that none comes back.";
const after = "Air and water out, proved by an isolated hold.";

for (const engine of engines) {
  test(`${engine}: an update waits for a tap`, { timeout: 600_000 }, async () => {
    const content = await ownContent();
    const file = path.join(content, page + ".md");
    const server = await serve({ content, base: "/job/handbook/" });
    const p = await open(engine);
    const place = server.place;
    const summary = () => p.text(`${on(page)} .co-title__summary`);
    try {
      await openPage(p, place, page);
      assert.equal(await summary(), before);
      await saved(p);
      await p.tap(`${on(page)} [data-tick]`);

      await server.stop();
      const text = await readFile(file, "utf8");
      assert.ok(text.includes(before));
      await writeFile(file, text.replace(before, after));
      await server.start();

      await p.reload();
      assert.equal(await summary(), before, "the saved version is shown, although a newer one is there");
      await until("the notice of the newer version", () => p.visible("[data-update] button"), 60_000);
      assert.match(await p.text("[data-update]"), /newer version/i);
      assert.equal(await summary(), before, "nothing changes before the tap");
      await until("the tick, which is still there", () => p.visible(`${on(page)} .co-step--done`));
      // The old version works on, also with the server gone.
      await server.stop();
      await openPage(p, place, "worksheets/saturation");
      await openPage(p, place, page);
      assert.equal(await summary(), before);

      await until("the notice again", () => p.visible("[data-update] button"), 60_000);
      // "Later": the note goes, the keyboard's place does not, and the next page offers the version again.
      await p.tap("[data-update] .co-button--quiet");
      await until("the note to go", async () => !(await p.visible("[data-update]")));
      assert.equal(await p.run(() => document.activeElement.textContent), "Contents");
      await openPage(p, place, page);
      await until("the notice once more", () => p.visible("[data-update] button"), 60_000);
      await p.tap("[data-update] button");
      await until("the newer version after the tap", async () => (await summary()) === after, 60_000);
      await until("the tick, which stays over the update", () => p.visible(`${on(page)} .co-step--done`));
      await until("the older version's cache to be gone", () => p.run(async () => (await window.caches.keys()).length === 1), 20_000);
      assert.deepEqual(await p.troubles(), []);
    } finally {
      await p.close();
      await server.stop();
    }
  });
}
