import { strict as assert } from "node:assert";
import { test } from "node:test";
import { read } from "./index.ts";
import { answers, Units } from "./quantity.ts";
import { rank } from "./rank.ts";

// Invented pages in the form of the real index.
const index = read([
  "U\teither\t6894.757\t0\tpsi", "U\tabsolute\t1\t0\tPa", "U\tabsolute\t0.1333224\t0\tmicron\tmicrons\tum", "U\tgauge\t6894.757\t0\tpsig\tpsi gauge", "U\tabsolute\t6894.757\t0\tpsia",
  "U\tgauge\t1000\t0\tkPag\tkPa gauge", "U\ttemperature\t1\t0\tK", "U\tresistance\t1000\t0\tkohm\tk", "U\ttemperature\t1\t273.15\tC\t°C", "U\ttemperature\t0.5555556\t459.67\tF\t°F", "U\tduration\t60\t0\tmin", "U\tduration\t3600\t0\th", "U\tcurrent\t1\t0\tA", "U\tlength\t0.0254\t0\tin\tinch", "U\tabsolute\t-3386.389\t-29.92125\tinHgv\tinHg\tin Hg",
  "S\tmic|mics\tmicron", "S\twill not turn\tslugging", "S\tbang|liquid slug\tslugging", "S\teev|exv\telectronic expansion valve", "S\tmegged\tinsulation",
  "P\tstages/evacuate\tp\t8\tEvacuate and hold\tTake the air out.",
  "h#steps\tSteps: connect the gauge", "sgauge\tConnect the vacuum gauge at the far end.", "y\tAt 66.7 Pa the water is out.", "s500\tStop at 500\u00a0micron.", "swait\tWait 30 min, as long as asked.",
  "P\tstages/charge\tp\t9\tCharge by weight\tPut the right mass in.",
  "sslug\tListen for slugging at the start.", "svalve\tOpen the electronic expansion valve.", "sgauge\tRead the gauge: 75 psig \\l 80 psig.", "d=\tWhat colour is the oil?", "d\tBrown · Mild · Change the drier.",
  "P\tstages/find\tp\t1\tFind the cause\tProve why it failed.",
  "smeg\tMeasure the insulation of the winding.", "slisten\tListen at the start.",
  "P\ttables/r-410a\tt\t\tR-410A pressure and temperature\tA blend.", "x\t-50 to 65 °C, 10 to 600 psi gauge",
  "P\tpipes\t\t\tPipes\tSizes.", "t\t9.5 mm (⅜ in) · 1⅛ in", "t\tWrite 5000 micron.",
  "P\tworksheets/vacuum-hold\tw\t\tVacuum hold\tJudges a hold.", "ilog\tLog of the hold",
  "",
].join("\n"));

const found = (asked: string): string[] => rank(index, asked, 30).hits.map((h) => (index.pages[h.place.page]?.address ?? "") + (h.place.id && "#" + h.place.id));
const first = (asked: string): string => found(asked)[0] ?? "nothing";
const marked = (asked: string): string[] => rank(index, asked, 30).hits.map((h) => h.marks.map(([a, b]) => h.place.text.slice(a, b)).join("|"));

test("the page whose title is asked for comes first, then steps, then headings", () => {
  assert.equal(first("vacuum hold"), "worksheets/vacuum-hold");
  assert.equal(first("evacuate"), "stages/evacuate");
  assert.deepEqual(found("connect gauge"), ["stages/evacuate#step-gauge", "stages/evacuate#steps"]);
});

test("a title names its page in every form of its words, and so does the number of its stage", () => {
  assert.equal(first("evacuation"), "stages/evacuate");
  assert.equal(first("how long to hold"), "worksheets/vacuum-hold", "it asks for a time, not for the word long");
  assert.notEqual(first("how long"), "nothing", "while somebody still types");
  assert.equal(first("stage 8"), "stages/evacuate");
  const x = read(["S\tdecay test\thold", "P\ta\tp\t8\tEvacuate and hold\t-", "P\tb\tp\t1\tB\t-", "s#bottle\tHold the bottle.", "s#test\tMake a triple evacuation.",
    "P\tc\t\t\tGlossary\t-", "g#term-standing\tstanding pressure", "P\tw\tw\t\tStanding pressure test\t-", ""].join("\n"));
  const at = (asked: string): string => rank(x, asked, 9).hits.map((h) => (x.pages[h.place.page]?.address ?? "") + (h.place.id && "#" + h.place.id)).slice(0, 2).join(" ");
  assert.equal(at("decay test"), "a b#bottle", "what people say, before a step that has the word in another sense");
  assert.equal(at("evacuation"), "a b#test");
  assert.equal(at("standing pressure"), "c#term-standing w", "a word of several that is explained, before a longer title");
});

test("each word must begin a word of the place; the title of its page may hold one, never all", () => {
  assert.deepEqual(found("acuum"), ["worksheets/vacuum-hold", "stages/evacuate#step-gauge"], "a letter missing is a slip, in a title too");
  assert.equal(first("hold gauge"), "stages/evacuate#step-gauge");
  assert.ok(!found("evacuate").includes("stages/evacuate#step-gauge"));
  assert.deepEqual(found(""), []);
  assert.deepEqual(found("   "), []);
  assert.deepEqual(found("zzqx"), []);
});

test("hyphens, case, accents and no-break spaces do not matter", () => {
  for (const asked of ["R 410a", "r-410A", "r410a", "R410A"]) assert.equal(first(asked), "tables/r-410a", asked);
});

test("what people say finds what the handbook says, below the word itself", () => {
  assert.equal(first("bang"), "stages/charge#step-slug");
  assert.equal(first("liquid slug"), "stages/charge#step-slug");
  assert.equal(first("EEV"), "stages/charge#step-valve");
  assert.equal(first("open eev"), "stages/charge#step-valve");
  assert.deepEqual(marked("eev"), ["electronic|expansion|valve"]);
});

test("slips of the finger: one in a short word, two in a long one, none in a number", () => {
  assert.equal(first("guage"), "stages/evacuate#step-gauge");
  assert.equal(first("insulatoin"), "stages/find#step-meg");
  assert.equal(first("electornic expansoin"), "stages/charge#step-valve");
  assert.equal(first("meged"), "stages/find#step-meg", "a slip in what people say");
  assert.deepEqual(found("501 micron"), ["stages/evacuate#step-500", "stages/evacuate#step-gauge"], "as near as a rounded figure");
  assert.deepEqual(found("900 micron"), []);
});

test("exact words stand before bent ones, those before what people say, those before slips", () => {
  const x = read(["S\tpurge\tsweep", "P\ta\tp\t1\tA\t-", "s#one\tIt purgd.", "s#two\tThen sweep.", "s#three\tPurging goes on.", "s#four\tThen purge.", ""].join("\n"));
  assert.deepEqual(rank(x, "purge", 9).hits.map((h) => h.place.id), ["four", "three", "two"]);
  assert.deepEqual(rank(x, "swep", 9).hits.map((h) => h.place.id), ["two"], "a slip, where nothing else is found");
});

test("the order of the job breaks ties", () => {
  const x = read(["P\tb\tp\t9\tB\t-", "sx\tTurn it.", "P\tc\t\t\tC\t-", "sx\tTurn it.", "P\ta\tp\t2\tA\t-", "sx\tTurn it.", ""].join("\n"));
  assert.deepEqual(rank(x, "turn", 9).hits.map((h) => x.pages[h.place.page]?.address), ["a", "b", "c"]);
});

test("a number with its unit finds the same amount in other units", () => {
  assert.deepEqual(found("500 micron"), ["stages/evacuate#step-500", "stages/evacuate#step-gauge"]);
  assert.deepEqual(marked("500 micron"), ["500\u00a0micron", "66.7 Pa"]);
  assert.deepEqual(found("500micron").length, 2);
  assert.deepEqual(found("75 psig"), ["stages/charge#step-gauge"], "what a wide range spans is no answer");
  assert.deepEqual(found("517 kpa gauge"), ["stages/charge#step-gauge"]);
  assert.deepEqual(found("75 psi"), ["stages/charge#step-gauge"], "a pressure whose zero is not said");
  assert.deepEqual(found("75 psia"), [], "absolute is never gauge");
  assert.deepEqual(found("0.5 h"), ["stages/evacuate#step-wait"]);
  assert.equal(first("r410a 75 psig"), "tables/r-410a");
  assert.equal(first("410a"), "tables/r-410a", "not 410 amperes");
});

test("amounts as they are typed: fractions, inches of mercury, a slip in the unit, a refrigerant in pieces", () => {
  for (const asked of ["3/8", "3/8 in", '3/8"', "1 1/8", "1-1/8 inch"]) assert.equal(first(asked), "pipes", asked);
  assert.equal(found("0.5 in").length, 0);
  for (const asked of ["500 micorn", "500 mic", "500 mics"]) assert.deepEqual(found(asked), ["stages/evacuate#step-500", "stages/evacuate#step-gauge"], asked);
  assert.deepEqual(marked("500 micron"), ["500\u00a0micron", "66.7 Pa"], "500 does not begin 5000");
  assert.deepEqual(found("500 micr").length, 2, "while somebody still types");
  for (const asked of ["29.9 inHg", "29.9 in hg", '29.9" hg', "29.9 inches of mercury"]) assert.equal(first(asked), "stages/evacuate#step-500", asked);
  for (const asked of ["R 410 A", "r-410 a", "410 A table", "hfc410a"]) assert.equal(first(asked), "tables/r-410a", asked);
  assert.equal(first("r410a 900 psig"), "tables/r-410a", "a table answers for every pressure, if something else leads to it");
  assert.equal(first("9 micron"), "nothing");
  assert.equal(rank(read("U\ttemperature\t1\t0\tK\nU\tresistance\t1000\t0\tkohm\tk\nP\ta\t\t\tA\t-\nsone\tBy 10 kohm.\nstwo\tBy 10 K."), "10 K", 9).hits[0]?.place.id, "step-two", "a kelvin is no kiloohm");
});

test("a phrase may hold common words, and bend", () => {
  assert.equal(first("it will not turn"), "stages/charge#step-slug");
  assert.equal(first("liquid slugs"), "stages/charge#step-slug");
  assert.equal(first("bangs"), "stages/charge#step-slug");
});

test("units: ranges, signs, fractions, thousands, and letters that are no unit", () => {
  const units = new Units();
  for (const u of [["temperature", "1", "273.15", "°C"], ["duration", "60", "0", "min"], ["length", "0.0254", "0", "in"], ["absolute", "0.1333224", "0", "micron"], ["current", "1", "0", "A"]]) units.add(u);
  const spans = (text: string): string[] => units.find(text).map((q) => `${q.kind} ${q.low.toPrecision(4)} ${q.high.toPrecision(4)} ${text.slice(q.start, q.end)}`);
  assert.deepEqual(spans("Wait 2–5 min at −10 °C."), ["duration 120.0 300.0 2–5 min", "temperature 263.1 263.1 −10 °C"]);
  assert.deepEqual(spans("1½ in or 10,000 micron"), ["length 0.03810 0.03810 1½ in", "absolute 1333 1333 10,000 micron"]);
  assert.deepEqual(spans("R-410A, 5 a day, 3 mints, A5 min"), []);
  const [asked] = units.find("20 °C");
  const [held] = units.find("25 °C");
  assert.ok(asked && held);
  assert.equal(answers(asked, held), 0, "a hundredth of a temperature would be three degrees");
});

test("when no place holds every word, the nearest are shown and it is said", () => {
  const f = rank(index, "listen zzqx", 30);
  assert.equal(f.partly, true);
  assert.equal(f.hits[0]?.place.id, "step-listen");
  assert.equal(rank(index, "listen", 30).partly, false);
});

test("a text with signs of the format comes back as it was", () => {
  assert.ok(index.places.some((p) => p.text.includes("75 psig < 80 psig")));
});

test("every hit says where its words stand", () => {
  for (const asked of ["gauge", "listen start", "oil", "evacuated"]) for (const m of marked(asked)) assert.notEqual(m, "", asked);
});
