// One version of the handbook in one cache, named by the digest of its list. Nothing gets in unchecked, and nothing of
// another version is touched while it may be in use.

import { contentType } from "./addresses.ts";
import { receive, sha256 } from "./receive.ts";
import type { Entry, Net } from "./receive.ts";

/** Files whole and right so far, and bytes: those of whole files and those on their way. */
export type Progress = (files: number, bytes: number) => void;

/** What reading everything back has found. */
export interface Found {
  good: string[];
  bad: string[]; // missing, cut, changed, or not readable
  bytes: number; // of the good ones
  saved: number; // when the last of them came in, ms
}

const atOnce = 4; // files fetched side by side
const grace = 2000; // ms for the others after one has failed

export class Shelf {
  readonly entries: ReadonlyMap<string, Entry>;
  readonly size: number;
  /** Files that were missing or damaged and were fetched again, since somebody was last told. */
  readonly again = new Set<string>();
  private unwritten = 0; // what sound() answers where the phone has no room for a note, as long as the worker runs
  private readonly family: string;
  private readonly name: string;

  constructor(readonly scope: string, digest: string, list: readonly Entry[], private readonly stores: CacheStorage, private readonly net: Net) {
    this.family = `changeout ${new URL(scope).pathname} `;
    this.name = this.family + digest;
    this.entries = new Map(list.map((entry) => [entry[0], entry]));
    this.size = list.reduce((sum, entry) => sum + entry[2], 0);
  }

  address(path: string): string {
    return new URL(path, this.scope).href;
  }

  /** Everything, or an error that says why not. What has come stays for the next try. */
  async fill(progress: Progress = () => undefined): Promise<void> {
    // A browser can drop what it has just taken: whole is what is there now, not what was put in. WebKit without a disk
    // never keeps much in a cache whose first worker has failed; a cache made anew is sound.
    let lost: string[] = [];
    for (let tries = 0; tries < 2; tries++) {
      await this.round(progress);
      lost = await this.missing();
      if (lost.length === 0) return this.noteSound(Date.now()); // nothing got in that was not compared
      await this.stores.delete(this.name);
    }
    throw new Error(`the phone does not keep ${lost[0]}.`);
  }

  private async round(progress: Progress): Promise<void> {
    const cache = await this.stores.open(this.name);
    const others = await this.others();
    const queue = [...this.entries.values()];
    let files = 0;
    let bytes = 0;
    let over = false; // nothing is told after the failure was told
    const one = async (): Promise<void> => {
      for (let entry = queue.shift(); entry; entry = queue.shift()) {
        if (await this.here(cache, others, entry)) bytes += entry[2];
        else await this.fetch(cache, entry, (n) => over || progress(files, (bytes += n)));
        files++;
        if (!over) progress(files, bytes);
      }
    };
    const workers = Array.from({ length: atOnce }, one);
    try {
      await Promise.all(workers);
    } catch (error) {
      queue.length = 0; // after one failure no other file is begun; those on their way may still arrive
      await Promise.race([Promise.allSettled(workers), new Promise((done) => setTimeout(done, grace))]);
      over = true;
      throw error;
    }
  }

  /** The file as it is kept; one that the phone has dropped is fetched again, checked, and kept. */
  async file(path: string): Promise<Response> {
    const cache = await this.stores.open(this.name);
    const kept = await cache.match(this.address(path));
    if (kept) return kept;
    const entry = this.entries.get(path);
    if (!entry) throw new Error(`${path} is not part of the handbook.`);
    const fetched = await this.fetch(cache, entry);
    this.again.add(path);
    return fetched;
  }

  /** What is missing by name. Quick: no file is read. */
  async missing(): Promise<string[]> {
    const cache = await this.stores.open(this.name);
    const held = new Set((await cache.keys()).map((request) => request.url));
    return [...this.entries.keys()].filter((path) => !held.has(this.address(path)));
  }

  /** Reads every file back and compares it. What is not right is taken out, so that nobody is given it. */
  async check(progress: (files: number) => void = () => undefined): Promise<Found> {
    const cache = await this.stores.open(this.name);
    const found: Found = { good: [], bad: [], bytes: 0, saved: 0 };
    for (const entry of this.entries.values()) {
      const [path, , size] = entry;
      const kept = await match(cache, this.address(path));
      if (kept && (await right(kept, entry))) {
        found.good.push(path);
        found.bytes += size;
        found.saved = Math.max(found.saved, Date.parse(kept.headers.get("date") ?? "") || 0);
      } else {
        found.bad.push(path);
        await cache.delete(this.address(path)).catch(() => false);
      }
      progress(found.good.length + found.bad.length);
    }
    await this.noteSound(found.bad.length === 0 ? Date.now() : 0);
    return found;
  }

  /** Fetches these files again. */
  async mend(paths: readonly string[]): Promise<void> {
    const cache = await this.stores.open(this.name);
    for (const path of paths) {
      const entry = this.entries.get(path);
      if (!entry) continue;
      await this.fetch(cache, entry);
      this.again.add(path);
    }
  }

  /** When every file was last compared and right, ms; 0 when one has been wrong since, or nothing is known. */
  async sound(): Promise<number> {
    const note = await match(await this.stores.open(this.name), this.address(soundNote));
    return note ? Number(await note.text()) : this.unwritten;
  }

  private async noteSound(at: number): Promise<void> {
    const cache = await this.stores.open(this.name);
    this.unwritten = at;
    await cache.delete(this.address(soundNote)).catch(() => false);
    if (at > 0) await cache.put(this.address(soundNote), new Response(String(at))).catch(() => undefined);
  }

  /** Writes down which caches are older than this version. They go once no page of theirs is open. */
  async outdate(): Promise<void> {
    const cache = await this.stores.open(this.name);
    await cache.put(this.address(olderList), new Response(JSON.stringify(await this.others())));
  }

  /** Deletes what outdate has listed. A newer version that is being saved beside this one is not in that list. */
  async removeOlder(): Promise<void> {
    const cache = await this.stores.open(this.name);
    const list = await cache.match(this.address(olderList));
    if (!list) return;
    for (const name of (await list.json()) as string[]) await this.stores.delete(name);
    await cache.delete(this.address(olderList));
  }

  /** A file of another version, for a page of that version which is still open. Only names with a digest are safe to give. */
  async fromOthers(path: string): Promise<Response | undefined> {
    for (const name of await this.others()) {
      const kept = await (await this.stores.open(name)).match(this.address(path));
      if (kept) return kept;
    }
    return undefined;
  }

  private async others(): Promise<string[]> {
    return (await this.stores.keys()).filter((name) => name.startsWith(this.family) && name !== this.name);
  }

  /** True when the cache holds the right bytes, perhaps after copying them from another version's cache. */
  private async here(cache: Cache, others: string[], entry: Entry): Promise<boolean> {
    const url = this.address(entry[0]);
    const own = await match(cache, url);
    if (own && (await right(own, entry))) return true;
    for (const name of others) {
      const old = await match(await this.stores.open(name), url);
      const bytes = old && (await right(old, entry));
      if (!bytes) continue;
      await this.put(cache, entry[0], bytes);
      return true;
    }
    return false;
  }

  private async fetch(cache: Cache, entry: Entry, got?: (bytes: number) => void): Promise<Response> {
    const bytes = await receive(this.net, this.address(entry[0]), entry, got);
    await this.put(cache, entry[0], bytes);
    return response(entry[0], bytes);
  }

  private async put(cache: Cache, path: string, bytes: ArrayBuffer): Promise<void> {
    try {
      await cache.put(this.address(path), response(path, bytes));
    } catch {
      throw new Error("the phone has no room left for the handbook.");
    }
  }
}

// No file of a site can have these names.
const olderList = "?older";
const soundNote = "?sound";

/** A cache whose disk has gone bad throws; that is as good as not held. */
async function match(cache: Cache, url: string): Promise<Response | undefined> {
  return cache.match(url).catch(() => undefined);
}

/** The bytes when they are the right ones, else null. */
async function right(kept: Response, [, digest, size]: Entry): Promise<ArrayBuffer | null> {
  try {
    const bytes = await kept.clone().arrayBuffer();
    return bytes.byteLength === size && (await sha256(bytes)) === digest ? bytes : null;
  } catch {
    return null;
  }
}

function response(path: string, bytes: ArrayBuffer): Response {
  return new Response(bytes.slice(0), {
    headers: { "content-type": contentType(path), "content-length": String(bytes.byteLength), "x-content-type-options": "nosniff", date: new Date().toUTCString() },
  });
}
