// Everything a technician does with the handbook, in one row: run online, then again with the server stopped, and from
// the single file. t is the test's context; each part is a test of its own in the report.

import assert from "node:assert/strict";
import { frontPage, on, openPage, searchFindsNothing, searchFromContents } from "./reading.mjs";
import { procedure, tickWriteTime, timerEnds } from "./steps.mjs";
import { asksAboutColumns, asksAboutComma, computesLikeCommandLine, judgesHold, refuses, remembersUnits, Sheet } from "./worksheets.mjs";

/** An invented log of a system that levels off. */
export const levelling = "minutes,micron\n0,310\n1,395\n2,452\n4,560\n6,655\n8,741\n10,815\n15,973\n20,1096\n30,1267\n40,1372\n50,1436\n60,1476\n75,1508\n90,1524\n";
/** An invented log that climbs in a straight line. */
export const climbing = "minutes,micron\n" + Array.from({ length: 25 }, (_, i) => `${i * 5},${300 + i * 60}`).join("\n") + "\n";

export const charge = {
  system: "inverter-multi-split", method: "weight", refrigerant: "R-410A", nameplate: ["10.5", "kg"],
  lines: "size_mm,length_m,factor_kg/m\n12.7,30,\n9.52,45,0.054\n", already: ["8", "kg"], "room-volume": ["40", "m3"],
};

/**
 * whole: false leaves out what the way of loading cannot change: further cases of forms whose script and module have answered
 * already. Every form runs whole in every engine once (site.test.mjs, online), and in Chromium in the single file too.
 */
export async function everything(t, p, place, { whole = true } = {}) {
  const saturation = new Sheet(p, place, "saturation");
  const adjustment = new Sheet(p, place, "charge-adjustment");
  const hold = new Sheet(p, place, "vacuum-hold");
  const part = (name, fn) => t.test(name, { timeout: 240_000 }, fn);
  const more = (name, fn) => whole && part(name, fn);

  await part("front page", () => frontPage(p, place));
  await part("search from the contents to a procedure", () => searchFromContents(p, place, "evacuate hold", procedure, "Evacuate and hold"));
  await more("search without a hit", () => searchFindsNothing(p, place));

  await part("saturation, metric", () => computesLikeCommandLine(saturation, { refrigerant: "R-410A", pressure: ["9.4", "barg"], "line-temperature": ["17", "C"] }, "si"));
  await more("saturation, US units", () => computesLikeCommandLine(saturation, { refrigerant: "R-407C", pressure: ["80", "psig"], "line-temperature": ["61", "F"] }, "ip"));
  await more("saturation, pressure from temperature", () => computesLikeCommandLine(saturation, { refrigerant: "R-454B", temperature: ["-12.5", "C"] }, "si"));
  await part("saturation refuses a word", () => refuses(saturation, { refrigerant: "R-32", pressure: ["high", "barg"] }, "pressure", { given: "high", allowed: /\d.* to .*\d/ }));
  await more("saturation refuses a pressure out of range", () => refuses(saturation, { refrigerant: "R-32", pressure: ["99999", "psig"] }, "pressure", { given: "99", allowed: /\d.* to .*\d/ }));
  await part("saturation keeps unit and value over a reload", () => remembersUnits(saturation));
  await more("decimal comma", () => asksAboutComma(saturation));

  await part("charge by weight", async () => {
    const a = await computesLikeCommandLine(adjustment, charge, "si");
    assert.ok(["add", "take-out", "as-calculated", "room-limit"].includes(a.verdict), a.verdict);
  });
  await more("charge by readings is refused for an inverter multi-split", async () => {
    const a = await computesLikeCommandLine(adjustment, { system: "inverter-multi-split", method: "readings", refrigerant: "R-410A" }, "si");
    assert.equal(a.verdict, "weigh-in");
  });
  await more("charge adjustment refuses a negative charge", () => refuses(adjustment, { ...charge, nameplate: ["-3", "kg"] }, "nameplate", { given: "-3", allowed: /\d.* to .*\d/ }));

  await part("vacuum hold, a log that levels off", () => judgesHold(hold, levelling));
  await more("vacuum hold, a leak is never called tight", async () => {
    const a = await judgesHold(hold, climbing);
    assert.notEqual(a.verdict, "tight");
  });
  await more("vacuum hold refuses two rows", () => refuses(hold, { log: "minutes,micron\n0,310\n10,420\n" }, "log", { given: "2 rows", allowed: /at least 3/ }));
  await more("vacuum hold asks what the columns are", () => asksAboutColumns(hold));

  let timer;
  await part("ticks, a reading and a timer survive a reload", async () => (timer = await tickWriteTime(p, place)));
  await more("a timer ends and says so", () => timerEnds(p, place, timer));

  await part("a page never opened before", async () => {
    await openPage(p, place, place.unseen);
    const rows = await p.run((s) => document.querySelectorAll(`${s} tbody tr`).length, on(place.unseen));
    assert.ok(rows > 10, `${place.unseen} shows its table, ${rows} rows`);
    await p.reload();
    assert.ok(await p.visible(`${on(place.unseen)} tbody tr`), "and again after a reload");
  });
}
