// Paper cannot be unfolded or tapped. For the print everything folded is opened, each link to another page gets a number
// and a line at the foot that says where it leads, and the foot says when it was printed. Afterwards all is as it was. A worksheet has its own part in this, paper.ts.

import { hourMinute } from "../components/timers/clock.ts";
import { all, make } from "./dom.ts";
import { currentPage, onPageChange } from "./one-page.ts";
import { printAs } from "./print-as.ts";
import { singleFile } from "./root.ts";

/** Links in running text to other pages. Sources show their address themselves; words of the glossary need none on paper. */
const leading = ".co-prose a[href]:not(.co-cite, .co-term, .co-row, .co-button, .co-sources a, .co-worksheet a, .co-assess a, .co-contents a)";

const alone = (): boolean => currentPage()?.dataset.printing === "steps";

export function forPrint(): void {
  let undo: (() => void)[] = [];
  addEventListener("beforeprint", () => {
    restore();
    for (const d of all<HTMLDetailsElement>(document, "details:not([open]):not([data-paste]):not([data-example])")) {
      d.open = true;
      undo.push(() => (d.open = false));
    }
    const page = currentPage();
    if (page && !alone()) footnotes(page);
    const foot = document.querySelector(".co-footer__version");
    const now = new Date();
    add(foot, "after", make("p", { class: "co-footer__printed" }, `Printed on ${now.toLocaleDateString("en-GB", { day: "numeric", month: "long", year: "numeric" })} at ${hourMinute(now)}.${alone() ? " The steps alone: reasons, worksheets and sources stand in the handbook." : ""}`));
  });
  addEventListener("afterprint", restore);
  for (const b of all(document, "[data-print]")) {
    b.hidden = false;
    b.addEventListener("click", () => print()); // worksheets.js goes before it, where answers have to be waited for
  }

  // Evacuate and hold is 23 sheets of A4, and its steps with their cautions 15.
  for (const b of all(document, "[data-print-steps]")) {
    const offer = (): void => void (b.hidden = !currentPage()?.querySelector("[data-step]"));
    onPageChange(offer);
    offer();
    b.addEventListener("click", () => {
      const page = currentPage();
      if (page) printAs(page, "steps");
    });
  }

  function restore(): void {
    for (const back of undo) back();
    undo = [];
  }

  function add(to: Element | null, where: "after" | "append", e: HTMLElement): void {
    to?.[where](e);
    undo.push(() => e.remove());
  }

  function footnotes(page: HTMLElement): void {
    const numbers = new Map<string, number>();
    const lines = make("ol", { class: "co-footnotes__list" });
    for (const a of all<HTMLAnchorElement>(page, leading)) {
      const to = away(a);
      if (to === "") continue;
      let n = numbers.get(to);
      if (!n) {
        n = numbers.size + 1;
        numbers.set(to, n);
        lines.append(make("li", {}, `${a.textContent?.trim() ?? ""}: `, make("span", { class: "co-footnotes__address" }, to)));
      }
      add(a, "after", make("sup", { class: "co-footnotes__mark" }, `(${n})`));
    }
    if (numbers.size === 0) return;
    const box = make("section", { class: "co-footnotes" }, make("h2", {}, "Where the numbered links lead"), lines);
    const sources = page.querySelector(".co-prose > .co-sources");
    if (sources) {
      sources.before(box);
      undo.push(() => box.remove());
    } else add(page.querySelector(".co-prose"), "append", box);
  }
}

/** Where a link leads when it leaves the page, else "". In the single file a page's name is its address. */
function away(a: HTMLAnchorElement): string {
  if (singleFile) {
    const id = a.hash.slice(1);
    return a.protocol !== location.protocol ? a.href : currentPage()?.contains(document.getElementById(id)) ? "" : id;
  }
  return a.pathname === location.pathname && a.origin === location.origin ? "" : a.href;
}
