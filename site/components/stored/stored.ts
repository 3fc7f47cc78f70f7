// The page that shows what is stored on this phone. "Ready" is said only after every file was read back and compared.

import { hourMinute } from "../timers/clock.ts";
import { button, make } from "../../module/dom.ts";
import { singleFile } from "../../module/root.ts";
import { ask, hear, keeper, lookForNewer, oneFile, remembered, running, unable } from "../offline-state/connection.ts";
import type { Held, ToPage } from "../../worker/messages.ts";
import { day, fileWords, megabytes, share, verdict } from "./words.ts";

export function stored(): void {
  const slot = document.querySelector<HTMLElement>("[data-stored]");
  if (!slot) return;
  const state = make("p", { class: "co-stored__state", role: "status" });
  const say = (name: string, head: string, words: string): void => {
    slot.dataset.stored = name;
    const text = `${head} ${words}`;
    if (state.textContent !== text) state.replaceChildren(make("strong", {}, head), " ", words);
  };
  const file = oneFile
    ? make("p", {}, make("a", { href: oneFile, download: "" }, "Get the handbook as one file"), ": it opens from the phone’s storage.")
    : make("p", {}, "Ask the person who keeps the handbook for the single file: it opens from the phone’s storage.");

  if (singleFile) {
    slot.replaceChildren(state);
    say("single", "Ready for no signal.", "This is the single file: everything is inside it, and nothing else has to be stored. Its version and date stand at the foot.");
    return;
  }
  if (unable) {
    slot.replaceChildren(state, file);
    say("unable", "Not ready for no signal.", `Nothing can be stored here: ${unable} The pages read only while there is a signal.`);
    return;
  }

  const bar = make("progress", { max: "1", "aria-label": "Files" });
  const count = make("p", { class: "co-stored__count" });
  const progress = make("div", { class: "co-stored__progress", hidden: "" }, bar, count);
  const newer = make("p", { class: "co-stored__newer", hidden: "" });
  const facts = make("dl", { class: "co-facts" });
  const go = button("Check again", "co-button", () => void press());
  const keep = button("Ask the browser to keep it", "co-button co-button--quiet", () => void promise(true));
  keep.hidden = true;
  // What comes and goes stands last, so that nothing a person reads or taps moves.
  slot.replaceChildren(state, make("p", { class: "co-stored__buttons" }, go, " ", keep), file, newer, progress, facts);

  let ours: string | null = null; // the digest of the version that is stored, or was being looked at last
  let busy = false;
  let told = false; // why the newer version is not saved, since the button was pressed

  const work = (share: number, words: string): void => {
    progress.hidden = false;
    bar.value = share;
    count.textContent = words;
  };
  const tellNewer = (words: string): void => {
    newer.hidden = words === "";
    newer.textContent = words;
  };
  const none = (why: string): void => {
    ours = null;
    progress.hidden = true;
    facts.replaceChildren();
    go.textContent = "Save it now";
    const before = remembered();
    say("none", "Not ready for no signal.", (before?.dropped ? `This browser deleted the copy of ${before.since}. ` : "") + why);
  };
  const fact = (name: string, value: string): HTMLElement => make("div", { class: "co-facts__row" }, make("dt", {}, name), make("dd", {}, value));

  const show = (held: Held): void => {
    ours = held.digest;
    progress.hidden = true;
    go.textContent = held.files === held.total ? "Check again" : "Save again";
    const [name, head, words] = verdict(held, new Date());
    say(name, head, words);
    const before = remembered();
    facts.replaceChildren(
      fact("Stored", `version ${held.version}, built ${held.date}`),
      fact("Running", held.version === running ? "the same version" : `version ${running}. Reload this page to use the stored one.`),
      fact("Files", share(held.files, held.total, held.bytes, held.size)),
      fact("Saved", held.saved > 0 ? `${day(held.saved)}, ${hourMinute(new Date(held.saved))}` : "not yet"),
    );
    if (before?.dropped) facts.append(fact("Lost once", `On ${before.dropped} the browser had deleted the copy. It was saved again. Keep the single file too.`));
    void promise(false);
  };

  /** Whether the browser has promised to keep it, after asking for the promise if the person wants that. */
  const promise = async (asking: boolean): Promise<void> => {
    const storage = navigator.storage as StorageManager | undefined;
    if (!storage?.persisted || !storage.persist) return;
    const kept = (asking && (await storage.persist())) || (await storage.persisted());
    keep.hidden = kept;
    const words = kept ? "The browser has promised not to delete it by itself."
      : asking ? "The browser made no promise. Put the handbook on the home screen, and keep the single file too."
      : "The browser may delete it when the phone runs out of room.";
    const row = fact("Kept", words);
    row.dataset.kept = "";
    facts.querySelector("[data-kept]")?.remove();
    facts.append(row);
    const { quota = Infinity, usage = 0 } = (await storage.estimate?.()) ?? {};
    // What is said of a newer version already counts for more.
    if (quota - usage < 30e6 && newer.hidden) tellNewer(`Only ${megabytes(Math.max(0, quota - usage))} of room are left here. A newer version may not fit.`);
  };

  let looked = 0;
  const look = async (): Promise<void> => {
    if (busy) return;
    busy = go.disabled = true;
    looked = Date.now();
    try {
      const worker = await keeper();
      if (!worker) {
        const installing = (await navigator.serviceWorker.getRegistration())?.installing;
        if (installing) say("saving", "Not ready yet.", "The handbook is being stored. Stay here, with a signal, until this says ready.");
        else none(navigator.onLine ? "Nothing is stored yet." : "Nothing is stored, and there is no signal.");
        return;
      }
      if (slot.dataset.stored !== "ready") say("checking", "Checking.", "Every stored file is read back and compared.");
      const held = await ask(worker, { type: "check" }, 180_000);
      if (held) show(held);
      else none("The stored copy does not answer. Reload this page.");
    } finally {
      busy = go.disabled = false;
    }
  };

  const press = async (): Promise<void> => {
    tellNewer("");
    told = false;
    const asked = lookForNewer().catch(() => "failed" as const);
    await look();
    if ((await asked) !== "failed" || told || slot.dataset.stored === "part") return; // the reason stands there already
    const why = navigator.onLine ? "The server did not answer, or the network sent something else than the handbook. A sign-in page does that." : "There is no signal.";
    if (ours) tellNewer(`A newer version could not be looked for. ${why} What is stored stays.`);
    else none(why);
  };

  hear((message: ToPage) => {
    switch (message.type) {
      case "saving": {
        const words = share(message.done, message.total, message.bytes, message.size);
        if (ours === message.digest) break; // stored again beside itself; what is stored stays as it is
        if (ours) tellNewer(message.done < message.total ? `A newer version is being saved: ${words}. What is stored stays whole.` : `A newer version (${message.version}) is saved whole. It waits for your tap.`);
        else {
          say("saving", "Not ready yet.", "The handbook is being stored. Stay here, with a signal, until this says ready.");
          work(message.bytes / message.size, words);
        }
        break;
      }
      case "checking":
        if (busy) work(message.done / message.total, `${fileWords(message.done, message.total)} compared`);
        break;
      case "failed":
        told = true;
        if (ours && message.digest !== ours) tellNewer(`The newer version (${message.version}) is not saved yet: ${message.reason} What is stored stays whole.`);
        else none(`Storing stopped: ${message.reason} What has come is kept.`);
        break;
      case "held":
        if (message.checked) show(message);
        else if (ours !== message.digest || message.files < message.total || slot.dataset.stored !== "ready") void look();
        break;
    }
  });
  // A tab that comes back after a while must not go on saying what was true then.
  const back = (): void => {
    if (document.visibilityState === "visible" && Date.now() - looked > 600e3) void look();
  };
  document.addEventListener("visibilitychange", back);
  addEventListener("pageshow", back);
  void look();
}
