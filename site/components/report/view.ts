// The report on the page: what the person fills in, a preview, and the ways out (print, share, save). It knows the job by
// a Source, so that it can stand in any page; source.ts makes one from the jobs on this phone.

import { all, button, make } from "../../module/dom.ts";
import { pageAddress } from "../../module/root.ts";
import { field, fold } from "../job/form.ts";
import type { Job, ReportChoices } from "../job/schema.ts";
import type { Again } from "./answers.ts";
import type { Assessment } from "./assessment.ts";
import { choose, chosen, groups, options, papers } from "./choices.ts";
import { makeCustomerPage } from "./customer.ts";
import { download, share, shareable, slug } from "./files.ts";
import type { OneFile } from "./files.ts";
import { made } from "./made.ts";
import type { ReportOptions } from "./made.ts";
import { best } from "./options.ts";
import { styleOf, titled } from "./page.ts";
import { Preview, canPreview } from "./preview.ts";
import { makeReport } from "./report.ts";
import { customer, report } from "./words.ts";

export interface Source {
  handbook: string; // version
  job(): Promise<Job | null>; // the job that is open, whole
  change(act: (r: ReportChoices) => void): Promise<void>;
  photo(job: string, photo: string): Promise<Blob | null>;
  file(job: string): Promise<{ name: string; text: string }>; // the job file
  assessment(job: Job): Promise<Assessment | null>; // null: could not be weighed
  again(job: Job): Promise<Again>; // its answers worked out again, for their charts
}

type Which = "report" | "customer";
interface Ready { files: Record<Which, OneFile> & { job: OneFile }; html: Record<Which, string>; title: Record<Which, string> }

const pause = 400; // ms after the last key press before the documents are made anew

/** Fills the section for the job that is open. Call again when another job is opened. */
export async function reportView(section: HTMLElement, source: Source): Promise<void> {
  const first = await source.job();
  if (!first) {
    section.replaceChildren(make("p", {}, "No job is open. The report of the open job stands here."),
      make("p", { class: "co-job__buttons" }, make("a", { class: "co-button", href: pageAddress("job") }, "Open or make a job")));
    section.dataset.ready = "";
    return;
  }
  const job: Job = first;
  const photos = await pictures(job, source);
  const assessment = await source.assessment(job).catch((error: unknown) => (console.error(error), null));
  const again = await source.again(job);

  let which: Which = "report";
  let ready: Ready | null = null;
  const preview = canPreview ? new Preview() : null;
  const said = make("p", { class: "co-report__said", role: "status" });
  const unfolded = new Set<string>();

  const settings = (): ReportOptions => ({ now: new Date(), handbook: source.handbook, photos, again });
  async function refresh(): Promise<void> {
    const o = settings();
    const title: Record<Which, string> = { report: titled(report.kind, job), customer: titled(customer.title, job) };
    const day = o.now.toISOString().slice(0, 10);
    const file = (what: string, text: string): OneFile => ({ name: `${what}-${slug(job.title)}-${day}.html`, type: "text/html", text });
    const jobFile = await source.file(job.id);
    ready = {
      title,
      html: { report: makeReport(job, assessment, { ...o, style: "none" }), customer: makeCustomerPage(job, assessment, { ...o, style: "none" }) },
      files: { report: file("report", makeReport(job, assessment, o)), customer: file("owner", makeCustomerPage(job, assessment, o)), job: { ...jobFile, type: "application/json" } },
    };
    show();
  }
  function show(): void {
    if (!ready) return;
    preview?.show(ready.title[which], ready.html[which], styleOf(job, ready.title[which]));
    const files = shareable([ready.files.report, ready.files.customer, ready.files.job]);
    sending.hidden = files === null;
    sending.textContent = files && files.length < 3 ? "Share report and owner’s page" : "Share all three files";
  }

  let late: ReturnType<typeof setTimeout> | undefined;
  /** Keeps a choice at once; the documents follow when the typing rests. */
  function typed(act: (r: ReportChoices) => void): void {
    act(job.report);
    void source.change(act);
    clearTimeout(late);
    late = setTimeout(() => void refresh(), pause);
  }
  /** The newest documents, made now when a change is still waiting. */
  async function newest(): Promise<Ready> {
    clearTimeout(late);
    await refresh();
    return ready as unknown as Ready;
  }

  const save = (text: string, of: keyof Ready["files"]): HTMLButtonElement => {
    const b = button(text, "co-button co-button--quiet", () => void newest().then((r) => {
      download(r.files[of]);
      said.textContent = `${r.files[of].name} goes to your downloads. Look there whether it arrived.`;
    }));
    b.dataset.reportSave = of;
    return b;
  };
  const sending = button("Share all three files", "co-button", () => {
    // The share sheet wants a tap just before it; what is there is at most one key press old.
    if (!ready) return;
    const files = shareable([ready.files.report, ready.files.customer, ready.files.job]);
    if (!files) return;
    share(ready.title.report, files).then((sent) => {
      said.textContent = !sent ? "Nothing was shared." : files.length < 3 ? "Shared. This browser does not share job files: save it beside them." : "Shared.";
    }, () => (said.textContent = "The share sheet did not open. Save the files instead."));
  });
  sending.hidden = true;
  sending.dataset.reportShare = "";
  const print = button("Print", "co-button", () => void newest().then(() => {
    if (!preview?.print()) said.textContent = "This browser cannot print from here. Save the report, open the file, and print it from there.";
  }));

  print.dataset.reportPrint = "";
  // The keys for printing print the document, not this page around its frame.
  const keys = (event: KeyboardEvent): void => {
    if (!print.isConnected) return document.removeEventListener("keydown", keys); // drawn anew
    if (event.key.toLowerCase() !== "p" || !(event.ctrlKey || event.metaKey) || event.shiftKey || print.getClientRects().length === 0) return;
    event.preventDefault();
    print.click();
  };
  document.addEventListener("keydown", keys);

  const toggles = make("div", { class: "co-report__which co-switch", role: "group", "aria-label": "Document" });
  for (const [w, text] of [["report", "Report"], ["customer", "Owner’s page"]] as const) {
    const b = button(text, "co-toggle", () => {
      which = w;
      for (const t of all(toggles, "button")) t.setAttribute("aria-pressed", String(t === b));
      show();
    });
    b.setAttribute("aria-pressed", String(w === which));
    b.dataset.reportWhich = w;
    toggles.append(b);
  }

  section.replaceChildren(
    ...(job.demo ? [make("p", { class: "co-job__invented" }, "Invented demonstration")] : []),
    ...(assessment ? [] : [make("p", { role: "alert" }, "The causes could not be weighed here, so the report says “not determined”. Reload the page when there is signal.")]),
    toggles,
    make("p", { class: "co-report__paper" }, "This sheet is not the report. The button “Print” on the page prints the report; a saved report prints as any file does."),
    preview ? preview.sheet : make("p", {}, "This browser shows no preview. Save the report and open the file to read or print it."),
    make("p", { class: "co-job__buttons" }, ...(preview ? [print] : []), sending, save("Save the report", "report"), save("Save the owner’s page", "customer"), save("Save the job file", "job")),
    said,
    fields(job, typed, unfolded, () => best(made(job, assessment, settings()))),
  );
  section.dataset.ready = "";
  await refresh();
}

function fields(job: Job, typed: (act: (r: ReportChoices) => void) => void, unfolded: Set<string>, advice: () => string): HTMLElement {
  const choice = (key: string, label: string, list: [string, string][], help = ""): HTMLElement =>
    field({ name: key, label, kind: "choice", options: list, ...(help && { help }) }, chosen(job, key), (value) => typed((r) => choose(r, key, value)));
  const set = (key: string): string => (chosen(job, key) === "" ? "" : "1");
  const parts = groups.map((g) => {
    const filled = g.asks.filter((a) => set(a.key) !== "").length;
    const extra = g.asks.some((a) => a.key === "currency")
      ? [choice("recommend", "Recommended option", [["", "As the evidence says"], ...options.map((o): [string, string] => [o, `${o.toUpperCase()}: ${report.options.names[o]}`])], `By the evidence it is ${advice().toUpperCase()}.`)] : [];
    return fold(`report-${g.title}`, g.title, filled === 0 ? "" : `${filled} of ${g.asks.length} filled in`, unfolded,
      ...(g.hint ? [make("p", { class: "co-job__help" }, g.hint)] : []), ...extra,
      ...g.asks.map((a) => field({ name: a.key, label: a.label, kind: a.long ? "long" : a.kind === "date" ? "date" : "text", ...(a.hint && { help: a.hint }), ...(a.kind === "price" && { most: 40 }) }, chosen(job, a.key), (value) => typed((r) => choose(r, a.key, value)))));
  });
  return make("form", { class: "co-report__form", autocomplete: "off", "aria-label": "For the report" },
    make("h2", {}, "Fill in"), make("p", {}, "You may leave all of this empty. What stays empty is a line to write on, or is left out."), ...parts,
    choice("paper", "Paper", papers.map((p): [string, string] => [p === "a4" ? "" : p, p === "a4" ? "A4" : "Letter"])));
}

/** Every picture of the job as a data: URL; those the browser lost are left out. */
async function pictures(job: Job, source: Source): Promise<Record<string, string>> {
  const found: Record<string, string> = {};
  for (const p of job.photos) {
    const blob = await source.photo(job.id, p.id).catch(() => null);
    if (blob) found[p.id] = await dataURL(new Blob([blob], { type: p.type }));
  }
  return found;
}

function dataURL(blob: Blob): Promise<string> {
  return new Promise((done, failed) => {
    const reader = new FileReader();
    reader.onload = () => done(String(reader.result));
    reader.onerror = () => failed(reader.error ?? new Error("the picture cannot be read"));
    reader.readAsDataURL(blob);
  });
}
