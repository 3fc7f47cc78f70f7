// One script for every worksheet: it sends what was typed, with its unit, and shows what comes back. It knows no
// worksheet and reads no number.

import { all, make } from "../../module/dom.ts";
import { compile, evaluate, ready, start } from "../../module/load.ts";
import { load, loadRecord, save, saveRecord } from "../../module/store.ts";
import type { Problem, Reply, Suggestion } from "../../module/wire.ts";
import { drawAnswer, drawNoAnswer } from "./answer.ts";
import type { OutputUnits } from "./answer.ts";
import { applyWhen, fieldOf } from "./fields.ts";
import type { Field } from "./fields.ts";

const slow = 8; // ms: an answer that takes longer waits for a pause in typing
const pause = 200; // ms
const quiet = 900; // ms without typing before the answer is read aloud

export function worksheets(): void {
  const sections = all(document, "[data-worksheet]");
  for (const section of sections) {
    try {
      worksheet(section);
    } catch (error) {
      console.error(error);
    }
  }
  if (sections.length === 0) return;
  const early = (): void => void compile().catch(() => undefined);
  if ("requestIdleCallback" in window) requestIdleCallback(early, { timeout: 3000 });
  else setTimeout(early, 500);
}

function worksheet(section: HTMLElement): void {
  const id = section.dataset.worksheet ?? "";
  const form = section.querySelector<HTMLFormElement>("[data-form]");
  const answer = section.querySelector<HTMLElement>("[data-answer]");
  const summary = section.querySelector<HTMLElement>("[data-summary]");
  const spoken = section.querySelector<HTMLElement>("[data-announce]");
  if (!form || !answer || !summary) return;

  const page = section.closest<HTMLElement>("[data-page]")?.dataset.page ?? "";
  const valuesKey = `values:${page}:${id}`;
  const unitsKey = `units:${id}`;
  const prefix = section.id.slice(0, section.id.length - `worksheet-${id}`.length); // page prefix in the single file
  const companions = new Map<string, string>(); // answers to questions about a field, sent back with it: log.columns
  const outputs = outputUnits(section);
  let cost = 0;
  let wait: number | undefined;
  let speak: number | undefined;
  let asked = false; // "Work it out" was pressed since the last clear

  const fields = all(form, "[data-input]").map((box) => fieldOf(box, (field) => {
    if (box.dataset.kind === "series") forgetCompanions(field.id);
    keep();
    applyWhen(fields);
    update();
  }));

  // What the person had: system, units, values.
  let system: "si" | "ip" = chosenSystem();
  const kept = loadRecord(unitsKey);
  for (const f of fields) {
    f.setSystem(system);
    if (kept[`in.${f.id}`]) f.setUnit(kept[`in.${f.id}`] ?? "");
  }
  const values = loadRecord(valuesKey);
  for (const [name, value] of Object.entries(values)) {
    const f = fields.find((x) => x.id === name);
    if (f) f.set(value);
    else companions.set(name, value);
  }
  applyWhen(fields);
  drawSystem();
  form.hidden = false;
  const example = section.querySelector<HTMLDetailsElement>("[data-example]");
  if (example) {
    example.open = false;
    example.dataset.ready = "";
  }

  form.addEventListener("focusin", () => void start().catch(failed), { once: true });
  form.addEventListener("submit", (event) => {
    event.preventDefault();
    asked = true;
    start().then(() => work(true), failed);
  });
  form.addEventListener("keydown", (event) => {
    const at = event.target as HTMLElement;
    if (event.key !== "Enter" || event.isComposing || !(at instanceof HTMLInputElement) || at.type === "submit") return;
    const stops = all<HTMLElement>(form, "input:not([type=hidden]):not([type=file]):not([type=radio]), select[data-value], input[type=radio]:checked, button[type=submit]")
      .filter((e) => e.offsetParent !== null);
    const next = stops[stops.indexOf(at) + 1];
    if (!next || next instanceof HTMLButtonElement) return; // the last field: Enter works it out
    event.preventDefault();
    next.focus();
    if (next instanceof HTMLInputElement) next.select();
  });
  form.querySelector("[data-clear]")?.addEventListener("click", () => {
    companions.clear();
    asked = false;
    for (const f of fields) f.reset();
    summary.hidden = true;
    applyWhen(fields);
    keep();
    update();
    fields.find((f) => f.visible())?.focus();
  });
  for (const b of all<HTMLButtonElement>(form, "[data-system-set]")) {
    b.addEventListener("click", () => {
      system = b.dataset.systemSet === "ip" ? "ip" : "si";
      save("system", system);
      const units = loadRecord(unitsKey);
      for (const name of Object.keys(units)) if (name.startsWith("out.")) delete units[name];
      saveRecord(unitsKey, units);
      for (const f of fields) f.setSystem(system);
      drawSystem();
      keep();
      update();
    });
  }

  if (Object.keys(values).length > 0) update();
  else drawNoAnswer(answer, needed(fields.filter((f) => f.visible() && f.value() === "" && !("optional" in f.box.dataset))));

  function drawSystem(): void {
    const group = form?.querySelector<HTMLElement>("[data-system]");
    if (!group) return;
    group.hidden = !form?.querySelector('option[data-system="ip"]') && ![...outputs.values()].some((o) => o.units.some((u) => u.system === "ip"));
    for (const b of all(group, "[data-system-set]")) b.setAttribute("aria-pressed", String(b.dataset.systemSet === system));
  }

  function keep(): void {
    const record: Record<string, string> = Object.fromEntries(companions);
    for (const f of fields) if (f.value() !== "") record[f.id] = f.value();
    saveRecord(valuesKey, record);
    const units = loadRecord(unitsKey);
    for (const f of fields) if (f.unit() !== "") units[`in.${f.id}`] = f.unit();
    saveRecord(unitsKey, units);
  }

  function forgetCompanions(input: string): void {
    for (const name of [...companions.keys()]) if (name.startsWith(input + ".")) companions.delete(name);
  }

  function update(): void {
    if (!ready()) {
      start().then(() => work(false), failed);
      return;
    }
    clearTimeout(wait);
    if (cost > slow) wait = window.setTimeout(() => work(false), pause);
    else work(false);
  }

  function work(pressed: boolean): void {
    if (!answer || !summary) return;
    const emptied = fields.filter((f) => f.visible() && f.value() === "" && f.standard() !== "");
    if (emptied.length > 0 && !pressed) {
      drawNoAnswer(answer, needed(emptied)); // the default must not work unseen
      return;
    }
    for (const f of emptied) f.reset();
    const began = performance.now();
    let reply: Reply;
    try {
      reply = evaluate({
        worksheet: id,
        system,
        inputs: [
          ...fields.filter((f) => f.visible()).map((f) => ({ id: f.id, text: f.value(), unit: f.unit() })),
          ...[...companions].map(([name, text]) => ({ id: name, text, unit: "" })),
        ],
        outputs: Object.entries(loadRecord(unitsKey)).filter(([name]) => name.startsWith("out.")).map(([name, unit]) => ({ id: name.slice(4), unit })),
      });
    } catch (error) {
      failed(error);
      return;
    }
    cost = performance.now() - began;

    showProblems(reply.problems, pressed);
    if (reply.problems.length === 0 && (reply.outputs.length > 0 || reply.verdict)) {
      drawAnswer(answer, prefix + id, section.dataset.heading ?? "2", reply, outputs, (output, unit) => {
        const units = loadRecord(unitsKey);
        units[`out.${output}`] = unit;
        saveRecord(unitsKey, units);
        update();
      });
      if (pressed) {
        answer.scrollIntoView({ block: "start" });
        answer.querySelector<HTMLElement>(".co-answer__title")?.focus({ preventScroll: true });
      }
    } else drawNoAnswer(answer, reasonFor(reply.problems));
    say(reply);
  }

  /** An error shows at its field once the field was left, or the button pressed; an empty field is not an error before that. */
  function showProblems(problems: Problem[], pressed: boolean): void {
    if (!summary) return;
    for (const f of fields) {
      const p = problems.find((x) => owner(x)?.id === f.id);
      const show = p && (asked || (f.touched && f.value() !== ""));
      f.show(show ? p.text : "", show ? p.suggestions : [], take);
    }
    if (!asked || problems.length === 0) {
      summary.hidden = true;
      return;
    }
    const list = make("ul");
    for (const p of problems) {
      const f = owner(p);
      const link = make("a", { href: "#" + (f?.box.querySelector("[data-value]")?.id || form?.id || "") }, p.text);
      link.addEventListener("click", (event) => {
        event.preventDefault();
        f?.box.scrollIntoView({ block: "start" });
        f?.focus();
      });
      list.append(make("li", {}, f ? link : p.text));
    }
    summary.replaceChildren(make("p", {}, problems.length === 1 ? "One entry needs a change" : `${problems.length} entries need a change`), list);
    summary.hidden = false;
    if (pressed) summary.focus();
  }

  function owner(p: Problem): Field | undefined {
    return fields.find((f) => f.id === p.input) ?? fields.find((f) => p.input.startsWith(f.id + "."));
  }

  function take(s: Suggestion): void {
    const f = fields.find((x) => x.id === s.input);
    if (f) f.set(s.value);
    else companions.set(s.input, s.value);
    keep();
    applyWhen(fields);
    update();
    (f ?? fields.find((x) => s.input.startsWith(x.id + ".")))?.focus();
  }

  function reasonFor(problems: Problem[]): string {
    const empty = problems.map(owner).filter((f): f is Field => !!f && f.value() === "");
    const first = problems.find((p) => !empty.includes(owner(p) as Field));
    if (empty.length > 0) return needed(empty) + (first ? " " + first.text : "");
    return first ? first.text : "The calculator gave no figure for these entries.";
  }

  function say(reply: Reply): void {
    clearTimeout(speak);
    speak = window.setTimeout(() => {
      if (!spoken) return;
      const first = reply.outputs[0];
      spoken.textContent = reply.problems.length > 0 ? reasonFor(reply.problems)
        : reply.verdict ? `${reply.verdict.title}. ${reply.verdict.text}`
        : first ? reply.outputs.slice(0, 3).map((o) => `${o.label}: ${o.text}`).join(". ") : "";
    }, quiet);
  }

  function failed(error: unknown): void {
    console.error(error);
    if (answer) drawNoAnswer(answer, "The calculator could not start. Your entries are kept. Reload the page, or use the printed tables.");
  }
}

function needed(fields: Field[]): string {
  const names = [...new Set(fields.map((f) => f.label))];
  if (names.length === 0) return "Press Work it out.";
  return `Still needed: ${names.join(", ")}.`;
}

function outputUnits(section: HTMLElement): Map<string, OutputUnits> {
  const list = section.querySelector<HTMLTemplateElement>("[data-outputs]")?.content.querySelectorAll<HTMLElement>("[data-output]") ?? [];
  return new Map(Array.from(list).map((o) => [o.dataset.output ?? "", {
    label: o.dataset.label ?? "",
    units: all(o, "[data-unit-id]").map((u) => ({ id: u.dataset.unitId ?? "", label: u.textContent ?? "", system: u.dataset.system ?? "" })),
  }]));
}

function chosenSystem(): "si" | "ip" {
  const kept = load("system");
  if (kept === "si" || kept === "ip") return kept;
  return navigator.language === "en-US" ? "ip" : "si";
}
