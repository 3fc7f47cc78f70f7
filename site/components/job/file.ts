// Jobs as one file: made here, and put back from here. check.ts has judged what comes in.

import { fromBase64, toBase64 } from "./base64.ts";
import type { Picture } from "./backend.ts";
import { format, version } from "./schema.ts";
import type { Job, JobFile, JobInFile, PhotoInFile } from "./schema.ts";
import { freshId } from "./store.ts";
import type { Jobs } from "./store.ts";

export interface Saved { name: string; text: string; missing: number } // missing: photos whose picture the browser lost

/** Makes the file of these jobs. */
export async function saveJobs(jobs: Jobs, ids: string[], now: Date, handbook: string): Promise<Saved> {
  const file: JobFile = { format, version, saved: now.toISOString(), handbook, jobs: [] };
  let missing = 0;
  for (const id of ids) {
    const job = await jobs.read(id);
    if (!job) continue;
    const photos: PhotoInFile[] = [];
    for (const photo of job.photos) {
      const picture = await jobs.photo(id, photo.id);
      if (picture) photos.push({ ...photo, size: picture.size, data: toBase64(await picture.arrayBuffer()) });
      else missing++;
    }
    file.jobs.push({ ...job, photos });
  }
  const first = file.jobs[0];
  const day = file.saved.slice(0, 10);
  const name = file.jobs.length === 1 && first ? `job-${slug(first.title)}-${day}.json` : `jobs-${day}.json`;
  return { name, text: JSON.stringify(file), missing };
}

const slug = (title: string): string => title.toLowerCase().normalize("NFKD").replace(/[^a-z0-9]+/g, "-").replace(/^-|-$/g, "").slice(0, 40) || "file";

/** Takes a job of a file apart. other: under an id of its own, beside the one that is here. */
export function fromFile(inFile: JobInFile, other: boolean): { job: Job; pictures: Picture[] } {
  const id = other ? freshId() : inFile.id;
  const pictures = inFile.photos.map((p) => ({ job: id, id: p.id, type: p.type, bytes: fromBase64(p.data) }));
  const photos = inFile.photos.map(({ data: _, ...photo }) => photo);
  return { job: { ...inFile, id, title: other ? `${inFile.title.slice(0, 280)} (from a file)` : inFile.title, photos }, pictures };
}

/** Gives a file to the person: the browser puts it where downloads go. */
export function download({ name, text }: Saved): void {
  const url = URL.createObjectURL(new Blob([text], { type: "application/json" }));
  const link = document.createElement("a");
  link.href = url;
  link.download = name;
  document.body.append(link);
  link.click();
  link.remove();
  setTimeout(() => URL.revokeObjectURL(url), 60_000);
}

/** Gives it to the share sheet, where there is one that takes files. */
export function share({ name, text }: Saved): (() => Promise<void>) | null {
  try {
    const files = [new File([text], name, { type: "application/json" })];
    return navigator.canShare?.({ files }) ? () => navigator.share({ files, title: name }) : null;
  } catch {
    return null;
  }
}
