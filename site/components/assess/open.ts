// What every page carries of the assessment: where its questions stand, its script is loaded. The single file carries it.

import { make } from "../../module/dom.ts";
import { root, singleFile } from "../../module/root.ts";

export function assessment(): void {
  const section = document.querySelector("[data-assess]");
  if (!section || singleFile) return;
  const script = make("script", { src: root(document.documentElement.dataset.assessing ?? "") });
  script.onerror = () => section.prepend(make("p", { class: "co-assess__trouble", role: "alert" }, "The script that weighs the answers could not be loaded. Your earlier answers are kept. Reload the page when there is signal."));
  document.head.append(script);
}
