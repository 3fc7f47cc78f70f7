// The one door to the jobs on this phone: lists them, reads one whole, changes one part. What the browser refuses to keep
// (a full disk, a private window) stays in this page, is said in a sentence, and can still be saved as a file.

import { currentJob, onOtherTab, openJob, save } from "../../module/store.ts";
import { belongings, forgetBelongings, putBelongings } from "./belongings.ts";
import type { Belongings } from "./belongings.ts";
import { memory, openBackend } from "./backend.ts";
import type { Backend, Change, Picture, Stored } from "./backend.ts";
import { newJob } from "./schema.ts";
import type { Job, Photo } from "./schema.ts";

/** A job without what pages keep for it, as it lies in the store. deleted: when it was thrown away, ms. */
export type Kept = Omit<Job, keyof Belongings> & { deleted?: number };

export const undoFor = 10_000; // ms between throwing away and being gone

export class Jobs {
  /** What could not be written, newest state; read before the backend. */
  private held = memory();
  private lost = false;
  private made = false; // something was written since this page was opened
  private tellers: ((sentence: string) => void)[] = [];

  constructor(private backend: Backend) {
    onOtherTab((key) => key === "jobs-changed" && this.newest.clear());
  }

  get kind(): Backend["kind"] {
    return this.backend.kind;
  }

  /** True while something of the jobs lives in this page alone. */
  get unsaved(): boolean {
    return this.lost || (this.made && this.backend.kind === "memory");
  }

  /** tell gets a sentence when a change could not be kept, and "" once everything is kept again. */
  onTrouble(tell: (sentence: string) => void): void {
    this.tellers.push(tell);
  }

  /** All jobs that are not thrown away, the last changed first. */
  async list(): Promise<Kept[]> {
    const all = new Map<string, Kept>();
    for (const from of [this.backend, this.held]) for (const j of await from.jobs()) all.set(j.id, j as unknown as Kept);
    return [...all.values()].filter((j) => j.deleted === undefined).sort((a, b) => b.updated.localeCompare(a.updated));
  }

  async kept(id: string): Promise<Kept | null> {
    return ((await this.held.job(id)) ?? (await this.backend.job(id))) as Kept | null;
  }

  /** A job with everything in it; null when there is none. */
  async read(id: string): Promise<Job | null> {
    const k = await this.kept(id);
    if (!k) return null;
    this.newest.set(id, JSON.parse(JSON.stringify(k)) as Kept);
    const { deleted: _, ...rest } = k;
    return { ...rest, ...belongings(id) };
  }

  /** The picture of a photo; null when the browser lost it. */
  async photo(job: string, id: string): Promise<Blob | null> {
    const p = (await this.held.picture(job, id)) ?? (await this.backend.picture(job, id));
    return p && new Blob([p.bytes], { type: p.type });
  }

  async create(title: string): Promise<Job> {
    const job = newJob(freshId(), title, new Date().toISOString());
    await this.write({ put: [stored(job)] });
    return job;
  }

  /**
   * Changes what lies in the store. change gets the newest state; it must not wait for anything. A job that was read
   * here is written in the same moment, so that a key press is kept even when the page goes away with the next.
   */
  change(id: string, change: (job: Kept) => void, pictures: Pick<Change, "putPictures" | "removePictures"> = {}): Promise<void> {
    const write = (job: Kept): Promise<void> => {
      change(job);
      job.updated = new Date().toISOString();
      const open = currentJob();
      if (open?.id === id && open.title !== job.title) openJob({ ...open, title: job.title });
      return this.write({ put: [job as unknown as Stored], ...pictures });
    };
    const read = this.newest.get(id);
    if (read && !this.lost && this.waiting === 0) return write(read);
    this.waiting++;
    this.turn = this.turn.then(async () => {
      const job = await this.kept(id);
      if (job) await write(job);
    }).finally(() => this.waiting--);
    return this.turn;
  }
  private newest = new Map<string, Kept>(); // as last read or written here; another tab's change empties it
  private turn: Promise<void> = Promise.resolve();
  private waiting = 0;

  async addPhoto(id: string, photo: Photo, picture: Blob): Promise<void> {
    const bytes = await picture.arrayBuffer();
    await this.change(id, (job) => void job.photos.push(photo), { putPictures: [{ job: id, id: photo.id, type: photo.type, bytes }] });
  }

  /** Throws a job away; it can be brought back until purge. */
  async throwAway(id: string): Promise<void> {
    await this.change(id, (job) => void (job.deleted = Date.now()));
    if (currentJob()?.id === id) openJob(null);
  }

  async bringBack(id: string): Promise<void> {
    await this.change(id, (job) => void delete job.deleted);
  }

  /** Ends what was thrown away long enough ago, and pictures that no photo names. */
  async purge(now = Date.now()): Promise<void> {
    for (const j of (await this.backend.jobs()) as unknown as Kept[]) {
      if (j.deleted !== undefined && now - j.deleted >= undoFor) {
        await this.backend.apply({ remove: [j.id] });
        await this.held.apply({ remove: [j.id] });
        this.newest.delete(j.id);
        forgetBelongings(j.id);
        continue;
      }
      const orphans = (await this.backend.pictures(j.id)).filter((p) => !j.photos.some((x) => x.id === p));
      if (orphans.length > 0 && now - Date.parse(j.updated) >= undoFor) await this.backend.apply({ removePictures: orphans.map((p) => ({ job: j.id, id: p })) });
    }
  }

  /** Puts whole jobs with their pictures in place, all or none. Throws when the browser refuses: then nothing is changed. */
  async bring(list: { job: Job; pictures: Picture[] }[]): Promise<void> {
    this.changed();
    await this.backend.apply({
      remove: list.map(({ job }) => job.id),
      put: list.map(({ job }) => stored(job)),
      putPictures: list.flatMap(({ pictures }) => pictures),
    });
    for (const { job } of list) {
      this.newest.delete(job.id);
      await this.held.apply({ remove: [job.id] });
      putBelongings(job.id, job.title, job, Date.now());
    }
    save("jobs-changed", String(Date.now()));
  }

  private ask = (event: Event): void => {
    if (this.unsaved) event.preventDefault();
  };
  private changed(): void {
    this.made = true;
    addEventListener("beforeunload", this.ask);
  }

  private async write(change: Change): Promise<void> {
    this.changed();
    try {
      if (this.lost) await this.writeHeld(change);
      else await this.backend.apply(change); // begins at once
    } catch (error) {
      console.warn(error);
      await this.held.apply(change);
      this.lost = true;
      for (const tell of this.tellers) tell(refused(error));
    }
    save("jobs-changed", String(Date.now()));
  }

  /** Writes a change with what could not be written before. */
  private async writeHeld(change: Change): Promise<void> {
    const ids = (change.put ?? []).map((j) => j.id);
    const pictures = await this.heldPictures(ids);
    await this.backend.apply({ ...change, putPictures: [...pictures, ...(change.putPictures ?? [])] });
    await this.held.apply({ remove: ids });
    this.lost = (await this.held.jobs()).length > 0;
    this.newest.clear();
    if (!this.lost) for (const tell of this.tellers) tell("");
  }

  /** Pictures that wait for room go along with the next change that has it. */
  private async heldPictures(jobs: string[]): Promise<Picture[]> {
    const found: Picture[] = [];
    for (const job of jobs) {
      for (const id of await this.held.pictures(job)) {
        const p = await this.held.picture(job, id);
        if (p) found.push(p);
      }
    }
    return found;
  }
}

function stored(job: Job): Stored {
  const { ticks, fields, entries, findings, timers, ...kept } = job;
  return kept;
}

/** Why the browser kept nothing, and what to do. */
export function refused(error: unknown): string {
  const full = error instanceof Error && /quota|full|space/i.test(error.name + " " + error.message);
  return full
    ? "The storage of this browser is full. The last change is in this page only. Save the job as a file now, then make room."
    : "This browser refused to keep the last change. It is in this page only. Save the job as a file now.";
}

let jobs: Promise<Jobs> | null = null;

/** The jobs on this phone. Every caller gets the same. */
export function openJobs(): Promise<Jobs> {
  jobs ??= openBackend().then((backend) => new Jobs(backend));
  return jobs;
}

/** An id that no other phone makes. */
export function freshId(): string {
  const random = crypto.getRandomValues(new Uint8Array(9));
  return Date.now().toString(36) + "-" + Array.from(random, (b) => (b % 36).toString(36)).join("");
}
