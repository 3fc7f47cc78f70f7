// On the front page: back to where the person was. Every page notes where something was ticked, written, timed, worked out or
// answered last.

import { load, loadRecord, onJobChange, save } from "../../module/store.ts";
import { make } from "../../module/dom.ts";
import { pageAddress, singleFile } from "../../module/root.ts";
import { onPageChange } from "../../module/one-page.ts";
import { known, ticksKey } from "../steps/steps.ts";

interface Last {
  page: string;
  title: string;
  steps: string; // how many the page has
  next: string; // id of the step or worksheet to go on with
  number: string; // of that step
  then?: string; // the page after it, once every step is ticked
  thenTitle?: string;
}

const work = {
  input: "[data-tick], [data-write], [data-input], [data-wait], [data-assess]",
  click: "[data-wait] button, .co-wait__together button, [data-form] button",
};

export function resume(): void {
  let noted: Element | null = null;
  onJobChange(() => (noted = null));
  for (const [event, at] of Object.entries(work)) {
    addEventListener(event, ({ target }) => {
      const place = target instanceof Element && target.closest(at);
      if (!place || (place === noted && !place.matches("[data-tick]"))) return; // each key press asks
      noted = place;
      note(place);
    });
  }
  addEventListener("changeout:cleared", ({ target }) => {
    noted = null;
    if (last()?.page === (target as HTMLElement).dataset.page) save("last", null);
  }, true);
  const slot = document.querySelector<HTMLElement>("[data-resume]");
  if (!slot) return;
  const draw = (): void => {
    const l = last();
    slot.hidden = !l;
    if (!l) return;
    const done = Object.keys(loadRecord(ticksKey(l.page))).length;
    slot.replaceChildren(l.then
      ? link(pageAddress(l.then), `Go on with: ${l.thenTitle}. All ${l.steps} steps of ${l.title} are ticked`)
      : link(l.next ? (singleFile ? "" : pageAddress(l.page)) + "#" + l.next : pageAddress(l.page),
        `Go on${l.number && ` at step ${l.number}`}: ${l.title}${done ? `, ${done} of ${l.steps} steps ticked` : ""}`));
  };
  onPageChange(draw);
  onJobChange(draw);
  addEventListener("pageshow", draw); // the browser may show the page as it was left
  draw();
}

const link = (href: string, text: string): HTMLElement => make("a", { class: "co-button", href }, text);

function last(): Last | null {
  try {
    const l = JSON.parse(load("last") ?? "null") as Last | null;
    return l?.page && l.title ? l : null;
  } catch {
    return null;
  }
}

function note(at: Element): void {
  const page = at.closest<HTMLElement>("[data-page]");
  if (!page) return;
  const steps = known.get(page) ?? [];
  const open = steps.filter((s) => !s.box.checked);
  const here = open.find((s) => s.row.contains(at));
  const sheet = here ? null : at.closest("[data-worksheet]");
  const step = here ?? (sheet ? undefined : open[0]);
  const after = steps[0] && !open[0] ? page.querySelector('[rel="next"]') : null;
  const text = JSON.stringify({
    page: page.dataset.page ?? "", title: page.querySelector("h1")?.textContent ?? "", steps: String(steps.length), next: (sheet ?? step?.row)?.id ?? "", number: step?.number ?? "",
    // "../stages/charge.html" on the site, "#stages/charge" in the single file
    ...(after && { then: after.getAttribute("href")?.replace(/^[./#]+|\.html$/g, ""), thenTitle: after.lastElementChild?.textContent ?? "" }),
  } satisfies Last);
  save("last", text);
}
