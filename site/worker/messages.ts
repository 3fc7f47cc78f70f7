// What page and worker say to each other.

export type ToWorker = { type: "state" } | { type: "use" };

export type ToPage =
  | { type: "saving"; done: number; total: number }
  | { type: "failed"; reason: string }
  | { type: "state"; stored: number; total: number };
