// Worksheet answers in the report. With a runner the module works them out again from the kept inputs, for the charts;
// what was kept stays what is shown.

import type { Reply, Request } from "../../module/wire.ts";
import type { Result } from "../job/schema.ts";
import type { Item } from "./evidence.ts";
import { drawing, html, lines } from "./html.ts";
import type { Markup } from "./html.ts";
import { timeText } from "./times.ts";
import { fill, report } from "./words.ts";

export type Run = (request: Request) => Reply;

const longest = 120; // letters of an entry; a log is in the job file

/** One answer, with its charts when they can be drawn and withCharts asks for them. */
export function answerBlock({ number, of: r }: Item<Result>, run: Run | undefined, withCharts: boolean): Markup {
  const again = run && withCharts ? rerun(r, run) : null;
  const figures = r.outputs.filter((o) => o.main || r.outputs.length <= 3);
  const entered = r.inputs.filter((i) => i.shown !== "" || i.text !== "").map((i) => {
    const text = i.shown || i.text;
    return `${i.label}: ${text.length > longest || text.includes("\n") ? report.work.inFile : text}`;
  });
  const charts = again?.charts ?? [];
  return html`<div class="answer ${charts.length > 0 ? "answer--drawn" : ""}"><div>
<p class="answer__title"><span class="no">${number}</span><strong>${r.title}</strong> <span class="soft">${timeText(r.time)}</span></p>
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

interface Again { charts: { title: string; svg: Markup }[]; differs: string }

function rerun(r: Result, run: Run): Again | null {
  let reply: Reply;
  try {
    reply = run({ worksheet: r.worksheet, system: r.system, inputs: r.inputs.map((i) => ({ id: i.id, text: i.text, unit: i.unit })), outputs: [] });
  } catch {
    return null; // no module, no chart; the answer is there
  }
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
