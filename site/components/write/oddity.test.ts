import assert from "node:assert/strict";
import test from "node:test";
import { oddity } from "./oddity.ts";

test("a reading that fits its unit is left alone", () => {
  for (const [value, unit] of [["360", "micron"], ["1,5", "bar"], ["-3.2", "°C"], ["< 5", "MΩ"], ["OL", "MΩ"], ["off scale", "micron"], ["", "micron"], ["abc", ""], ["360 micron", "micron"], ["about 360", "micron"], ["21 C", "°C"], ["21°c", "°C"], ["118 psig", "psi gauge"], ["14.7psia", "psi absolute"]] as const) {
    assert.equal(oddity(value, unit), "", `${value} in ${unit}`);
  }
});

test("no figure, or a unit of its own, gets a sentence with what was given and what is asked", () => {
  assert.match(oddity("abc", "micron"), /^“abc” holds no figure\. This field is in micron\./);
  for (const text of ["360 Pa", "360Pa", "21 °F", "3 kΩ"]) assert.match(oddity(text, "micron"), new RegExp(`^“${text}” has a unit of its own\\. This field is in micron`));
  assert.match(oddity("118 psig", "bar gauge", true), /type the figure in bar gauge, or choose its unit beside it\./);
});
