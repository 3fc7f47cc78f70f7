// The fields of a form as the worksheet sees them: raw text and a unit id. No number is read here; calc does that.

import { all, button } from "../../module/dom.ts";
import { besidePad, otherSign } from "../write/keys.ts";
import type { Suggestion } from "../../module/wire.ts";
import { oneOption, whenNeeded } from "./options.ts";
import { series } from "./series.ts";
import type { Place } from "./series.ts";

const atRest = 900; // ms without typing

export interface Field {
  id: string;
  label: string;
  box: HTMLElement;
  touched: boolean; // left once, hands at rest, or filled by a file: from then on its errors show while typing
  value(): string;
  standard(): string; // the declared default in the chosen unit, "" if there is none
  unit(): string;
  text(): string; // the entry with its unit, as a person reads it
  set(value: string): void;
  setUnit(unit: string): void;
  setSystem(system: string): void;
  visible(): boolean;
  focus(place?: Place): void; // place: in a series
  reset(): void;
  show(error: string, suggestions: Suggestion[], take: (s: Suggestion) => void, place?: Place): void;
}

export function fieldOf(box: HTMLElement, changed: (field: Field) => void): Field {
  const controls = all<HTMLInputElement | HTMLSelectElement | HTMLTextAreaElement>(box, "[data-value]");
  const radio = controls[0]?.type === "radio";
  const units = box.querySelector<HTMLSelectElement | HTMLInputElement>("[data-unit]:is(select, input)");
  const select = units instanceof HTMLSelectElement ? units : null;
  const error = box.querySelector<HTMLElement>("[data-error]");
  const suggest = box.querySelector<HTMLElement>("[data-suggest]");
  const bounds = box.querySelector<HTMLElement>("[data-bounds-shown]");
  const label = box.querySelector(".co-input__label")?.firstChild?.textContent?.trim() ?? "";
  box.dataset.label = label;
  describe();
  for (const c of controls) if (c instanceof HTMLSelectElement) whenNeeded(c);
  const initial = value();
  const firstUnit = units?.value ?? "";
  let unitBefore = firstUnit;

  /** Ties help, bounds and sentence to the field, and names its unit and its sign, for a screen reader. */
  function describe(): void {
    const field = radio ? box.querySelector("fieldset") : controls[0];
    if (!field) return;
    const ids: string[] = [];
    for (const [what, e] of [["help", box.querySelector(".co-input__help")], ["bounds", bounds], ["error", error]] as const) {
      if (!e) continue;
      e.id = `${field.id}-${what}`;
      ids.push(e.id);
    }
    field.setAttribute("aria-describedby", ids.join(" "));
    select?.setAttribute("aria-label", `Unit of ${label}`);
    box.querySelector("[data-sign]")?.setAttribute("aria-label", `Change the sign of ${label}`);
  }

  function value(): string {
    if (radio) return controls.find((c) => (c as HTMLInputElement).checked)?.value ?? "";
    return controls[0]?.value ?? "";
  }
  function set(text: string): void {
    if (radio) {
      const chosen = controls.find((c) => c.value === text) as HTMLInputElement | undefined;
      if (chosen) chosen.checked = true;
      else if (text === "") for (const c of controls) (c as HTMLInputElement).checked = false;
    } else if (controls[0]) {
      if (controls[0] instanceof HTMLSelectElement) oneOption(controls[0], text);
      controls[0].value = text;
    }
    if (controls[0] instanceof HTMLSelectElement && controls[0].selectedIndex < 0) controls[0].value = initial;
    rows?.draw();
  }
  const defaultIn = (unit: string): string => select?.querySelector<HTMLOptionElement>(`option[value="${CSS.escape(unit)}"]`)?.dataset.default ?? "";
  // An untouched default keeps its meaning when the unit changes; what a person typed stays as typed.
  function unitChanged(): void {
    const now = units?.value ?? "";
    const before = defaultIn(unitBefore);
    if (before !== "" && value() === before && defaultIn(now) !== "") set(defaultIn(now));
    unitBefore = now;
    if (bounds && select) bounds.textContent = select.selectedOptions[0]?.dataset.bounds ?? "";
  }

  const field: Field = {
    id: box.dataset.input ?? "",
    label,
    box,
    touched: false,
    value,
    standard: () => defaultIn(units?.value ?? "") || initial,
    unit: () => units?.value ?? "",
    text() {
      const option = radio ? controls.find((c) => (c as HTMLInputElement).checked)?.parentElement?.textContent
        : controls[0] instanceof HTMLSelectElement ? controls[0].selectedOptions[0]?.textContent : null;
      if (option) return option.trim();
      const unit = select?.selectedOptions[0]?.textContent ?? box.querySelector(".co-input__unit--only")?.textContent ?? "";
      return [value(), unit].join(" ").trim();
    },
    set,
    setUnit(unit) {
      if (select && Array.from(select.options).some((o) => o.value === unit)) {
        select.value = unit;
        unitChanged();
      }
    },
    setSystem(system) {
      rows?.setSystem(system);
      if (!select || select.selectedOptions[0]?.dataset.system === system) return;
      const fits = Array.from(select.options).find((o) => o.dataset.system === system);
      if (fits) field.setUnit(fits.value);
    },
    visible: () => !box.hidden,
    focus(place) {
      if (rows) rows.focus(place);
      else (radio ? controls.find((c) => (c as HTMLInputElement).checked) ?? controls[0] : controls[0])?.focus();
    },
    reset() {
      set(field.standard());
      field.touched = false;
      field.show("", [], () => undefined);
    },
    show(text, suggestions, take, place) {
      box.classList.toggle("co-input--wrong", text !== "");
      for (const c of controls) {
        if (text) c.setAttribute("aria-invalid", "true");
        else c.removeAttribute("aria-invalid");
      }
      if (error) {
        error.hidden = text === "";
        if (error.textContent !== text) error.textContent = text;
      }
      rows?.mark(text && place?.row ? place : null, error?.id ?? "");
      if (suggest) {
        suggest.hidden = text === "" || suggestions.length === 0;
        suggest.replaceChildren(...suggestions.map((s) => button(s.label, "co-button co-button--quiet", () => take(s))));
      }
    },
  };

  const rows = box.dataset.kind === "series"
    ? series(box, (fromFile) => {
      if (fromFile) field.touched = true;
      changed(field);
    })
    : null;
  // With gloves on nobody taps beside a field to leave it: hands at rest count as leaving.
  let rest = 0;
  const leave = (): void => {
    if (field.touched || value() === "") return;
    field.touched = true;
    changed(field);
  };
  if (!rows) for (const c of controls) {
    c.addEventListener(radio || c instanceof HTMLSelectElement ? "change" : "input", () => {
      changed(field);
      clearTimeout(rest);
      rest = window.setTimeout(leave, atRest);
    });
  }
  select?.addEventListener("change", () => {
    unitChanged();
    changed(field);
  });
  box.addEventListener("focusout", (event) => {
    if (box.contains(event.relatedTarget as Node | null)) return;
    // The module takes the declared default for an empty field, so an empty field shows it again once it is left.
    if (value() === "" && field.standard() !== "") {
      field.reset();
      changed(field);
      return;
    }
    leave();
  });
  const sign = box.querySelector<HTMLElement>("[data-sign]");
  if (sign) besidePad(sign, () => otherSign(controls[0] as HTMLInputElement));
  return field;
}

/** Shows the fields whose condition holds: "method=weight|both", several joined by "&". */
export function applyWhen(fields: Field[]): void {
  const value = new Map(fields.map((f) => [f.id, f]));
  for (const f of fields) {
    const when = f.box.dataset.when;
    if (!when) continue;
    f.box.hidden = !when.split("&").every((clause) => {
      const [id = "", wanted = ""] = clause.split("=");
      const other = value.get(id.trim());
      return !!other && other.visible() && wanted.split("|").map((w) => w.trim()).includes(other.value());
    });
  }
}
