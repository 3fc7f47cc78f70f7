// The panel over any page: the search box with its results, as high and wide as a phone.

import { button, make } from "../../module/dom.ts";

let panel: HTMLDialogElement | null = null;

export function openPanel(attach: (box: HTMLFormElement) => void): void {
  panel ??= build(attach);
  if (panel.open) return;
  panel.showModal();
  const input = panel.querySelector("input");
  input?.focus();
  input?.select();
}

function build(attach: (box: HTMLFormElement) => void): HTMLDialogElement {
  const form = make("form", { class: "co-find co-find--panel", "data-find-panel": "", role: "search" },
    make("label", { class: "co-find__label", for: "find-panel" }, "Find a page, a step or a word"),
    make("span", { class: "co-find__row" },
      make("input", { class: "co-find__input", id: "find-panel", type: "search", autocomplete: "off", autocapitalize: "none", spellcheck: "false", enterkeyhint: "search", "aria-describedby": "find-panel-count" }),
      button("Close", "co-button co-button--quiet", () => close())),
    make("p", { class: "co-find__count", id: "find-panel-count", role: "status", "data-find-count": "" }),
    make("div", { class: "co-find__hits", "data-find-hits": "", hidden: "" }));
  const dialog = make("dialog", { class: "co-find-panel", "aria-label": "Find" }, form);
  const close = (): void => dialog.close();
  // Following a hit leaves the panel, and so does going back: on the same page nothing else would.
  addEventListener("hashchange", close);
  form.addEventListener("click", (event) => {
    if ((event.target as Element).closest("a")) close();
  });
  // A search field takes the first Escape for itself in some browsers; here it means: back to the page.
  dialog.addEventListener("keydown", (event) => {
    if (event.key !== "Escape") return;
    event.preventDefault();
    close();
  });
  form.addEventListener("submit", (event) => event.preventDefault());
  document.body.append(dialog);
  attach(form);
  return dialog;
}
