// Every page says whose ticks and readings it shows: the open job stands below the header. Loads the job file on its page.

import { make } from "../../module/dom.ts";
import { currentJob, holdsUnsaved, jobChanged, onJobChange, onOtherTab } from "../../module/store.ts";
import { pageAddress } from "../../module/root.ts";
import { jobFile } from "./load.ts";

export function jobLine(): void {
  const line = make("aside", { class: "co-jobline", "data-job-line": "", "aria-label": "Open job" });
  document.querySelector(".co-header")?.after(line);
  const draw = (): void => {
    const job = currentJob();
    line.hidden = !job;
    if (!job) return;
    line.replaceChildren(make("a", { href: pageAddress("job") }, `Job: ${job.title}`), ...(job.demo ? [" ", make("strong", { class: "co-job__invented" }, "Invented")] : []));
  };
  onJobChange(draw);
  onOtherTab((key) => {
    if (key !== "job") return;
    jobChanged();
    // Worksheets fill their fields once; what was typed is kept, so the page can start anew.
    if (document.querySelector("[data-worksheet]") && !holdsUnsaved()) location.reload();
  });
  draw();
  const page = document.querySelector<HTMLElement>("[data-job-file], [data-report]");
  if (page) {
    jobFile().catch(() => page.append(make("p", { role: "alert" }, "The job file could not be loaded. Reload the page. Nothing that is kept was changed.")));
  }
}
