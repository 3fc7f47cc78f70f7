// The line at the head of each page: whether the handbook is on this phone, truly. The worker counts what it
// holds, and says when it last compared all of it.

import { make } from "../../module/dom.ts";
import { root, singleFile } from "../../module/root.ts";
import { notice } from "../update-notice/notice.ts";
import { connect, hear, keeper, oneFile, remember, remembered, running, today, unable } from "./connection.ts";
import type { ToPage } from "../../worker/messages.ts";

// WebKit never begins to save, and answers nothing more about it until it is closed, when the page that registers the worker
// is left in the same few hundredths of a second: seen in 12 of 27 tries, and in none with 30 ms between.
const settle = 500; // ms after loading: who goes on at once is gone by then, and the next page registers
const silence = 20_000; // ms without a word after which saving has not begun

export function offline(): void {
  const state = document.querySelector<HTMLElement>("[data-offline-state]");
  if (!state || singleFile) return;
  const say = (...words: (string | Node)[]): void => {
    const text = words.map((w) => (typeof w === "string" ? w : w.textContent)).join("");
    if (state.textContent !== text) state.replaceChildren(...words);
  };
  const about = (words: string): Node => make("a", { href: root("about/offline.html") }, words);
  if (unable) {
    say(`Needs a signal: ${unable} `, about(oneFile ? "Get the handbook as one file" : "Keep it on the phone"));
    return;
  }

  let held = ""; // the version that a worker holds
  let gone = "";
  let late: number | undefined;
  hear((message: ToPage) => {
    clearTimeout(late);
    switch (message.type) {
      case "saving":
        if (!held) say(`${gone}Saving for use without signal: ${Math.floor((100 * message.bytes) / message.size)} %`);
        break;
      case "failed":
        if (!held) say(`${gone}Not saved yet: ${message.reason}`);
        break;
      case "held": {
        if (message.files < message.total) {
          const n = message.total - message.files;
          say(`The phone dropped ${n} saved ${n === 1 ? "file" : "files"}. `, about("Get them back with signal"));
          held = "";
          break;
        }
        held = message.version;
        const before = remembered();
        remember({ ...before, version: held, since: before?.version === held && !gone ? before.since : today() });
        say(!navigator.onLine ? "No signal: using the saved handbook" : Date.now() - message.sound < 864e5 ? "Saved: works without signal" : "Saved, being checked again");
        break;
      }
    }
  });

  void (async () => {
    const before = remembered();
    const kept = await keeper();
    if (before && !kept) {
      gone = "The phone deleted the saved handbook. ";
      remember({ ...before, dropped: today() });
      say(gone);
    }
    void connect();
    if (!kept) {
      await loaded();
      await new Promise((done) => setTimeout(done, settle));
      if (!held) late = window.setTimeout(() => say(`${gone}Not saved yet: the browser has not begun. With signal, close it and open the handbook again.`), silence);
    }
    let registration: ServiceWorkerRegistration;
    try {
      registration = await navigator.serviceWorker.register(root(document.documentElement.dataset.worker ?? "worker.js"), { updateViaCache: "none" });
    } catch {
      clearTimeout(late);
      if (!held) say(navigator.onLine ? `${gone}Not saved: this browser refused, or the network sends something else. Private windows and full storage do that.` : `${gone}Not saved: no signal.`);
      return;
    }
    notice(registration, running);
  })();
}

function loaded(): Promise<void> {
  return new Promise((done) => {
    if (document.readyState === "complete") done();
    else addEventListener("load", () => done(), { once: true });
  });
}
