// Worksheet answers in the report. The module works them out again from the kept inputs, for the charts; what was kept
// stays what is shown.

import { NotLoaded } from "../../module/fetch.ts";
import type { Reply, Request } from "../../module/wire.ts";
import type { Result } from "../job/schema.ts";
import type { Item } from "./evidence.ts";
import { drawing, html, lines } from "./html.ts";
import type { Markup } from "./html.ts";
import { timeText } from "./times.ts";
import { fill, report } from "./words.ts";

/** Answers worked out again, by the id of the kept one. */
export type Again = ReadonlyMap<string, Reply>;

/** Works each kept answer out again. One that fails has no chart; the answer itself is there. */
export async function again(results: readonly Result[], evaluate: (request: Request) => Promise<Reply>): Promise<Again> {
  const replies = new Map<string, Reply>();
  for (const r of results) {
    try {
      replies.set(r.id, await evaluate({ worksheet: r.worksheet, system: r.system, inputs: r.inputs.map((i) => ({ id: i.id, text: i.text, unit: i.unit })), outputs: [] }));
    } catch (error) {
      console.error(error);
      if (error instanceof NotLoaded) break; // it would be looked for once more for each answer
    }
  }
  return replies;
}

const longest = 120; // letters of an entry; a log is in the job file

/** One answer, with the charts of the one worked out again. replaced: number of the later answer to the same log, which has the chart. */
export function answerBlock({ number, of: r }: Item<Result>, reply: Reply | undefined, replaced: number | undefined): Markup {
  const again = reply && replaced === undefined ? compare(r, reply) : null;
  const figures = r.outputs.filter((o) => o.main || r.outputs.length <= 3);
  const entered = r.inputs.filter((i) => i.shown !== "" || i.text !== "").map((i) => {
    const text = i.shown || i.text;
    return `${i.label}: ${text.length > longest || text.includes("\n") ? report.work.inFile : text}`;
  });
  const charts = again?.charts ?? [];
  return html`<div class="answer ${charts.length > 0 ? "answer--drawn" : ""}"><div>
<p class="answer__title"><span class="no">${number}</span><strong>${r.title}</strong> <span class="soft">${timeText(r.time)}</span></p>
${replaced === undefined ? null : html`<p class="answer__warning">${fill(report.work.replaced, { n: replaced })}</p>`}
${r.verdict ? html`<p class="answer__verdict"><strong>${r.verdict.title}.</strong> ${r.verdict.text}</p>` : null}
${figures.length > 0 ? html`<dl class="figures">${figures.map((o) => html`<div><dt>${o.label}</dt><dd>${o.text}</dd></div>`)}</dl>` : null}
${r.warnings.map((w) => html`<p class="answer__warning">${w}</p>`)}
${again && again.differs !== "" ? html`<p class="answer__warning">${fill(report.work.differs, { answer: again.differs })}</p>` : null}
${r.note.trim() !== "" ? html`<p>${lines(r.note)}</p>` : null}
${entered.length > 0 ? html`<p class="soft">${report.work.input}: ${entered.join("; ")}.</p>` : null}
</div>${charts.length === 0 ? null : html`<div>${charts.map((c) => html`<figure class="chart">${c.svg}<figcaption>${sentence(c.title)} ${report.work.chart}</figcaption></figure>`)}</div>`}
</div>`;
}

const sentence = (words: string): string => (/[.!?]$/.test(words) ? words : `${words}.`);

interface Compared { charts: { title: string; svg: Markup }[]; differs: string }

function compare(r: Result, reply: Reply): Compared | null {
  if (reply.problems.length > 0) return null;
  const charts = reply.charts.flatMap((c) => {
    const svg = drawing(c.svg);
    return svg ? [{ title: c.title, svg }] : [];
  });
  return { charts, differs: difference(r, reply) };
}

/** The new answer in words where a main figure or the verdict is another than the kept one. */
function difference(r: Result, reply: Reply): string {
  if (r.verdict && reply.verdict && r.verdict.id !== reply.verdict.id) return reply.verdict.title;
  for (const kept of r.outputs) {
    if (!kept.main || kept.si === null) continue;
    const now = reply.outputs.find((o) => o.id === kept.id);
    const value = Number(now?.value);
    // One part in a million is far below any instrument and far above the last digit of the text that is kept.
    if (now && !(Math.abs(value - kept.si) <= 1e-6 * Math.max(Math.abs(kept.si), 1e-9))) return `${now.label}: ${now.text}`;
  }
  return "";
}
