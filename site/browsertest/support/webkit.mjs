// WebKit: the GTK port's MiniBrowser under its own WebDriver, on a virtual screen. It is the engine nearest to the
// browser of iPhones that a Debian machine has.

import { spawn } from "node:child_process";
import { writeFile } from "node:fs/promises";
import { createServer } from "node:net";
import { Builder, By, Capabilities } from "selenium-webdriver";
import { Page, pause, until } from "./page.mjs";
import { program } from "./programs.mjs";

export async function launch({ dark = false, width = 360, height = 740 } = {}) {
  const screen = await startScreen();
  const port = await freePort();
  const lines = [];
  const driverProcess = spawn(await program("webkitdriver"), ["-p", String(port)], {
    env: {
      ...process.env,
      DISPLAY: screen.display,
      // No GPU and no session bus here; without these the browser waits for them.
      LIBGL_ALWAYS_SOFTWARE: "1", WEBKIT_DISABLE_DMABUF_RENDERER: "1", WEBKIT_DISABLE_COMPOSITING_MODE: "1",
      NO_AT_BRIDGE: "1", GTK_THEME: dark ? "Adwaita:dark" : "Adwaita", GSETTINGS_BACKEND: "memory",
    },
    stdio: ["ignore", "pipe", "pipe"],
  });
  // The console of the page comes out here, because of the argument below.
  for (const stream of [driverProcess.stdout, driverProcess.stderr]) {
    let rest = "";
    stream.setEncoding("utf8").on("data", (text) => {
      const parts = (rest + text).split("\n");
      rest = parts.pop() ?? "";
      lines.push(...parts);
    });
  }
  const stopAll = async () => {
    driverProcess.kill();
    await screen.stop();
  };
  try {
    await until("WebKit's driver to listen", () => fetch(`http://127.0.0.1:${port}/status`).then((r) => r.ok));
    const driver = await new Builder()
      .usingServer(`http://127.0.0.1:${port}`)
      .withCapabilities(new Capabilities({
        browserName: "MiniBrowser",
        "webkitgtk:browserOptions": {
          binary: await program("minibrowser"),
          args: ["--automation", "--enable-write-console-messages-to-stdout=true"],
        },
      }))
      .build();
    await driver.manage().setTimeouts({ script: 60_000, pageLoad: 60_000 });
    const page = new WebKitPage(driver, lines, stopAll);
    await page.resize(width, height);
    return page;
  } catch (error) {
    await stopAll();
    throw new Error(`WebKit did not start: ${error.message}\n${lines.slice(-10).join("\n")}`);
  }
}

class WebKitPage extends Page {
  constructor(driver, lines, stopAll) {
    super();
    this.driver = driver;
    this.lines = lines;
    this.stopAll = stopAll;
    this.asked = new Set();
  }
  async goto(url) {
    await this.note();
    await this.driver.get(url);
  }
  async reload() {
    await this.note();
    await this.driver.navigate().refresh();
  }
  async run(fn, ...args) {
    const answer = await this.driver.executeAsyncScript(
      `const done = arguments[arguments.length - 1];
       Promise.resolve().then(() => (${fn}).apply(null, Array.prototype.slice.call(arguments, 0, -1)))
         .then((v) => done({ v: v === undefined ? null : v }), (e) => done({ e: String(e && e.message || e) }));`, ...args);
    if (answer.e !== undefined) throw new Error(answer.e);
    return answer.v;
  }
  async element(selector) {
    const e = await this.driver.findElement(By.css(selector));
    await this.driver.executeScript("arguments[0].scrollIntoView({ block: 'center', inline: 'nearest', behavior: 'instant' })", e);
    return e;
  }
  async tap(selector) {
    const e = await this.element(selector);
    await e.click();
  }
  async keys(selector, text) {
    await (await this.driver.findElement(By.css(selector))).sendKeys(text);
  }
  async upload(selector, file) {
    await (await this.driver.findElement(By.css(selector))).sendKeys(file);
  }
  async resize(width, height) {
    // The window has a frame and a tool bar: ask twice, the second time with what they took.
    const window = this.driver.manage().window();
    await window.setRect({ x: 0, y: 0, width, height: height + 40 });
    await pause(150);
    const inner = await this.run(() => [innerWidth, innerHeight]);
    if (inner[0] !== width || inner[1] !== height) {
      await window.setRect({ x: 0, y: 0, width: width + (width - inner[0]), height: height + 40 + (height - inner[1]) });
      await pause(150);
    }
  }
  async shot(file) {
    await writeFile(file, Buffer.from(await this.driver.takeScreenshot(), "base64"));
  }
  /** WebDriver does not report requests; what the page itself lists is kept before it goes. */
  async note() {
    const list = await this.run(() => [location.href, ...performance.getEntriesByType("resource").map((e) => e.name)]).catch(() => []);
    for (const url of list) this.asked.add(url);
  }
  async troubles() {
    return this.lines.filter((l) => /CONSOLE .*ERROR/.test(l) && !/Could not connect|Failed to load resource/.test(l));
  }
  forget() {
    this.lines.length = 0;
  }
  async strangers(allowed) {
    await this.note();
    return [...this.asked].filter((url) => url !== "about:blank" && !allowed.some((a) => url.startsWith(a)));
  }
  async close() {
    await this.driver.quit().catch(() => undefined);
    await this.stopAll();
  }
}

async function startScreen() {
  const child = spawn(await program("xvfb"), ["-displayfd", "3", "-screen", "0", "1280x1024x24", "-nolisten", "tcp"], { stdio: ["ignore", "ignore", "pipe", "pipe"] });
  let said = "";
  child.stderr.setEncoding("utf8").on("data", (text) => (said += text));
  let number = "";
  child.stdio[3].setEncoding("utf8").on("data", (text) => (number += text));
  try {
    await until("the virtual screen", () => {
      if (child.exitCode !== null) throw new Error(said);
      return number.includes("\n");
    });
  } catch (error) {
    child.kill();
    throw error;
  }
  return {
    display: `:${number.trim()}`,
    stop: async () => {
      const gone = new Promise((done) => child.once("exit", done));
      if (child.exitCode === null && child.kill()) await gone;
    },
  };
}

export async function freePort() {
  const server = createServer();
  await new Promise((done, failed) => server.once("error", failed).listen(0, "127.0.0.1", done));
  const { port } = server.address();
  await new Promise((done) => server.close(done));
  return port;
}
