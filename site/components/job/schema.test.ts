import { strict as assert } from "node:assert";
import { test } from "node:test";
import { readFileSync, writeFileSync } from "node:fs";
import { published } from "./schema.ts";

// To write it anew after a change of schema.ts: UPDATE=1 npm test, and read the diff. A change that old files do not
// keep needs a new version and a step in check.ts.
test("the published document says what the handbook checks", () => {
  const file = new URL("../../../../../../content/about/job-file.schema.json", import.meta.url);
  const text = JSON.stringify(published, null, 1) + "\n";
  if (process.env.UPDATE) writeFileSync(file, text);
  assert.equal(readFileSync(file, "utf8"), text, "UPDATE=1 npm test writes it");
});
