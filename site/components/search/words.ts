// Parts a text into words. build/internal/searchindex/word.go parts alike; testdata/search/words.txt holds both to it.

export interface Word { text: string; start: number; end: number }

const pattern = /\d+(?:[.,\u202f]\d+)*\p{L}*|[\p{L}\p{N}](?:[\p{L}\p{N}]|['’](?=\p{L}))*/gu;
const thousands = /^\d{1,3}(?:[,\u202f]\d{3})+(?![\d,\u202f])/; // 2,000 as people type it, 17\u202f545 as pages show it
// eslint-disable-next-line no-control-regex
const foreign = /[^\x00-\x7f]/;

/** Lower case, without accents, apostrophes and what groups thousands. */
export function fold(word: string): string {
  let s = word.toLowerCase();
  if (foreign.test(s)) s = s.normalize("NFD").replace(/[\u0300-\u036f’]/g, "").normalize("NFC");
  if (s.includes("'")) s = s.replace(/'/g, "");
  return thousands.test(s) ? s.replace(/[,\u202f]/g, "") : s;
}

/** Calls each for the words of a text; for a hyphen for the parts and the whole ("R-410A": r, 410a, r410a). */
export function eachWord(text: string, each: (word: string, start: number, end: number) => void): void {
  let before = "";
  let from = 0;
  let to = -2;
  pattern.lastIndex = 0;
  for (let match = pattern.exec(text); match; match = pattern.exec(text)) {
    const start = match.index;
    const end = pattern.lastIndex;
    const word = fold(match[0]);
    each(word, start, end);
    if (to === start - 1) {
      const c = text.charCodeAt(to);
      if (c === 0x2d || c === 0x2010 || c === 0x2011) each(before + word, from, end);
    }
    before = word;
    from = start;
    to = end;
  }
}

export function words(text: string): Word[] {
  const found: Word[] = [];
  eachWord(text, (word, start, end) => found.push({ text: word, start, end }));
  return found;
}

// Endings that only bend a word. Longer ones first; what is left keeps at least three letters.
const endings = ["ations", "ation", "ating", "ators", "ator", "ated", "ates", "ate", "ings", "ing", "ies", "ied", "ed", "es", "s", "y", "e"];

/** What evacuate, evacuated and evacuation have in common: evacu. Words with digits and short ones stay whole. */
export function stem(word: string): string {
  if (word.length < 4 || /\d/.test(word)) return word;
  for (const ending of endings) {
    if (word.endsWith(ending) && word.length - ending.length >= 3 && !(ending === "s" && word.endsWith("ss"))) {
      const left = word.slice(0, -ending.length);
      // "stopping" and "stop": the doubled letter goes with the ending.
      return left.length > 3 && /([bdgmnprt])\1$/.test(left) ? left.slice(0, -1) : left;
    }
  }
  return word;
}

/** One bit for each letter that a word holds: two words whose letters differ too much need no closer look. */
export function letters(word: string): number {
  let bits = 0;
  for (let i = 0; i < word.length; i++) {
    const c = word.charCodeAt(i) - 97;
    if (c >= 0 && c < 26) bits |= 1 << c;
  }
  return bits;
}

/** Whether a has at most limit letters that b lacks. */
export function nearLetters(a: number, b: number, limit: number): boolean {
  let odd = a & ~b;
  for (let n = 0; n <= limit; n++) {
    if (odd === 0) return true;
    odd &= odd - 1;
  }
  return false;
}

const rows = [new Int32Array(64), new Int32Array(64), new Int32Array(64)];

/**
 * How many slips of the finger part two words: a letter too many, missing, wrong, or swapped with its neighbour.
 * Gives limit + 1 as soon as it is more than the limit. With open the second word may go on: it is still being typed.
 */
export function slips(asked: string, word: string, limit: number, open = false): number {
  const most = Math.min(word.length, asked.length + limit);
  if (asked.length - word.length > limit || (!open && word.length - asked.length > limit) || most > 60 || asked.length > 60) return limit + 1;
  let [older, last, row] = rows as [Int32Array, Int32Array, Int32Array];
  for (let j = 0; j <= most; j++) last[j] = j;
  for (let i = 1; i <= asked.length; i++) {
    const a = asked.charCodeAt(i - 1);
    row[0] = i;
    let least = i;
    for (let j = 1; j <= most; j++) {
      const b = word.charCodeAt(j - 1);
      let d = Math.min((last[j] as number) + 1, (row[j - 1] as number) + 1, (last[j - 1] as number) + (a === b ? 0 : 1));
      if (i > 1 && j > 1 && a === word.charCodeAt(j - 2) && asked.charCodeAt(i - 2) === b) d = Math.min(d, (older[j - 2] as number) + 1);
      row[j] = d;
      if (d < least) least = d;
    }
    if (least > limit) return limit + 1;
    [older, last, row] = [last, row, older];
  }
  let d = (last[most] as number) + (word.length - most);
  if (open) for (let j = 0; j <= most; j++) d = Math.min(d, last[j] as number);
  return Math.min(limit + 1, d);
}
