// Puts a worksheet's answer into the open job.

import { currentJob, openJob } from "../../module/store.ts";
import { takeLoose } from "./belongings.ts";
import { download, saveJobs } from "./file.ts";
import { today } from "./form.ts";
import type { Answer } from "./load.ts";
import { askToPersist } from "./room.ts";
import { resultOf } from "./result.ts";
import { freshId, openJobs } from "./store.ts";

export async function keepAnswer(answer: Answer): Promise<{ sentence: string; save: (() => void) | null }> {
  const jobs = await openJobs();
  let open = currentJob();
  const kept = open && (await jobs.kept(open.id));
  let made = "";
  if (!open || !kept || kept.deleted !== undefined) {
    const job = await jobs.create(`Job of ${today()}`);
    open = { id: job.id, title: job.title, demo: false };
    takeLoose(job.id, job.title, `values:${answer.page}:${answer.worksheet}`); // the form keeps what it shows
    openJob(open);
    made = " It is new: give it a better name there.";
    void askToPersist();
  }
  const result = resultOf(answer, freshId(), new Date().toISOString(), document.documentElement.dataset.version ?? "");
  await jobs.change(open.id, (job) => void job.results.push(result));
  const where = `the job “${open.title}”${open.demo ? ", which is invented" : ""}`;
  if (!jobs.unsaved) return { sentence: `Kept in ${where}.${made}`, save: null };
  const id = open.id;
  return {
    sentence: `Kept in ${where}, but in this page only: the browser refuses to store it.${made}`,
    save: () => void saveJobs(jobs, [id], new Date(), document.documentElement.dataset.version ?? "").then(download),
  };
}
