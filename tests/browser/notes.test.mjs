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
  await page.locator(".picker [data-panel]", { hasText: "All" }).click();
  assert.deepEqual(await page.locator(".panel-figure.marked .caption-name").allInnerTexts(), ["Floor"], "and its panel among all");
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

test("a change that clears a note is one press away, by keyboard too, and undo takes it back", async () => {
  const { page, context, wrong } = await newVisitor(browser, DESK);
  await open(page, host.url);
  const verdict = () => page.locator(".verdict").innerText();
  assert.equal(await page.locator(".mends button").count(), 0, "nothing is offered where nothing needs a change");
  await page.locator(".brief").getByLabel("Height of the cooler, mm").fill("170");
  await page.locator("li.note.is-blocks .note-button").focus();
  await page.keyboard.press("Tab");
  assert.equal(await page.evaluate(() => document.activeElement?.textContent), "No panel larger than: A3");
  await page.keyboard.press("Enter");
  await drawn(page);
  assert.match(await verdict(), /^Nothing stands in the way/);
  assert.ok(await page.evaluate(() => document.activeElement?.matches(".notes-scroll")), "the keyboard stays among the notes");
  await page.keyboard.press("Control+z");
  await drawn(page);
  assert.match(await verdict(), /^One thing stands in the way/);
  assert.deepEqual(wrong, []);
  await context.close();
});

test("every offered change is taken, and one after another they clear a case far too small", async () => {
  const { page, context, wrong } = await newVisitor(browser, DESK);
  await open(page, host.url);
  const brief = page.locator(".brief");
  await brief.getByLabel("The case is").selectOption({ label: "outside" });
  for (const side of ["width", "depth", "height"]) await brief.getByLabel(`Outside ${side}, mm`).fill("180");
  await drawn(page);
  const first = page.locator("li.note.is-blocks .mends button").first();
  const started = await page.locator("li.note.is-blocks").count();
  assert.ok(started > 3, `${started} things stand in the way`);
  let steps = 0;
  for (; steps < 12 && (await first.count()) > 0; steps += 1) {
    const words = await first.innerText();
    await first.click();
    await drawn(page);
    assert.equal(await page.locator(`li.note.is-blocks .mends button:text-is("${words}")`).count(), 0, `${words} clears what it stood beside`);
  }
  assert.match(await page.locator(".verdict").innerText(), /^Nothing stands in the way/, `after ${steps} changes`);
  assert.deepEqual(wrong, []);
  await context.close();
});

test("the names of the rows in the list of sheets are read as words", async () => {
  const { page, context } = await newVisitor(browser, DESK);
  await open(page, host.url);
  await field(page, "Sheets to cut from", "How many of the sheet above");
  // The rows come with a part of the page that is loaded when it is first wanted.
  await page.locator(".rows-stock .line-label").first().waitFor();
  const heights = await page.locator(".rows-stock .line-label").evaluateAll((all) => all.filter((one) => one.checkVisibility()).map((one) => one.getBoundingClientRect().height));
  assert.ok(heights.length > 0 && heights.every((height) => height < 50), `at most two lines each: ${heights}`);
  await context.close();
});
