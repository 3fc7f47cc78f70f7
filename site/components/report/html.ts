// HTML as text, for the documents that leave the phone. What goes between the tags is escaped unless it is Markup made
// here; so a script in a note stays the words of the note.

/** Text that is HTML already. Only this file makes it. */
export class Markup {
  readonly text: string;
  constructor(text: string) {
    this.text = text;
  }
}

export type Part = string | number | Markup | null | readonly Part[];

export function escape(text: string): string {
  return text.replace(/[&<>"'`]/g, (c) => `&#${c.charCodeAt(0)};`).replace(/[\u0000-\u0008\u000b\u000c\u000e-\u001f\ufffe\uffff]/g, "");
}

/** Template of HTML: html`<p>${typed}</p>`. Values stand between tags or in double-quoted attributes, nowhere else. */
export function html(fixed: TemplateStringsArray, ...parts: Part[]): Markup {
  let text = fixed[0] ?? "";
  parts.forEach((part, i) => (text += written(part) + (fixed[i + 1] ?? "")));
  return new Markup(text);
}

function written(part: Part): string {
  if (part === null) return "";
  if (part instanceof Markup) return part.text;
  if (typeof part === "string") return escape(part);
  if (typeof part === "number") return escape(String(part));
  return part.map(written).join("");
}

/** Typed text with its own line breaks kept. */
export function lines(typed: string): Markup {
  return html`${typed.trim().split(/\n+/).map((l, i) => (i === 0 ? l : html`<br>${l}`))}`;
}

/** A drawing of the module. One that holds anything but shapes and words is left out. */
export function drawing(svg: string): Markup | null {
  const allowed = /^<svg\b[^<>]*>(?:[^<>]|<\/?(?:path|rect|circle|line|polyline|polygon|text|tspan|g|title|desc)\b[^<>]*>)*<\/svg>$/;
  if (!allowed.test(svg) || /\son\w+\s*=|\s(?:href|style|xlink:\w+)\s*=/i.test(svg)) return null;
  return new Markup(svg);
}

/** A picture in the document itself; null for anything else. */
export function picture(url: string | undefined): string | null {
  return url !== undefined && /^data:image\/(?:jpeg|png|webp);base64,[A-Za-z0-9+/]+={0,2}$/.test(url) ? url : null;
}

/** A string for a style sheet, between its quotes. */
export function cssString(text: string): string {
  return `"${text.replace(/[^A-Za-z0-9 .,:;()·-]/gu, (c) => `\\${(c.codePointAt(0) ?? 32).toString(16)} `)}"`;
}
