// Runs test files two at a time in the order given, which node --test does not keep, and prints what the runner prints. Below
// that, where a log of which CI keeps only the end still has it: the time of each file, and one line for each test that failed.

import path from "node:path";
import { run } from "node:test";
import { spec } from "node:test/reporters";

const files = process.argv.slice(2);
const times = new Map();
const failed = [];
const above = []; // names of the tests that are running, by depth
const said = new Map(); // what a file wrote last on its error output: the reason when it did not even begin

// Two files at a time, one for each core of the smallest machine: more make browsers miss their moments, one takes half an hour.
const events = run({ files, concurrency: 2 });
events.on("test:start", ({ name, nesting }) => above.splice(nesting, Infinity, name));
events.on("test:stderr", ({ file, message }) => said.set(file, `${said.get(file) ?? ""}${message}`.slice(-4000)));
events.on("test:pass", ended);
events.on("test:fail", (data) => {
  ended(data);
  process.exitCode = 1;
  const error = data.details.error;
  if (error?.failureType === "subtestsFailed") return; // it says nothing of its own
  const whole = data.name === data.file && said.get(data.file);
  const reason = (whole ? (/^.*Error: .*$/m.exec(whole)?.[0] ?? whole) : String(error?.cause?.message ?? error?.cause ?? error)).replace(/\s+/g, " ").slice(0, 600);
  failed.push(`FAILED ${path.basename(data.file ?? "")}: ${[...above.slice(0, data.nesting), data.name].join(" > ")}: ${reason}`);
});
events.compose(new spec()).pipe(process.stdout);

function ended({ file = "", nesting, details }) {
  if (nesting === 0) times.set(path.basename(file), (times.get(path.basename(file)) ?? 0) + (details.duration_ms ?? 0) / 1000);
}

process.on("exit", () => {
  if (times.size === 0) process.exitCode = 1; // a run without a test is a failure
  const list = [...times].sort((a, b) => b[1] - a[1]).map(([file, s]) => `${file} ${Math.round(s)} s`);
  console.log([`times: ${list.join(", ")}`, ...failed.slice(0, 20), ...(failed.length > 20 ? [`and ${failed.length - 20} more`] : [])].join("\n"));
});
