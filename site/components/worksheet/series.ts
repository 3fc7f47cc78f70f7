// The boxes of a log, beside its text. The textarea is the truth: boxes are drawn from it and written back to it.

import { all, button, make } from "../../module/dom.ts";
import { signButton } from "../write/keys.ts";
import { columnHead, columnNames, columnOf, columnsOf, formatSeries, parseSeries, placeOf } from "./series-text.ts";

const fewest = 4; // rows of empty boxes to begin with
const onPaper = 8; // rows to write on, of a log that is printed empty
const most = 60; // more rows than this are shown as text only: a phone cannot scroll through boxes
const largest = 4e6; // bytes of a file

/** A place in a series, counted from 1; field 0 is the row as a whole, row 0 no place at all. */
export interface Place { row: number; field: number }

interface Rows {
  draw(): void;
  setSystem(system: string): void;
  mark(place: Place | null, said: string): void; // shows the box as wrong; said: id of the sentence that says why
  focus(place?: Place): void;
}

/** Wires the boxes, the paste box and the file button of one input. changed runs after each change of the text. */
export function series(input: HTMLElement, changed: (fromFile: boolean) => void): Rows {
  const text = input.querySelector<HTMLTextAreaElement>("textarea[data-value]");
  const grid = input.querySelector<HTMLElement>("[data-grid]");
  const file = input.querySelector<HTMLInputElement>("[data-file]");
  const paste = input.querySelector<HTMLDetailsElement>("[data-paste]");
  const declared = columnsOf(input);
  const nothing = (): void => undefined;
  if (!text || !grid) return { draw: nothing, setSystem: nothing, mark: nothing, focus: nothing };

  let extra = 0;
  let system = "si";
  let wrong: Place | null = null;
  let why = "";

  const draw = (): void => {
    const parsed = parseSeries(text.value);
    const rows = parsed.rows;
    if (rows.length > most) {
      const first = rows[0]?.join("  ") ?? "";
      const last = rows[rows.length - 1]?.join("  ") ?? "";
      grid.replaceChildren(make("p", { class: "co-series__count" }, `${rows.length} rows. The first: ${first}. The last: ${last}.`),
        make("p", {}, "Too many for boxes. Change them in the text below."));
      return;
    }
    const names = columnNames(parsed, declared, system);
    const heads = names.map((name) => columnHead(name, declared));
    const pads = names.map((name) => columnOf(name, declared)?.pad ?? "");
    let signed: HTMLInputElement | undefined; // the box that the sign button is for: the one last entered
    const count = Math.max(rows.length + 1, fewest) + extra;
    const body = make("tbody");
    for (let r = 0; r < count; r++) {
      body.append(make("tr", {}, ...names.map((_, c) => make("td", {}, cell(rows[r]?.[c] ?? "", `${heads[c]}, row ${r + 1}`, pads[c] ?? "")))));
    }
    const table = make("table", { class: pads.includes("date") ? "co-series__table co-series__table--day" : "co-series__table" }, make("thead", {}, make("tr", {}, ...heads.map((h) => make("th", { scope: "col" }, h)))), body);
    if (rows.length === 0) {
      table.append(make("tbody", { class: "co-series__paper", "aria-hidden": "true" },
        ...Array.from({ length: Math.max(onPaper - count, 0) }, () => make("tr", {}, ...names.map(() => make("td"))))));
    }
    grid.replaceChildren(
      make("p", { class: rows.length === 0 ? "co-series__count co-series__count--none" : "co-series__count" }, rows.length === 0 ? "No rows yet." : rows.length === 1 ? "1 row." : `${rows.length} rows.`),
      table,
      make("div", { class: "co-series__buttons" }, button("Add a row", "co-button co-button--quiet", addRow), pads.includes("signed") ? sign() : null),
    );
    // Enter after the last box of a row that holds something goes on in a new row; in an empty row it leaves the log.
    body.addEventListener("keydown", (event) => {
      const boxes = all<HTMLInputElement>(body, "tr:last-child input");
      if (event.key !== "Enter" || event.isComposing || event.target !== boxes[boxes.length - 1] || boxes.every((b) => b.value.trim() === "")) return;
      event.preventDefault();
      event.stopPropagation();
      addRow();
    });
    showWrong();

    /** One for the log: boxes are too narrow for a button each. */
    function sign(): HTMLElement {
      const b = signButton("a figure", () => signed);
      b.hidden = true;
      body.addEventListener("focusin", (event) => {
        const box = event.target as HTMLInputElement;
        b.hidden = box.dataset.pad !== "signed";
        if (b.hidden) return;
        signed = box;
        b.setAttribute("aria-label", `Change the sign of ${box.getAttribute("aria-label")}`);
      });
      return b;
    }

    function cell(value: string, label: string, pad: string): HTMLInputElement {
      const box = make("input", { class: "co-series__cell", type: pad === "date" ? "date" : "text", autocomplete: "off", enterkeyhint: "next", "aria-label": label, "data-pad": pad });
      if (pad === "number" || pad === "signed") box.inputMode = "decimal";
      box.value = value;
      if (box.value !== value) { // a date that no calendar of a browser writes so: it is shown as it is
        box.type = "text";
        box.value = value;
      }
      box.addEventListener("input", () => {
        const lines = all(body, "tr").map((tr) => all<HTMLInputElement>(tr, "input").map((i) => i.value));
        if (text) text.value = formatSeries(names, lines);
        const n = lines.filter((l) => l.some((c) => c.trim() !== "")).length;
        if (n > 0) grid?.querySelector(".co-series__paper")?.remove();
        number(lines);
        const note = grid?.querySelector(".co-series__count");
        if (note) note.textContent = n === 1 ? "1 row." : `${n} rows.`;
        changed(false);
      });
      return box;
    }

    /** Rows are numbered as the calculator counts them: an empty one between others is none. */
    function number(lines: string[][]): void {
      const filled = lines.map((l) => l.some((c) => c.trim() !== ""));
      let n = 0;
      all(body, "tr").forEach((tr, r) => {
        n++;
        all(tr, "input").forEach((box, c) => box.setAttribute("aria-label", `${heads[c]}, row ${n}`));
        if (!filled[r] && r < filled.lastIndexOf(true)) n--;
      });
    }
  };

  function addRow(): void {
    extra++;
    draw();
    if (grid) all<HTMLInputElement>(grid, "tr:last-child input")[0]?.focus();
  }

  /** The boxes of a row as the calculator counts rows: those with something in them. */
  function boxesOf(row: number): HTMLInputElement[] {
    const rows = all(grid ?? input, "tr").map((tr) => all<HTMLInputElement>(tr, "input"));
    return rows.filter((r) => r.some((b) => b.value.trim() !== ""))[row - 1] ?? [];
  }

  /** Marks the box that is wrong and no other. */
  function showWrong(): void {
    const bad = wrong ? boxesOf(wrong.row) : [];
    for (const box of all(grid ?? input, "[aria-invalid]")) {
      box.removeAttribute("aria-invalid");
      box.removeAttribute("aria-describedby");
    }
    for (const box of wrong && wrong.field > 0 ? bad.slice(wrong.field - 1, wrong.field) : bad) {
      box.setAttribute("aria-invalid", "true");
      box.setAttribute("aria-describedby", why);
    }
  }

  text.addEventListener("input", () => {
    extra = 0;
    draw();
    changed(false);
  });
  file?.addEventListener("change", () => {
    const chosen = file.files?.[0];
    if (!chosen) return;
    void (async () => {
      if (chosen.size > largest) {
        grid.prepend(make("p", { class: "co-input__error", role: "alert" }, `${chosen.name} has ${Math.round(chosen.size / 1e6)} MB. At most ${largest / 1e6} MB can be read.`));
        return;
      }
      try {
        text.value = (await chosen.text()).replace(/^\uFEFF/, "").replace(/\r\n?/g, "\n");
      } catch {
        grid.prepend(make("p", { class: "co-input__error", role: "alert" }, `${chosen.name} could not be read. Choose the file again.`));
        return;
      }
      file.value = "";
      extra = 0;
      draw();
      if (paste && parseSeries(text.value).rows.length > most) paste.open = false;
      changed(true);
    })();
  });
  draw();
  return {
    draw,
    setSystem(now) {
      if (now === system) return;
      system = now;
      draw();
    },
    mark(place, said) {
      wrong = place;
      why = said;
      showWrong();
    },
    focus(place) {
      const boxes = place ? boxesOf(place.row) : [];
      const box = boxes[Math.max(place?.field ?? 0, 1) - 1] ?? boxes[0] ?? grid.querySelector("input");
      if (box) return box.focus();
      // Too many rows for boxes: the line in the text.
      if (paste) paste.open = true;
      text.focus();
      const line = place && placeOf(text.value, place.row);
      if (!line) return;
      text.setSelectionRange(...line);
      text.scrollTop = (line[0] / text.value.length) * text.scrollHeight - text.clientHeight / 2; // a browser leaves it where it was
    },
  };
}
