// The single file holds every page as a section. This shows the one that the address names and hides the others;
// on the site, where a document is one page, it does nothing. Rare tables are packed and unfold when they are asked for.

import { make } from "./dom.ts";
import { pages, singleFile } from "./root.ts";
import { unpack } from "./unpack.ts";

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
  let asked = 0;
  const show = async (): Promise<void> => {
    const turn = ++asked;
    const list = pages();
    const id = decoded(location.hash.slice(1));
    const page = pageOf(id) ?? list[0];
    if (!page) return;
    if ("packed" in page.dataset) await unfold(page);
    if (turn !== asked) return; // the person has gone on
    const same = !page.hidden && list.every((p) => p === page || p.hidden);
    for (const p of list) p.hidden = p !== page;
    document.title = page.dataset.title ? `${page.dataset.title} · ${name}` : name;
    const target = document.getElementById(id);
    if (target && target !== page) goTo(target);
    else if (!same) scrollTo(0, 0);
    for (const changed of listeners) changed();
  };
  addEventListener("hashchange", () => void show());
  void show();
}

/** What stands above may turn out higher than was reckoned once it is laid out, so the place is looked up for some frames. */
function goTo(target: HTMLElement, frames = 6): void {
  target.scrollIntoView();
  if (frames > 0) requestAnimationFrame(() => goTo(target, frames - 1));
}

function decoded(hash: string): string {
  try {
    return decodeURIComponent(hash);
  } catch {
    return hash; // a link typed by hand
  }
}

/** The page that an address leads to. Places on a packed page are not there yet, but their ids begin with the page's. */
function pageOf(id: string): HTMLElement | null {
  for (let part = id; part; part = part.slice(0, Math.max(0, part.lastIndexOf("/")))) {
    const page = document.getElementById(part)?.closest<HTMLElement>("[data-page]");
    if (page) return page;
  }
  return null;
}

let packed: Promise<Record<string, string>> | null = null;

/** Puts the page's own HTML in place of its title. A browser that cannot unpack keeps the title and is told what to do. */
async function unfold(page: HTMLElement): Promise<void> {
  try {
    packed ??= unpack(document.getElementById("co-packed")?.textContent ?? "").then((bytes) => JSON.parse(new TextDecoder().decode(bytes)) as Record<string, string>);
    const html = (await packed)[page.dataset.page ?? ""];
    if (html === undefined) throw new Error("missing");
    page.innerHTML = html;
    page.dispatchEvent(new CustomEvent("changeout:unfolded", { bubbles: true })); // a worksheet in it starts now
  } catch {
    page.append(make("p", {}, "This browser is too old to unpack this page. Open the file in a newer browser, or use the handbook’s site. The tables of common refrigerants still read here."));
  }
  delete page.dataset.packed;
}
