// The frame of a document: its head, its style, the mark of a demonstration, and where people sign.

import type { Job } from "../job/schema.ts";
import { paperOf } from "./choices.ts";
import { escape, html } from "./html.ts";
import type { Markup } from "./html.ts";
import type { ReportOptions } from "./made.ts";
import { paperStyle } from "./paper.ts";
import { demo, demoLong, report } from "./words.ts";

/** The whole document. Its own policy lets nothing run and nothing load. */
export function page(job: Job, title: string, classes: string, body: Markup, o: ReportOptions): string {
  const policy = `<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'; img-src data:; base-uri 'none'; form-action 'none'">\n`;
  return `<!DOCTYPE html>
<html lang="en">
<head>
<meta charset="utf-8">
${o.style === "none" ? "" : policy}<meta name="viewport" content="width=device-width, initial-scale=1">
<meta name="color-scheme" content="light">
<meta name="format-detection" content="telephone=no">
<title>${escape(title)}${job.demo ? ` (${demo})` : ""}</title>
${o.style === "none" ? "" : `<style>${styleOf(job, title)}</style>\n`}</head>
<body class="${escape(classes)}">
${job.demo ? html`<div class="mark" aria-hidden="true">${demo}</div><p class="demo">${demoLong}</p>`.text : ""}${body.text}
</body>
</html>
`;
}

/** The style of a document of this job. */
export function styleOf(job: Job, title: string): string {
  return paperStyle(paperOf(job), title, job.demo);
}

export const titled = (kind: string, job: Job): string => `${kind}: ${job.title.trim() || report.untitled}`;

/** Name, place and date, signature: three lines to write on. */
export function signature(who: string, name: string): Markup {
  const w = report.decision;
  return html`<div class="sign"><p><strong>${who}</strong></p>${[[name, w.name], ["", w.date], ["", w.sign]].map(([text = "", label = ""]) => html`<span class="line line--long">${text}</span><p>${label}</p>`)}</div>`;
}
