// Shows a document as it will leave the phone, in a frame of its own where nothing can run. The page's policy forbids style
// inside a document, so the frame gets its style as a sheet made here; a browser that cannot do that shows no preview.

import { button, make } from "../../module/dom.ts";

export const canPreview = "adoptedStyleSheets" in Document.prototype && "replaceSync" in CSSStyleSheet.prototype;

export class Preview {
  readonly frame = make("iframe", { class: "co-report__frame", sandbox: "allow-same-origin allow-modals", title: "Preview" });
  /** The frame with a button that gives it the whole screen: a page in a small box is tiring to read. */
  readonly sheet = make("dialog", { class: "co-report__sheet", open: "", "aria-label": "Preview" });
  private style = "";
  private at = 0;

  constructor() {
    this.frame.addEventListener("load", () => this.dress());
    const read = button("Read it on the whole screen", "co-button co-button--quiet", () => {
      this.sheet.open = false;
      this.sheet.showModal();
    });
    const back = button("Back to the page", "co-button", () => this.sheet.close());
    read.dataset.reportRead = "";
    back.dataset.reportBack = "";
    this.sheet.append(this.frame, read, back);
    this.sheet.addEventListener("close", () => {
      this.sheet.open = true; // in its place on the page again
      read.focus();
    });
  }

  /** Shows a document made with style: "none". The place that was in view stays. */
  show(title: string, html: string, style: string): void {
    this.at = this.frame.title === title ? (this.frame.contentWindow?.scrollY ?? 0) : 0;
    this.style = style;
    this.frame.title = title;
    this.frame.srcdoc = html;
  }

  /** Prints the document alone. False where the browser cannot. */
  print(): boolean {
    try {
      this.frame.contentWindow?.focus();
      this.frame.contentWindow?.print();
      return this.frame.contentWindow !== null;
    } catch {
      return false;
    }
  }

  private dress(): void {
    const inside = this.frame.contentWindow as (Window & typeof globalThis) | null;
    if (!inside || this.style === "") return;
    const sheet = new inside.CSSStyleSheet();
    sheet.replaceSync(this.style);
    inside.document.adoptedStyleSheets = [sheet];
    inside.scrollTo(0, this.at);
    inside.addEventListener("keydown", (event) => event.key === "Escape" && this.sheet.matches(":modal") && this.sheet.close());
  }
}
