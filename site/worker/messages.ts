// What page and worker say to each other. A page asks through a port and is answered there; what goes to every page
// (progress, failures) says which version it is about, because a newer worker speaks while the older one still rules.

export type ToWorker =
  | { type: "state"; version: string } // what is held, by name; version: the page's own
  | { type: "check" } // read every file back, compare it, fetch what is not right
  | { type: "use" }; // take over from the older version

export interface Held {
  type: "held";
  digest: string; // of the list of files: two builds differ in it even where they show the same version, as a preview does
  version: string; // as at the foot of each page
  date: string; // day of the build
  files: number; // held, of total
  total: number;
  bytes: number; // held, of size
  size: number;
  missing: string[]; // the first few that are not held
  saved: number; // when the last file came in, ms; 0 unless checked
  mended: number; // files that were not right and were fetched again by this check
  checked: boolean; // true: every body was read and its digest compared; false: counted by name
  sound: number; // when every body was last compared and right, ms; 0 when it was never, or one has been wrong since
  reason: string; // why files are missing still, or ""
}

export type ToPage =
  | { type: "saving"; digest: string; version: string; done: number; total: number; bytes: number; size: number }
  | { type: "checking"; done: number; total: number }
  | { type: "failed"; digest: string; version: string; reason: string }
  | Held;
