// "Share a link with these entries". The phone's own sharing where there is one, else the clipboard, else a field to copy
// from. From a phone's storage (file:) an address leads nowhere else, so the entries are copied as text.

import { make } from "../../module/dom.ts";
import { pageAddress, singleFile } from "../../module/root.ts";
import { longest, toFragment } from "./entries.ts";
import type { Entries } from "./entries.ts";

export const linksWork = /^https?:$/.test(location.protocol);

/** The address of a worksheet's own page with entries. */
export function linkTo(worksheet: string, entries: Entries): string {
  const page = pageAddress("worksheets/" + worksheet);
  return new URL(page + (singleFile ? "/" : "#") + toFragment(entries), location.href).href;
}

/** Shares once. say shows a sentence; field takes a text that the person must copy by hand. */
export async function share(title: string, link: string | null, text: string, say: (sentence: string) => void, field: HTMLElement): Promise<void> {
  field.hidden = true;
  const short = link !== null && link.length <= longest;
  if (short && "share" in navigator) {
    try {
      await navigator.share({ title, url: link });
      return;
    } catch (error) {
      if (error instanceof DOMException && error.name === "AbortError") return; // the person thought better of it
    }
  }
  const what = short ? link : text;
  const why = link !== null && !short ? "These entries are too long for a link, so they go as text. " : "";
  try {
    await navigator.clipboard.writeText(what);
    say(why + (short ? "The link is copied. The entries are in it; nothing went to a server." : "The entries are copied as text."));
  } catch {
    const box = make("textarea", { class: "co-series__text", readonly: "", rows: "4", "aria-label": short ? "Link with these entries" : "Entries as text" });
    box.value = what;
    field.replaceChildren(box);
    field.hidden = false;
    box.focus();
    box.select();
    say(why + "Copy the marked text.");
  }
}
