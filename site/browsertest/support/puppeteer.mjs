// Chromium over the DevTools protocol and Firefox over WebDriver BiDi, both through puppeteer-core and Debian's packages.

import { mkdtemp, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import path from "node:path";
import puppeteer from "puppeteer-core";
import { Page, patience } from "./page.mjs";
import { program } from "./programs.mjs";

/** No calls home, no first-run pages, and no sandbox because CI runs as root. */
const chromiumFlags = [
  "--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-background-networking",
  "--disable-component-update", "--disable-sync", "--disable-default-apps", "--hide-scrollbars",
  "--allow-file-access-from-files=false",
];

const firefoxPreferences = {
  "app.normandy.enabled": false,
  "app.update.enabled": false,
  "browser.safebrowsing.malware.enabled": false,
  "browser.safebrowsing.phishing.enabled": false,
  "datareporting.healthreport.uploadEnabled": false,
  "datareporting.policy.dataSubmissionEnabled": false,
  "dom.push.connection.enabled": false,
  "extensions.getAddons.cache.enabled": false,
  "network.captive-portal-service.enabled": false,
  "network.connectivity-service.enabled": false,
  "network.prefetch-next": false,
  "network.socket.ip_addr_any.disabled": false, // 0.0.0.0 is this machine, by a name that counts as another one
  "services.settings.server": "data:,",
  "toolkit.telemetry.enabled": false,
};

/** profile: a folder to use and to leave behind, for a browser that is opened again; without it a new one that goes at the end. */
export async function launch(engine, { dark = false, script = true, width = 360, height = 740, profile: kept } = {}) {
  const profile = kept ?? (await mkdtemp(path.join(tmpdir(), `changeout-${engine}-`)));
  const firefox = engine === "firefox";
  const browser = await puppeteer.launch({
    browser: firefox ? "firefox" : "chrome",
    executablePath: await program(engine),
    headless: true,
    userDataDir: profile,
    args: firefox ? [] : chromiumFlags,
    extraPrefsFirefox: firefox ? { ...firefoxPreferences, "ui.systemUsesDarkTheme": dark ? 1 : 0, "layout.css.prefers-color-scheme.content-override": dark ? 0 : 1 } : undefined,
    // Firefox under load takes long to answer; a lost browser still ends the test.
    protocolTimeout: 60_000,
    timeout: 60_000,
  });
  const tab = (await browser.pages())[0] ?? (await browser.newPage());
  tab.setDefaultNavigationTimeout(patience);
  await tab.setViewport({ width, height });
  if (!firefox) {
    await tab.emulateMediaFeatures([{ name: "prefers-color-scheme", value: dark ? "dark" : "light" }]);
    if (!script) await tab.setJavaScriptEnabled(false);
  }
  const page = new PuppeteerPage(browser, tab, kept ? null : profile);
  if (firefox) page.asksBeforeLeaving = null; // its driver lets every page go without a question
  await page.listen(script);
  return page;
}

class PuppeteerPage extends Page {
  constructor(browser, tab, profile) {
    super();
    this.browser = browser;
    this.tab = tab;
    this.profile = profile;
    this.bad = [];
    this.asked = new Set();
  }

  async listen(script) {
    this.tab.on("console", (m) => {
      // A server that was stopped on purpose makes Chromium write a line for each request that a worker then answers.
      if (m.type() === "error" && !/ERR_CONNECTION_REFUSED|ERR_INTERNET_DISCONNECTED/.test(m.text())) this.bad.push(`console: ${m.text()}`);
    });
    this.tab.on("pageerror", (e) => {
      // Firefox reports a request that ended because the person went to another page, without an address.
      if (!/^Failed to load ‘’\. A ServiceWorker intercepted/.test(e.message)) this.bad.push(`script: ${e.message}`);
    });
    this.tab.on("request", (r) => this.asked.add(r.url()));
    // A question that nobody answers stops the page and every further command to it.
    this.tab.on("dialog", (d) => void this.answer(d).catch(() => undefined));
    if (script) {
      await this.tab.evaluateOnNewDocument(() => {
        window.__violations = [];
        document.addEventListener("securitypolicyviolation", (e) => window.__violations.push(`${e.violatedDirective} stopped ${e.blockedURI} at ${e.sourceFile}:${e.lineNumber}`));
      });
    }
    this.script = script;
  }

  /** A page that asks before it is left holds something that is not kept: a test that did not expect that has failed. */
  async answer(dialog) {
    const words = `the page asked (${dialog.type()}): ${dialog.message() || "leave? Changes may not be kept"}`;
    if (this.expecting && dialog.type() === "beforeunload") {
      this.expecting(true);
      return dialog.dismiss();
    }
    this.bad.push(words);
    this.unexpected = words;
    await dialog.accept();
  }
  async leave(go) {
    await this.violations();
    this.unexpected = "";
    await go();
    if (this.unexpected) throw new Error(this.unexpected);
  }
  async goto(url) {
    await this.leave(() => this.tab.goto(url, { waitUntil: "load" }));
  }
  async reload() {
    await this.leave(() => this.tab.reload({ waitUntil: "load" }));
  }
  /** Chromium alone: reloads, and stays if the page asks. Whether it asked. */
  async asksBeforeLeaving() {
    let late;
    const asked = new Promise((done) => {
      this.expecting = done;
      late = setTimeout(done, 10_000, false);
    });
    await this.tab.evaluate(() => void setTimeout(() => location.reload()));
    const answer = await asked;
    clearTimeout(late);
    this.expecting = null;
    return answer;
  }
  async run(fn, ...args) {
    return this.tab.evaluate(fn, ...args);
  }
  async tap(selector, again = 8) {
    const e = await this.tab.$(selector);
    if (!e) throw new Error(`nothing to tap at ${selector}`);
    // The middle of the window is where no bar of the page covers anything.
    const covered = await e.evaluate((node) => {
      if (!node.isConnected) return "drawn anew";
      node.scrollIntoView({ block: "center", inline: "nearest", behavior: "instant" });
      const box = node.getBoundingClientRect();
      if (box.width === 0 || box.height === 0) return "it is not shown";
      const top = document.elementFromPoint(box.left + box.width / 2, box.top + box.height / 2);
      if (!top) return "it is outside the window";
      return node.contains(top) || top.contains(node) || top.closest("label")?.contains(node) ? "" : `<${top.tagName.toLowerCase()} class="${top.className}"> covers it`;
    });
    // Drawn anew between the look and the tap, as an answer is when its field was left: a person has seen the new one.
    if (covered === "drawn anew" && again > 0) return this.tap(selector, again - 1);
    // What nobody has come near is not laid out, so the page may still be too short to scroll there: its height is true
    // once it was drawn with the control near, and on a busy machine that takes a while. A person scrolls on.
    if (covered === "it is outside the window" && again > 0) {
      await this.tab.evaluate(() => new Promise((done) => {
        requestAnimationFrame(() => requestAnimationFrame(done));
        setTimeout(done, 500); // nothing is drawn of a page behind another
      }));
      return this.tap(selector, again - 1);
    }
    if (covered) throw new Error(`${selector} cannot be tapped: ${covered}`);
    try {
      await e.click();
    } catch (error) {
      // This comes before anything is pressed.
      if (again === 0 || !/not clickable|detached|not attached/.test(error.message)) throw error;
      return this.tap(selector, again - 1);
    }
    await e.dispose();
  }
  async keys(_selector, text) {
    await this.tab.keyboard.type(text);
  }
  async press(key) {
    await this.tab.keyboard.press(key);
  }
  async upload(selector, file) {
    const e = await this.tab.$(selector);
    await e.uploadFile(file);
  }
  async resize(width, height) {
    await this.tab.setViewport({ width, height });
  }
  async shot(file) {
    await this.tab.screenshot({ path: file });
  }
  async violations() {
    if (!this.script) return;
    const found = await this.tab.evaluate(() => window.__violations?.splice(0) ?? []).catch(() => []);
    this.bad.push(...found.map((v) => `policy: ${v}`));
  }
  async troubles() {
    await this.violations();
    return [...this.bad];
  }
  forget() {
    this.bad.length = 0;
  }
  async strangers(allowed) {
    return [...this.asked].filter((url) => !/^(about|data|blob):/.test(url) && !allowed.some((a) => url.startsWith(a)));
  }
  async another() {
    const tab = await this.browser.newPage();
    tab.setDefaultNavigationTimeout(patience);
    await tab.setViewport(this.tab.viewport());
    const page = new PuppeteerPage(this.browser, tab, null);
    await page.listen(this.script);
    await page.show();
    return page;
  }
  async show() {
    await this.tab.bringToFront();
  }
  async closeTab() {
    await this.tab.close();
  }
  /** Chromium alone: how many bytes an origin may keep. */
  async room(origin, quotaSize) {
    const session = await this.tab.createCDPSession();
    await session.send("Storage.overrideQuotaForOrigin", { origin, quotaSize });
  }
  async close() {
    await this.browser.close();
    if (this.profile) await rm(this.profile, { recursive: true, force: true, maxRetries: 5 });
  }
}
