// The page of the job file: the open job, the jobs on this phone, how to save and open them as files, and how safe they are.

import { all, button, keepPlace, make } from "../../module/dom.ts";
import { causeData, findingNames } from "../report/causes.ts";
import { currentJob, holdsUnsaved, load, onJobChange, onOtherTab, openJob, save } from "../../module/store.ts";
import { pages, singleFile } from "../../module/root.ts";
import { belongings, looseInWords, takeLoose } from "./belongings.ts";
import { readJobFile } from "./check.ts";
import { entries } from "./entries.ts";
import { download, fromFile, saveJobs, share } from "./file.ts";
import type { Saved } from "./file.ts";
import { asking, count, field, fold, form, today, when } from "./form.ts";
import { failures, ledger, notes, readings } from "./kinds.ts";
import { findings, fromPages, results } from "./kept.ts";
import { massUnits } from "./mass.ts";
import { photos } from "./photos.ts";
import { askToPersist, room } from "./room.ts";
import type { Job, JobFile, JobInFile, Mass } from "./schema.ts";
import { refused, undoFor } from "./store.ts";
import type { Jobs, Kept } from "./store.ts";
import demo from "./demonstration.json";

const largest = 200; // MB

export function jobPage(root: HTMLElement, jobs: Jobs): void {
  const said = make("div", { class: "co-job__said", "data-job-said": "" });
  const trouble = make("div", { class: "co-job__trouble", "data-job-trouble": "", hidden: "" });
  const view = make("div");
  const unfolded = new Set<string>(["details"]);
  let turn = 0;
  let names: Map<string, string> | null = null;
  root.replaceChildren(trouble, said, view);
  root.dataset.ready = "";

  jobs.onTrouble(troubled);
  if (jobs.kind === "memory") troubled(`This browser keeps nothing: a private window can do that. A job is lost when you ${singleFile ? "close this file" : "leave this page"}. Save it as a file before that.`);
  const seldom = (): void => {
    if (!(document.activeElement?.matches("input, textarea, select") && root.contains(document.activeElement))) void draw();
  };
  onJobChange(seldom); // also while the name of the job is typed: then the field must stay
  onOtherTab((key) => key === "jobs-changed" && seldom());
  addEventListener("pageshow", (event) => event.persisted && seldom());
  addEventListener("hashchange", () => singleFile && root.offsetParent !== null && seldom());

  void jobs.purge().catch(console.error);
  void draw();

  async function draw(): Promise<void> {
    const mine = ++turn;
    const list = await jobs.list();
    const open = currentJob();
    const job = open && (await jobs.read(open.id));
    // A finding is kept with its words; one from elsewhere may have none. Without them it is named by its id.
    if (job && Object.values(job.findings).some((f) => f.text === "")) names ??= await causeData(root.dataset.causes ?? "").then(findingNames).catch((error: unknown) => (console.warn(error), null));
    if (mine !== turn) return;
    // A part that was unfolded this moment has not said so yet.
    if (job) for (const d of all<HTMLDetailsElement>(view, `[data-job-open="${job.id}"] [data-part]`)) unfolded[d.open ? "add" : "delete"](d.dataset.part ?? "");
    const parts: Node[] = [];
    if (job && list.some((j) => j.id === job.id)) parts.push(openView(job));
    else if (open) {
      openJob(null); // thrown away in another tab, or lost by the browser
      return;
    }
    parts.push(listView(list, job), newView(list), fileView(list), room(jobs, list));
    view.replaceChildren(...parts);
  }

  /** Says what happened, aloud too. */
  function say(text: string, ...more: Node[]): void {
    const held = said.contains(document.activeElement);
    said.replaceChildren(make("p", { role: "status" }, text), ...more);
    if (held) keepPlace(said.querySelector("button"));
  }

  function troubled(sentence: string): void {
    if (sentence === "") {
      const held = trouble.contains(document.activeElement);
      trouble.hidden = true;
      if (held) keepPlace();
      return say("There is room again. Everything is kept on this phone now.");
    }
    trouble.replaceChildren(make("p", { role: "alert" }, sentence), make("p", { class: "co-job__buttons" }, button("Save everything as a file", "co-button", () => void saveAll())));
    trouble.hidden = false;
  }

  async function saveAll(): Promise<void> {
    await give((await jobs.list()).map((j) => j.id));
  }

  async function give(ids: string[]): Promise<void> {
    let made: Saved;
    try {
      made = await saveJobs(jobs, ids, new Date(), document.documentElement.dataset.version ?? "");
    } catch (error) {
      console.error(error);
      say("The file could not be made. Nothing was changed. Reload the page and try again.");
      return;
    }
    download(made);
    const lost = made.missing > 0 ? ` ${count(made.missing, "picture was", "pictures were")} lost by the browser before, and ${made.missing === 1 ? "is" : "are"} not in it.` : "";
    const send = share(made);
    say(`${made.name} goes to your downloads. Look there whether it arrived.${lost}`, ...(send ? [make("p", { class: "co-job__buttons" }, button("Share the file", "co-button co-button--quiet", () => void send().catch(() => undefined)))] : []));
  }

  // The open job.

  function openView(job: Job): HTMLElement {
    const change = (act: (j: Kept) => void): void => {
      act(job);
      void jobs.change(job.id, act);
    };
    const title = make("h2", { id: "job-open" }, job.title);
    const mass = (m: Mass): Mass => ({ ...m });
    const detail = fold("details", "The system", [job.refrigerant, job.nameplate.value && `${job.nameplate.value} ${job.nameplate.unit}`].filter((t) => t !== "").join(", "), unfolded,
      field({ name: "title", label: "Name of the job", kind: "text", most: 120 }, job.title, (value) => {
        title.textContent = value.trim() || "Job without a name";
        change((j) => (j.title = value.trim() || "Job without a name"));
      }),
      field({ name: "site", label: "Site", kind: "text", help: "Where the system stands." }, job.site, (v) => change((j) => (j.site = v))),
      field({ name: "unit", label: "Unit", kind: "text", help: "The mark on it, the type, the serial number, which compressor." }, job.unit, (v) => change((j) => (j.unit = v))),
      field({ name: "refrigerant", label: "Refrigerant", kind: "text", help: "As the nameplate writes it.", most: 40 }, job.refrigerant, (v) => change((j) => (j.refrigerant = v))),
      make("div", { class: "co-job__pair" },
        field({ name: "charge", label: "Nameplate charge", kind: "number", most: 20 }, job.nameplate.value, (v) => change((j) => (j.nameplate = { ...mass(j.nameplate), value: v }))),
        field({ name: "charge-unit", label: "Unit of the charge", kind: "choice", options: massUnits.map((u) => [u, u]) }, job.nameplate.unit, (v) => change((j) => (j.nameplate = { ...mass(j.nameplate), unit: v as Mass["unit"] })))));
    const close = button("Close this job", "co-button co-button--quiet", () => choose(null));
    return make("section", { class: "co-job__open", "aria-labelledby": "job-open", "data-job-open": job.id },
      make("p", { class: "co-job__kind" }, "Open job", job.demo ? invented() : null), title,
      job.demo ? make("p", {}, "This job is invented, to show what a job file looks like. No such building, person or failure exists.") : null,
      loose(job),
      detail, entries(failures, job, jobs, unfolded), findings(job, unfolded, names ?? new Map()), results(job, jobs, unfolded), entries(readings, job, jobs, unfolded), photos(job, jobs, unfolded, names ?? new Map()),
      entries(ledger, job, jobs, unfolded), fromPages(job, unfolded, titleOf), entries(notes, job, jobs, unfolded),
      make("p", { class: "co-job__buttons" }, button("Save this job as a file", "co-button", () => void give([job.id])), close, asking("Delete this job", `Delete “${job.title}” with all that is in it?`, "Delete it", () => void remove(job))));
  }

  /** What was ticked and typed without a job is offered, and left where it is until somebody says yes. */
  function loose(job: Job): HTMLElement | null {
    const words = looseInWords();
    if (words === "" || job.demo || load(`draft:${job.id}:loose`) === words) return null;
    const box = make("div", { class: "co-notice", "data-job-loose": "" }, make("p", {}, `Made before a job was open: ${words}. Do they belong to this job?`),
      make("p", { class: "co-job__buttons" },
        button("Take them into this job", "co-button", () => {
          takeLoose(job.id, job.title);
          say("They are in this job now.");
          keepPlace();
          changedUnderneath();
        }),
        button("Leave them outside", "co-button co-button--quiet", () => {
          save(`draft:${job.id}:loose`, words);
          box.remove();
          say("They stay outside of the jobs.");
          keepPlace(view.querySelector("summary"));
        })));
    return box;
  }

  async function remove(job: { id: string; title: string }): Promise<void> {
    await jobs.throwAway(job.id);
    const undo = button("Bring it back", "co-button", () => {
      clearTimeout(end);
      void jobs.bringBack(job.id).then(() => {
        say(`“${job.title}” is back.`);
        return draw();
      });
    });
    const end = setTimeout(() => {
      void jobs.purge().then(() => {
        if (said.contains(undo)) say(`“${job.title}” is deleted.`); // the list shows it no more since the tap
      });
    }, undoFor);
    await draw();
    say(`“${job.title}” is deleted. For ten seconds it can come back.`, make("p", { class: "co-job__buttons" }, undo));
    undo.focus();
    undo.scrollIntoView({ block: "center" });
  }

  function choose(job: { id: string; title: string; demo: boolean } | null): void {
    openJob(job && { id: job.id, title: job.title, demo: job.demo });
    changedUnderneath();
    say(job ? `“${job.title}” is open. Ticks, readings and answers go into it.` : "No job is open. Ticks and readings stay outside of the jobs.");
    scrollTo(0, 0);
    void draw().then(() => {
      const h = view.querySelector<HTMLElement>("h2");
      h?.setAttribute("tabindex", "-1");
      h?.focus({ preventScroll: true });
    });
  }

  /** In the single file every page is in this document: those that fill themselves once must do it anew. */
  function changedUnderneath(): void {
    if (singleFile && document.querySelector("[data-worksheet]") && !holdsUnsaved() && !jobs.unsaved) location.reload();
    else void draw();
  }

  // The jobs on this phone.

  function listView(list: Kept[], open: Job | null): HTMLElement {
    const others = list.filter((j) => j.id !== open?.id);
    const rows = others.map((j) => make("li", { class: "co-job__entry", "data-job-row": j.id },
      make("p", { class: "co-job__first" }, j.title, j.demo ? invented() : null),
      make("p", {}, [j.site, j.unit, j.refrigerant].filter((t) => t !== "").join(", ")),
      make("p", { class: "co-job__small" }, `${contents(j)}. Changed ${when(j.updated)}.`),
      make("p", { class: "co-job__buttons" }, labelled(button("Open", "co-button", () => choose(j)), `Open ${j.title}`), asking("Delete", `Delete “${j.title}” with all that is in it?`, "Delete it", () => void remove(j)))));
    return make("section", {}, make("h2", {}, open ? "Other jobs on this phone" : "Jobs on this phone"),
      rows.length > 0 ? make("ul", { class: "co-job__list" }, ...rows) : make("p", {}, open ? "There is no other." : "There is none yet. A job holds everything of one change-out: what failed before, ticks, readings, answers, photos, refrigerant."));
  }

  function newView(list: Kept[]): HTMLElement {
    const hasDemo = list.some((j) => j.demo);
    return make("section", {}, make("h2", {}, "New job"), form({
      name: "New job", asks: [{ name: "title", label: "Name of the job", kind: "text", help: "Such as the site and the unit.", most: 120 }], values: {}, draft: "draft:new", send: "Make the job",
      submit(values) {
        const title = (values.title ?? "").trim() || `Job of ${today()}`;
        void jobs.create(title).then((job) => {
          unfolded.add("details");
          choose(job);
          void askToPersist();
        });
        return null;
      },
    }), make("p", {}, "To see what a job file is for, look at one that is invented from start to end."),
      make("p", { class: "co-job__buttons" }, button(hasDemo ? "Open the demonstration job again" : "Open the demonstration job", "co-button co-button--quiet", () => void openDemo(list))));
  }

  async function openDemo(list: Kept[]): Promise<void> {
    const here = list.find((j) => j.demo);
    if (here) return choose(here);
    await take(JSON.stringify(demo));
  }

  // Files.

  function fileView(list: Kept[]): HTMLElement {
    const input = make("input", { class: "co-series__pick", type: "file", accept: ".json,application/json", "data-job-import": "" });
    input.addEventListener("change", () => {
      const file = input.files?.[0];
      if (!file) return;
      if (file.size > largest * 1e6) {
        say(`Not opened: the file has ${Math.round(file.size / 1e6)} MB, up to ${largest} MB are allowed. Nothing was changed.`);
        input.value = "";
        return;
      }
      void file.text().then(take, () => say("Not opened: the file cannot be read. Nothing was changed.")).finally(() => (input.value = ""));
    });
    return make("section", {}, make("h2", {}, "Jobs as files"), make("p", {}, "A file is the only copy that no browser deletes. It can be opened on another phone."),
      make("p", { class: "co-job__buttons" }, make("label", { class: "co-button co-button--quiet" }, "Open a job file", input),
        list.length > 0 ? button(list.length === 1 ? "Save the job as a file" : `Save all ${list.length} jobs as one file`, "co-button co-button--quiet", () => void saveAll()) : null));
  }

  /** Takes jobs from the text of a file. A job that is here already is asked about first. */
  async function take(text: string): Promise<void> {
    const read = readJobFile(text);
    if ("reason" in read) return say(`Not opened: ${read.reason} Nothing was changed.`);
    const here = new Map((await jobs.list()).map((j) => [j.id, j]));
    const twice = read.file.jobs.filter((j) => here.has(j.id));
    if (twice.length === 0) return bring(read.file, new Set());
    const names = twice.map((j) => `“${here.get(j.id)?.title ?? j.title}”`).join(", ");
    const keep = button("Keep both", "co-button", () => void bring(read.file, new Set(twice.map((j) => j.id))));
    say(`${names} ${twice.length === 1 ? "is" : "are"} on this phone already. The file was saved ${when(read.file.saved)}. The copy from the file would stand beside it, under a name of its own.`,
      make("p", { class: "co-job__buttons" }, keep, button("Leave it out", "co-button co-button--quiet", () => {
        const rest = { ...read.file, jobs: read.file.jobs.filter((j) => !here.has(j.id)) };
        if (rest.jobs.length > 0) void bring(rest, new Set());
        else say("Nothing was changed.");
      })));
    keep.focus();
    keep.scrollIntoView({ block: "center" });
  }

  async function bring(file: JobFile, beside: Set<string>): Promise<void> {
    const list = file.jobs.map((j: JobInFile) => fromFile(j, beside.has(j.id)));
    try {
      await jobs.bring(list);
    } catch (error) {
      console.warn(error);
      return say(`Not opened: ${/full/.test(refused(error)) ? "the storage of this browser is full" : "the browser refused to keep it"}. Nothing was changed.`);
    }
    const first = list[0]?.job;
    if (first && list.length === 1) choose(first);
    else {
      await draw();
      say(`${count(list.length, "job is", "jobs are")} taken from the file.`);
    }
  }
}

const invented = (): HTMLElement => make("strong", { class: "co-job__invented" }, "Invented");

function labelled<T extends HTMLElement>(element: T, label: string): T {
  element.setAttribute("aria-label", label);
  return element;
}

/** What a job holds, in a few words. */
function contents(j: Kept): string {
  const b = belongings(j.id);
  const parts: [number, string, string][] = [
    [Object.keys(b.ticks).length, "tick", "ticks"], [j.results.length, "answer", "answers"], [j.readings.length + Object.keys(b.fields).length, "reading", "readings"],
    [j.photos.length, "photo", "photos"], [j.ledger.length, "weighing", "weighings"], [j.notes.length, "note", "notes"],
  ];
  const words = parts.filter(([n]) => n > 0).map(([n, one, many]) => count(n, one, many));
  return words.length > 0 ? words.join(", ") : "Empty";
}

/** The name of a page: the single file knows it; on the site the address has to do. */
function titleOf(page: string): string {
  const here = pages().find((p) => p.dataset.page === page)?.dataset.title;
  if (here) return here;
  const words = (page.split("/").pop() ?? page).replace(/-/g, " ");
  return words.charAt(0).toUpperCase() + words.slice(1);
}

export const pageRoots = (): HTMLElement[] => all(document, "[data-job-file]");
