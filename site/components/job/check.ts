// Reads a job file that came from outside. It is refused as a whole, with the place and the reason, unless everything in
// it is as schema.ts says; so a file that is read loses nothing.

import { format, schemaOfFile, version } from "./schema.ts";
import type { JobFile, Rule } from "./schema.ts";

/** Turns a file of one version into the next: the version it starts from, and what it changes. */
export interface Upgrade { from: number; change: (file: Record<string, unknown>) => Record<string, unknown> }

/** Version 1 is the first, so there is none yet. Add one for every new version, and a saved file of the old one to the tests. */
const upgrades: Upgrade[] = [];

export type Read = { file: JobFile } | { reason: string };

/** Reads the text of a file. Never throws. */
export function readJobFile(text: string, steps: Upgrade[] = upgrades, newest: number = version): Read {
  let value: unknown;
  try {
    value = JSON.parse(text);
  } catch {
    return { reason: "This is not a job file: it is not JSON, or a part of it is missing." };
  }
  if (!isObject(value) || value.format !== format) return { reason: `This is not a job file: its format is ${shown(isObject(value) ? value.format : value)}, a job file has “${format}”.` };
  let file = value;
  if (typeof file.version !== "number" || !Number.isInteger(file.version) || file.version < 1) return { reason: `The file does not say its version: ${shown(file.version)} is given, a whole number from 1 to ${newest} is allowed.` };
  if (file.version > newest) return { reason: `The file is of version ${file.version}, made by a newer handbook. This one reads versions up to ${newest}. Update the handbook, then open the file again.` };
  try {
    while ((file.version as number) < newest) {
      const step = steps.find((s) => s.from === file.version);
      if (!step) return { reason: `This handbook no longer reads version ${String(file.version)}.` };
      file = { ...step.change(file), version: step.from + 1 };
    }
  } catch {
    return { reason: `The file says version ${String(value.version)}, but is not built like one.` };
  }
  file = { ...file, version }; // newest differs from it in tests alone
  const reason = broken(file, schemaOfFile, "") ?? contradiction(file as unknown as JobFile);
  return reason ? { reason } : { file: file as unknown as JobFile };
}

/** The first place where a value breaks a rule, as a sentence; null when it keeps all. */
export function broken(value: unknown, rule: Rule, place: string): string | null {
  const says = (allowed: string): string => `${place || "The file"}: ${shown(value)} is given, ${allowed} is allowed.`;
  if (rule.anyOf) return value === null ? null : broken(value, rule.anyOf[0], place);
  if (rule.enum) return rule.enum.includes(value as string) ? null : says(rule.enum.map(shown).join(" or "));
  switch (rule.type) {
    case "string":
      if (typeof value !== "string") return says("a text");
      if (rule.maxLength !== undefined && value.length > rule.maxLength) return `${place}: a text of ${value.length} signs is given, up to ${rule.maxLength} are allowed.`;
      if (rule.pattern !== undefined && !new RegExp(rule.pattern).test(value)) return says(rule.description ?? "another text");
      return null;
    case "boolean":
      return typeof value === "boolean" ? null : says("true or false");
    case "number":
      if (typeof value !== "number" || !Number.isFinite(value)) return says("a number");
      if ((rule.minimum !== undefined && value < rule.minimum) || (rule.maximum !== undefined && value > rule.maximum)) return says(`a number from ${rule.minimum} to ${rule.maximum}`);
      return null;
    case "array":
      if (!Array.isArray(value)) return says("a list");
      if (rule.maxItems !== undefined && value.length > rule.maxItems) return `${place}: ${value.length} entries are given, up to ${rule.maxItems} are allowed.`;
      for (let i = 0; i < value.length; i++) {
        const reason = rule.items && broken(value[i], rule.items, `${place}[${i + 1}]`);
        if (reason) return reason;
      }
      return null;
    default:
      return brokenObject(value, rule, place, says);
  }
}

function brokenObject(value: unknown, rule: Rule, place: string, says: (allowed: string) => string): string | null {
  if (!isObject(value)) return says("an object");
  const at = (key: string): string => (place ? `${place}.${key}` : key);
  const names = Object.keys(value);
  if (rule.maxProperties !== undefined && names.length > rule.maxProperties) return `${place}: ${names.length} entries are given, up to ${rule.maxProperties} are allowed.`;
  for (const key of rule.required ?? []) if (!has(value, key)) return `${at(key)} is missing.`;
  for (const key of names) {
    if (rule.propertyNames && !new RegExp(rule.propertyNames.pattern).test(key)) return `${place}: the name ${shown(key)} is given, ${rule.propertyNames.description} is allowed.`;
    const known = rule.properties && has(rule.properties, key) ? rule.properties[key] : rule.additionalProperties;
    if (key === "__proto__" || !known) return `${at(key)} is not known to this handbook, and would be lost.`;
    const reason = broken(value[key], known, at(key));
    if (reason) return reason;
  }
  return null;
}

/** What the rules cannot say: ids stand once, a picture is as large as it says. */
function contradiction(file: JobFile): string | null {
  if (file.jobs.length === 0) return "The file holds no job.";
  const twice = (list: { id: string }[], place: string): string | null => {
    const seen = new Set<string>();
    for (const { id } of list) {
      if (seen.has(id)) return `${place}: the id ${shown(id)} is given twice, once is allowed.`;
      seen.add(id);
    }
    return null;
  };
  const found = twice(file.jobs, "jobs");
  if (found) return found;
  for (const [i, job] of file.jobs.entries()) {
    const at = `jobs[${i + 1}]`;
    for (const part of ["failures", "readings", "results", "notes", "photos", "ledger"] as const) {
      const reason = twice(job[part], `${at}.${part}`);
      if (reason) return reason;
    }
    for (const [k, photo] of job.photos.entries()) {
      const bytes = (photo.data.length / 4) * 3 - (photo.data.endsWith("==") ? 2 : photo.data.endsWith("=") ? 1 : 0);
      if (photo.data.length % 4 !== 0 || bytes !== photo.size) return `${at}.photos[${k + 1}].data: the picture has ${Math.floor(bytes)} bytes, ${photo.size} are said.`;
      if (!pictureOf(photo.type, photo.data)) return `${at}.photos[${k + 1}].data: this is no picture of the type ${photo.type}.`;
    }
  }
  return null;
}

/** The first bytes tell the kind of a picture: as base64, these. */
function pictureOf(type: string, data: string): boolean {
  return data.startsWith(type === "image/png" ? "iVBORw0KGgo" : type === "image/webp" ? "UklGR" : "/9j/");
}

function isObject(value: unknown): value is Record<string, unknown> {
  return typeof value === "object" && value !== null && !Array.isArray(value);
}

function shown(value: unknown): string {
  if (value === undefined) return "nothing";
  if (typeof value === "string") return `“${value.length > 60 ? value.slice(0, 60) + "…" : value}”`;
  if (Array.isArray(value)) return "a list";
  return isObject(value) ? "an object" : String(value);
}

const has = (value: object, key: string): boolean => Object.prototype.hasOwnProperty.call(value, key);
