// A list in the open job that is typed in by hand: each entry can be changed, taken away and brought back.

import { button, make } from "../../module/dom.ts";
import { fold, form } from "./form.ts";
import type { Ask, Values, Wrong } from "./form.ts";
import { freshId, undoFor } from "./store.ts";
import type { Jobs, Kept } from "./store.ts";
import type { Job } from "./schema.ts";

export interface Kind<P extends "failures" | "readings" | "notes" | "ledger"> {
  part: P;
  title: string;
  count: (n: number) => string;
  empty: string;
  send: string;
  asks: (job: Job) => Ask[];
  blank: (job: Job) => Values;
  values: (item: Job[P][number]) => Values;
  /** Makes the entry, or says what is wrong. before: the entry that is changed. */
  item: (id: string, values: Values, before: Job[P][number] | null) => Job[P][number] | Wrong;
  lines: (item: Job[P][number]) => string[]; // the first stands out
  above?: (job: Job) => Node | null;
}

/** Draws the list with the form below it. */
export function entries<P extends "failures" | "readings" | "notes" | "ledger">(kind: Kind<P>, job: Job, jobs: Jobs, open: Set<string>): HTMLElement {
  type Item = Job[P][number];
  const items = job[kind.part] as Item[];
  const box = make("div");
  const said = make("p", { class: "co-hidden", role: "status" });
  const d = fold(kind.part, kind.title, kind.count(items.length), open, box, said);
  const note = d.querySelector(".co-job__count");
  const change = (act: (list: Item[]) => void): void => {
    act(items);
    draw();
    void jobs.change(job.id, (kept: Kept) => act(kept[kind.part] as Item[]));
  };
  const put = (item: Item) => (list: Item[]): void => {
    const i = list.findIndex((x) => x.id === item.id);
    if (i < 0) list.push(item);
    else list[i] = item;
  };
  const isWrong = (x: Item | Wrong): x is Wrong => "reason" in x;

  function draw(): void {
    if (note) note.textContent = kind.count(items.length);
    const list = make("ul", { class: "co-job__list" });
    for (const item of items) list.append(row(item));
    const above = kind.above?.(job) ?? null;
    box.replaceChildren(...(above ? [above] : []), items.length === 0 ? make("p", {}, kind.empty) : list, form({
      name: kind.title, asks: kind.asks(job), values: kind.blank(job), draft: `draft:${job.id}:${kind.part}`, send: kind.send,
      submit(values) {
        const item = kind.item(freshId(), values, null);
        if (isWrong(item)) return item;
        queueMicrotask(() => {
          change(put(item)); // after the draft is gone
          said.textContent = `Added: ${kind.lines(item)[0] ?? ""}.`;
          box.querySelector<HTMLElement>(".co-job__form .co-job__box")?.focus();
        });
        return null;
      },
    }));
  }

  function row(item: Item): HTMLElement {
    const [first = "", ...rest] = kind.lines(item);
    const li = make("li", { class: "co-job__entry" }, make("p", { class: "co-job__first" }, first), ...rest.filter((t) => t !== "").map((t) => make("p", {}, t)));
    const edit = button("Change", "co-button co-button--quiet", () => {
      const f = form({
        name: `Change: ${first}`, asks: kind.asks(job), values: kind.values(item), draft: `draft:${job.id}:${kind.part}:${item.id}`, send: "Keep the change",
        submit(values) {
          const next = kind.item(item.id, values, item);
          if (isWrong(next)) return next;
          queueMicrotask(() => change(put(next)));
          return null;
        },
        cancel: draw,
      });
      li.replaceChildren(f);
      f.querySelector<HTMLElement>(".co-job__box")?.focus();
    });
    edit.setAttribute("aria-label", `Change: ${first}`);
    const remove = button("Take away", "co-button co-button--quiet", () => takeAway(li, first, () => {
      const at = items.indexOf(item);
      const cut = (list: Item[]): void => void list.splice(Math.max(0, list.findIndex((x) => x.id === item.id)), list.some((x) => x.id === item.id) ? 1 : 0);
      cut(items);
      if (note) note.textContent = kind.count(items.length);
      void jobs.change(job.id, (kept: Kept) => cut(kept[kind.part] as Item[]));
      return () => change((list) => void list.splice(Math.min(at, list.length), 0, item));
    }, () => draw()));
    remove.setAttribute("aria-label", `Take away: ${first}`);
    li.append(make("p", { class: "co-job__buttons" }, edit, remove));
    return li;
  }

  draw();
  return d;
}

/** Takes an entry away at once and offers it back in its place for ten seconds. take gives what brings it back. */
export function takeAway(li: HTMLElement, name: string, take: () => () => void, gone: () => void): void {
  const back = take();
  const end = setTimeout(() => {
    if (li.contains(document.activeElement)) li.addEventListener("focusout", () => gone(), { once: true }); // not under the finger
    else gone();
  }, undoFor);
  const undo = button("Bring it back", "co-button", () => {
    clearTimeout(end);
    back();
  });
  li.replaceChildren(make("p", { role: "status" }, `Taken away: ${name}`), make("p", { class: "co-job__buttons" }, undo));
  undo.focus();
}
