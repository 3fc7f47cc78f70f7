// Small forms of the job file: labelled fields one below the other. What stands in a form that was not sent yet is kept
// as a draft, so a closed tab loses nothing.

import { button, make } from "../../module/dom.ts";
import { loadRecord, saveRecord } from "../../module/store.ts";
import { lettersButton, signButton } from "../write/keys.ts";
import { timeText } from "../report/times.ts";

export interface Ask {
  name: string;
  label: string;
  kind: "text" | "number" | "reading" | "long" | "date" | "choice"; // reading: a figure of either sign, or what a meter shows, such as OL
  help?: string;
  options?: [value: string, label: string][];
  suggest?: string[];
  most?: number; // signs, 300 unless said; 20000 for long
}

export type Values = Record<string, string>;
export interface Wrong { name: string; reason: string }

let numbers = 0;

/** One labelled field. typed is called at each change. */
export function field(ask: Ask, value: string, typed: (value: string) => void): HTMLElement {
  const id = `job-${++numbers}`;
  const most = String(ask.most ?? (ask.kind === "long" ? 20000 : 300));
  let box: HTMLInputElement | HTMLTextAreaElement | HTMLSelectElement;
  if (ask.kind === "choice") {
    box = make("select", { id, class: "co-job__box" });
    for (const [v, label] of ask.options ?? []) box.append(new Option(label, v, false, v === value));
  } else if (ask.kind === "long") box = make("textarea", { id, class: "co-job__box", rows: "3", maxlength: most });
  else if (ask.kind === "text" && Number(most) > 40 && !ask.suggest) box = oneLine(id, most, value);
  else box = make("input", { id, class: "co-job__box", type: ask.kind === "date" ? "date" : "text", autocomplete: "off", maxlength: most, ...((ask.kind === "number" || ask.kind === "reading") && { inputmode: "decimal" }) });
  box.value = value;
  box.dataset.name = ask.name;
  box.addEventListener(ask.kind === "choice" ? "change" : "input", () => typed(box.value));
  const parts: Node[] = [make("label", { for: id, class: "co-job__label" }, ask.label)];
  if (ask.help) {
    parts.push(make("p", { id: id + "-help", class: "co-job__help" }, ask.help));
    box.setAttribute("aria-describedby", id + "-help");
  }
  if (ask.kind === "reading" && box instanceof HTMLInputElement) {
    const at = box;
    parts.push(make("div", { class: "co-job__reading" }, signButton(ask.label, () => at), lettersButton(ask.label, at), at));
  } else parts.push(box);
  if (ask.suggest && ask.suggest.length > 0 && box instanceof HTMLInputElement) {
    const list = make("datalist", { id: id + "-list" });
    for (const s of ask.suggest) list.append(make("option", { value: s }));
    box.setAttribute("list", list.id);
    parts.push(list);
  }
  return make("div", { class: "co-job__field" }, ...parts);
}

/** One line that wraps: a phone shows 24 letters of it. Enter does what it does in a field. */
function oneLine(id: string, most: string, value: string): HTMLTextAreaElement {
  const box = make("textarea", { id, class: "co-job__box", rows: "1", maxlength: most, autocomplete: "off" });
  const grow = (): void => {
    if (/\n/.test(box.value)) box.value = box.value.replace(/\s*\n\s*/g, " "); // pasted
    if (!CSS.supports("field-sizing", "content")) box.rows = Math.min(12, Math.ceil(box.value.length / 24) || 1);
  };
  box.value = value;
  grow();
  box.addEventListener("input", grow);
  box.addEventListener("keydown", (event) => {
    if (event.key !== "Enter" || event.isComposing) return;
    event.preventDefault();
    box.form?.requestSubmit();
  });
  return box;
}

/** A form. submit says what is wrong, or null when it took the values. cancel is offered when given. */
export function form(o: { name: string; asks: Ask[]; values: Values; draft: string; send: string; submit: (values: Values) => Wrong | null; cancel?: () => void }): HTMLFormElement {
  const values: Values = { ...o.values, ...loadRecord(o.draft) };
  const error = make("p", { class: "co-input__error", id: `job-${++numbers}-error`, role: "alert", hidden: "" });
  const fields = o.asks.map((ask) => field(ask, values[ask.name] ?? "", (value) => {
    values[ask.name] = value;
    saveRecord(o.draft, values);
  }));
  const box = (name: string): HTMLElement | null => f.querySelector<HTMLElement>(`[data-name="${CSS.escape(name)}"]`);
  const f = make("form", { class: "co-job__form", novalidate: "", "aria-label": o.name, autocomplete: "off" }, ...fields, error,
    make("p", { class: "co-job__buttons" }, make("button", { type: "submit", class: "co-button" }, o.send),
      o.cancel ? button("Leave it as it was", "co-button co-button--quiet", () => {
        saveRecord(o.draft, {});
        o.cancel?.();
      }) : null));
  f.addEventListener("submit", (event) => {
    event.preventDefault();
    const wrong = o.submit(values);
    error.hidden = !wrong;
    for (const ask of o.asks) {
      const b = box(ask.name);
      b?.removeAttribute("aria-invalid");
      if (b) describe(b, b.getAttribute("aria-describedby")?.split(" ").filter((id) => id !== error.id) ?? []);
    }
    if (!wrong) return saveRecord(o.draft, {});
    const at = box(wrong.name);
    (at?.closest(".co-job__reading") ?? at)?.after(error); // where the person is sent to
    error.textContent = wrong.reason;
    if (!at) return;
    at.setAttribute("aria-invalid", "true");
    describe(at, [...at.getAttribute("aria-describedby")?.split(" ") ?? [], error.id]);
    at.focus();
  });
  return f;
}

function describe(at: HTMLElement, ids: string[]): void {
  if (ids.length > 0) at.setAttribute("aria-describedby", ids.join(" "));
  else at.removeAttribute("aria-describedby");
}

/** A part of the page that folds; it stays open or closed as the person left it. */
export function fold(key: string, title: string, note: string, open: Set<string>, ...children: (Node | string | null)[]): HTMLDetailsElement {
  const d = make("details", { class: "co-fold co-job__fold", "data-part": key }, make("summary", {}, make("span", { class: "co-job__part" }, title), make("span", { class: "co-job__count" }, note)), ...children);
  d.open = open.has(key);
  d.addEventListener("toggle", () => (d.open ? open.add(key) : open.delete(key)));
  return d;
}

/** A button that asks in its own place before it acts. */
export function asking(text: string, question: string, yes: string, act: () => void): HTMLElement {
  const place = make("span", { class: "co-job__ask" });
  const first = button(text, "co-button co-button--quiet", () => {
    const no = button("Keep it", "co-button", () => {
      place.replaceChildren(first);
      place.classList.remove("co-job__ask--open");
      first.focus();
    });
    place.classList.add("co-job__ask--open");
    place.replaceChildren(make("span", { role: "group", "aria-label": question }, make("span", { class: "co-job__question" }, question), " ", no, " ", button(yes, "co-button co-button--quiet", act)));
    no.focus();
  });
  place.append(first);
  return place;
}

/** A time as the report writes it: "25 Nov 2026, 10:05". What is no time stays as it is. */
export const when = (time: string): string => timeText(time) || time;

export const count = (n: number, one: string, many: string): string => `${n} ${n === 1 ? one : many}`;
export const today = (): string => {
  const d = new Date();
  return new Date(d.getTime() - d.getTimezoneOffset() * 60_000).toISOString().slice(0, 10);
};
