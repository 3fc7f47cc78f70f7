// WebKit: the GTK port's MiniBrowser under its own WebDriver, on a virtual screen. It is the engine nearest to the
// browser of iPhones that a Debian machine has.

import { spawn } from "node:child_process";
import { mkdir, mkdtemp, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import path from "node:path";
import { Builder, By, Capabilities, Key } from "selenium-webdriver";
import { Page, patience, pause, until } from "./page.mjs";
import { freePort } from "./port.mjs";
import { program } from "./programs.mjs";

/** The tool bar of the window must not be wider than a phone. */
const slimToolBar = "* { min-width: 0; min-height: 0; padding: 0; margin: 0; border-width: 0; font-size: 1px; } entry { min-width: 1px; }";

async function emptyHome() {
  const home = await mkdtemp(path.join(tmpdir(), "changeout-webkit-"));
  await mkdir(path.join(home, "gtk-3.0"));
  await writeFile(path.join(home, "gtk-3.0", "gtk.css"), slimToolBar);
  return home;
}

function environment(screen, home) {
  return {
    ...process.env,
    DISPLAY: screen.display, XDG_CONFIG_HOME: home, XDG_CACHE_HOME: home, XDG_DATA_HOME: home,
    // No GPU and no session bus here; without these the browser waits for them.
    LIBGL_ALWAYS_SOFTWARE: "1", WEBKIT_DISABLE_DMABUF_RENDERER: "1", NO_AT_BRIDGE: "1", GSETTINGS_BACKEND: "memory",
  };
}

function linesOf(child) {
  const lines = [];
  for (const stream of [child.stdout, child.stderr]) {
    let rest = "";
    stream.setEncoding("utf8").on("data", (text) => {
      const parts = (rest + text).split("\n");
      rest = parts.pop() ?? "";
      lines.push(...parts);
    });
  }
  return lines;
}

/**
 * Opens an address without a driver and returns what the console said until the page had loaded. Under its driver
 * WebKit keeps its console to itself, and the driver's scripts come too late for what happens while a page loads.
 */
export async function consoleWhileLoading(url) {
  const screen = await startScreen();
  const home = await emptyHome();
  const child = spawn(await program("minibrowser"), ["--exit-after-load", "--enable-write-console-messages-to-stdout=true", url],
    { env: environment(screen, home), stdio: ["ignore", "pipe", "pipe"] });
  const lines = linesOf(child);
  const late = setTimeout(() => child.kill(), patience);
  const code = await new Promise((done) => child.once("exit", (c) => done(c)));
  clearTimeout(late);
  await screen.stop();
  await rm(home, { recursive: true, force: true, maxRetries: 5 });
  if (code !== 0) throw new Error(`WebKit did not load ${url}: ${lines.join("\n")}`);
  // WebKitGTK does not know manifest-src; the policy names it for the browsers that do.
  return lines.filter((l) => l.includes("CONSOLE") && !l.includes("directive 'manifest-src'"));
}

/** proxy: host:port that answers for every name, so that a page can have an address that is not this machine's. */
export async function launch({ dark = false, width = 360, height = 740, proxy } = {}) {
  const screen = await startScreen();
  const port = await freePort();
  const home = await emptyHome();
  const driverProcess = spawn(await program("webkitdriver"), ["-p", String(port)], {
    env: environment(screen, home),
    stdio: ["ignore", "pipe", "pipe"],
  });
  const lines = linesOf(driverProcess);
  const stopAll = async () => {
    driverProcess.kill();
    await screen.stop();
    await rm(home, { recursive: true, force: true, maxRetries: 5 });
  };
  try {
    await until("WebKit's driver to listen", () => fetch(`http://127.0.0.1:${port}/status`).then((r) => r.ok));
    const driver = await new Builder()
      .usingServer(`http://127.0.0.1:${port}`)
      .withCapabilities(new Capabilities({
        browserName: "MiniBrowser",
        ...(proxy ? { proxy: { proxyType: "manual", httpProxy: proxy } } : {}),
        "webkitgtk:browserOptions": {
          binary: await program("minibrowser"),
          args: ["--automation", ...(dark ? ["--dark-mode"] : [])],
        },
      }))
      .build();
    await driver.manage().setTimeouts({ script: 60_000, pageLoad: 60_000 });
    const page = new WebKitPage(driver, stopAll);
    await page.resize(width, height);
    return page;
  } catch (error) {
    await stopAll();
    throw new Error(`WebKit did not start: ${error.message}\n${lines.slice(-10).join("\n")}`);
  }
}

class WebKitPage extends Page {
  constructor(driver, stopAll) {
    super();
    this.driver = driver;
    this.bad = [];
    this.stopAll = stopAll;
    this.asked = new Set();
  }
  async goto(url) {
    await this.note();
    await this.driver.get(url);
    await this.listen();
  }
  async reload() {
    await this.note();
    // On a busy machine the driver sometimes gives up, without a reason, before a large page has loaded again.
    await this.driver.navigate().refresh().catch(() => undefined);
    await this.until("the page to load again", () => document.readyState === "complete");
    await this.listen();
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
  async tap(selector, again = 2) {
    try {
      await (await this.element(selector)).click();
    } catch (error) {
      // Drawn anew between the look and the tap: a person has seen the new one.
      if (error.name !== "StaleElementReferenceError" || again === 0) throw error;
      await this.tap(selector, again - 1);
    }
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
  async press(key) {
    // "ArrowDown", as the other engines name it, is ARROW_DOWN here.
    await this.driver.actions().sendKeys(Key[key.replace(/([a-z])([A-Z])/g, "$1_$2").toUpperCase()] ?? key).perform();
  }
  /** WebDriver reports neither requests nor errors: the page's own list is read before it goes. */
  async note() {
    const seen = await this.run(() => ({
      urls: [location.href, ...performance.getEntriesByType("resource").map((e) => e.name)],
      bad: window.__troubles?.splice(0) ?? [],
    })).catch(() => null);
    for (const url of seen?.urls ?? []) this.asked.add(url);
    this.bad.push(...(seen?.bad ?? []));
  }
  /** Listens from the end of loading on; consoleWhileLoading hears what came before. */
  async listen() {
    await this.run(() => {
      if (window.__troubles) return;
      const bad = (window.__troubles = []);
      addEventListener("error", (e) => bad.push(`script: ${e.message}`));
      addEventListener("unhandledrejection", (e) => bad.push(`script: ${e.reason}`));
      document.addEventListener("securitypolicyviolation", (e) => bad.push(`policy: ${e.violatedDirective} stopped ${e.blockedURI}`));
      const say = console.error;
      console.error = (...words) => {
        bad.push(`console: ${words.join(" ")}`);
        say.apply(console, words);
      };
    }).catch(() => undefined);
  }
  async troubles() {
    await this.note();
    return [...this.bad];
  }
  forget() {
    this.bad.length = 0;
  }
  async strangers(allowed) {
    await this.note();
    return [...this.asked].filter((url) => !/^(about|data|blob):/.test(url) && !allowed.some((a) => url.startsWith(a)));
  }
  async another() {
    this.handle = await this.driver.getWindowHandle();
    await this.driver.switchTo().newWindow("tab");
    const page = new WebKitPage(this.driver, null);
    page.handle = await this.driver.getWindowHandle();
    return page;
  }
  async show() {
    await this.driver.switchTo().window(this.handle);
  }
  async closeTab() {
    await this.show();
    await this.driver.close();
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
