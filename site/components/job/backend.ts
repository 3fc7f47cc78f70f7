// Where jobs lie: the browser's database; where that is missing or refused, localStorage; else this page's memory. The
// three keep the same two things: jobs as plain values, and pictures as bytes. (Bytes, not Blobs: some engines cannot
// put a Blob into the database in a private window.)

import { prefix } from "../../module/store.ts";
import { fromBase64, toBase64 } from "./base64.ts";

export interface Stored { id: string; [part: string]: unknown }
export interface Picture { job: string; id: string; type: string; bytes: ArrayBuffer }

/** Everything that one act changes, in this order: remove, put, putPictures, removePictures. It happens as a whole or not at all. */
export interface Change { put?: Stored[]; remove?: string[]; putPictures?: Picture[]; removePictures?: { job: string; id: string }[] }

export interface Backend {
  kind: "database" | "local" | "memory";
  jobs(): Promise<Stored[]>;
  job(id: string): Promise<Stored | null>;
  picture(job: string, id: string): Promise<Picture | null>;
  pictures(job: string): Promise<string[]>; // ids
  apply(change: Change): Promise<void>;
}

/** Opens the best that this browser has. What an earlier visit put into a lesser one moves along. */
export async function openBackend(): Promise<Backend> {
  try {
    const database = await openDatabase();
    await moveInto(database).catch(console.error);
    return database;
  } catch {
    try {
      return local();
    } catch {
      return memory();
    }
  }
}

async function moveInto(database: Backend): Promise<void> {
  let from: Backend;
  try {
    from = local();
  } catch {
    return;
  }
  for (const job of await from.jobs()) {
    const pictures = (await Promise.all((await from.pictures(job.id)).map((id) => from.picture(job.id, id)))).filter((p): p is Picture => !!p);
    if (!(await database.job(job.id))) await database.apply({ put: [job], putPictures: pictures });
    await from.apply({ remove: [job.id] });
  }
}

// Some engines never answer for a page opened from a file.
const patience = 4000;

function openDatabase(): Promise<Backend> {
  return new Promise((done, failed) => {
    const late = setTimeout(() => failed(new Error("the database does not answer")), patience);
    const request = indexedDB.open(prefix, 1);
    request.onupgradeneeded = () => {
      request.result.createObjectStore("jobs", { keyPath: "id" });
      request.result.createObjectStore("pictures", { keyPath: ["job", "id"] });
    };
    request.onsuccess = () => {
      clearTimeout(late);
      const db = request.result;
      db.onversionchange = () => db.close();
      done(databaseBackend(db));
    };
    request.onerror = () => {
      clearTimeout(late);
      failed(request.error);
    };
  });
}

function databaseBackend(db: IDBDatabase): Backend {
  const answer = <T>(request: IDBRequest<T>): Promise<T> => new Promise((done, failed) => {
    request.onsuccess = () => done(request.result);
    request.onerror = () => failed(request.error);
  });
  const from = (name: string): IDBObjectStore => db.transaction(name).objectStore(name);
  const ofJob = (job: string): IDBKeyRange => IDBKeyRange.bound([job], [job, []]);
  return {
    kind: "database",
    jobs: () => answer(from("jobs").getAll() as IDBRequest<Stored[]>),
    job: async (id) => (await answer(from("jobs").get(id) as IDBRequest<Stored | undefined>)) ?? null,
    picture: async (job, id) => (await answer(from("pictures").get([job, id]) as IDBRequest<Picture | undefined>)) ?? null,
    pictures: async (job) => (await answer(from("pictures").getAllKeys(ofJob(job)))).map((key) => String((key as IDBValidKey[])[1])),
    apply: (change) => new Promise((done, failed) => {
      const t = db.transaction(["jobs", "pictures"], "readwrite");
      t.oncomplete = () => done();
      t.onabort = t.onerror = () => failed(t.error ?? new Error("the database refused"));
      const jobs = t.objectStore("jobs");
      const pictures = t.objectStore("pictures");
      try {
        for (const id of change.remove ?? []) {
          jobs.delete(id);
          pictures.delete(ofJob(id));
        }
        for (const job of change.put ?? []) jobs.put(job);
        for (const p of change.putPictures ?? []) pictures.put(p);
        for (const p of change.removePictures ?? []) pictures.delete([p.job, p.id]);
        t.commit?.(); // now, and not when this page has heard of each request: it may be gone by then
      } catch (error) {
        t.abort();
        failed(error);
      }
    }),
  };
}

/** Jobs as JSON in localStorage, pictures as base64. Throws where localStorage is refused. */
function local(): Backend {
  const start = `${prefix}jobs/`;
  localStorage.setItem(start + "?", "1");
  localStorage.removeItem(start + "?");
  const keys = (under: string): string[] => Array.from({ length: localStorage.length }, (_, i) => localStorage.key(i) ?? "").filter((k) => k.startsWith(under));
  const value = (key: string): unknown => JSON.parse(localStorage.getItem(key) ?? "null") as unknown;
  const jobKey = (id: string): string => `${start}job/${id}`;
  const pictureKey = (job: string, id: string): string => `${start}picture/${job}/${id}`;
  return {
    kind: "local",
    jobs: async () => keys(jobKey("")).map((k) => value(k) as Stored),
    job: async (id) => value(jobKey(id)) as Stored | null,
    picture: async (job, id) => {
      const p = value(pictureKey(job, id)) as { type: string; data: string } | null;
      return p && { job, id, type: p.type, bytes: fromBase64(p.data) };
    },
    pictures: async (job) => keys(pictureKey(job, "")).map((k) => k.slice(pictureKey(job, "").length)),
    async apply(change) {
      const wanted = new Map<string, string | null>();
      for (const id of change.remove ?? []) for (const k of [jobKey(id), ...keys(pictureKey(id, ""))]) wanted.set(k, null);
      for (const p of change.removePictures ?? []) wanted.set(pictureKey(p.job, p.id), null);
      for (const job of change.put ?? []) wanted.set(jobKey(job.id), JSON.stringify(job));
      for (const p of change.putPictures ?? []) wanted.set(pictureKey(p.job, p.id), JSON.stringify({ type: p.type, data: toBase64(p.bytes) }));
      const before = new Map([...wanted.keys()].map((k) => [k, localStorage.getItem(k)]));
      const write = (key: string, text: string | null): void => (text === null ? localStorage.removeItem(key) : localStorage.setItem(key, text));
      try {
        for (const [key, text] of wanted) write(key, text);
      } catch (error) {
        for (const key of wanted.keys()) localStorage.removeItem(key);
        for (const [key, text] of before) write(key, text);
        throw error;
      }
    },
  };
}

export function memory(): Backend {
  const held = new Map<string, Stored>();
  const shots = new Map<string, Picture>();
  const of = (job: string): Picture[] => [...shots.values()].filter((p) => p.job === job);
  return {
    kind: "memory",
    jobs: async () => [...held.values()].map((j) => structuredCopy(j)),
    job: async (id) => structuredCopy(held.get(id) ?? null),
    picture: async (job, id) => shots.get(`${job}/${id}`) ?? null,
    pictures: async (job) => of(job).map((p) => p.id),
    async apply(change) {
      for (const id of change.remove ?? []) {
        held.delete(id);
        for (const p of of(id)) shots.delete(`${id}/${p.id}`);
      }
      for (const job of change.put ?? []) held.set(job.id, structuredCopy(job));
      for (const p of change.putPictures ?? []) shots.set(`${p.job}/${p.id}`, p);
      for (const p of change.removePictures ?? []) shots.delete(`${p.job}/${p.id}`);
    },
  };
}

const structuredCopy = <T>(value: T): T => JSON.parse(JSON.stringify(value)) as T;
