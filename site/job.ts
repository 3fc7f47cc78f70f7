// The third script: the job file. Loaded on its page and when somebody keeps an answer; the single file carries it.

import { jobPage, pageRoots } from "./components/job/page.ts";
import { keepAnswer } from "./components/job/answers.ts";
import type { JobFileScript } from "./components/job/load.ts";
import { openJobs } from "./components/job/store.ts";
import { reports } from "./components/report/source.ts";

(globalThis as { changeoutJobFile?: JobFileScript }).changeoutJobFile = {
  keep: keepAnswer,
  results: async (id) => (await (await openJobs()).kept(id))?.results ?? [],
};
for (const root of pageRoots()) void openJobs().then((jobs) => jobPage(root, jobs));
reports();
