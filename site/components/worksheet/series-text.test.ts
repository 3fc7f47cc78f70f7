import { strict as assert } from "node:assert";
import { test } from "node:test";
import { columnHead, columnNames, formatSeries, parseSeries, placeOf, separatorOf } from "./series-text.ts";

const header = ["time_min", "pressure_micron", "ambient_C"];

test("separators are recognised", () => {
  const cases: [string, string][] = [["0,310\n1,340", ","], ["0;1,5\n1;1,6", ";"], ["0\t310", "\t"], ["0 310\n1 340", " "], ["# a, b\n0 310", " "], ["", " "]];
  for (const [text, want] of cases) assert.equal(separatorOf(text), want, JSON.stringify(text));
});

test("text becomes rows, with or without a header", () => {
  assert.deepEqual(parseSeries("minutes,micron\n0,310\n1,340\n"), { header: ["minutes", "micron"], rows: [["0", "310"], ["1", "340"]] });
  assert.deepEqual(parseSeries("0,310\r\n1,340\r\n"), { header: null, rows: [["0", "310"], ["1", "340"]] });
  assert.deepEqual(parseSeries("\uFEFF# demo\n\n\"t\";\"p, micron\"\n0;1,5"), { header: ["t", "p, micron"], rows: [["0", "1,5"]] });
  assert.deepEqual(parseSeries("−1 .5\n  2   3 "), { header: null, rows: [["−1", ".5"], ["2", "3"]] });
  assert.deepEqual(parseSeries(""), { header: null, rows: [] });
});

test("a clock time is a row, not a header", () => {
  assert.deepEqual(parseSeries("14:30,310\n14:40,350").header, null);
});

test("rows become text that reads back the same", () => {
  const rows = [["0", "310", "21"], ["1", "340", ""]];
  assert.deepEqual(parseSeries(formatSeries(header, rows)), { header, rows });
});

test("empty rows and empty optional columns are left out", () => {
  assert.equal(formatSeries(header, [["0", "310", ""], ["", "", ""], ["1", "340", ""], ["", "", ""]]), "time_min,pressure_micron\n0,310\n1,340\n");
  assert.equal(formatSeries(header, [["", "", ""]]), "", "nothing typed is nothing, not a header");
  assert.equal(formatSeries(header, [["0", "", ""]]), "time_min,pressure_micron\n0,\n", "a half-typed row is kept");
});

test("a decimal comma asks for semicolons", () => {
  const text = formatSeries(header, [["0", "1,5", ""], ["1", "1,6", ""]]);
  assert.equal(text, "time_min;pressure_micron\n0;1,5\n1;1,6\n");
  assert.deepEqual(parseSeries(text).rows, [["0", "1,5"], ["1", "1,6"]]);
});

const tubes = [{ id: "size_mm", label: "Outside diameter", unit: "mm", ip: "size_in", ipUnit: "in" }, { id: "count", label: "How many", unit: "", ip: "", ipUnit: "" }];

test("an empty log gets the columns of the person's units", () => {
  assert.deepEqual(columnNames(parseSeries(""), tubes, "si"), ["size_mm", "count"]);
  assert.deepEqual(columnNames(parseSeries(""), tubes, "ip"), ["size_in", "count"]);
});

const log = [{ id: "time_min", label: "Time", unit: "min", ip: "", ipUnit: "" }, { id: "pressure_micron", label: "Pressure", unit: "micron", ip: "", ipUnit: "" }, { id: "ambient_C", label: "Ambient", unit: "°C", ip: "ambient_F", ipUnit: "°F" }];

test("a column that nobody filled yet stays on offer", () => {
  const kept = parseSeries(formatSeries(header, [["0", "310", ""], ["1", "340", ""]]));
  assert.deepEqual(columnNames(kept, log, "si"), header);
  assert.deepEqual(columnNames(kept, log, "ip"), ["time_min", "pressure_micron", "ambient_F"]);
  assert.deepEqual(columnNames(parseSeries("ambient_F,time_min,pressure_micron\n70,0,310\n"), log, "si"), ["ambient_F", "time_min", "pressure_micron"], "what is there is not offered twice");
  assert.deepEqual(columnNames(parseSeries("minutes,micron\n0,310\n"), log, "si"), ["minutes", "micron"], "another's header is left as it is");
});

test("a row is found in the text, counted as the boxes count", () => {
  const text = "# demo\n\nminutes,micron\n0,310\n\n1,abc\n";
  assert.equal(text.slice(...(placeOf(text, 2) ?? [0, 0])), "1,abc");
  assert.equal(placeOf("0,310\n1,340", 1)?.join(), "0,5", "without a header");
  assert.equal(placeOf(text, 3), null);
});

test("rows keep what they mean when the units change", () => {
  assert.deepEqual(columnNames(parseSeries("size_mm,count\n12.7,2\n"), tubes, "ip"), ["size_mm", "count"], "a header holds");
  assert.deepEqual(columnNames(parseSeries("12.7,2\n"), tubes, "ip"), ["size_mm", "count"], "bare rows are millimetres for everybody");
  assert.deepEqual(columnNames(parseSeries("Size [inch],count\n1/2,2\n"), tubes, "si"), ["Size [inch]", "count"], "another's header stays");
});

test("the head of a column names its unit", () => {
  assert.equal(columnHead("size_mm", tubes), "Outside diameter, mm");
  assert.equal(columnHead("size_in", tubes), "Outside diameter, in");
  assert.equal(columnHead("count", tubes), "How many");
  assert.equal(columnHead("Size [inch]", tubes), "Size [inch]");
  assert.equal(columnHead("", tubes), "");
});
