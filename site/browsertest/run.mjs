// Builds the handbook once, then runs the browser tests: node site/browsertest/run.mjs [file.test.mjs …]
// or one program that measures: node site/browsertest/run.mjs lighthouse.mjs
//
//   ENGINES=chromium,webkit   only these engines
//   SHOTS=folder              also write screenshots and printed pages there, to be looked at
//   KEEP=1                    leave the built handbook for a look after the tests

import { spawn } from "node:child_process";
import { cp, mkdtemp, readdir, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import path from "node:path";
import { fileURLToPath } from "node:url";
import { engines } from "./support/engines.mjs";
import { program } from "./support/programs.mjs";

const here = path.dirname(fileURLToPath(import.meta.url));
const repository = path.resolve(here, "../..");
const left = new Set([".git", "node_modules", "public", "handbook.html"]);

function call(command, args, options = {}) {
  return new Promise((done, failed) => {
    const child = spawn(command, args, { stdio: ["ignore", "inherit", "inherit"], ...options });
    child.once("error", failed);
    child.once("exit", (code, signal) => done(signal ? 1 : code));
  });
}

async function must(command, args, options) {
  const code = await call(command, args, options);
  if (code !== 0) throw new Error(`${command} ${args.join(" ")} ended with ${code}`);
}

// A browser that is missing ends the run here, with a sentence: in the middle of a test it would leave a server running.
const needs = { chromium: ["chromium"], firefox: ["firefox"], webkit: ["minibrowser", "webkitdriver", "xvfb"] };
for (const engine of engines) for (const name of needs[engine]) await program(name);

// The long files first, so that neither lane works on alone at the end. The order changes nothing else; a file that is not
// named here comes first.
const long = ["access", "job", "faults", "site", "forms", "paper", "search", "hand", "single-file", "layout", "unkept", "assess", "update", "report", "html", "drivers"];
const rank = (file) => long.indexOf(file.replace(".test.mjs", ""));
const longestFirst = (a, b) => rank(a) - rank(b) || a.localeCompare(b);

const dir = process.env.CHANGEOUT_TEST ?? (await mkdtemp(path.join(tmpdir(), "changeout-test-")));
let code = 1;
try {
  if (!process.env.CHANGEOUT_TEST) {
    const source = path.join(dir, "source");
    await cp(repository, source, { recursive: true, filter: (from) => !left.has(path.basename(from)) });
    const changeout = path.join(dir, "changeout");
    await must("go", ["build", "-o", changeout, "./build"], { cwd: repository });
    await must(changeout, ["build", "-root", source, "-out", path.join(dir, "public"), "-single", path.join(dir, "handbook.html"), "-date", "2026-11-25"], { cwd: source });
  }
  const env = { ...process.env, CHANGEOUT_TEST: dir };
  if (process.env.SHOTS) await must("node", [path.join(here, "shots.mjs"), path.resolve(process.env.SHOTS)], { env });
  const given = process.argv.slice(2).map((f) => path.resolve(here, path.basename(f)));
  const files = given.length > 0 ? given : (await readdir(here)).filter((f) => f.endsWith(".test.mjs")).sort(longestFirst).map((f) => path.join(here, f));
  if (files.length === 0) throw new Error(`${here} holds no test file; a run without a test is a failure`);
  // The closing lines of the runner are what CI counts; what failed stands below them.
  const measuring = files.length === 1 && !files[0].endsWith(".test.mjs");
  code = await call("node", measuring ? files : [path.join(here, "support", "suite.mjs"), ...files], { env, cwd: path.join(repository, "site") });
} finally {
  if (process.env.KEEP) console.log(`CHANGEOUT_TEST=${dir}`);
  else if (!process.env.CHANGEOUT_TEST) await rm(dir, { recursive: true, force: true, maxRetries: 5 });
}
process.exit(code);
