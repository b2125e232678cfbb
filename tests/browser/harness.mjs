// What every test of the page shares: the built page on a loopback port, and a Chromium that
// behaves like a new visitor's. Started by `cargo xtask test page`, which says in PANELWRIGHT_DIST
// where the page is and in CHROMIUM where the browser is.

import { createServer } from "node:http";
import { createRequire } from "node:module";
import { mkdir, readFile } from "node:fs/promises";
import { extname, join, normalize, sep } from "node:path";
import { fileURLToPath } from "node:url";
import { chromium } from "playwright-core";

const here = fileURLToPath(new URL(".", import.meta.url));
const dist = process.env.PANELWRIGHT_DIST ?? join(here, "../../dist");
const flags = JSON.parse(await readFile(join(here, "chromium-flags.json"), "utf8"));

const KINDS = {
  ".html": "text/html; charset=utf-8",
  ".js": "text/javascript; charset=utf-8",
  ".css": "text/css; charset=utf-8",
  ".json": "application/json",
  ".webmanifest": "application/manifest+json",
  ".wasm": "application/wasm",
  ".svg": "image/svg+xml",
  ".png": "image/png",
  ".woff2": "font/woff2",
};

/**
 * Serves the built page below a folder of its own, as a static host may: a page that only works
 * at the top of a host fails here. `close()` takes it off the network, which also proves "offline".
 * @param {(name: string, bytes: Buffer) => Buffer} [handed] what is handed out for a file; its bytes unless said otherwise
 */
export async function servePage(handed = (_, bytes) => bytes) {
  const server = createServer(async (request, response) => {
    const path = decodeURIComponent(new URL(request.url ?? "/", "http://host").pathname);
    const name = normalize(path.replace(/^\/case\//, "").replace(/\/$/, "") || "index.html");
    if (!path.startsWith("/case/") || name.startsWith("..") || name.startsWith(sep)) {
      response.writeHead(404).end();
      return;
    }
    try {
      const bytes = handed(name, await readFile(join(dist, name)));
      const kind = KINDS[extname(name)] ?? "application/octet-stream";
      response.writeHead(200, { "content-type": kind, "cache-control": "no-store" }).end(bytes);
    } catch {
      response.writeHead(404).end();
    }
  });
  await new Promise((resolve) => server.listen(0, "127.0.0.1", () => resolve(undefined)));
  const address = /** @type {import("node:net").AddressInfo} */ (server.address());
  return {
    url: `http://127.0.0.1:${address.port}/case/`,
    close: () =>
      new Promise((resolve) => {
        server.closeAllConnections();
        server.close(resolve);
      }),
  };
}

/**
 * Chromium with nothing of an earlier visit in it. Each `newContext()` is a new visitor.
 * @param {string[]} [more] flags beside the usual ones
 */
export function startBrowser(more = []) {
  return chromium.launch({ executablePath: process.env.CHROMIUM ?? "/usr/bin/chromium", args: [...flags, ...more] });
}

/**
 * A new visitor on a new page. `wrong` gathers what must never happen: an error, a failed load, a
 * request to anywhere but the page's own host.
 * @param {import("playwright-core").Browser} browser
 * @param {import("playwright-core").BrowserContextOptions} [options]
 */
export async function newVisitor(browser, options = {}) {
  const context = await browser.newContext({ acceptDownloads: true, ...options });
  const page = await context.newPage();
  /** @type {string[]} */
  const wrong = [];
  page.on("pageerror", (error) => wrong.push(`error: ${error.message}`));
  page.on("console", (message) => {
    if (message.type() === "error") wrong.push(`console: ${message.text()}`);
  });
  page.on("response", (response) => {
    if (response.status() >= 400) wrong.push(`${response.status()}: ${response.url()}`);
  });
  context.on("request", (request) => {
    const url = new URL(request.url());
    const own = url.hostname === "127.0.0.1" || url.protocol === "data:" || url.protocol === "blob:";
    if (!own) wrong.push(`asked another host: ${request.url()}`);
  });
  return { context, page, wrong };
}

/**
 * The page as it stands when it has drawn its first case.
 * @param {import("playwright-core").Page} page
 * @param {string} url
 */
export async function open(page, url) {
  await page.goto(url);
  await page.locator(".stage svg").waitFor();
}

/**
 * A figure of the title block: "Volume", "Sheet used", "Outside, W × D × H".
 * @param {import("playwright-core").Page} page
 * @param {string} label
 */
export function figure(page, label) {
  return page.locator(`#title-block dl > div:has(dt:text-is("${label}")) dd`);
}

/**
 * The brief as one reads it, with the values in their places.
 * @param {import("playwright-core").Page} page
 * @returns {Promise<string>}
 */
export function sentence(page) {
  return page.evaluate(() => {
    /** @param {Node} node @returns {string} */
    const read = (node) => {
      if (node instanceof HTMLSelectElement) return node.selectedOptions[0]?.text ?? "";
      if (node instanceof HTMLInputElement) return node.value || node.placeholder;
      if (node instanceof HTMLElement && node.hidden) return "";
      return node instanceof Text ? node.data : [...node.childNodes].map(read).join("");
    };
    const brief = document.querySelector(".sentence");
    return brief ? read(brief) : "";
  });
}

/**
 * A field among the groups of choices; its group is opened first.
 * @param {import("playwright-core").Page} page
 * @param {string} group
 * @param {string} label
 */
export async function field(page, group, label) {
  const details = page.locator("details.group", { has: page.getByRole("heading", { name: group, exact: true }) });
  if (!(await details.evaluate((element) => /** @type {HTMLDetailsElement} */ (element).open))) {
    await details.locator("> summary").click();
  }
  return details.locator(".field", { has: page.locator(`.field-label:text-is("${label}")`) }).first();
}

/**
 * What axe finds wrong, one line each.
 * @param {import("playwright-core").Page} page
 * @returns {Promise<string[]>}
 */
export async function violations(page) {
  await page.addScriptTag({ path: createRequire(import.meta.url).resolve("axe-core/axe.min.js") });
  return page.evaluate(async () => {
    // @ts-expect-error axe is what the script just brought
    const found = await axe.run();
    return found.violations.map(
      (/** @type {any} */ one) => `${one.id}: ${one.nodes.length} places, such as ${one.nodes[0].html.slice(0, 300)}: ${one.nodes[0].failureSummary}`,
    );
  });
}

export const DESK = { viewport: { width: 1280, height: 900 } };
export const PHONE = { viewport: { width: 360, height: 780 }, hasTouch: true, isMobile: true };

/**
 * Opens a tab of the drawing.
 * @param {import("playwright-core").Page} page
 * @param {string} name
 */
export const tab = (page, name) => page.getByRole("tab", { name, exact: true }).click();

/**
 * Waits for the frame in which a change is drawn.
 * @param {import("playwright-core").Page} page
 */
export const drawn = (page) => page.evaluate(() => new Promise((resolve) => requestAnimationFrame(() => requestAnimationFrame(resolve))));

/**
 * How many pixels the page is wider than the window.
 * @param {import("playwright-core").Page} page
 */
export const sideways = (page) => page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);

/**
 * Waits until something is told to a screen reader.
 * @param {import("playwright-core").Page} page
 * @param {RegExp} words
 */
export const told = (page, words) => page.waitForFunction((source) => new RegExp(source).test(document.getElementById("live")?.textContent ?? ""), words.source);

/**
 * Presses a button and keeps the file that comes in a folder.
 * @param {import("playwright-core").Page} page
 * @param {string} folder
 * @param {string} name of the button
 */
export async function taken(page, folder, name) {
  const [download] = await Promise.all([page.waitForEvent("download"), page.getByRole("button", { name, exact: true }).click()]);
  const path = join(folder, download.suggestedFilename());
  await mkdir(folder, { recursive: true });
  await download.saveAs(path);
  return path;
}
