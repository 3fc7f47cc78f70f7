// The page of the cause assessment: answers in, the module's weighing out. Answers are kept at once; the weighing follows the
// tap a moment later, in a worker. See assess.tmpl for the page and calc/cause for the weighing.

import { button, make } from "../../module/dom.ts";
import { assess } from "../../module/calculator.ts";
import { currentJob, onJobChange, onOtherTab } from "../../module/store.ts";
import { root, singleFile } from "../../module/root.ts";
import { jobFile } from "../job/load.ts";
import { question } from "../report/assessment.ts";
import { answers, bringBack, clear, clearedCount, feedAnswers, sheet } from "./answers.ts";
import { opinion, readFeeds } from "./feed.ts";
import type { Opinion } from "./feed.ts";
import { bindForm } from "./form.ts";
import { open } from "./next.ts";
import { readOutcome, removals } from "./outcome.ts";
import type { Outcome } from "./outcome.ts";
import { drawResult } from "./result.ts";
import type { Scene } from "./view.ts";
import { count, verdict } from "./words.ts";

const wait = 150; // ms of quiet after a tap before the answers are weighed
const patience = 300; // ms after which the page says that it is weighing
const quiet = 700; // ms before the verdict is said aloud, so that quick taps are not all read out

export function assessAll(): void {
  const begin = (): void => {
    for (const section of document.querySelectorAll<HTMLElement>("[data-assess]")) {
      // In the single file the module is unpacked only for whoever opens the page.
      if ("ready" in section.dataset || section.closest<HTMLElement>("[data-page]")?.hidden) continue;
      section.dataset.ready = "";
      begun(section).catch(console.error);
    }
  };
  begin();
  document.addEventListener("changeout:unfolded", begin); // a page of the single file that was packed
  if (singleFile) addEventListener("hashchange", begin);
}

async function dataOf(section: HTMLElement): Promise<string> {
  const inside = document.getElementById("co-causes");
  if (inside) return inside.textContent ?? "";
  const response = await fetch(root(section.dataset.assess ?? ""));
  if (!response.ok) throw new Error(`The server answered ${response.status} for the cause data.`);
  return response.text();
}

async function begun(section: HTMLElement): Promise<void> {
  const form = section.querySelector<HTMLFormElement>("[data-assess-form]");
  const box = section.querySelector<HTMLElement>("[data-assess-answer]");
  if (!form || !box) return;
  const spoken = section.querySelector<HTMLElement>("[data-assess-announce]");
  const clearing = section.querySelector<HTMLButtonElement>("[data-assess-clear]");
  const page = section.closest<HTMLElement>("[data-page]")?.dataset.page ?? "";
  const ticks = `ticks:${page}`;
  const unfolded = new Set<string>();

  let data = "";
  let names = new Map<string, { name: string }>();
  let opinions = new Map<string, Opinion | null>();
  let outcome: Outcome | null = null;
  let weighed: string | null = null; // what outcome answers
  let timer = 0;
  let speak = 0;
  let turn = 0;

  const text = (id: string): string => names.get(id)?.name ?? "";
  const press: { down: boolean; after: (() => void) | null } = { down: false, after: null };
  section.addEventListener("pointerdown", () => (press.down = true));
  for (const end of ["pointerup", "pointercancel"]) {
    addEventListener(end, () => {
      press.down = false;
      const after = press.after;
      press.after = null;
      if (after) setTimeout(after); // the click comes first
    });
  }
  let answered: HTMLElement | null = null; // the question that was answered last
  form.addEventListener("change", ({ target }) => void (answered = (target as HTMLElement).closest<HTMLElement>("[data-finding]")));
  const questions = bindForm(form, text, changed, noted);
  const strip = makeStrip();
  const back = button("", "co-button co-button--quiet", () => {
    bringBack(ticks);
    changed();
    say("The answers are back.");
    clearing?.focus();
  });
  clearing?.after(back);
  clearing?.addEventListener("click", () => {
    const n = Object.keys(answers()).length;
    clear(ticks, opinions);
    changed();
    say(`${count(n, "answer", "answers")} cleared. The button beside brings them back.`);
    back.focus();
  });
  form.before(make("h3", { class: "co-assess__head co-assess__head--questions" }, "Questions"));

  drawAnswers();
  onJobChange(() => void renew());
  onOtherTab((key) => (key === "findings" || key === "jobs-changed") && void renew());
  addEventListener("pageshow", (event) => event.persisted && void renew());
  if (singleFile) addEventListener("hashchange", () => section.offsetParent !== null && void renew()); // a worksheet may have been kept meanwhile
  showAsked();
  addEventListener("hashchange", showAsked);

  try {
    data = await dataOf(section);
  } catch (error) {
    console.error(error);
    trouble("The data of the assessment could not be loaded. Your answers are kept. Reload the page when there is signal.");
    return;
  }
  const feeds = readFeeds(data);
  const removes = removals(data);
  names = readOutcome(data, "").findings;
  await renew();

  /** The job, its worksheets or another tab may have changed: everything anew. */
  async function renew(): Promise<void> {
    if (data === "") return drawAnswers();
    const job = currentJob();
    opinions = new Map();
    if (job) {
      try {
        const results = await (await jobFile()).results(job.id);
        if (currentJob()?.id !== job.id) return; // another job was opened meanwhile; it renews too
        for (const f of feeds) opinions.set(f.finding, opinion(f, results));
      } catch (error) {
        console.error(error); // the answers themselves are here; only the worksheets' are not
      }
      feedAnswers(opinions, text);
    }
    changed();
  }

  function changed(): void {
    drawAnswers();
    clearTimeout(timer);
    timer = window.setTimeout(() => void run(), wait);
  }

  /** A note changes nothing but its own place in the result. */
  function noted(id: string, note: string): void {
    const place = box?.querySelector(`[data-noted="${CSS.escape(id)}"]`);
    if (place) place.textContent = note;
  }

  function drawAnswers(): void {
    const now = sheet();
    questions.draw(now, opinions);
    const n = Object.keys(now.found).length;
    section.classList.toggle("co-assess--answered", n > 0);
    if (clearing) clearing.hidden = n === 0;
    back.hidden = clearedCount() === 0;
    back.textContent = `Bring back ${count(clearedCount(), "cleared answer", "cleared answers")}`;
  }

  async function run(): Promise<void> {
    if (data === "") return;
    const mine = ++turn;
    const asked = question(data, answers());
    if (asked !== weighed || !outcome) {
      box?.setAttribute("aria-busy", "true");
      let answer: string;
      const slow = setTimeout(() => mine === turn && strip.wait(), patience);
      try {
        answer = await assess(asked);
      } catch (error) {
        console.error(error);
        if (mine === turn) trouble("The answers could not be weighed. They are kept. Reload the page; when it happens again, use the tables of the handbook.");
        return;
      } finally {
        clearTimeout(slow);
      }
      if (mine !== turn) return; // answered anew meanwhile
      outcome = readOutcome(data, answer);
      weighed = asked;
    }
    draw(outcome);
  }

  function draw(o: Outcome): void {
    if (!box) return;
    if (press.down) { // what a finger is on must not go away under it
      press.after = () => draw(o);
      return;
    }
    const now = sheet();
    const found = known(now.found);
    const present = [...o.findings.keys()].filter((id) => found[id]?.state === "present");
    const scene: Scene = { outcome: o, found, sheet: now, form: questions, numbers: new Map(present.map((id, i) => [id, i + 1])), open: unfolded };
    const facts = new Set(Object.keys(found).map((id) => questions.questions.get(id)?.fact ?? id)).size;
    const said = verdict(o, facts);
    const next = open(scene)[0]?.finding ?? "";
    hold(() => {
      drawResult(box, scene, said, facts, page, removes, changed);
      box.hidden = false;
      box.removeAttribute("aria-busy");
      questions.markNext(next);
    });
    strip.draw(said.title, next);
    clearTimeout(speak);
    speak = window.setTimeout(() => say(`${said.title}. ${o.conflicts.length > 0 ? `${count(o.conflicts.length, "answer does", "answers do")} not fit the rest. ` : ""}${next ? `Next check: ${questions.questions.get(next)?.words ?? ""}` : ""}`), quiet);
  }

  /** Findings that the model does not know, of an older handbook, are kept and not weighed. */
  function known(found: ReturnType<typeof answers>): ReturnType<typeof answers> {
    return Object.fromEntries(Object.entries(found).filter(([id]) => names.has(id)));
  }

  /** What the person looks at stays where it is while the result above it grows or shrinks. */
  function hold(change: () => void): void {
    const inSight = (e: HTMLElement | null): boolean => {
      const { top, bottom } = e?.getBoundingClientRect() ?? { top: 0, bottom: 0 };
      return bottom > 0 && top < innerHeight;
    };
    const away = box !== null && !box.hidden && box.getBoundingClientRect().bottom <= 0;
    const held = inSight(answered) ? answered : away ? form : null;
    const at = held?.getBoundingClientRect().top ?? 0;
    change();
    if (held) scrollBy({ top: held.getBoundingClientRect().top - at, behavior: "instant" });
  }

  function say(sentence: string): void {
    if (spoken && spoken.textContent !== sentence) spoken.textContent = sentence;
  }

  function trouble(sentence: string): void {
    if (!box) return;
    outcome = null;
    box.hidden = false;
    box.removeAttribute("aria-busy");
    box.replaceChildren(make("p", { class: "co-assess__trouble", role: "alert" }, sentence));
    strip.draw("", "");
  }

  /** A link to a question opens its heading. */
  function showAsked(): void {
    let id = "";
    try {
      id = decodeURIComponent(location.hash.slice(1));
    } catch {
      return; // typed by hand
    }
    const asked = id === "" ? null : document.getElementById(id)?.closest<HTMLElement>("[data-finding]");
    if (asked && form?.contains(asked)) questions.show(asked.dataset.finding ?? "");
  }

  /** The strip at the thumb: the verdict in short, and the way to the next check. */
  function makeStrip(): { wait(): void; draw(title: string, next: string): void } {
    const words = make("span");
    const up = make("a", { class: "co-assess__up", href: `#${section.id}` }, words);
    up.addEventListener("click", (event) => {
      event.preventDefault();
      const title = box?.querySelector<HTMLElement>(".co-verdict__title");
      box?.scrollIntoView({ block: "start" });
      title?.focus({ preventScroll: true });
    });
    let to = "";
    const go = button("Next check", "co-assess__go", () => questions.show(to));
    const strip = make("div", { class: "co-assess__strip", hidden: "" }, up, go);
    section.append(strip);
    return {
      wait: () => void (words.textContent = "Weighing …"),
      draw(title, next) {
        strip.hidden = title === "";
        words.textContent = title;
        to = next;
        go.hidden = next === "";
      },
    };
  }
}

