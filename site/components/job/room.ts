// How much room the jobs take, and how safe they are: said as the browser says it.

import { button, make } from "../../module/dom.ts";
import { currentJob } from "../../module/store.ts";
import { count } from "./form.ts";
import type { Jobs, Kept } from "./store.ts";

export function room(jobs: Jobs, list: Kept[]): HTMLElement {
  const text = make("p", { "data-job-room": "" }, own(list));
  const kept = make("p", { "data-job-persisted": "" });
  const ask = make("p", { class: "co-job__buttons", hidden: "" });
  const where = jobs.kind === "local" ? "This browser has no database for pages like this one, so there is room for a few photos only."
    : jobs.kind === "memory" ? "This browser keeps nothing, so a job lasts as long as this page."
    : "";
  void fill();
  return make("section", {}, make("h2", {}, "Room, and how safe it is"), text, where ? make("p", {}, where) : null,
    make("p", {}, "Everything lies in this browser on this phone. Nothing is sent anywhere. The browser may delete it: when its data are cleared, when the phone runs short of room, or after weeks without a visit."), kept, ask);

  async function fill(): Promise<void> {
    try {
      const e = await navigator.storage.estimate();
      if (e.usage !== undefined && e.quota !== undefined && e.quota > 0) text.textContent += ` With the saved handbook the browser counts ${bytes(e.usage)} of the ${bytes(e.quota)} it allows.`;
    } catch {
      // It does not say.
    }
    let safe: boolean | null = null;
    try {
      safe = await navigator.storage.persisted();
    } catch {
      // An old browser, or a page from a file: no promise to ask for.
    }
    draw(safe);
  }

  function draw(safe: boolean | null): void {
    if (jobs.kind === "memory") return;
    kept.textContent = safe === null ? "This browser makes no promise to keep it. Save finished jobs as files."
      : safe ? "The browser has promised not to delete it when room runs short. Clearing its data still deletes it."
      : "The browser has not promised to keep it.";
    ask.hidden = safe !== false;
    ask.replaceChildren(button("Ask the browser to keep it", "co-button co-button--quiet", () => {
      void askToPersist().then((yes) => {
        draw(yes);
        if (!yes) kept.textContent = "The browser said no. It often says yes once the handbook is on the home screen. Save finished jobs as files.";
      });
    }));
  }
}

/** Asks the browser not to delete what is kept. False when it does not promise. */
export async function askToPersist(): Promise<boolean> {
  try {
    return (await navigator.storage.persisted()) || (await navigator.storage.persist());
  } catch {
    return false;
  }
}

function own(list: Kept[]): string {
  const size = list.reduce((n, j) => n + JSON.stringify(j).length + j.photos.reduce((m, p) => m + p.size, 0), 0);
  const open = list.find((j) => j.id === currentJob()?.id);
  const photos = open ? open.photos.reduce((m, p) => m + p.size, 0) : 0;
  return `${count(list.length, "job takes", "jobs take")} about ${bytes(size)}.${open && photos > 0 ? ` The photos of the open one take ${bytes(photos)}.` : ""}`;
}

export function bytes(n: number): string {
  if (!(n >= 0)) return "an unknown amount";
  if (n < 1e6) return `${Math.ceil(n / 1000)} KB`;
  return n < 1e9 ? `${(n / 1e6).toFixed(1)} MB` : `${(n / 1e9).toFixed(1)} GB`;
}
