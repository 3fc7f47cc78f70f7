// Everything a page can do beyond being read. Each part starts from data attributes, marks what it finds, and fails alone:
// a page with a broken part is still a page.

import { theme } from "./components/footer/theme.ts";
import { onePageAtATime } from "./module/one-page.ts";
import { steps } from "./components/steps/steps.ts";
import { write } from "./components/write/write.ts";
import { timers } from "./components/timers/timers.ts";
import { worksheets } from "./components/worksheet/worksheet.ts";
import { find } from "./components/contents/find.ts";
import { resume } from "./components/contents/resume.ts";
import { offline } from "./components/offline-state/offline.ts";
import { dockHeight } from "./components/dock/dock.ts";
import { unfoldForPrint } from "./module/print.ts";

for (const part of [theme, onePageAtATime, worksheets, steps, write, timers, find, resume, offline, dockHeight, unfoldForPrint]) {
  try {
    part();
  } catch (error) {
    console.error(error);
  }
}
