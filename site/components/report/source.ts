// The jobs on this phone as the report needs them: store, job file, assessment and module.

import { currentJob, onJobChange } from "../../module/store.ts";
import { assess, evaluate } from "../../module/calculator.ts";
import { all } from "../../module/dom.ts";
import { saveJobs } from "../job/file.ts";
import type { Job } from "../job/schema.ts";
import { openJobs } from "../job/store.ts";
import { again } from "./answers.ts";
import { question, readAssessment } from "./assessment.ts";
import type { Assessment } from "./assessment.ts";
import { causeData } from "./causes.ts";
import { reportView } from "./view.ts";
import type { Source } from "./view.ts";

/** causes: address of the cause model's data file from the site's root; the single file holds the same text. */
export async function phoneSource(causes: string): Promise<Source> {
  const jobs = await openJobs();
  return {
    handbook: document.documentElement.dataset.version ?? "",
    job: async () => {
      const open = currentJob();
      return open && jobs.read(open.id);
    },
    change: async (act) => {
      const open = currentJob();
      if (open) await jobs.change(open.id, (j) => act(j.report));
    },
    photo: (job, photo) => jobs.photo(job, photo),
    file: (job) => saveJobs(jobs, [job], new Date(), document.documentElement.dataset.version ?? ""),
    assessment: async (job: Job): Promise<Assessment | null> => {
      const data = await causeData(causes);
      return data === "" ? null : readAssessment(data, await assess(question(data, job.findings)));
    },
    again: (job) => again(job.results, evaluate),
  };
}

/** Fills every <section data-report="address of the cause data"> of this document. */
export function reports(): void {
  for (const section of all<HTMLElement>(document, "[data-report]")) {
    let turn = Promise.resolve();
    const draw = (): void => void (turn = turn.then(async () => reportView(section, await phoneSource(section.dataset.report ?? ""))).catch((error: unknown) => {
      console.error(error);
      section.textContent = "The report cannot be made here. The job is kept. Reload the page.";
    }));
    onJobChange(draw);
    draw();
  }
}
