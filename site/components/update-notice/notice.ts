// Tells of a newer version that is saved whole, and waits for the tap that uses it.

import { button, make } from "../../module/dom.ts";
import { ask } from "../offline-state/connection.ts";
import type { ToWorker } from "../../worker/messages.ts";

export function notice(registration: ServiceWorkerRegistration, running: string): void {
  let repaired = false;
  const announce = async (): Promise<void> => {
    const waiting = registration.waiting;
    if (!waiting || !navigator.serviceWorker.controller) return;
    // A waiting script that does not say what it holds is not the handbook's, for example an empty file with the right
    // name. The next look at the server puts another in its place.
    const [held, now] = await Promise.all([waiting, navigator.serviceWorker.controller].map((worker) => ask(worker, { type: "state", version: running })));
    if (waiting !== registration.waiting) return;
    if (held && held.digest === now?.digest) return; // the same once more
    if (held && held.files === held.total) show(registration, held.version);
    else if (!repaired) {
      repaired = true;
      registration.update().catch(() => undefined);
    }
  };
  const follow = (worker: ServiceWorker | null): void => worker?.addEventListener("statechange", () => void announce());
  registration.addEventListener("updatefound", () => follow(registration.installing));
  follow(registration.installing);
  void announce();
}

function show(registration: ServiceWorkerRegistration, version: string): void {
  const slot = document.querySelector<HTMLElement>("[data-update]");
  if (!slot || slot.dataset.update === version) return;
  slot.dataset.update = version;
  const use = button("Use it now", "co-button", () => {
    use.disabled = true;
    registration.waiting?.postMessage({ type: "use" } satisfies ToWorker);
  });
  const later = button("Later", "co-button co-button--quiet", () => {
    slot.hidden = true;
    document.querySelector<HTMLElement>(".co-dock__link")?.focus(); // what comes next for the keyboard
  });
  slot.replaceChildren(make("p", {}, "A newer version of the handbook is saved. Ticks, readings and timers stay."), use, later);
  slot.hidden = false;
}
