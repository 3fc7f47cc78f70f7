// Everything a page can do beyond being read. Each part starts from data attributes, marks what it finds, and fails alone:
// a page with a broken part is still a page. Fields start before the steps, which set those far down aside. What a
// worksheet needs is in worksheets.ts, which only pages with one load.

import { theme } from "./components/footer/theme.ts";
import { onePageAtATime } from "./module/one-page.ts";
import { steps } from "./components/steps/steps.ts";
import { write } from "./components/write/write.ts";
import { timers } from "./components/timers/timers.ts";
import { search } from "./components/search/open.ts";
import { resume } from "./components/contents/resume.ts";
import { offline } from "./components/offline-state/offline.ts";
import { dockHeight } from "./components/dock/dock.ts";
import { jobLine } from "./components/job/line.ts";
import { assessment } from "./components/assess/open.ts";
import { forPrint } from "./module/print.ts";
import { tableMore } from "./components/table/more.ts";
import { afterwards } from "./module/begins.ts";

const start = (part: () => void): void => {
  try {
    part();
  } catch (error) {
    console.error(error);
  }
};
// At once: what stands where a person looks first, and what sets controls aside before the browser looks at every one of them,
// which it does as soon as this script has run. Then the rest, each by itself, so that a finger finds the page answering in between.
// Where a worksheet is about to show its answer, that goes before everything.
afterwards(() => {
  for (const part of [onePageAtATime, jobLine, resume, write, steps]) start(part);
  later(search, theme, timers, offline, dockHeight, assessment, tableMore, forPrint);
});

function later(...parts: (() => void)[]): void {
  for (const part of parts) setTimeout(start, 0, part);
}
