// What a drawn answer says: its figures as they stand there, in the unit chosen there, main ones first.

export interface Figure { label: string; number: string; unit: string; main: boolean }
export interface Seen { figures: Figure[]; verdict: { title: string; text: string; tone: string } | null }

/** Null while there is no answer. */
export function read(answer: HTMLElement): Seen | null {
  const rows = Array.from(answer.querySelectorAll<HTMLElement>(".co-result"));
  const main = (row: HTMLElement): boolean => row.classList.contains("co-result--main");
  const figures = rows.sort((a, b) => Number(main(b)) - Number(main(a))).map((row) => {
    const select = row.querySelector("select");
    return {
      main: main(row),
      label: text(row, "dt"),
      number: text(row, ".co-result__value"),
      unit: select ? select.selectedOptions[0]?.textContent?.trim() ?? "" : text(row, ".co-result__unit"),
    };
  });
  const box = answer.querySelector<HTMLElement>(".co-verdict");
  const tone = Array.from(box?.classList ?? []).map((c) => c.slice("co-verdict--".length)).find((t) => ["good", "stop", "doubt", "info"].includes(t));
  const verdict = box && { title: text(box, ".co-verdict__title"), text: text(box, ".co-verdict__text"), tone: tone ?? "info" };
  return figures.length > 0 || verdict ? { figures, verdict } : null;
}

const text = (under: HTMLElement, selector: string): string => under.querySelector(selector)?.textContent?.trim() ?? "";
