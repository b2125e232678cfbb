// The page loads for a new visitor, from any folder of a host, without asking anyone else, and stays without a network.

import assert from "node:assert/strict";
import { readFile } from "node:fs/promises";
import { after, before, test } from "node:test";
import { figure, newVisitor, open, sentence, servePage, startBrowser } from "./harness.mjs";

/** @type {Awaited<ReturnType<typeof servePage>>} */
let host;
/** @type {import("playwright-core").Browser} */
let browser;

before(async () => {
  host = await servePage();
  browser = await startBrowser();
});

after(async () => {
  await browser?.close();
  await host?.close();
});

test("the first view is a finished case: sentence, drawing, notes, figures, things to take away", async () => {
  const { page, context, wrong } = await newVisitor(browser);
  await open(page, host.url);
  const cargo = await readFile(new URL("../../Cargo.toml", import.meta.url), "utf8");
  const version = /^version = "(.*)"$/m.exec(cargo)?.[1];
  await page.getByText(`Version ${version}`).waitFor();
  assert.equal(
    await sentence(page),
    "A case of 6 mm fibreboard for a Mini-ITX board with a 158 mm tower cooler, a two-slot standard-height card " +
      "267 mm long and a full-size supply of usual depth, with one 2.5 in drive and no 3.5 in drives; " +
      "no panel larger than A4.",
  );
  assert.ok((await page.locator(".stage svg path").count()) > 100, "the case is drawn");
  assert.match(await page.locator(".verdict").innerText(), /stands? in the way/);
  assert.match(await figure(page, "Outside, W × D × H").innerText(), /^\d+\.\d × \d+\.\d × \d+\.\d mm$/);
  assert.equal(await figure(page, "Panels").innerText(), "6");
  assert.ok(await page.getByRole("button", { name: "Save PDF of the templates" }).isVisible());
  assert.ok((await page.locator(".cautions li").count()) >= 10, "the cautions stand at the foot");
  assert.deepEqual(wrong, []);
  await context.close();
});

test("after the first visit the page works without a network", async () => {
  const own = await servePage();
  const { page, context, wrong } = await newVisitor(browser);
  await open(page, own.url);
  await page.evaluate(async () => {
    await navigator.serviceWorker.ready;
  });
  await own.close();
  await page.reload();
  await page.locator(".stage svg").waitFor();
  const before = await figure(page, "Outside, W × D × H").innerText();
  await page.getByLabel("Height of the cooler, mm").fill("120");
  await page.getByLabel("Height of the cooler, mm").press("Enter");
  await page.getByRole("combobox", { name: "The case is" }).selectOption("smallest");
  await page.waitForFunction(
    (text) => document.querySelector("#title-block .outside dd")?.textContent !== text,
    before,
  );
  assert.equal(await page.evaluate(() => document.fonts.check('16px "Panelwright Sans"')), true, "its letters are there");
  assert.deepEqual(wrong, []);
  await context.close();
});

test("all sizes stand in a list with their sources", async () => {
  const { page, context } = await newVisitor(browser);
  await open(page, host.url);
  await page.getByRole("button", { name: "Sources of all sizes" }).click();
  const list = page.getByRole("dialog", { name: "Sources of all sizes" });
  assert.ok((await list.locator("tbody tr").count()) > 100);
  await list.getByText("ATX Specification 2.2, figure 3 (published)").first().waitFor();
  await page.keyboard.press("Escape");
  assert.equal(await list.isVisible(), false);
  await context.close();
});
