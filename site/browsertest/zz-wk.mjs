import { open } from "./support/engines.mjs";
import { pathToFileURL } from "node:url";
const p = await open("webkit");
for (const f of process.argv.slice(2)) for (const h of ["index", "stages/braze-with-nitrogen"]) {
  const t = Date.now();
  try { await p.goto(pathToFileURL(f).href + "#" + h); } catch (e) { console.log(f, h, "timeout", e.message); }
  console.log(f, h, Date.now() - t);
}
await p.close();
