// What every page carries of the search: it brings the script of the search when somebody begins, by a tap on "Find", the
// key "/" or the search box of a list page. Where a browser lacks what the panel needs, the link leads to the contents.

import { all, make } from "../../module/dom.ts";
import { root, singleFile } from "../../module/root.ts";

/** What search.ts hands over when it is there. */
export interface Search { attach(box: HTMLFormElement): void; open(): void }

const slot = globalThis as { changeoutSearch?: Search };
let coming: Promise<Search> | null = null;

function bring(): Promise<Search> {
  coming ??= new Promise<Search>((done, failed) => {
    const ready = (): void => (slot.changeoutSearch ? done(slot.changeoutSearch) : failed(new Error("search")));
    if (slot.changeoutSearch || singleFile) return ready();
    const script = make("script", { src: root(document.documentElement.dataset.searching ?? "") });
    script.onload = ready;
    script.onerror = () => failed(new Error("search"));
    document.head.append(script);
  }).catch((error: unknown) => {
    coming = null;
    throw error;
  });
  return coming;
}

export function search(): void {
  for (const box of all<HTMLFormElement>(document, "[data-find]")) {
    const input = box.querySelector("input");
    if (!input) continue;
    box.hidden = false;
    const begin = (): void => void bring().then((s) => s.attach(box)).catch(() => {
      const count = box.querySelector("[data-find-count]");
      if (count) count.textContent = "The search could not be loaded. Use the contents.";
    });
    for (const event of ["focus", "input"]) input.addEventListener(event, begin);
    box.addEventListener("submit", (event) => event.preventDefault());
    if (input.value || document.activeElement === input) begin();
  }
  const panel = typeof HTMLDialogElement === "function";
  const open = (): void => {
    // On a page with a search box of its own, that is the place.
    const own = all<HTMLFormElement>(document, "[data-find]").find((b) => b.getClientRects().length > 0)?.querySelector("input");
    if (own) {
      own.focus();
      own.scrollIntoView({ block: "nearest" });
    } else if (panel) {
      void bring().then((s) => s.open()).catch(leave);
    } else leave();
  };
  const leave = (): void => location.assign(singleFile ? "#contents" : root("contents.html#find"));
  for (const link of all<HTMLAnchorElement>(document, "[data-find-open]")) {
    link.addEventListener("pointerdown", () => void bring().catch(() => undefined)); // a finger stays for a tenth of a second
    link.addEventListener("click", (event) => {
      if (event.metaKey || event.ctrlKey || event.shiftKey) return;
      event.preventDefault();
      open();
    });
  }
  addEventListener("keydown", (event) => {
    const at = event.target as HTMLElement;
    if (event.key !== "/" || event.ctrlKey || event.metaKey || event.altKey || at.isContentEditable || /^(INPUT|TEXTAREA|SELECT)$/.test(at.tagName)) return;
    event.preventDefault();
    open();
  });
  if (location.hash === "#find") open();
}
