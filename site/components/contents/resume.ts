// On the front page: back to where the person was.

import { load, loadRecord, onJobChange } from "../../module/store.ts";
import { make } from "../../module/dom.ts";
import { pageAddress, singleFile } from "../../module/root.ts";
import { onPageChange } from "../../module/one-page.ts";
import { ticksKey } from "../steps/steps.ts";

export function resume(): void {
  const slot = document.querySelector<HTMLElement>("[data-resume]");
  if (!slot) return;
  const draw = (): void => {
    slot.hidden = true;
    let last: { page?: unknown; title?: unknown; steps?: unknown; next?: unknown; number?: unknown };
    try {
      last = JSON.parse(load("last") ?? "{}") as typeof last;
    } catch {
      return;
    }
    if (typeof last.page !== "string" || typeof last.title !== "string" || !last.page) return;
    const done = Object.keys(loadRecord(ticksKey(last.page))).length;
    if (done === 0) return;
    const count = `${done} of ${String(last.steps)} steps ticked`;
    const next = typeof last.next === "string" && last.next !== "";
    slot.replaceChildren(make("a", { class: "co-button", href: next ? (singleFile ? "" : pageAddress(last.page)) + "#" + last.next : pageAddress(last.page) },
      next ? `Go on at step ${String(last.number)}: ${last.title}, ${count}` : `Go on: ${last.title}, ${count}`));
    slot.hidden = false;
  };
  onPageChange(draw);
  onJobChange(draw);
  draw();
}
