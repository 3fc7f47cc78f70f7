// Every page runs this first of all, before the style and anything drawn (a script that may come when it likes comes half a
// second later on a slow phone). It does what would otherwise be seen to happen late: the chosen light or dark, the room for
// the line of the open job. On a page with a worksheet that is kept on the phone, the calculator's worker begins here: it makes
// itself ready beside all the rest. Over the air that would only hold up what a person came to read, so there it begins at
// the first sign of use.

import { begins } from "./module/begins.ts";
import { prepareBeside } from "./module/beside.ts";
import { currentJob, load } from "./module/store.ts";

const html = document.documentElement;
const theme = load("theme");
if (theme) html.dataset.theme = theme;
if (currentJob()) html.dataset.jobOpen = "";
if ("sheets" in html.dataset && navigator.serviceWorker?.controller) {
  prepareBeside();
  if (html.dataset.sheets === "worksheet") begins();
}
