// The drivers themselves, on a page made here: when this fails, the fault is in the browsers or their drivers, not in the site.

import assert from "node:assert/strict";
import { createServer } from "node:http";
import test from "node:test";
import { engines, open } from "./support/engines.mjs";

const page = `<!doctype html><html lang="en"><meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; script-src 'self'; connect-src 'self'">
<meta name="viewport" content="width=device-width"><title>drivers</title><script defer src="/a.js"></script>
<p id="out">nothing</p><input id="in" value="old"><button id="go">go</button><select id="pick"><option>a<option>b</select></html>`;
const script = `const out = document.getElementById("out");
document.getElementById("go").onclick = () => (out.textContent = document.getElementById("in").value + " " + document.getElementById("pick").value);
if (location.hash === "#bad") { fetch("https://elsewhere.invalid/x").catch(() => 0); console.error("said so"); setTimeout(() => { throw new Error("thrown"); }); }`;

for (const engine of engines) {
  test(`${engine}: types, taps, chooses, reads, and sees errors`, { timeout: 120_000 }, async () => {
    const server = createServer((request, response) => {
      const js = request.url === "/a.js";
      response.writeHead(200, { "content-type": js ? "text/javascript" : "text/html; charset=utf-8" }).end(js ? script : page);
    });
    await new Promise((done) => server.listen(0, "127.0.0.1", done));
    const at = `http://127.0.0.1:${server.address().port}/`;
    const p = await open(engine);
    try {
      await p.goto(at);
      await p.fill("#in", "new text 1,5");
      await p.choose("#pick", "b");
      await p.tap("#go");
      assert.equal(await p.text("#out"), "new text 1,5 b");
      const size = await p.run(() => [innerWidth, innerHeight]);
      assert.deepEqual(size, [360, 740]);
      assert.deepEqual(await p.troubles(), [], "a good page has no troubles");
      assert.deepEqual(await p.strangers([at]), []);

      // The tests for "no errors" are worth something only if errors are seen.
      await p.goto("about:blank");
      await p.goto(at + "#bad");
      await p.until("the page to run", () => document.readyState === "complete");
      await new Promise((done) => setTimeout(done, 500));
      const troubles = (await p.troubles()).join("\n");
      assert.match(troubles, /said so/);
      assert.match(troubles, /thrown/);
      assert.match(troubles, /elsewhere\.invalid/);
    } finally {
      await p.close();
      server.close();
    }
  });
}
