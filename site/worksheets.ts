// The second script: only pages that hold a worksheet or fields to write down load it, so that a page to read and tick stays
// light. The single file carries both.

import { keepAnswers } from "./components/job/keep.ts";
import { glances } from "./components/glance/glance.ts";
import { chosenSystem, worksheets } from "./components/worksheet/worksheet.ts";
import { stepUnits } from "./components/write/units.ts";

keepAnswers(); // these two first: they listen for what worksheets do
glances();
worksheets();
stepUnits(chosenSystem);
