// Which places answer a search: each word asked must begin a word of the place (or of its page's title).

/** One page of search-index.json: address, title, kind, stage, summary, and [id, text] of its steps and headings. */
export interface Entry { u: string; t: string; k: string; n?: number; d?: string; s?: [string, string][] }
export interface Hit { entry: Entry; part: [string, string] | null; score: number }

/** Lower case, without accents, hyphens as spaces, so that "P-T" and "p t", "Vacuum-hold" and "vacuum hold" are one. A no-break space is a space. */
export function fold(text: string): string {
  return text.normalize("NFD").replace(/[\u0300-\u036f]/g, "").toLowerCase().replace(/[\s\-‐–—/_(),;:“”"]+/g, " ");
}

export function rank(entries: Entry[], asked: string, most: number): Hit[] {
  const words = fold(asked).split(/\s+/).filter(Boolean);
  if (words.length === 0) return [];
  const hits: Hit[] = [];
  for (const entry of entries) {
    const title = " " + fold(entry.t);
    const summary = " " + fold(entry.d ?? "");
    if (words.every((w) => starts(title, w) || starts(summary, w))) {
      hits.push({ entry, part: null, score: words.filter((w) => starts(title, w)).length * 20 + 10 });
    }
    for (const part of entry.s ?? []) {
      const text = " " + fold(part[1]);
      const here = words.filter((w) => starts(text, w)).length;
      // The step must hold at least one of the words itself; the page's title may hold the rest.
      if (here > 0 && words.every((w) => starts(text, w) || starts(title, w))) hits.push({ entry, part, score: here * 8 - text.length / 200 });
    }
  }
  return hits.sort((a, b) => b.score - a.score).slice(0, most);
}

const starts = (text: string, word: string): boolean => text.includes(" " + word);
