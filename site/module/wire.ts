// This file is the text that passes between the page and the module.
//
// A message is lines; a line is fields parted by TAB. In a field a backslash
// escapes: \t is TAB, \n is a line feed, \\ is a backslash.
//
// Request:
//
//	worksheet  id
//	system     si | ip            (optional)
//	in         input id  text  unit id
//	out        output id unit id
//
// Reply:
//
//	problem    input id  code  sentence  [row  field]  (of a series, counted from 1; field 0: the row as a whole)
//	suggest    input id  label text to put there   (belongs to the problem before it)
//	output     id  label  SI value  SI unit  text  main|""
//	verdict    id  tone  title  sentence
//	warning    sentence
//	advice     sentence
//	step       label  formula  value  source key  locator
//	chart      title  svg
//
// The twin of this file is wasm/wire; both are tested against the samples in
// testdata/wire. A line with an unknown first word is skipped, so that an
// older page understands a newer module.

export interface Request {
  worksheet: string;
  system: "si" | "ip";
  inputs: { id: string; text: string; unit: string }[];
  outputs: { id: string; unit: string }[];
}

export interface Output { id: string; label: string; value: string; unit: string; text: string; main: boolean }
export interface Verdict { id: string; tone: string; title: string; text: string }
export interface Step { label: string; formula: string; value: string; source: string; locator: string }
export interface Chart { title: string; svg: string }
export interface Suggestion { input: string; label: string; value: string }
/** row, field: the place in a series, counted from 1; 0 when there is none. */
export interface Problem { input: string; code: string; text: string; row: number; field: number; suggestions: Suggestion[] }

export interface Reply {
  outputs: Output[];
  verdict: Verdict | null;
  warnings: string[];
  advice: string[];
  steps: Step[];
  charts: Chart[];
  problems: Problem[];
}

export function escape(field: string): string {
  return field.replace(/[\\\t\n\r]/g, (c) => (c === "\\" ? "\\\\" : c === "\t" ? "\\t" : c === "\n" ? "\\n" : ""));
}

export function unescape(field: string): string {
  return field.replace(/\\([\s\S])/g, (_, c: string) => (c === "t" ? "\t" : c === "n" ? "\n" : c));
}

export function encode(request: Request): string {
  const lines = [["worksheet", request.worksheet], ["system", request.system]];
  for (const i of request.inputs) lines.push(["in", i.id, i.text, i.unit]);
  for (const o of request.outputs) lines.push(["out", o.id, o.unit]);
  return lines.map((fields) => fields.map(escape).join("\t") + "\n").join("");
}

export function decode(text: string): Reply {
  const reply: Reply = { outputs: [], verdict: null, warnings: [], advice: [], steps: [], charts: [], problems: [] };
  for (const line of text.split("\n")) {
    if (line === "") continue;
    const [word = "", a = "", b = "", c = "", d = "", e = "", f = ""] = line.split("\t").map(unescape);
    switch (word) {
      case "output": reply.outputs.push({ id: a, label: b, value: c, unit: d, text: e, main: f === "main" }); break;
      case "verdict": reply.verdict = { id: a, tone: b, title: c, text: d }; break;
      case "warning": reply.warnings.push(a); break;
      case "advice": reply.advice.push(a); break;
      case "step": reply.steps.push({ label: a, formula: b, value: c, source: d, locator: e }); break;
      case "chart": reply.charts.push({ title: a, svg: b }); break;
      case "problem": reply.problems.push({ input: a, code: b, text: c, row: Number(d), field: Number(e), suggestions: [] }); break;
      case "suggest": reply.problems[reply.problems.length - 1]?.suggestions.push({ input: a, label: b, value: c }); break;
    }
  }
  return reply;
}
