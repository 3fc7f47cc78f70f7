// "Keep in the job file" under a worksheet's answer. The answer comes as the event changeout:answer; the job file itself is
// loaded with the tap.

import { make, button } from "../../module/dom.ts";
import { currentJob, onJobChange } from "../../module/store.ts";
import { pageAddress } from "../../module/root.ts";
import { jobFile } from "./load.ts";
import type { Answer } from "./load.ts";

type Detail = Omit<Answer, "page">;

export function keepAnswers(): void {
  document.addEventListener("changeout:answer", (event) => {
    const section = event.target as HTMLElement;
    const slot = section.querySelector<HTMLElement>("[data-keep]");
    if (slot) offer(section, slot, (event as CustomEvent<Detail>).detail);
  });
}

const offers = new WeakMap<HTMLElement, (detail: Detail) => void>();

function offer(section: HTMLElement, slot: HTMLElement, detail: Detail): void {
  const known = offers.get(slot);
  if (known) return known(detail);
  let now = detail;
  let keptAs = ""; // the answer that was kept last
  const name = make("p", { class: "co-keep__job" });
  const state = make("p", { class: "co-keep__state", role: "status" });
  const keep = button("", "co-button co-button--quiet", () => {
    const focused = document.activeElement === keep;
    keep.disabled = true;
    const sent = now;
    jobFile().then((file) => file.keep(answerOf(section, sent))).then(({ sentence, save }) => {
      keptAs = identity(sent);
      keep.disabled = false;
      draw();
      state.replaceChildren(sentence + " ", save ? button("Save the job as a file", "co-button", save) : make("a", { class: "co-job__link", href: pageAddress("job") }, "Open the job file"));
      if (focused) state.querySelector<HTMLElement>("a, button")?.focus({ preventScroll: true }); // the button that had it is gone
    }, (error: unknown) => {
      console.error(error);
      keep.disabled = false;
      state.textContent = "The job file could not be opened, so the answer was not kept. Write it down, reload the page, and try again.";
    });
  });
  let drawn = "";
  const draw = (): void => { // at each key press: what has not changed is not written
    const job = currentJob();
    const done = keptAs !== "" && identity(now) === keptAs;
    const words = job ? `Job: ${job.title}${job.demo ? " (invented)" : ""}` : "No job is open: this makes one.";
    if (drawn === `${done} ${words}`) return;
    drawn = `${done} ${words}`;
    keep.hidden = done;
    keep.textContent = job ? "Keep in the job file" : "Keep in a new job file";
    name.textContent = words;
    name.hidden = done;
    if (!done) state.textContent = "";
  };
  slot.classList.add("co-keep");
  slot.replaceChildren(keep, name, state);
  slot.hidden = false;
  offers.set(slot, (next) => {
    now = next;
    slot.hidden = false;
    draw();
  });
  onJobChange(() => {
    if (!keep.disabled) draw();
  });
  draw();
  // An answer that is gone must not be kept: the box then says why there is none.
  const answer = section.querySelector("[data-answer]");
  if (answer) new MutationObserver(() => (slot.hidden = answer.getAttribute("aria-busy") === "true" || !answer.querySelector(".co-results, .co-verdict"))).observe(answer, { childList: true, attributes: true, attributeFilter: ["aria-busy"] });
}

const identity = (d: Detail): string => JSON.stringify([d.inputs, d.outputs, d.verdict, currentJob()?.id ?? ""]);

function answerOf(section: HTMLElement, d: Detail): Answer {
  return { ...d, page: section.closest<HTMLElement>("[data-page]")?.dataset.page ?? "" };
}
