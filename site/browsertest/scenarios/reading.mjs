// Finding a page and reading it.

import assert from "node:assert/strict";
import { until } from "../support/page.mjs";

/** The selector of the page itself; in the single file many pages share a document. */
export const on = (page) => `[data-page="${page}"]`;

export async function openPage(p, place, page, part) {
  await p.goto(place.url(page, part));
  await p.until(`${page} to be shown`, (s) => {
    const e = document.querySelector(s);
    return !!e && e.getClientRects().length > 0 && document.readyState === "complete";
  }, on(page));
}

/** Waits until the head of the page says that the handbook is on this phone; fails with what it says instead. */
export async function saved(p) {
  const state = "[data-offline-state]";
  let said = "";
  await until("the handbook to be saved", async () => /^Saved/.test((said = (await p.text(state)) ?? "")), 60_000).catch(async (error) => {
    const workers = await p.run(async () => {
      const r = await navigator.serviceWorker.getRegistration();
      return r ? ["installing", "waiting", "active"].map((k) => `${k} ${r[k]?.state ?? "none"}`).join(", ") : "no worker";
    }).catch(String);
    throw new Error(`${error.message}; the page says "${said}"; ${workers}`);
  });
}

export async function frontPage(p, place) {
  await openPage(p, place, "index");
  const stages = await p.run((s) => document.querySelectorAll(`${s} .co-stage`).length, on("index"));
  assert.equal(stages, 10, "the front page shows the ten stages of the job");
  const empty = await p.run((s) => [...document.querySelectorAll(`${s} .co-stage`)].filter((e) => !e.querySelector("a") && !/not written yet/i.test(e.textContent)).length, on("index"));
  assert.equal(empty, 0, "a stage without a page says so");
  assert.ok(await p.visible(`${on("index")} [data-find] input`), "the front page has a search");
}

/** From the contents, by typing words, to a procedure. */
export async function searchFromContents(p, place, words, page, title) {
  await openPage(p, place, "contents");
  const box = `${on("contents")} [data-find]`;
  await p.fill(`${box} input`, words);
  await p.until(`places found for "${words}"`, (s) => document.querySelectorAll(`${s} [data-find-hits] a`).length > 0, box);
  // The hit of the page itself, not of one of its steps.
  const chosen = await p.run((s, id) => {
    const hits = [...document.querySelectorAll(`${s} [data-find-hits] a`)];
    const hit = hits.find((a) => a.getAttribute("href").replace(/\.html$/, "").endsWith(id));
    hit?.setAttribute("data-test", "hit");
    return hits.map((a) => a.getAttribute("href"));
  }, box, page);
  assert.ok(await p.visible('[data-test="hit"]'), `searching "${words}" finds ${page}, got ${chosen.join(" ")}`);
  await p.tap('[data-test="hit"]');
  await until(`the title of ${page}`, async () => (await p.text(`${on(page)} h1`)) === title);
}

export async function searchFindsNothing(p, place) {
  await openPage(p, place, "contents");
  const box = `${on("contents")} [data-find]`;
  await p.fill(`${box} input`, "zzqx");
  await until("the words for no hit", async () => /nothing found/i.test((await p.text(`${box} [data-find-count]`)) ?? ""));
}
