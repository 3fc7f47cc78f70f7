import { strict as assert } from "node:assert";
import { test } from "node:test";
import { contentType, route } from "./addresses.ts";

const files = new Set(["index.html", "stages/hold.html", "company/index.html", "assets/app.1a.js", "changeout.wasm"]);
const asked = (path: string, navigation = true): string => {
  const r = route(path, files, navigation);
  return r.kind === "other" ? "other" : `${r.kind} ${r.path}`;
};

test("pages with and without .html and slash", () => {
  assert.equal(asked(""), "file index.html");
  assert.equal(asked("index.html"), "file index.html");
  assert.equal(asked("stages/hold.html"), "file stages/hold.html");
  assert.equal(asked("stages/hold"), "file stages/hold.html");
  assert.equal(asked("stages/hold/"), "move stages/hold.html");
  assert.equal(asked("stages/hold.html/"), "move stages/hold.html");
  assert.equal(asked("company/"), "file company/index.html");
  assert.equal(asked("company"), "move company/");
});

test("what is not listed is not ours", () => {
  assert.equal(asked("nosuch"), "other");
  assert.equal(asked("stages/"), "other");
  assert.equal(asked("stages/hold", false), "other", "only a navigation may leave .html out");
  assert.equal(asked("assets/app.1a.js", false), "file assets/app.1a.js");
});

test("types come from names", () => {
  assert.equal(contentType("changeout.wasm"), "application/wasm");
  assert.match(contentType("a/b.html"), /^text\/html/);
  assert.equal(contentType("LICENSE"), "application/octet-stream");
});
