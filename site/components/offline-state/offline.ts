// Says whether the handbook is on this phone, truly: the worker counts what it holds. Tells of a newer version and
// waits for the tap that uses it.

import { button, make } from "../../module/dom.ts";
import { root, singleFile } from "../../module/root.ts";
import type { ToPage, ToWorker } from "../../worker/messages.ts";

export function offline(): void {
  const state = document.querySelector<HTMLElement>("[data-offline-state]");
  if (!state || singleFile) return;
  const say = (...words: (string | Node)[]): void => {
    const text = words.map((w) => (typeof w === "string" ? w : w.textContent)).join("");
    if (state.textContent !== text) state.replaceChildren(...words);
  };
  if (!("serviceWorker" in navigator)) {
    const single = document.documentElement.dataset.single;
    const why = isSecureContext ? "Needs a signal: this browser saves no pages." : "Needs a signal: pages are saved only over https.";
    if (single) say(why + " ", make("a", { href: root(single) }, "Get the handbook as one file"));
    else say(why);
    return;
  }

  const container = navigator.serviceWorker;
  const hadWorker = !!container.controller;
  let reloading = false;
  let ready = false;

  const draw = (message: ToPage): void => {
    switch (message.type) {
      case "saving":
        if (!ready) say(`Saving for use without signal: ${Math.floor((100 * message.done) / message.total)} %`);
        break;
      case "failed":
        if (!ready) say(`Not saved yet: ${message.reason}`);
        break;
      case "state":
        ready = message.stored === message.total;
        if (ready) say(navigator.onLine ? "Saved: works without signal" : "No signal: using the saved handbook");
        else say(`The phone dropped ${message.total - message.stored} saved files. Open this page with signal to get them back.`);
        break;
    }
  };
  const ask = (): void => container.controller?.postMessage({ type: "state" } satisfies ToWorker);

  container.addEventListener("message", (event: MessageEvent<ToPage>) => draw(event.data));
  container.addEventListener("controllerchange", () => {
    // A page must not mix its own version with the files of another one. What was typed is kept, so it reloads.
    if (hadWorker && !reloading) {
      reloading = true;
      location.reload();
    } else ask();
  });
  addEventListener("online", ask);
  addEventListener("offline", ask);
  ask();

  container.register(root(document.documentElement.dataset.worker ?? "worker.js"), { updateViaCache: "none" }).then((registration) => {
    watch(registration);
    let checked = Date.now();
    const check = (): void => {
      if (document.visibilityState !== "visible" || Date.now() - checked < 3600e3) return;
      checked = Date.now();
      registration.update().catch(() => undefined);
    };
    document.addEventListener("visibilitychange", check);
  }, () => {
    if (!container.controller) say("Not saved: this browser refused. Private windows and full storage do that.");
  });
}

function watch(registration: ServiceWorkerRegistration): void {
  const announce = (): void => {
    if (registration.waiting && navigator.serviceWorker.controller) notice(registration);
  };
  registration.addEventListener("updatefound", () => {
    registration.installing?.addEventListener("statechange", announce);
  });
  announce();
}

function notice(registration: ServiceWorkerRegistration): void {
  const slot = document.querySelector<HTMLElement>("[data-update]");
  if (!slot || !slot.hidden) return;
  const use = button("Use it now", "co-button", () => {
    use.disabled = true;
    registration.waiting?.postMessage({ type: "use" } satisfies ToWorker);
  });
  const later = button("Later", "co-button co-button--quiet", () => (slot.hidden = true));
  slot.replaceChildren(make("p", {}, "A newer version of the handbook is saved. Ticks, readings and timers stay."), use, later);
  slot.hidden = false;
}
