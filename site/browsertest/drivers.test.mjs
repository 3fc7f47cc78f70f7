// The drivers themselves, on a page made here: when this fails, the fault is in the browsers or their drivers, not in the site.

import assert from "node:assert/strict";
import { createServer } from "node:http";
import test from "node:test";
import { engines, open } from "./support/engines.mjs";
import { pause } from "./support/page.mjs";
import { consoleWhileLoading } from "./support/webkit.mjs";

const page = `<!doctype html><html lang="en"><meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; script-src 'self'; connect-src 'self'; img-src data:"><link rel="icon" href="data:,">
<meta name="viewport" content="width=device-width"><title>drivers</title><script defer src="/a.js"></script>
<p id="out">nothing</p><input id="in" value="old"><button id="go">go</button><button id="bad">bad</button><select id="pick"><option>a<option>b</select></html>`;
const script = `const out = document.getElementById("out");
document.getElementById("go").onclick = () => (out.textContent = document.getElementById("in").value + " " + document.getElementById("pick").value);
const bad = () => { fetch("https://elsewhere.invalid/x").catch(() => 0); console.error("said so"); setTimeout(() => { throw new Error("thrown"); }); };
document.getElementById("bad").onclick = bad;
if (location.search === "?bad") bad();`;

async function serve() {
  const server = createServer((request, response) => {
    const js = request.url === "/a.js";
    response.writeHead(200, { "content-type": js ? "text/javascript" : "text/html; charset=utf-8" }).end(js ? script : page);
  });
  await new Promise((done) => server.listen(0, "127.0.0.1", done));
  return { at: `http://127.0.0.1:${server.address().port}/`, close: () => server.close() };
}

/** The tests for "no errors" are worth something only if errors are seen. */
function assertSeen(troubles) {
  const text = troubles.join("\n");
  assert.match(text, /said so/);
  assert.match(text, /thrown/);
  assert.match(text, /elsewhere\.invalid|connect-src/);
}

for (const engine of engines) {
  test(`${engine}: types, taps, chooses, reads, and sees errors`, { timeout: 240_000 }, async () => {
    const server = await serve();
    const p = await open(engine);
    try {
      await p.goto(server.at);
      await p.fill("#in", "new text 1,5");
      await p.choose("#pick", "b");
      await p.tap("#go");
      assert.equal(await p.text("#out"), "new text 1,5 b");
      for (const size of [[320, 640], [360, 740]]) {
        await p.resize(...size);
        assert.deepEqual(await p.run(() => [innerWidth, innerHeight]), size);
      }
      assert.deepEqual(await p.troubles(), [], "a good page has no troubles");
      assert.deepEqual(await p.strangers([server.at]), []);
      await p.tap("#bad");
      await pause(500);
      assertSeen(await p.troubles());
    } finally {
      await p.close();
      server.close();
    }
  });
}

if (engines.includes("webkit")) {
  test("webkit: the console while loading is heard", { timeout: 120_000 }, async () => {
    const server = await serve();
    try {
      assert.deepEqual(await consoleWhileLoading(server.at), []);
      assertSeen(await consoleWhileLoading(server.at + "?bad"));
    } finally {
      server.close();
    }
  });
}
