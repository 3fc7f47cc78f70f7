// The assessment of the cause as the report reads it: the model's own names (the data file that build/internal/causes
// writes) and what the module answered (the lines of calc/cause/write.go). Nothing is judged here.

export type Standing = "cause" | "probable" | "possible" | "excluded" | "not determined";
export interface Weighed { finding: string; factor: number } // factor on the odds of the cause
export interface Judged {
  id: string;
  name: string;
  removes: string; // what removes it, from the content
  p: number;
  standing: Standing;
  recurs: boolean; // would act on the next compressor too
  for: Weighed[];
  against: Weighed[];
  missing: string[]; // findings not looked at that would tell most
}
export interface Arrow { cause: string | null; mechanism: string; proven: boolean; findings: string[] } // cause null: mechanism to failed part
export interface Assessment {
  causes: Judged[]; // in the order of the model
  causeNames: Map<string, string>;
  mechanisms: Map<string, { name: string; means: string }>;
  findings: Map<string, { name: string; question: string }>; // in the order of the model, which the numbers of the drawing follow
  arrows: Arrow[];
  next: string[]; // findings worth looking at, best first
  conflicts: string[]; // findings that do not fit the others
  drawing: string; // SVG, "" when there is no chain
  problem: string; // why nothing was weighed, ""
}

const standings: readonly string[] = ["cause", "probable", "possible", "excluded", "not determined"];

/** Reads the model's data and the module's answer. A line that is not known is passed over, as the module's are everywhere. */
export function readAssessment(data: string, answer: string): Assessment {
  const a: Assessment = { causes: [], causeNames: new Map(), mechanisms: new Map(), findings: new Map(), arrows: [], next: [], conflicts: [], drawing: "", problem: "" };
  const removes = new Map<string, string>();
  for (const [kind, id = "", x = ""] of rows(data)) {
    if (kind === "cause") a.causeNames.set(id, x);
    else if (kind === "mechanism") a.mechanisms.set(id, { name: x, means: "" });
    else if (kind === "finding") a.findings.set(id, { name: x, question: "" });
    else if (kind === "removes") removes.set(id, x);
  }
  for (const f of rows(data)) {
    const mechanism = f[0] === "means" && a.mechanisms.get(f[1] ?? "");
    if (mechanism) mechanism.means = f[2] ?? "";
    const finding = f[0] === "ask" && a.findings.get(f[1] ?? "");
    if (finding) finding.question = f[3] ?? "";
  }
  const judged = new Map<string, Judged>();
  for (const [kind, x = "", y = "", z = "", u = "", v = ""] of rows(answer)) {
    const of = judged.get(x);
    switch (kind) {
      case "judged": {
        const j: Judged = { id: x, name: a.causeNames.get(x) ?? x, removes: removes.get(x) ?? "", p: Number(y), standing: standings.includes(z) ? (z as Standing) : "not determined", recurs: u === "recurs", for: [], against: [], missing: [] };
        judged.set(x, j);
        a.causes.push(j);
        break;
      }
      case "for": of?.for.push({ finding: y, factor: Number(z) }); break;
      case "against": of?.against.push({ finding: y, factor: Number(z) }); break;
      case "missing": of?.missing.push(y); break;
      case "next": a.next.push(x); break;
      case "conflict": a.conflicts.push(x); break;
      case "arrow": a.arrows.push({ cause: x === "-" ? null : x, mechanism: y, proven: u === "proven", findings: v === "" ? [] : v.split(",") }); break;
      case "drawing": a.drawing = x; break;
      case "problem": a.problem = x; break;
    }
  }
  return a;
}

function rows(text: string): string[][] {
  return text.split("\n").filter((l) => l !== "").map((l) => l.split("\t"));
}

/**
 * What the module is asked: the model, which is the data up to the first empty line, and the facts of a job. Findings that
 * the model does not know are left out.
 */
export function question(data: string, findings: Record<string, { state: "present" | "absent" }>): string {
  const [model = ""] = data.split("\n\n");
  const known = new Set(rows(model).filter((f) => f[0] === "finding").map((f) => f[1]));
  return `${model}\n${Object.entries(findings).filter(([id]) => known.has(id)).map(([id, f]) => `fact\t${id}\t${f.state}\n`).join("")}`;
}
