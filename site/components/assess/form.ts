// The questions: three answers each, what a worksheet says to them, a note, and how many of each heading are answered.

import { all, button, make } from "../../module/dom.ts";
import { pageAddress } from "../../module/root.ts";
import { when } from "../job/form.ts";
import { answer, fromWorksheet, noteOf, setNote, takeOpinion } from "./answers.ts";
import type { Mark, Sheet } from "./answers.ts";
import type { Opinion } from "./feed.ts";

/** One question as the page holds it. */
export interface Question {
  id: string;
  fact: string;
  words: string;
  minutes: string;
  risk: number;
  before: boolean;
  box: HTMLFieldSetElement;
  how: HTMLAnchorElement | null;
}

export interface Form {
  questions: Map<string, Question>;
  /** Shows what is answered now. */
  draw(sheet: Sheet, opinions: Map<string, Opinion | null>): void;
  /** Unfolds a question's heading, goes there and puts the focus on it. */
  show(id: string): void;
  /** Marks the question that is worth answering next. */
  markNext(id: string): void;
}

const yesNo = { present: "yes", absent: "no" } as const;

export function bindForm(form: HTMLFormElement, text: (id: string) => string, changed: () => void, noted: (id: string, note: string) => void): Form {
  const questions = new Map<string, Question>();
  let opinions = new Map<string, Opinion | null>();
  const drawn = new Map<string, string>(); // what each question shows
  form.addEventListener("submit", (event) => event.preventDefault());

  for (const box of all<HTMLFieldSetElement>(form, "[data-finding]")) {
    const id = box.dataset.finding ?? "";
    const q: Question = {
      id, fact: box.dataset.fact ?? id, words: box.querySelector("legend")?.textContent?.trim() ?? id, minutes: box.dataset.minutes ?? "", risk: Number(box.dataset.risk ?? 0),
      before: "before" in box.dataset, box, how: box.querySelector<HTMLAnchorElement>("[data-assess-how]"),
    };
    questions.set(id, q);
    box.addEventListener("change", (event) => {
      const radio = event.target as HTMLInputElement;
      if (radio.type !== "radio") return;
      answer(id, radio.value as Mark, text(id), opinions.get(id) ?? null);
      changed();
    });
  }

  function drawOne(q: Question, s: Sheet): void {
    const f = s.found[q.id];
    const note = f?.note ?? s.notes[q.id] ?? "";
    const now = JSON.stringify([f, note, opinions.get(q.id), s.taken[q.id]]);
    if (drawn.get(q.id) === now) return;
    drawn.set(q.id, now);
    for (const radio of all<HTMLInputElement>(q.box, "input[type=radio]")) radio.checked = radio.value === (f?.state ?? "unknown");
    drawFrom(q, s);
    drawNote(q, f !== undefined, note);
  }

  function drawFrom(q: Question, s: Sheet): void {
    const f = s.found[q.id];
    const line = q.box.querySelector<HTMLElement>("[data-assess-from]");
    if (!line) return;
    const o = opinions.get(q.id) ?? null;
    line.hidden = !o;
    if (!o) return line.replaceChildren();
    const sheet = make("a", { href: pageAddress(o.page) }, o.title);
    const said = `${o.shown}, ${when(o.time)}`;
    if (fromWorksheet(s, q.id)) return line.replaceChildren(`From the worksheet `, sheet, `: ${said}. Your own answer would count instead.`);
    if (f?.state === o.state) return line.replaceChildren("Your own answer. The worksheet ", sheet, ` agrees: ${said}.`);
    line.replaceChildren(f ? "Your own answer counts. The worksheet " : "You left it at “Not looked”. The worksheet ", sheet, ` says ${yesNo[o.state]}: ${said}. `,
      button("Take the worksheet’s answer", "co-button co-button--quiet", () => {
        takeOpinion(q.id, o, text(q.id));
        changed();
        q.box.focus();
      }));
  }

  function drawNote(q: Question, answered: boolean, note: string): void {
    const have = q.box.querySelector<HTMLElement>("[data-assess-note]");
    const field = have?.querySelector("textarea");
    if (field) {
      if (document.activeElement !== field) field.value = note;
      if (note !== "" || answered || document.activeElement === field) return;
    }
    if (!answered && note === "") return have?.remove();
    if (have && !field && note === "") return;
    have?.remove();
    const place = make("div", { class: "co-assess__note", "data-assess-note": "" });
    q.box.append(place);
    const open = (): HTMLTextAreaElement => {
      const id = `${q.box.id}-note`;
      const area = make("textarea", { id, class: "co-job__box", rows: "2", maxlength: "20000" });
      area.value = noteOf(q.id);
      area.addEventListener("input", () => {
        setNote(q.id, area.value);
        noted(q.id, area.value);
      });
      place.replaceChildren(make("label", { for: id, class: "co-job__label" }, "Note"), area);
      return area;
    };
    if (note !== "") open();
    else place.append(button("Add a note", "co-assess__add", () => open().focus()));
  }

  return {
    questions,
    draw(s, said) {
      opinions = said;
      for (const q of questions.values()) drawOne(q, s);
      for (const place of all<HTMLElement>(form, "[data-place]")) {
        const ids = all<HTMLElement>(place, "[data-finding]").map((b) => b.dataset.finding ?? "");
        const n = ids.filter((id) => s.found[id]).length;
        const count = place.querySelector("[data-assess-count]");
        if (count) count.textContent = n === 0 ? `${ids.length} questions` : `${n} of ${ids.length}`;
      }
    },
    show(id) {
      const q = questions.get(id);
      if (!q) return;
      for (let fold = q.box.closest("details"); fold; fold = fold.parentElement?.closest("details") ?? null) fold.open = true;
      q.box.scrollIntoView({ block: "start" });
      q.box.focus({ preventScroll: true });
    },
    markNext(id) {
      for (const q of questions.values()) q.box.classList.toggle("co-assess__check--next", q.id === id);
    },
  };
}
