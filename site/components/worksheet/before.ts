// What was in the fields before a link or "Clear" took their place. It is kept on the phone, and one tap brings it back;
// what it replaces is kept in turn, so nothing that somebody typed is lost.

import { load, save } from "../../module/store.ts";
import { same } from "./entries.ts";
import type { Entries } from "./entries.ts";

const most = 8; // sets; the oldest goes first

export interface Before {
  /** The set kept last that is not the present one, or null. */
  last(present: Entries): Entries | null;
  /** Keeps a set, unless it is kept already. */
  keep(e: Entries): void;
  /** Gives the set kept last and keeps the present one instead. */
  swap(present: Entries | null): Entries | null;
  forget(): void;
}

export function before(key: string): Before {
  let list = read(key);
  const write = (): void => save(key, list.length === 0 ? null : JSON.stringify(list));
  return {
    last(present) {
      while (list.length > 0 && same(list[list.length - 1] as Entries, present)) list.pop(); // it stands in the form
      return list[list.length - 1] ?? null;
    },
    keep(e) {
      list = [...list.filter((k) => !same(k, e)), e].slice(-most);
      write();
    },
    swap(present) {
      const last = list.pop() ?? null;
      if (present && last && !same(present, last)) list.unshift(present);
      write();
      return last;
    },
    forget() {
      list = [];
      write();
    },
  };
}

function read(key: string): Entries[] {
  try {
    const value: unknown = JSON.parse(load(key) ?? "[]");
    if (Array.isArray(value)) return value.filter((e): e is Entries => !!e && typeof e === "object" && typeof e.values === "object" && typeof e.units === "object" && !!e.values && !!e.units);
  } catch {
    // What cannot be read is as good as none.
  }
  return [];
}
