// Light or dark as the phone says, or as the person says.

import { load, save } from "../../module/store.ts";
import { all, button, make } from "../../module/dom.ts";

const choices: [string, string][] = [["", "As the phone"], ["light", "Light"], ["dark", "Dark"]];

export function theme(): void {
  const html = document.documentElement;
  const apply = (choice: string): void => {
    if (choice) html.dataset.theme = choice;
    else delete html.dataset.theme;
  };
  apply(load("theme") ?? "");
  for (const slot of all(document, "[data-theme-switch]")) {
    const buttons = choices.map(([choice, words]) => {
      const b = button(words, "co-toggle", () => {
        save("theme", choice || null);
        apply(choice);
        mark();
      });
      b.dataset.choice = choice;
      return b;
    });
    const mark = (): void => {
      const now = html.dataset.theme ?? "";
      for (const b of buttons) b.setAttribute("aria-pressed", String(b.dataset.choice === now));
    };
    mark();
    slot.append(
      make("div", { role: "group", "aria-labelledby": "theme-label" },
        make("span", { class: "co-theme__label", id: "theme-label" }, "Light or dark pages"),
        make("div", { class: "co-switch" }, ...buttons)),
    );
    slot.hidden = false;
  }
}
