// The single file holds every page as a section. This shows the one that the address names and hides the others;
// on the site, where a document is one page, it does nothing.

import { pages, singleFile } from "./root.ts";

const listeners: (() => void)[] = [];

/** The page the person sees. */
export function currentPage(): HTMLElement | null {
  return pages().find((page) => !page.hidden) ?? null;
}

/** Calls changed whenever another page of the single file comes into view. */
export function onPageChange(changed: () => void): void {
  listeners.push(changed);
}

export function onePageAtATime(): void {
  if (!singleFile) return;
  const name = document.title;
  const show = (): void => {
    const list = pages();
    const target = document.getElementById(decodeURIComponent(location.hash.slice(1)));
    const page = target?.closest<HTMLElement>("[data-page]") ?? list[0];
    if (!page) return;
    const same = !page.hidden && list.every((p) => p === page || p.hidden);
    for (const p of list) p.hidden = p !== page;
    document.title = page.dataset.title ? `${page.dataset.title} · ${name}` : name;
    if (target && target !== page) target.scrollIntoView();
    else if (!same) scrollTo(0, 0);
    for (const changed of listeners) changed();
  };
  addEventListener("hashchange", show);
  show();
}
