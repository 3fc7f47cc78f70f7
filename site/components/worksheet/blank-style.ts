// How the blank form looks on paper. It stands here and not in app.css, because only the page that prints one needs it.

const rules = `
.co-blank{font-size: 9.5pt; line-height: 1.3}
.co-blank h1{margin: 0; font-size: 18pt}
.co-blank h2{margin: 9pt 0 3pt; padding-top: 3pt; font-size: 11pt}
.co-blank p, .co-blank ul{margin: 0}
.co-blank ul{padding-left: 12pt}
.co-blank__purpose{font-size: 10.5pt}
.co-blank__caution{margin-top: 4pt !important; padding: 3pt 5pt; border: 1.5pt solid #000; break-inside: avoid}
.co-blank__grid{display: grid; grid-template-columns: 1fr 1fr; gap: 6pt 16pt; margin-top: 3pt}
.co-blank__grid--short{grid-template-columns: 1fr 1fr 1fr}
.co-blank__grid--short > :first-child, .co-blank__grid--short > :last-child{grid-column: 1 / -1}
.co-blank__field{break-inside: avoid}
.co-blank__field--wide{grid-column: 1 / -1}
.co-blank__line{display: flex; flex-wrap: wrap; align-items: end; gap: 2pt 8pt; min-height: 16pt}
.co-blank__rule{flex: 1 1 60pt; height: 15pt; border-bottom: .75pt solid #000}
.co-blank__units{display: flex; flex-wrap: wrap; gap: 0 8pt; font-size: 8pt}
.co-blank__box{display: inline-block; width: 8pt; height: 8pt; border: .75pt solid #000; vertical-align: -.5pt}
.co-blank__note, .co-blank__small{font-size: 7.5pt; line-height: 1.25}
[data-printing="blank"] ~ .co-footer{margin-top: 6pt}
.co-blank__sources ul{columns: 3; column-gap: 10pt; padding-left: 8pt; font-size: 6pt; line-height: 1.2}
.co-blank__small h2{font-size: 9.5pt; border-top-width: .75pt}
.co-blank table{width: 100%; border-collapse: collapse}
.co-blank th, .co-blank td{height: 15pt; padding: 1pt 4pt; border: .75pt solid #000; text-align: left; font-weight: 600}
.co-blank tr{break-inside: avoid}
`;

let given = false;

/** Gives the document the style of the blank form, once. The policy of the pages allows sheets that script makes. */
export function blankStyle(): void {
  if (given || !("adoptedStyleSheets" in document)) return;
  given = true;
  const sheet = new CSSStyleSheet({ media: "print" });
  sheet.replaceSync(rules);
  document.adoptedStyleSheets = [...document.adoptedStyleSheets, sheet];
}
