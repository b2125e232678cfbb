// The page keeps its shape: at every width, on paper, and while something is changed.

import assert from "node:assert/strict";
import { test } from "node:test";
import { DESK, drawn, newVisitor, open, tab } from "./harness.mjs";
import { browser, host } from "./stage.mjs";

/**
 * Where an element lies on the page.
 * @param {import("playwright-core").Page} page
 * @param {string} selector
 */
const box = (page, selector) =>
  page.locator(selector).first().evaluate((element) => {
    const { left, top, right, bottom } = element.getBoundingClientRect();
    return { left, top, right, bottom };
  });

/** What must not lie over one another. */
const APART = [".drawing", ".margin", ".title-block", ".handover", ".foot"];

/** @param {import("playwright-core").Page} page */
async function nothingOverlaps(page) {
  const there = await page.evaluate(
    (selectors) =>
      selectors.flatMap((selector) => {
        const element = document.querySelector(selector);
        if (!element?.checkVisibility()) return [];
        // Down to the last thing in it that shows: a box may be smaller than what it holds.
        const own = element.getBoundingClientRect();
        const inner = selector === ".margin" && getComputedStyle(element.querySelector(".notes-scroll") ?? element).overflowY !== "visible" ? [] : [...element.querySelectorAll("button, p, dd, h3")];
        const bottom = Math.max(own.bottom, ...inner.filter((one) => one.checkVisibility() && !one.closest(".said, .stage, .papers, .panels")).map((one) => one.getBoundingClientRect().bottom));
        return [{ selector, left: own.left, right: own.right, top: own.top, bottom }];
      }),
    APART,
  );
  for (const [index, one] of there.entries()) {
    for (const other of there.slice(index + 1)) {
      const beside = one.right <= other.left + 1 || other.right <= one.left + 1;
      const below = one.bottom <= other.top + 1 || other.bottom <= one.top + 1;
      assert.ok(beside || below, `${one.selector} and ${other.selector} lie over one another: ${JSON.stringify([one, other])}`);
    }
  }
}

for (const [width, height] of [[768, 1024], [1024, 768], [1152, 720], [1152, 800], [1280, 700], [1280, 800], [1440, 900], [1920, 1080]]) {
  test(`the case stands in the first window of ${width} × ${height}, and nothing lies over another`, async () => {
    const { page, context, wrong } = await newVisitor(browser, { viewport: { width, height } });
    await open(page, host.url);
    await page.getByText(/pages?, true size/).waitFor();
    const case_ = await box(page, ".stage > svg");
    assert.ok((case_.top + case_.bottom) / 2 < height, `the middle of the case is in the window: ${JSON.stringify(case_)}`);
    await nothingOverlaps(page);
    if (width >= 1280) {
      const rows = await page.locator(".entry .acts").evaluateAll((all) => all.map((acts) => new Set([...acts.children].filter((one) => one.checkVisibility() && getComputedStyle(one).position !== "absolute").map((one) => Math.round(one.getBoundingClientRect().top))).size));
      assert.deepEqual(rows, [1, 1, 1, 1], "what can be taken away stands in one row");
    }
    assert.deepEqual(wrong, []);
    await context.close();
  });
}

test("on paper nothing lies over another, and the case takes the width", async () => {
  const { page, context } = await newVisitor(browser, DESK);
  await open(page, host.url);
  await page.emulateMedia({ media: "print" });
  await nothingOverlaps(page);
  const stage = await box(page, ".stage");
  const svg = await box(page, ".stage > svg");
  assert.ok(svg.bottom - svg.top > 0.95 * (stage.bottom - stage.top));
  await context.close();
});

test("a panel on show keeps its place through a change: the hole, the open row, the keyboard", async () => {
  const { page, context, wrong } = await newVisitor(browser, DESK);
  await open(page, host.url);
  await tab(page, "Panels");
  const floor = page.getByRole("button", { name: /^Floor \d/ });
  await floor.press("Enter");
  const stage = page.getByRole("group", { name: /^Floor, seen from outside/ });
  assert.ok(await stage.evaluate((element) => element === document.activeElement), "the keyboard goes on in the large picture");
  await page.keyboard.press("ArrowRight");
  const why = await page.locator(".hole-note").innerText();
  await page.locator(".hole-key summary").last().press("Enter");
  const scrolled = await page.locator(".hole-key").evaluate((element) => element.scrollTop);
  await stage.focus();
  const picture = () => page.locator(".panel-stage svg").first().innerHTML();
  const before = await picture();
  await page.evaluate(() => {
    const box = /** @type {HTMLInputElement} */ (document.querySelector('[aria-label="Length of the card, mm"]'));
    box.value = "240";
    box.dispatchEvent(new Event("input", { bubbles: true }));
  });
  await page.waitForFunction((old) => document.querySelector(".panel-stage svg")?.innerHTML !== old, before);
  assert.ok(await stage.evaluate((element) => element === document.activeElement), "the keyboard keeps its place");
  assert.equal(await page.locator(".hole-note").innerText(), why);
  assert.equal(await page.locator(".hole-key details[open]").count(), 1);
  assert.equal(await page.locator(".hole-key").evaluate((element) => element.scrollTop), scrolled);
  assert.deepEqual(wrong, []);
  await context.close();
});

test("among all panels the keyboard keeps its place through a change, and a turned screen lays them anew", async () => {
  const { page, context, wrong } = await newVisitor(browser, DESK);
  await open(page, host.url);
  await page.getByRole("combobox", { name: "The case is" }).selectOption("smallest");
  await tab(page, "Panels");
  const back = page.getByRole("button", { name: /^Back \d/ });
  await back.focus();
  const size = await back.innerText();
  await page.evaluate(() => {
    const box = /** @type {HTMLInputElement} */ (document.querySelector('[aria-label="Height of the cooler, mm"]'));
    box.value = "120";
    box.dispatchEvent(new Event("input", { bubbles: true }));
  });
  await drawn(page);
  assert.notEqual(await back.innerText(), size);
  assert.ok(await back.evaluate((element) => element === document.activeElement));
  assert.deepEqual(await page.locator(".panel-row").evaluateAll((rows) => rows.map((row) => row.childElementCount)), [3, 3]);
  await page.setViewportSize({ width: 400, height: 800 });
  await page.waitForFunction(() => document.querySelectorAll(".panel-row").length === 3);
  assert.equal(await page.locator(".panel-figure svg").count(), 6);
  assert.deepEqual(wrong, []);
  await context.close();
});

test("two quick turns are half a turn, and two quick pulls none", async () => {
  const { page, context, wrong } = await newVisitor(browser, DESK);
  await open(page, host.url);
  /** Presses a button again in the middle of the movement that it started. @param {string} name */
  const twice = async (name) => {
    await page.getByRole("button", { name }).evaluate((/** @type {HTMLButtonElement} */ button) => {
      button.click();
      setTimeout(() => button.click(), 60);
    });
    await page.waitForTimeout(800);
  };
  assert.equal(await page.locator(".where").innerText(), "from the front right");
  await twice("Turn by a quarter to the right");
  assert.equal(await page.locator(".where").innerText(), "from the back left");
  await twice("Pull apart");
  assert.equal(await page.getByRole("button", { name: "Pull apart" }).getAttribute("aria-pressed"), "false");
  assert.deepEqual(wrong, []);
  await context.close();
});
