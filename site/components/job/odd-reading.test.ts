import assert from "node:assert/strict";
import test from "node:test";
import { oddReading } from "./odd-reading.ts";

test("a reading that can be used later is taken", () => {
  for (const [what, value, unit] of [["Suction pressure", "8,1", "bar gauge"], ["Suction pressure", "OL", "psig"], ["Pressure drop of the drier", "12", "kPa"], ["Oil, colour", "brown", ""], ["Winding U-V", "OL", "MΩ"], ["Leak rate", "3", ""], ["Vacuum at the far end", "300", "micron"], ["Discharge", "71", "°C"]] as const) {
    assert.equal(oddReading(what, value, unit), null, `${what}: ${value} ${unit}`);
  }
});

test("one that cannot gets a sentence at its field", () => {
  for (const [what, value, unit, name, words] of [
    ["Suction pressure", "abc", "psig", "value", /“abc” is given, in psig\. Allowed is a figure/],
    ["Hold", "360 Pa", "micron", "value", /“360 Pa” is given, in micron/],
    ["Suction pressure", "8", "", "unit", /gauge or absolute/],
    ["Suction pressure", "8", "bar", "unit", /“bar” is given\. Say gauge or absolute, such as bar gauge/],
  ] as const) {
    const wrong = oddReading(what, value, unit);
    assert.equal(wrong?.name, name, `${what}: ${value} ${unit}`);
    assert.match(wrong?.reason ?? "", words);
  }
});
