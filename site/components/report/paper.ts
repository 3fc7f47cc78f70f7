// The look of the documents: paper, so always light. It stands inside each file, because a file that is sent must bring
// its own. Sizes in rem on a screen, in points in print.

import type { Paper } from "./choices.ts";
import { cssString } from "./html.ts";
import { demo } from "./words.ts";

const sheet: Record<Paper, string> = { a4: "A4", letter: "Letter" };

/** foot: what stands at the foot of every page beside its number. */
export function paperStyle(paper: Paper, foot: string, isDemo: boolean): string {
  const head = isDemo ? `@top-center { content: ${cssString(demo)}; font: 700 9pt sans-serif; color: #1a1814; }` : "";
  return `@page { size: ${sheet[paper]}; margin: ${isDemo ? 19 : 15}mm 16mm 18mm; ${head}
@bottom-left { content: ${cssString(foot)}; font: 8pt sans-serif; color: #3f3a31; }
@bottom-right { content: counter(page) " / " counter(pages); font: 8pt sans-serif; color: #3f3a31; } }
${look}`;
}

const look = `
:root { color-scheme: light; --ink: #1a1814; --soft: #4a453b; --rule: #b5ab95; --accent: #0a4a47; --tint: #eef1e8;
  --serif: Charter, "Bitstream Charter", "Sitka Text", "Noto Serif", Cambria, Georgia, serif;
  --sans: system-ui, -apple-system, "Segoe UI", Roboto, "Noto Sans", "Liberation Sans", Arial, sans-serif; }
*, *::before, *::after { box-sizing: border-box; }
html { -webkit-text-size-adjust: 100%; text-size-adjust: 100%; background: #fff; }
body { margin: 0 auto; max-width: 50rem; padding: 1.25rem 1rem 3rem; color: var(--ink); font: 1rem/1.5 var(--sans); font-variant-numeric: lining-nums tabular-nums; overflow-wrap: break-word; }
h1, h2, h3 { font-family: var(--serif); line-height: 1.2; margin: 0; text-wrap: balance; break-after: avoid; }
h1 { font-size: 1.9em; letter-spacing: -.01em; }
h2 { display: flex; gap: .5em; font-size: 1.35em; margin-top: 1.9em; padding-top: .45em; border-top: .15em solid var(--ink); }
h2 .count { color: var(--accent); min-width: 1.1em; }
h3 { font-size: 1.1em; margin-top: 1.25em; }
p, ul, ol, dl { margin: .5em 0; }
ul, ol { padding-left: 1.25em; }
dd { margin: 0; }
.soft { color: var(--soft); font-size: .9em; }
.kind { margin: 0 0 .3em; font-weight: 700; color: var(--accent); }
.demo { margin: 0 0 1em; padding: .5em .75em; border: .125em dashed var(--ink); font-weight: 700; }
.mark { -webkit-print-color-adjust: exact; print-color-adjust: exact; position: fixed; inset: 0; display: none; align-items: center; justify-content: center; z-index: -1; font: 700 3em/1 var(--sans); color: #efece4; transform: rotate(-28deg); white-space: nowrap; }
.about { display: grid; grid-template-columns: repeat(auto-fit, minmax(11em, 1fr)); gap: .5em 1.5em; margin: 1em 0; }
.about dt, .brief dt, .figures dt { font-size: .85em; color: var(--soft); }
.about dd { font-weight: 600; }
.brief { margin: 1.25em 0 0; border: .125em solid var(--accent); }
.brief h2 { margin: 0; padding: .5em .75em; border: 0; background: var(--accent); color: #fff; -webkit-print-color-adjust: exact; print-color-adjust: exact; }
.brief h2 .count { color: #fff; }
.brief dl { margin: 0; padding: .25em .9em .6em; }
.brief dl > div { display: grid; grid-template-columns: 9.5em 1fr; gap: 0 1em; padding: .45em 0; border-top: .0625em solid var(--rule); }
.brief dl > div:first-child { border-top: 0; }
.brief dt { padding-top: .15em; }
.brief dd p { margin: 0 0 .25em; }
.brief .why { font: 600 1.2em/1.3 var(--serif); }
.prices { display: flex; flex-wrap: wrap; gap: .25em 1.75em; }
.no { display: inline-block; min-width: 1.75em; margin-right: .5em; padding: 0 .35em; border: .1em solid var(--accent); border-radius: 1em; text-align: center; font-weight: 700; font-size: .9em; line-height: 1.55; color: var(--accent); background: #fff; }
.found { list-style: none; margin: .5em 0; padding: 0; }
.found > li { display: grid; grid-template-columns: 2.75em 1fr; padding: .4em 0; border-top: .0625em solid var(--rule); break-inside: avoid; }
.found p { margin: 0; }
.found .no { justify-self: start; align-self: start; }
.photos { display: flex; flex-wrap: wrap; gap: .75em; margin: .5em 0; }
.photo { margin: 0; flex: 0 1 16em; break-inside: avoid; }
.photo img { display: block; max-width: 100%; width: auto; height: auto; max-height: 12em; }
.photo figcaption { font-size: .85em; line-height: 1.35; margin-top: .25em; }
.photos--large .photo { flex-basis: 20em; }
.photos--large .photo img { max-height: 16em; }
.scroll { overflow-x: auto; }
table { border-collapse: collapse; width: 100%; margin: .5em 0; font-size: .9375em; line-height: 1.4; }
th, td { padding: .35em 1em .35em 0; text-align: left; vertical-align: top; border-top: .0625em solid var(--rule); }
thead th { border-top: 0; border-bottom: .1em solid var(--ink); font-size: .9em; color: var(--soft); }
tbody tr:first-child > * { border-top: 0; }
tr { break-inside: avoid; }
td.number, th.number { white-space: nowrap; width: 1%; }
td.time { white-space: nowrap; }
tfoot td, tfoot th { border-top: .1em solid var(--ink); font-weight: 700; }
.answer { margin: .75em 0; padding-top: .5em; border-top: .0625em solid var(--rule); break-inside: avoid; }
.answer p { margin: .25em 0; }
.answer__verdict { padding-left: .75em; border-left: .25em solid var(--accent); }
.answer__warning { padding-left: .75em; border-left: .25em solid var(--ink); }
.figures { display: flex; flex-wrap: wrap; gap: .25em 1.75em; }
.figures dd { font-weight: 700; }
.answer--drawn { display: grid; grid-template-columns: minmax(0, 1fr) minmax(0, 24em); gap: 0 1.75em; align-items: start; }
.chart { margin: .25em 0 .75em; break-inside: avoid; }
.chart svg { display: block; width: 100%; height: auto; }
.chart figcaption { font-size: .85em; color: var(--soft); }
.chain { display: grid; grid-template-columns: minmax(0, 22em) minmax(0, 1fr); gap: 0 1.75em; align-items: start; }
.chain svg { display: block; width: 100%; height: auto; break-inside: avoid; }
.chain ul { margin-top: 0; }
.chain li { margin-bottom: .4em; }
.chain .open { font-style: italic; }
.options th[scope=col] { font-family: var(--serif); font-size: 1.05em; line-height: 1.25; color: var(--ink); vertical-align: bottom; }
.options td, .options th { padding: .45em .75em .45em .6em; }
.options tbody th { width: 6.5em; padding-left: 0; font-size: .9em; color: var(--soft); }
.options .best { background: var(--tint); border-left: .15em solid var(--accent); border-right: .15em solid var(--accent); -webkit-print-color-adjust: exact; print-color-adjust: exact; }
.options thead .best { border-top: .15em solid var(--accent); }
.options tr:last-child .best { border-bottom: .15em solid var(--accent); }
.options ul { margin: 0; padding-left: 1.1em; }
.options p { margin: 0 0 .25em; }
.options .price td { font-weight: 700; font-size: 1.1em; white-space: nowrap; }
.tag { display: block; margin-bottom: .2em; font: 700 .8em/1.3 var(--sans); color: var(--accent); }
.line { display: inline-block; min-width: 7em; border-bottom: .08em solid var(--ink); }
.line--long { display: block; min-width: 0; height: 2.4em; }
.decision { break-inside: avoid; }
.boxes { list-style: none; padding: 0; }
.boxes li { display: flex; flex-wrap: wrap; gap: .4em 1.5em; align-items: center; padding: .3em 0; }
.box { display: inline-flex; gap: .5em; align-items: center; }
.box::before { content: ""; flex: none; width: 1.1em; height: 1.1em; border: .12em solid var(--ink); }
.signs { display: grid; grid-template-columns: repeat(auto-fit, minmax(15em, 1fr)); gap: .75em 2.5em; margin-top: .75em; }
.sign { break-inside: avoid; }
.sign p { margin: .25em 0 0; font-size: .9em; color: var(--soft); }
.sign strong { color: var(--ink); font-size: 1.1em; }
.sign .line--long { display: flex; align-items: flex-end; color: var(--ink); }
.sign .line--long { font-size: 1.1em; }
.signs--row { display: grid; grid-template-columns: 2fr 1.5fr 2fr; gap: 1.5em; }
.limits li { margin-bottom: .3em; }
.keep { break-inside: avoid; }
h2 + .soft, h3 + .soft { break-after: avoid; }
.plain { font-size: 1.0625rem; max-width: 42rem; }
.plain h2 { font-size: 1.2em; margin-top: 1.1em; padding-top: .35em; border-top-width: .1em; }
.plain .choices { list-style: none; padding: 0; margin: .5em 0; }
.plain .choices > li { padding: .5em .75em; border: .0625em solid var(--rule); margin-top: -.0625em; break-inside: avoid; }
.plain .choices > li.best { border: .15em solid var(--accent); background: var(--tint); -webkit-print-color-adjust: exact; print-color-adjust: exact; }
.plain .choices p { margin: 0; }
.plain .choices .name { font-weight: 700; }
.plain .columns { columns: 2; column-gap: 2em; }
.plain .columns li { break-inside: avoid; }
.co-chart { background: #fff; color: var(--ink); }
.co-chart text { fill: currentColor; stroke: none; font-family: var(--sans); font-size: 14px; font-variant-numeric: tabular-nums; }
.co-chart__axis, .co-chart__tick { stroke: currentColor; stroke-width: 1.25; fill: none; }
.co-chart__grid { stroke: #cfc7b4; stroke-width: .75; fill: none; }
text.co-chart__tick, text.co-chart__axis, .co-chart__label { fill: currentColor; stroke: none; }
.co-chart__data { r: 3.2px; fill: #fff; stroke: currentColor; stroke-width: 1.75; }
.co-chart__line { fill: none; stroke: currentColor; stroke-width: 1.5; }
.co-chart__fit { fill: none; stroke: var(--accent); stroke-width: 2.5; stroke-linejoin: round; }
.co-chart__limit { fill: none; stroke: currentColor; stroke-width: 2.25; stroke-dasharray: 9 5; }
.co-chart__target { fill: none; stroke: currentColor; stroke-width: 1.5; stroke-dasharray: 2 4; }
.co-chart__band { fill: var(--accent); fill-opacity: .16; stroke: none; }
text.co-chart__verdict, .co-chart__verdict text { fill: var(--accent); font-weight: 700; }
text.co-chart__mark { fill: currentColor; font-weight: 700; paint-order: stroke; stroke: #fff; stroke-width: 4px; stroke-linejoin: round; }
.co-chain__box { fill: #fff; stroke: var(--ink); stroke-width: 1.5; }
.co-chain__name { font: 700 14px var(--sans); fill: var(--ink); }
.co-chain__arrow { fill: none; stroke: var(--accent); stroke-width: 2.5; }
.co-chain__arrow--open { stroke: var(--soft); stroke-width: 1.75; stroke-dasharray: 6 5; }
.co-chain__label { fill: #fff; stroke: var(--accent); stroke-width: 1.25; }
.co-chain__number { font: 700 13px var(--sans); fill: var(--ink); }
@media screen and (max-width: 40em) {
  .brief dl > div, .chain, .answer--drawn { grid-template-columns: minmax(0, 1fr); }
  td.time { white-space: normal; }
  .chain ul { margin-top: .75em; }
  .photo, .photos--large .photo { flex-basis: 100%; }
  .plain .columns { columns: 1; }
  .options table, .options tbody, .options tr, .options td { display: block; width: auto; }
  .options thead { display: none; }
  .options tbody th { display: block; width: auto; font-size: 1em; color: var(--ink); }
  .options td { border-top: 0; padding: .35em .75em; }
  .options td::before { content: attr(data-label); display: block; font-size: .85em; font-weight: 400; color: var(--soft); }
  .options tr { border-top: .0625em solid var(--rule); padding: .35em 0; }
  .options .best, .options tr:last-child .best { border: 0; border-left: .25em solid var(--accent); }
  .options .price td { white-space: normal; }
}
@media print {
  body { max-width: none; padding: 0; font-size: 9.75pt; line-height: 1.42; }
  h2 { margin-top: 1.5em; }
  .plain { font-size: 10.25pt; line-height: 1.36; max-width: none; }
  .plain h2 { margin-top: .7em; padding-top: .25em; }
  .plain p, .plain ul, .plain ol { margin-block: .3em; }
  .plain .demo { padding: .25em .75em; margin-bottom: .6em; }
  .mark { display: flex; }
  .scroll { overflow: visible; }
  p, li { orphans: 3; widows: 3; }
  .options { break-inside: avoid; }
  thead { display: table-header-group; }
  tfoot { display: table-row-group; }
}
`;
