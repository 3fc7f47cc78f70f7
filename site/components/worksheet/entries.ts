// What a person entered, as one thing: to put into a link, to take out of one, to keep aside and to put back. Text and
// unit go as typed; nothing here reads a number.
//
// A link is the address of the worksheet's own page with a fragment, which browsers send to no server:
//
//	worksheets/saturation.html#fill?refrigerant=R-410A&pressure=250&pressure.unit=psig
//
// In the single file, when it comes from a server, the page's name stands before it: #worksheets/saturation/fill?…
// An input id holds no point, so "ID.unit" is its unit and any other "ID.word" an answer about it, such as log.columns.

export interface Entries {
  values: Record<string, string>; // by input id, and the answers about an input
  units: Record<string, string>; // by input id
}

export const longest = 4000; // characters: some messengers cut a longer address

export function same(a: Entries, b: Entries): boolean {
  const list = (e: Entries): string => JSON.stringify([Object.entries(e.values).sort(), Object.entries(e.units).filter(([id]) => e.values[id]).sort()]);
  return list(a) === list(b);
}

export function toFragment(e: Entries): string {
  const parts: string[] = [];
  for (const [id, text] of Object.entries(e.values)) {
    if (text === "") continue;
    parts.push(`${escape(id)}=${escape(text)}`);
    const unit = e.units[id];
    if (unit) parts.push(`${escape(id)}.unit=${escape(unit)}`);
  }
  // What finds links in a message leaves a comma or point at the end out.
  return "fill?" + parts.join("&").replace(/[,.:;/]$/, percent);
}

/** Reads a fragment; page is what stands before it in the single file, "" on a page of its own. */
export function fromFragment(hash: string): { page: string; entries: Entries } | null {
  const found = /^#?(?:(.+?)\/)?fill(?:\?|%3f)(.*)$/is.exec(hash);
  if (!found) return null;
  const entries: Entries = { values: {}, units: {} };
  for (const part of (found[2] ?? "").split("&")) {
    const at = part.indexOf("=");
    if (at < 1) continue;
    const name = unescape(part.slice(0, at));
    const text = unescape(part.slice(at + 1));
    if (name.endsWith(".unit")) entries.units[name.slice(0, -5)] = text;
    else entries.values[name] = text;
  }
  return { page: unescape(found[1] ?? ""), entries };
}

function escape(text: string): string {
  return encodeURIComponent(text).replace(/[!'()*]/g, percent).replace(/%2C/g, ",").replace(/%3A/g, ":").replace(/%2F/g, "/");
}

function percent(c: string): string {
  return "%" + c.charCodeAt(0).toString(16).toUpperCase().padStart(2, "0");
}

function unescape(text: string): string {
  try {
    return decodeURIComponent(text);
  } catch {
    return text; // a link typed by hand
  }
}
