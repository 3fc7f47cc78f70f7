import { strict as assert } from "node:assert";
import { test } from "node:test";
import { balances, kg, readMass } from "./mass.ts";
import type { LedgerEntry, MassUnit } from "./schema.ts";

// Source of the factors: NIST SP 811 (2008), appendix B.8: 1 lb (avoirdupois) = 0.45359237 kg exactly, 1 oz = 1/16 lb.
test("a weight in kilograms", () => {
  const cases: [string, MassUnit, number][] = [["2.4", "kg", 2.4], ["2,4", "kg", 2.4], ["850", "g", 0.85], ["10", "lb", 4.5359237], ["8", "oz", 0.226796185], ["0,125", "kg", 0.125], [" 12 ", "kg", 12]];
  for (const [value, unit, want] of cases) {
    const got = readMass({ value, unit });
    // One product of doubles: a few units in the last place.
    const tolerance = 1e-12 * want;
    if ("reason" in got) assert.fail(`${value} ${unit}: got “${got.reason}”, want ${want}`);
    else assert.ok(Math.abs(got.kg - want) <= tolerance, `${value} ${unit}: got ${got.kg}, want ${want}, difference ${got.kg - want}, tolerance ${tolerance}`);
  }
});

test("what is no weight is refused with a sentence that says what was given", () => {
  for (const value of ["", "-2", "two", "1.2.3", "1e3", "0", "2.4 kg", "1,234", "99999", "Infinity", "NaN"]) {
    const got = readMass({ value, unit: "kg" });
    assert.ok("reason" in got, `${value}: got ${JSON.stringify(got)}`);
    assert.match(got.reason, value === "" ? /nothing is given/ : new RegExp(value.replace(/[.]/g, "\\.")));
  }
  assert.match((readMass({ value: "1,234", unit: "kg" }) as { reason: string }).reason, /1\.234 or 1234/);
});

const entry = (direction: "in" | "out", value: string, unit: MassUnit, refrigerant: string): LedgerEntry => ({ id: "x", date: "", direction, mass: { value, unit }, refrigerant, cylinder: "", note: "" });

test("the balance keeps refrigerants apart and counts what it could not read", () => {
  const b = balances([entry("out", "9.2", "kg", "R-410A"), entry("in", "10,5", "kg", "r410a"), entry("in", "300", "g", "R-410A"), entry("in", "1", "lb", "R-32"), entry("in", "some", "kg", "R-32")]);
  assert.deepEqual(b.map((x) => [x.refrigerant, kg(x.in), kg(x.out), kg(x.in - x.out), x.unread]), [
    ["R-410A", "10.800 kg", "9.200 kg", "1.600 kg", 0],
    ["R-32", "0.454 kg", "0.000 kg", "0.454 kg", 1],
  ]);
  assert.equal(kg(-0.0001), "0.000 kg");
  assert.equal(kg(-1.25), "−1.250 kg");
});
