// What a scenario may do with a browser, whichever it is. The three engines differ only in the few methods that
// puppeteer.mjs and webkit.mjs supply; everything built on them stands here.

/** How long a condition may take. Two busy cores and a cold WebAssembly compile are slow; a wrong page never gets there. */
export const patience = 60_000;

export const pause = (ms) => new Promise((done) => setTimeout(done, ms));

/** Calls look until it gives something, and fails with the words given when it does not in time. */
export async function until(what, look, ms = patience) {
  const end = Date.now() + ms;
  let last;
  for (;;) {
    try {
      const found = await look();
      if (found) return found;
      last = undefined;
    } catch (error) {
      if (error.final) throw error; // it can never come true
      last = error;
    }
    if (Date.now() > end) throw new Error(`waited ${ms / 1000} s for: ${what}${last ? ` (${last.message})` : ""}`);
    await pause(50);
  }
}

/**
 * One tab. Engines supply:
 *   goto(url), reload()           return when the page has loaded
 *   run(fn, ...args)              calls fn in the page; both ways only what JSON can hold
 *   tap(selector)                 scrolls there and clicks with the pointer; fails when something covers it
 *   keys(selector, text)          types into a focused field, key by key
 *   resize(width, height)         returns nothing; ask run(() => innerWidth) for what was possible
 *   press(key)                    one key by name, such as "Enter"
 *   upload(selector, file)        gives a file to a file field
 *   troubles()                    errors of the console, scripts and the content-security policy so far, as sentences
 *   strangers(allowed)            addresses that were asked for and do not start with one of allowed
 *   another()                     a second tab of the same browser; show() brings a tab to the front before it is used again
 *   closeTab()                    closes a second tab
 *   close()
 */
export class Page {
  async until(what, fn, ...args) {
    return until(what, () => this.run(fn, ...args));
  }

  /** The text a person reads in the first such element, white space evened out; null when there is none. */
  async text(selector) {
    // What is far down is not laid out and has no text to read yet: a person scrolls there.
    const text = await until(`${selector} to be laid out`, () => this.run((s) => {
      const e = document.querySelector(s);
      if (e?.checkVisibility?.() && !e.checkVisibility({ contentVisibilityAuto: true })) return void e.scrollIntoView({ block: "nearest", behavior: "instant" });
      return { read: e?.innerText ?? null };
    }, selector));
    return text.read === null ? null : plain(text.read);
  }

  async value(selector) {
    return this.run((s) => document.querySelector(s).value, selector);
  }

  async visible(selector) {
    return this.run((s) => {
      const e = document.querySelector(s);
      return !!e && e.getClientRects().length > 0 && getComputedStyle(e).visibility !== "hidden";
    }, selector);
  }

  /** Puts text in place of what a field holds, with the keyboard, and leaves the field. */
  async fill(selector, text) {
    // A page that is drawn anew while the finger comes down makes a person tap again.
    for (let tries = 0; ; tries++) {
      await this.tap(selector);
      const held = await this.run((s) => {
        const e = document.querySelector(s);
        if (document.activeElement === e) e.select();
        return document.activeElement === e;
      }, selector);
      if (held) break;
      if (tries === 2) throw new Error(`${selector} does not take the focus when it is tapped`);
    }
    await this.keys(selector, text);
    const got = await this.value(selector);
    // Left with a key: a script's blur() is no event to Firefox when its window is not the active one.
    await this.press("Tab");
    if (got !== text) throw new Error(`${selector} holds "${got}" after "${text}" was typed`);
  }

  /** A long text comes from the clipboard, so it arrives in one piece, with the one event that a paste gives. */
  async paste(selector, text) {
    await this.run((s, t) => {
      const e = document.querySelector(s);
      e.focus();
      e.value = t;
      e.dispatchEvent(new InputEvent("input", { bubbles: true, inputType: "insertFromPaste" }));
      e.blur();
    }, selector, text);
  }

  /** Chooses in a list. The list opens outside the page in every engine, so the choice itself is made by script. */
  async choose(selector, value) {
    const chosen = await this.run((s, v) => {
      const e = document.querySelector(s);
      e.focus();
      e.value = v;
      e.dispatchEvent(new Event("input", { bubbles: true }));
      e.dispatchEvent(new Event("change", { bubbles: true }));
      return e.value;
    }, selector, value);
    if (chosen !== value) throw new Error(`${selector} has no choice ${value}`);
  }
}

/** Non-breaking and thin spaces as plain ones, runs of white space as one. */
export function plain(text) {
  return text.replace(/[\s\u00a0\u2009\u202f]+/g, " ").trim();
}
