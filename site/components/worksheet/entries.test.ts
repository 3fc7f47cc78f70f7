import { strict as assert } from "node:assert";
import { test } from "node:test";
import { fromFragment, same, toFragment } from "./entries.ts";
import type { Entries } from "./entries.ts";

const typed: Entries = {
  values: { refrigerant: "R-1233zd(E)", pressure: "250", log: "time_min;pressure_micron\n0;1,5\n1;1,6\n", "log.columns": "time:min,pressure:micron", note: "a=b&c #1 100% +/− 12.7 mm" },
  units: { pressure: "psig" },
};

test("entries survive a link, text and unit as typed", () => {
  const hash = "#" + toFragment(typed);
  assert.deepEqual(fromFragment(hash), { page: "", entries: typed });
  assert.doesNotMatch(hash, /[\s()'"<>]/, "no character that ends a link in a message");
  assert.match(hash, /^#fill\?refrigerant=R-1233zd%28E%29&pressure=250&pressure\.unit=psig&log=/);
});

test("an empty entry is not in the link, nor its unit", () => {
  assert.equal(toFragment({ values: { a: "", b: "1" }, units: { a: "bar", b: "" } }), "fill?b=1");
});

test("the last character of a link is never one that a messenger leaves out", () => {
  for (const end of [",", ".", ":", "/"]) {
    const e = { values: { log: "1" + end }, units: {} };
    assert.match(toFragment(e), /%[0-9A-F]{2}$/, end);
    assert.deepEqual(fromFragment(toFragment(e))?.entries, e);
  }
});

test("in the single file the page stands before the entries", () => {
  const got = fromFragment("#worksheets/charge-adjustment/fill?lines=12.7,30%0A9.52/45");
  assert.deepEqual(got, { page: "worksheets/charge-adjustment", entries: { values: { lines: "12.7,30\n9.52/45" }, units: {} } });
});

test("other fragments are none, and a damaged one loses no text", () => {
  for (const hash of ["", "#", "#main", "#saturation-source-x", "#worksheets/saturation", "#filled?x=1"]) assert.equal(fromFragment(hash), null, hash);
  assert.deepEqual(fromFragment("#fill?p=100%&=3&q")?.entries, { values: { p: "100%" }, units: {} });
  assert.deepEqual(fromFragment("#fill%3Fp=5")?.entries, { values: { p: "5" }, units: {} }, "some apps escape the question mark");
});

test("two sets of entries are the same in any order; a unit without a value does not count", () => {
  assert.ok(same({ values: { a: "1", b: "2" }, units: { a: "bar" } }, { values: { b: "2", a: "1" }, units: { a: "bar", c: "K" } }));
  assert.ok(!same({ values: { a: "1" }, units: { a: "bar" } }, { values: { a: "1" }, units: { a: "psig" } }));
});
