// A list in the open job that is typed in by hand: each entry can be changed, taken away and brought back.

import { all, button, keepPlace, make } from "../../module/dom.ts";
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

/** Draws the list with the form below it. Each entry changes by itself: somebody may be typing in the form, or in another one. */
export function entries<P extends "failures" | "readings" | "notes" | "ledger">(kind: Kind<P>, job: Job, jobs: Jobs, open: Set<string>): HTMLElement {
  type Item = Job[P][number];
  const items = job[kind.part] as Item[];
  const above = make("div");
  const empty = make("p", {}, kind.empty);
  const list = make("ul", { class: "co-job__list" }, ...items.map(row));
  const said = make("p", { class: "co-hidden", role: "status" });
  let blank = newForm();
  const d = fold(kind.part, kind.title, "", open, above, empty, list, blank, said);
  const note = d.querySelector(".co-job__count");
  const change = (act: (list: Item[]) => void): void => {
    act(items);
    count();
    void jobs.change(job.id, (kept: Kept) => act(kept[kind.part] as Item[]));
  };
  const put = (item: Item) => (list: Item[]): void => {
    const i = list.findIndex((x) => x.id === item.id);
    if (i < 0) list.push(item);
    else list[i] = item;
  };
  const isWrong = (x: Item | Wrong): x is Wrong => "reason" in x;

  /** What the entries come to, and whether there are any. */
  function count(): void {
    if (note) note.textContent = kind.count(items.length);
    const sum = kind.above?.(job);
    above.replaceChildren(...(sum ? [sum] : []));
    list.hidden = list.childElementCount === 0;
    empty.hidden = !list.hidden;
  }

  function newForm(): HTMLFormElement {
    return form({
      name: kind.title, asks: kind.asks(job), values: kind.blank(job), draft: `draft:${job.id}:${kind.part}`, send: kind.send,
      submit(values) {
        const item = kind.item(freshId(), values, null);
        if (isWrong(item)) return item;
        queueMicrotask(() => { // after the draft is gone
          list.append(row(item));
          change(put(item));
          said.textContent = `Added: ${kind.lines(item)[0] ?? ""}.`;
          const next = newForm();
          blank.replaceWith(next);
          blank = next;
          keepPlace(blank.querySelector<HTMLElement>(".co-job__box"));
        });
        return null;
      },
    });
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
          queueMicrotask(() => {
            change(put(next));
            said.textContent = `Changed: ${kind.lines(next)[0] ?? ""}.`;
            again(next);
          });
          return null;
        },
        cancel: () => again(item),
      });
      li.replaceChildren(f);
      f.querySelector<HTMLElement>(".co-job__box")?.focus();
    });
    edit.setAttribute("aria-label", `Change: ${first}`);
    const again = (now: Item): void => {
      const fresh = row(now);
      li.replaceWith(fresh);
      keepPlace(fresh.querySelector<HTMLElement>("button"));
    };
    const remove = button("Take away", "co-button co-button--quiet", () => takeAway(li, first, () => {
      const at = items.indexOf(item);
      const cut = (list: Item[]): void => void list.splice(Math.max(0, list.findIndex((x) => x.id === item.id)), list.some((x) => x.id === item.id) ? 1 : 0);
      cut(items);
      count();
      void jobs.change(job.id, (kept: Kept) => cut(kept[kind.part] as Item[]));
      return () => {
        change((list) => void list.splice(Math.min(at, list.length), 0, item));
        return row(item);
      };
    }, count));
    remove.setAttribute("aria-label", `Take away: ${first}`);
    li.append(make("p", { class: "co-job__buttons" }, edit, remove));
    return li;
  }

  count();
  return d;
}

/** Takes an entry away at once and offers it back in its place for ten seconds. take gives what brings it back and draws it. */
export function takeAway(li: HTMLElement, name: string, take: () => () => HTMLElement, gone: () => void): void {
  const back = take();
  const undo = button("Bring it back", "co-button", () => {
    clearTimeout(end);
    const fresh = back();
    li.replaceWith(fresh);
    keepPlace(...all(fresh, "button").slice(-1)); // what took it away
  });
  const away = (): void => {
    if (li.contains(document.activeElement)) return void li.addEventListener("focusout", () => setTimeout(away, 300), { once: true }); // not under the finger
    const at = document.activeElement;
    const top = at?.getBoundingClientRect().top ?? 0;
    li.remove();
    gone();
    scrollBy({ top: (at?.getBoundingClientRect().top ?? 0) - top, behavior: "instant" }); // what somebody types in stays where it is
  };
  const end = setTimeout(away, undoFor);
  li.replaceChildren(make("p", { role: "status" }, `Taken away: ${name}`), make("p", { class: "co-job__buttons" }, undo));
  undo.focus();
}
