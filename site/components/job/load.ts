// The job file is a script of its own, loaded when somebody keeps something or opens its page.

import { root } from "../../module/root.ts";
import type { Result } from "./schema.ts";

/** A worksheet's answer as it is handed over. Numbers come as the module wrote them. */
export interface Answer {
  worksheet: string;
  title: string;
  page: string;
  system: "si" | "ip";
  inputs: { id: string; label: string; text: string; unit: string; shown?: string }[];
  outputs: { id: string; label: string; value: string; unit: string; text: string; main: boolean }[];
  verdict: { id: string; tone: string; title: string; text: string } | null;
  warnings: string[];
}

export interface JobFileScript {
  /** Keeps an answer in the open job, or in a new one. Gives the sentence that says so, and a way to save the job when the browser does not keep it. */
  keep(answer: Answer): Promise<{ sentence: string; save: (() => void) | null }>;
  /** The worksheet answers kept in a job, in the order they were kept. */
  results(job: string): Promise<Result[]>;
}

type Global = { changeoutJobFile?: JobFileScript };

let loading: Promise<JobFileScript> | null = null;

export function jobFile(): Promise<JobFileScript> {
  loading ??= new Promise<JobFileScript>((done, failed) => {
    const here = (globalThis as Global).changeoutJobFile;
    if (here) return done(here);
    const script = document.createElement("script");
    script.src = root(document.documentElement.dataset.job ?? "");
    script.onload = () => {
      const loaded = (globalThis as Global).changeoutJobFile;
      if (loaded) done(loaded);
      else failed(new Error("the job file's script does not run"));
    };
    script.onerror = () => failed(new Error("the job file's script could not be loaded"));
    document.head.append(script);
  }).catch((error: unknown) => {
    loading = null; // the next tap tries again
    throw error;
  });
  return loading;
}
