// What was found, for the assessment of the cause. A finding belongs to the job that is open; without a job it waits until
// one is made. "Not looked at" is no entry.

import { loadRecord, saveRecord } from "../../module/store.ts";
import type { Finding } from "./schema.ts";

const key = "findings";

/** The findings of the job that is open, or of the one named ("" for no job). */
export function findingsOf(job?: string): Record<string, Finding> {
  const found: Record<string, Finding> = {};
  for (const [id, text] of Object.entries(loadRecord(key, job))) {
    try {
      const f = JSON.parse(text) as Partial<Finding> | null;
      if (f && (f.state === "present" || f.state === "absent")) found[id] = { state: f.state, text: String(f.text ?? ""), time: String(f.time ?? ""), note: String(f.note ?? "") };
    } catch {
      // A finding that cannot be read is as good as not looked at.
    }
  }
  return found;
}

/** Sets one finding in the job that is open; null takes it away. text: the finding in words, as the report shows it. */
export function setFinding(id: string, finding: Finding | null): void {
  const record = loadRecord(key);
  if (finding) record[id] = JSON.stringify(finding);
  else delete record[id];
  saveRecord(key, record);
}
