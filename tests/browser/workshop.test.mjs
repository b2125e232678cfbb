// What is worked out beside the page: it says that it is at work, stops when it is told to, and says so when it cannot work.

import assert from "node:assert/strict";
import { test } from "node:test";
import { field, newVisitor, open, tab, told, violations } from "./harness.mjs";
import { browser, host } from "./stage.mjs";

/** A design whose sheets are looked for longer than a test takes. */
const CASES = 9;

/** @param {import("playwright-core").Page} page */
async function searching(page) {
  const cases = await field(page, "Sheets to cut from", "Cases to make");
  await cases.getByRole("spinbutton").fill(String(CASES));
  await tab(page, "Sheets");
  await page.locator(".stock-sheet").nth(1).waitFor();
  await page.getByRole("progressbar", { name: "Looking for a better layout" }).waitFor();
  return cases;
}

/** @param {import("playwright-core").Page} page */
const steps = (page) => page.locator(".papers progress").evaluate((bar) => /** @type {HTMLProgressElement} */ (bar).value);

test("a search for a better layout stops when it is told to, and goes on when it is asked to", async () => {
  const { page, context, wrong } = await newVisitor(browser);
  await open(page, host.url);
  await searching(page);
  const first = await steps(page);
  await page.waitForFunction((before) => (document.querySelector(".papers progress")?.value ?? 0) > before, first);
  const stop = page.getByRole("button", { name: "Stop", exact: true });
  await stop.focus();
  await page.keyboard.press("Enter");
  const on = page.getByRole("button", { name: "Look further for a better layout" });
  await on.waitFor();
  assert.equal(await page.getByRole("progressbar").count(), 0, "nothing is said to go on");
  assert.deepEqual(await violations(page), []);
  const rested = await steps(page);
  await page.waitForTimeout(600);
  assert.equal(await steps(page), rested, "and nothing does");
  assert.ok((await page.locator(".stock-sheet").count()) > 1, "the best layout so far stays");
  await on.press("Enter");
  await page.getByRole("progressbar").waitFor();
  await stop.waitFor();
  assert.deepEqual(wrong, []);
  await context.close();
});

test("a change while the search runs makes it start anew", async () => {
  const { page, context, wrong } = await newVisitor(browser);
  await open(page, host.url);
  const cases = await searching(page);
  const sheets = await page.locator(".stock-sheet").count();
  await page.waitForFunction(() => (document.querySelector(".papers progress")?.value ?? 0) > 1);
  const far = await steps(page);
  await page.evaluate(() => {
    const bar = /** @type {HTMLProgressElement} */ (document.querySelector(".papers progress"));
    const seen = /** @type {any} */ (window).seen = [bar.value];
    new MutationObserver(() => seen.push(bar.value)).observe(bar, { attributeFilter: ["value"] });
  });
  await cases.getByRole("spinbutton").fill(String(2 * CASES));
  await page.waitForFunction((before) => document.querySelectorAll(".stock-sheet").length > before, sheets);
  const least = await page.evaluate(() => Math.min(.../** @type {any} */ (window).seen));
  assert.ok(least < far, `it counts from the start: ${least} after ${far}`);
  await cases.getByRole("spinbutton").fill("1");
  await page.waitForFunction(() => document.querySelectorAll(".stock-sheet").length === 1);
  assert.match(await page.locator(".sheets-sum").innerText(), /^1 sheet;/);
  await tab(page, "Case");
  assert.deepEqual(wrong, []);
  await context.close();
});

test("the page stays quick while the search runs, and the search rests when nobody looks", async () => {
  const { page, context } = await newVisitor(browser);
  await open(page, host.url);
  await searching(page);
  const frames = await page.evaluate(
    () =>
      new Promise((resolve) => {
        let count = 0;
        const start = performance.now();
        const turn = () => {
          count += 1;
          if (performance.now() - start < 1000) requestAnimationFrame(turn);
          else resolve(count);
        };
        requestAnimationFrame(turn);
      }),
  );
  assert.ok(Number(frames) > 10, `${frames} frames in a second`);
  await tab(page, "Case");
  await page.waitForTimeout(300);
  const rested = await steps(page);
  await page.waitForTimeout(500);
  assert.equal(await steps(page), rested);
  await tab(page, "Sheets");
  await page.waitForFunction((before) => (document.querySelector(".papers progress")?.value ?? 0) > before, rested);
  await context.close();
});

test("what takes long is said, and can be stopped", async () => {
  const { page, context } = await newVisitor(browser, { serviceWorkers: "block" });
  await page.addInitScript(() => {
    window.requestIdleCallback = () => 0;
  });
  /** @type {() => void} */
  let letGo = () => undefined;
  const held = new Promise((resolve) => {
    letGo = () => resolve(undefined);
  });
  await context.route("**/workshop_bg.wasm", async (route) => {
    await held;
    await route.continue().catch(() => undefined);
  });
  await open(page, host.url);
  /** @type {string[]} */
  const downloads = [];
  page.on("download", (download) => downloads.push(download.suggestedFilename()));
  await page.getByRole("button", { name: "Save zip of the whole pack" }).click();
  const work = page.locator("#work");
  await work.getByText("The pack is being made.").waitFor();
  assert.deepEqual(await violations(page), []);
  await work.getByRole("button", { name: "Stop" }).press("Enter");
  await told(page, /The pack: stopped/);
  assert.equal(await work.innerText(), "");
  letGo();
  await page.waitForTimeout(300);
  assert.deepEqual(downloads, []);
  const [download] = await Promise.all([page.waitForEvent("download"), page.getByRole("button", { name: "Save zip of the whole pack" }).click()]);
  assert.match(download.suggestedFilename(), /-pack\.zip$/);
  await context.close();
});

test("a browser that starts no worker is told so in words, and the page works on", async () => {
  const { page, context, wrong } = await newVisitor(browser);
  await page.addInitScript(() => {
    window.Worker = class {
      constructor() {
        throw new Error("not allowed here");
      }
    };
  });
  await open(page, host.url);
  await page.getByRole("button", { name: "Save PDF of the templates" }).click();
  await page.getByRole("alert").getByText(/could not be made.*starts no worker \(not allowed here\)/).waitFor();
  await tab(page, "Lists");
  await page.locator(".lists-sum", { hasText: "starts no worker" }).waitFor();
  await tab(page, "Sheets");
  await page.locator(".sheets-sum", { hasText: "starts no worker" }).waitFor();
  await page.getByLabel("Height of the cooler, mm").fill("120");
  assert.deepEqual(wrong, []);
  await context.close();
});

test("a workshop that does not load is told so, and is tried again", async () => {
  const { page, context } = await newVisitor(browser, { serviceWorkers: "block" });
  await page.addInitScript(() => {
    window.requestIdleCallback = () => 0;
  });
  let gone = true;
  await context.route("**/workshop/worker.js", (route) => (gone ? route.abort() : route.continue()));
  await open(page, host.url);
  await page.getByRole("button", { name: "Save PDF of the templates" }).click();
  await page.getByRole("alert").getByText(/did not load. Try again with a network/).waitFor();
  gone = false;
  const [download] = await Promise.all([page.waitForEvent("download"), page.getByRole("button", { name: "Save PDF of the templates" }).click()]);
  assert.match(download.suggestedFilename(), /\.pdf$/);
  await context.close();
});
