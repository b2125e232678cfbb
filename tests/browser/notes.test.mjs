// The notes in the margin: each leads to its place in every drawing, and keeps being chosen while the design changes.

import assert from "node:assert/strict";
import { test } from "node:test";
import { DESK, drawn, field, newVisitor, open, tab } from "./harness.mjs";
import { browser, host } from "./stage.mjs";

/**
 * @param {import("playwright-core").Page} page
 * @param {string} words
 */
const note = (page, words) => page.locator("li.note", { hasText: words }).locator(".note-button");

/** @param {import("playwright-core").Page} page */
const chosen = (page) => page.locator('.note-button[aria-pressed="true"] .note-what').allInnerTexts();

test("a part that lies behind others is seen when its note is chosen", async () => {
  const { page, context, wrong } = await newVisitor(browser, DESK);
  await open(page, host.url);
  await note(page, "Drive 1 is so thin").click();
  const strength = (/** @type {string} */ id) => page.locator(`.stage [data-about="${id}"]`).first().evaluate((group) => Number(getComputedStyle(group).opacity));
  assert.equal(await strength("drive-1"), 1);
  assert.ok((await strength("supply")) < 0.5, "what stands before it lets it through");
  await page.keyboard.press("Escape");
  assert.equal(await strength("supply"), 1, "without a chosen note all is as it was");
  assert.deepEqual(wrong, []);
  await context.close();
});

test("a note about a hole brings the panel it is in", async () => {
  const { page, context, wrong } = await newVisitor(browser, DESK);
  await open(page, host.url);
  await tab(page, "Panels");
  await page.locator(".picker button", { hasText: "Right" }).click();
  await note(page, "a foot's hole and the edge of the floor").click();
  assert.equal(await page.locator('.picker [data-panel][aria-pressed="true"]').innerText(), "Floor");
  assert.ok((await page.locator(".marks .spot").count()) > 0, "its hole is marked");
  assert.deepEqual(wrong, []);
  await context.close();
});

test("the chosen note stays chosen when another comes before it, and none is when its trouble is gone", async () => {
  const { page, context, wrong } = await newVisitor(browser, DESK);
  await open(page, host.url);
  await note(page, "Drive 1 is so thin").click();
  const cooler = page.locator(".brief").getByLabel("Height of the cooler, mm");
  await cooler.fill("170");
  await drawn(page);
  assert.equal(await page.locator(".verdict").innerText().then((text) => text.startsWith("One thing stands in the way")), true);
  assert.match((await chosen(page)).join(), /^Drive 1 is so thin/);
  await page.locator("li.note.is-blocks .note-button").click();
  await cooler.fill("158");
  await drawn(page);
  assert.deepEqual(await chosen(page), []);
  assert.equal(await page.locator(".stage .marked").count(), 0, "and nothing is marked");
  assert.deepEqual(wrong, []);
  await context.close();
});

test("the names of the rows in the list of sheets are read as words", async () => {
  const { page, context } = await newVisitor(browser, DESK);
  await open(page, host.url);
  await field(page, "Sheets to cut from", "How many of the sheet above");
  const heights = await page.locator(".rows-stock .line-label").evaluateAll((all) => all.filter((one) => one.checkVisibility()).map((one) => one.getBoundingClientRect().height));
  assert.ok(heights.length > 0 && heights.every((height) => height < 50), `at most two lines each: ${heights}`);
  await context.close();
});
