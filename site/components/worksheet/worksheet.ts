// One script for every worksheet: it sends what was typed, with its unit, and shows what comes back. It knows no
// worksheet and reads no number.

import { all, button, keepPlace, make } from "../../module/dom.ts";
import { aside, stands } from "../../module/begins.ts";
import { NotLoaded, beside, evaluate, prepare } from "../../module/calculator.ts";
import { load, loadRecord, save, saveRecord } from "../../module/store.ts";
import type { Problem, Reply, Request, Suggestion } from "../../module/wire.ts";
import { singleFile } from "../../module/root.ts";
import { drawAnswer, drawNoAnswer } from "./answer.ts";
import type { OutputUnits } from "./answer.ts";
import { before } from "./before.ts";
import { dataIn } from "./data.ts";
import { prepareWhenIdle, whenNear } from "./begin.ts";
import { printBlank } from "./blank.ts";
import { fromFragment, same } from "./entries.ts";
import { printResult, worksheetsForPrint } from "./paper.ts";
import type { Entries } from "./entries.ts";
import { columnsOf, parseSeries } from "./series-text.ts";
import { linksWork, linkTo, share } from "./share.ts";
import { taking } from "./take.ts";
import { applyWhen, fieldOf } from "./fields.ts";
import type { Field } from "./fields.ts";

const slow = 8; // ms: an answer that holds up the page for longer waits for a pause in typing
const pause = 200; // ms
const patience = 250; // ms after which an answer to what was entered before is no longer shown
const quiet = 900; // ms without typing before the answer is read aloud

export function worksheets(): void {
  document.addEventListener("changeout:unfolded", (event) => startIn(event.target as HTMLElement));
  worksheetsForPrint();
  if (startIn(document)) prepareWhenIdle();
}

/** Starts each worksheet when somebody comes near it. True if there is one. */
function startIn(under: ParentNode): boolean {
  const sections = all(under, "[data-worksheet]");
  for (const section of sections) whenNear(section, () => {
    worksheet(section);
    section.dispatchEvent(new CustomEvent("changeout:begun", { bubbles: true }));
    const form = section.querySelector("[data-form]");
    if (form) aside(form);
  });
  return sections.length > 0;
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
  const earlier = before(`before:${page}:${id}`);
  const go = form.querySelector<HTMLElement>("button[type=submit]");
  let shown = ""; // the sentences at the fields and above them, as last drawn
  let cost = 0;
  let wait: number | undefined;
  let speak: number | undefined;
  let keeping: number | undefined;
  let asked = false; // "Work it out" was pressed since the last clear
  let busy = false; // an answer is on its way
  let wanted = false; // and another is wanted after it
  let turn = 0; // counts what was asked; an answer to an earlier turn is not shown
  let press = false; // the next answer is the one that somebody pressed for
  let late: number | undefined;
  const paper = button("Print this result", "co-button co-button--quiet", () => void printResult(section));
  paper.dataset.printResult = "";
  paper.hidden = true;

  const fields = all(form, "[data-input]").map((box) => fieldOf(box, (field) => {
    if (box.dataset.kind === "series") forgetCompanions(field.id);
    keepSoon();
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
  put({ values: loadRecord(valuesKey), units: {} });
  applyWhen(fields);
  drawSystem();
  form.hidden = false;
  const example = section.querySelector<HTMLDetailsElement>("[data-example]");
  if (example) {
    example.open = false;
    example.dataset.ready = "";
  }

  addEventListener("pagehide", () => {
    if (keeping !== undefined) keep();
  });
  form.addEventListener("focusin", prepare, { once: true });
  form.addEventListener("submit", (event) => {
    event.preventDefault();
    asked = true;
    void work(true);
  });
  form.addEventListener("keydown", (event) => {
    const at = event.target as HTMLElement;
    if (event.key !== "Enter" || event.isComposing || !(at instanceof HTMLInputElement) || at.type === "submit") return;
    const stops = all<HTMLElement>(form, "input:not([type=hidden]):not([type=file]), select[data-value], button[type=submit]")
      .filter((e) => e.offsetParent !== null && (!(e instanceof HTMLInputElement) || e.type !== "radio" || e === radioStop(e)));
    const next = stops[stops.indexOf(at) + 1];
    if (!next || next instanceof HTMLButtonElement) return; // the last field: Enter works it out
    event.preventDefault();
    next.focus();
    if (next instanceof HTMLInputElement) next.select();
  });
  form.querySelector("[data-clear]")?.addEventListener("click", () => {
    const typed = somethingTyped();
    if (typed) earlier.keep(entries());
    fill({ values: {}, units: {} });
    notice(typed ? "The fields are cleared." : "");
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

  const more = section.querySelector<HTMLElement>("[data-more]");
  if (more) moreThanAnswers(more);
  takeOver();
  notice("");
  addEventListener("hashchange", takeLink);
  if (takeLink()) {
    // The answer is on its way.
  } else if (Object.keys(loadRecord(valuesKey)).length > 0) update();
  else none(needed(fields.filter((f) => f.visible() && f.value() === "" && !("optional" in f.box.dataset))));

  function drawSystem(): void {
    const group = form?.querySelector<HTMLElement>("[data-system]");
    if (!group) return;
    group.hidden = !form?.querySelector('option[data-system="ip"]') && !fields.some((f) => columnsOf(f.box).some((c) => c.ip !== "")) && ![...outputs.values()].some((o) => o.units.some((u) => u.system === "ip"));
    for (const b of all(group, "[data-system-set]")) b.setAttribute("aria-pressed", String(b.dataset.systemSet === system));
  }

  /** Right after the answer is drawn: writing to the phone's storage takes longer than working it out. */
  function keepSoon(): void {
    keeping ??= window.setTimeout(keep);
  }

  function keep(): void {
    clearTimeout(keeping);
    keeping = undefined;
    const record: Record<string, string> = Object.fromEntries(companions);
    for (const f of fields) if (f.value() !== "") record[f.id] = f.value();
    saveRecord(valuesKey, record);
    const units = loadRecord(unitsKey);
    for (const f of fields) if (f.unit() !== "") units[`in.${f.id}`] = f.unit();
    saveRecord(unitsKey, units);
  }

  function entries(): Entries {
    const e: Entries = { values: Object.fromEntries(companions), units: {} };
    for (const f of fields) {
      if (f.value() !== "") e.values[f.id] = f.value();
      if (f.unit() !== "") e.units[f.id] = f.unit();
    }
    return e;
  }

  function somethingTyped(): boolean {
    return fields.some((f) => f.value() !== "" && f.value() !== f.standard());
  }

  /** Puts entries into the fields and returns those that found no place, in words. */
  function put(e: Entries): string[] {
    const lost: string[] = [];
    for (const [name, text] of Object.entries(e.values)) {
      const f = fields.find((x) => x.id === name);
      const unit = e.units[name];
      if (!f && owner({ input: name })) companions.set(name, text);
      if (f && unit) f.setUnit(unit);
      f?.set(text);
      if (f ? f.value() !== text.replace(/\r\n?/g, "\n") || (unit && f.unit() !== unit) : !companions.has(name)) lost.push(`${f?.label ?? name} ${[text, unit].join(" ").trim()}`);
    }
    return lost;
  }

  /** Puts entries in place of what the form holds; what the form held is the caller's to keep. */
  function fill(e: Entries): string[] {
    companions.clear();
    asked = false;
    shown = "";
    if (summary) summary.hidden = true;
    for (const f of fields) f.reset();
    const lost = put(e);
    for (const f of fields) f.touched = f.id in e.values;
    applyWhen(fields);
    keep();
    update();
    return lost;
  }

  /** A link to this worksheet's own page may carry entries. True if it did. */
  function takeLink(): boolean {
    const link = fromFragment(location.hash);
    if (!link || page !== `worksheets/${id}` || (singleFile && link.page !== page)) return false;
    const held = entries();
    const typed = somethingTyped();
    const lost = fill(link.entries);
    if (typed && !same(held, entries())) earlier.keep(held);
    history.replaceState(null, "", singleFile ? "#" + page : location.pathname + location.search); // a reload must not undo what is typed next
    notice("These entries came with a link. Check each one against your own reading.", lost);
    return true;
  }

  /** Offers the readings that the steps further up hold. What they replace can be put back. */
  function takeOver(): void {
    const place = section.closest<HTMLElement>("[data-page]");
    const take = place && taking(place, id);
    if (!take) return;
    form?.querySelector("[data-input]")?.before(make("p", { class: "co-worksheet__take" }, button("Take over the readings of the steps", "co-button co-button--quiet", () => {
      const taken = take(fields);
      if (taken.said.length === 0) return notice("The steps above hold no reading for this worksheet yet.");
      const held = entries();
      const next: Entries = { values: { ...held.values, ...taken.entries.values }, units: { ...held.units, ...taken.entries.units } };
      if (somethingTyped() && !same(held, next)) earlier.keep(held);
      const lost = fill(next);
      notice(`Taken over: ${taken.said.join("; ")}.`, lost);
    })));
  }

  /** Says where the entries come from, and offers those that they replaced. */
  function notice(sentence: string, lost: string[] = []): void {
    const box = form?.querySelector<HTMLElement>("[data-notice]");
    if (!box) return;
    const last = earlier.last(entries());
    box.hidden = sentence === "" && !last;
    if (box.hidden) return;
    box.replaceChildren(make("p", { role: "status" }, [sentence, last ? `Kept from before: ${inShort(last)}.` : ""].join(" ").trim()));
    if (lost.length > 0) box.append(make("p", {}, `Not used, because this worksheet has no place for it: ${lost.join("; ")}.`));
    if (!last) return;
    const place = (): void => keepPlace(box.querySelector("button"), ...all(section, "[data-form] button")); // what was pressed is gone
    box.append(make("p", { class: "co-notice__buttons" },
      button("Put them back", "co-button co-button--quiet", () => {
        const back = earlier.swap(somethingTyped() ? entries() : null);
        if (back) fill(back);
        notice("Put back.");
        place();
      }), " ",
      button("Forget them", "co-button co-button--quiet", () => {
        earlier.forget();
        notice("");
        place();
      })));
  }

  /** A set of entries as a person tells it from another: the first of what was typed. */
  function inShort(e: Entries): string {
    const typed = fields.filter((f) => (e.values[f.id] ?? "") !== "" && e.values[f.id] !== f.standard());
    const words = typed.map((f) => {
      if (f.box.dataset.kind === "series") {
        const { rows } = parseSeries(e.values[f.id] ?? "");
        return `${f.label}, ${rows.length} rows, the last ${rows[rows.length - 1]?.join(" ") ?? ""}`;
      }
      const unit = all<HTMLOptionElement>(f.box, "[data-unit] option").find((o) => o.value === e.units[f.id])?.textContent ?? "";
      return [f.label, e.values[f.id], unit].join(" ").trim();
    });
    return words.slice(0, 3).join("; ") + (words.length > 3 ? `; and ${words.length - 3} more` : "");
  }

  /** What can be done with the entries besides an answer: print it, share them, print the form without them. */
  function moreThanAnswers(more: HTMLElement): void {
    const heading = section.dataset.title ?? "";
    const said = more.querySelector<HTMLElement>("[data-shared]");
    const copy = more.querySelector<HTMLElement>("[data-copy]");
    const b = more.querySelector<HTMLElement>("[data-share]");
    if (!said || !copy || !b) return;
    if (!linksWork) b.textContent = "Copy the entries as text";
    b.addEventListener("click", () => {
      const filled = fields.filter((f) => f.visible() && f.value() !== "");
      const now = entries();
      const values = Object.fromEntries(Object.entries(now.values).filter(([name]) => filled.includes(owner({ input: name }) as Field)));
      const text = [heading, ...filled.map((f) => `${f.label}: ${f.box.dataset.kind === "series" ? "\n" : ""}${f.text()}`)].join("\n");
      void share(heading, linksWork ? linkTo(id, { values, units: now.units }) : null, text, (sentence) => (said.textContent = sentence), copy);
    });
    more.prepend(paper);
    more.querySelector("[data-blank-form]")?.addEventListener("click", () => printBlank(section, system, outputs));
    more.hidden = false;
  }

  /**
   * Tells whoever keeps answers (the job file) that one was drawn: an event "changeout:answer" on the section, which
   * bubbles. detail: worksheet (id), title, system, inputs [{ id, label, text as typed, unit id, shown: both as a person
   * reads them; and the answers to questions about a field, without label }], outputs [{ id, label, value in SI, unit of
   * SI, text, main }], verdict { id, tone, title, text } or null, warnings. All of it belongs to this answer. A button for it
   * goes into the empty [data-keep] after the answer.
   */
  function announceAnswer(reply: Reply): void {
    const filled = fields.filter((f) => f.visible() && f.value() !== "");
    section.dispatchEvent(new CustomEvent("changeout:answer", { bubbles: true, detail: {
      worksheet: id,
      title: section.dataset.title ?? "",
      system,
      inputs: [
        ...filled.map((f) => ({ id: f.id, label: f.label, text: f.value(), unit: f.unit(), shown: f.text() })),
        ...[...companions].filter(([name]) => filled.some((f) => name.startsWith(f.id + "."))).map(([name, text]) => ({ id: name, label: "", text, unit: "", shown: "" })),
      ],
      outputs: reply.outputs,
      verdict: reply.verdict,
      warnings: reply.warnings,
    } }));
  }

  function forgetCompanions(input: string): void {
    for (const name of [...companions.keys()]) if (name.startsWith(input + ".")) companions.delete(name);
  }

  function update(): void {
    clearTimeout(wait);
    if (!busy && !beside() && cost > slow) wait = window.setTimeout(() => void work(false), pause);
    else void work(false);
  }

  /** One question at a time. What is typed meanwhile is asked next; the answer that it has overtaken is not shown. */
  async function work(pressed: boolean): Promise<void> {
    clearTimeout(wait);
    clearTimeout(speak);
    turn++;
    press = pressed;
    const emptied = fields.filter((f) => f.visible() && f.value() === "" && f.standard() !== "");
    if (pressed) for (const f of emptied) f.reset();
    wanted = pressed || emptied.length === 0;
    if (!wanted) return none(needed(emptied)); // the default must not work unseen
    if (answer) answer.dataset.asked = ""; // until the answer in it is the one to what the fields hold
    late ??= window.setTimeout(() => {
      answer?.setAttribute("aria-busy", "true");
      stands();
    }, patience);
    if (busy) return;
    busy = true;
    while (wanted) {
      wanted = false;
      const mine = turn;
      const began = performance.now();
      try {
        const reply = await evaluate(question());
        cost = performance.now() - began;
        if (mine === turn) show(reply, press);
      } catch (error) {
        if (mine === turn) failed(error);
      }
    }
    busy = false;
  }

  /** What stands in the answer's place belongs to what stands in the fields again. */
  function settled(): void {
    clearTimeout(late);
    late = undefined;
    answer?.removeAttribute("aria-busy");
    delete answer?.dataset.asked;
    stands();
  }

  function none(reason: string): void {
    settled();
    paper.hidden = true;
    if (answer) drawNoAnswer(answer, reason);
  }

  function question(): Request {
    return {
      worksheet: id,
      system,
      inputs: [
        ...fields.filter((f) => f.visible()).map((f) => ({ id: f.id, text: f.value(), unit: f.unit() })),
        ...[...companions].map(([name, text]) => ({ id: name, text, unit: "" })),
      ],
      outputs: Object.entries(loadRecord(unitsKey)).filter(([name]) => name.startsWith("out.")).map(([name, unit]) => ({ id: name.slice(4), unit })),
    };
  }

  function show(reply: Reply, pressed: boolean): void {
    if (!answer) return;
    settled();
    showProblems(reply.problems, pressed);
    if (reply.problems.length === 0 && (reply.outputs.length > 0 || reply.verdict)) {
      drawAnswer(answer, prefix + id, section.dataset.heading ?? "2", reply, outputs, (output, unit) => {
        const units = loadRecord(unitsKey);
        units[`out.${output}`] = unit;
        saveRecord(unitsKey, units);
        update();
      });
      paper.hidden = false;
      if (pressed) {
        answer.scrollIntoView({ block: "start" });
        answer.querySelector<HTMLElement>(".co-answer__title")?.focus({ preventScroll: true });
      }
      announceAnswer(reply);
    } else none(reasonFor(reply.problems));
    say(reply);
  }

  /** An error shows at its field once the field was left, or the button pressed; an empty field is not an error before that. */
  function showProblems(problems: Problem[], pressed: boolean): void {
    if (!summary) return;
    const at = fields.map((f) => {
      const p = problems.find((x) => owner(x)?.id === f.id);
      return p && (asked || (f.touched && f.value() !== "")) ? p : null;
    });
    const now = JSON.stringify([at, asked ? problems : []]);
    if (now === shown && !pressed) return;
    const clear = JSON.stringify([at.map(() => null), []]);
    const nothing = now === clear && (shown === clear || shown === "") && !pressed; // then no layout is asked for
    shown = now;
    if (nothing) return;
    // The room kept at a field holds most sentences. For the rest the page scrolls with what grew, so that the button
    // stays where the thumb goes.
    const top = go?.getBoundingClientRect().top ?? 0;
    fields.forEach((f, i) => f.show(at[i]?.text ?? "", at[i]?.suggestions ?? [], take, at[i] ?? undefined));
    drawSummary(problems, pressed);
    const moved = pressed || !go ? 0 : go.getBoundingClientRect().top - top;
    if (moved !== 0) scrollBy({ top: moved, behavior: "instant" });
  }

  function drawSummary(problems: Problem[], pressed: boolean): void {
    if (!summary) return;
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
        f?.focus(p);
      });
      list.append(make("li", {}, f ? link : p.text));
    }
    summary.replaceChildren(make("p", {}, problems.length === 1 ? "One entry needs a change" : `${problems.length} entries need a change`), list);
    summary.hidden = false;
    if (pressed) summary.focus();
  }

  function owner(p: { input: string }): Field | undefined {
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
      const left = reply.problems.find((p) => owner(p)?.touched && owner(p)?.value() !== ""); // its sentence shows at a field that the person may have left
      spoken.textContent = left ? left.text : reply.problems.length > 0 ? reasonFor(reply.problems)
        : reply.verdict ? `${reply.verdict.title}. ${reply.verdict.text}`
        : first ? reply.outputs.slice(0, 3).map((o) => `${o.label}: ${o.text}`).join(". ") : "";
    }, quiet);
  }

  function failed(error: unknown): void {
    console.error(error);
    const why = error instanceof NotLoaded ? error.message : "The calculator could not start.";
    none(`${why} Your entries are kept. Reload the page, or use the printed tables.`);
  }
}

/** Where Enter stops in a group of radio buttons: the chosen one, else the first. */
function radioStop(radio: HTMLInputElement): HTMLInputElement | undefined {
  const group = all<HTMLInputElement>(radio.closest("[data-input]") ?? document, "input[type=radio]");
  return group.find((r) => r.checked) ?? group[0];
}

function needed(fields: Field[]): string {
  const names = [...new Set(fields.map((f) => f.label))];
  if (names.length === 0) return "Press Work it out.";
  return `Still needed: ${names.join(", ")}.`;
}

function outputUnits(section: HTMLElement): Map<string, OutputUnits> {
  return new Map(dataIn<(OutputUnits & { id: string })[]>(section, "outputs")?.map((o) => [o.id, o]));
}

export function chosenSystem(): "si" | "ip" {
  const kept = load("system");
  if (kept === "si" || kept === "ip") return kept;
  return navigator.language === "en-US" ? "ip" : "si";
}
