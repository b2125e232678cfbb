// The page loads for a new visitor, from any folder of a host, without asking anyone else, and stays without a network.

import assert from "node:assert/strict";
import { readFile } from "node:fs/promises";
import { test } from "node:test";
import { figure, newVisitor, open, sentence, servePage, tab } from "./harness.mjs";
import { browser, host } from "./stage.mjs";

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

test("after the first visit the page works without a network, files and all", async () => {
  const own = await servePage();
  const { page, context, wrong } = await newVisitor(browser);
  await open(page, own.url);
  await page.getByText("Ready to work offline.").waitFor();
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
  const [download] = await Promise.all([page.waitForEvent("download"), page.getByRole("button", { name: "Save PDF of the templates" }).click()]);
  assert.equal((await readFile(await download.path())).subarray(0, 5).toString(), "%PDF-");
  await page.getByRole("tab", { name: "Sheets" }).click();
  await page.locator(".stock-picture svg").first().waitFor();
  assert.deepEqual(wrong, []);
  await context.close();
});

test("a newer version waits until the visitor wants it, and the design stays", async () => {
  let title = "Panelwright";
  const own = await servePage((name, bytes) => {
    const text = bytes.toString("utf8");
    if (name === "sw.js") return Buffer.from(text.replace(/"version":"/, `$&${title.length}`));
    return name === "index.html" ? Buffer.from(text.replace("<h2 class=\"said\" id=\"brief-title\">The brief", `<h2 class="said" id="brief-title">${title}`)) : bytes;
  });
  const { page, context, wrong } = await newVisitor(browser);
  await open(page, own.url);
  await page.getByText("Ready to work offline.").waitFor();
  const first = await page.evaluate(() => location.hash);
  await page.getByLabel("Height of the cooler, mm").fill("131");
  await page.getByLabel("Height of the cooler, mm").press("Enter");
  await page.waitForFunction((hash) => location.hash.length > 1 && location.hash !== hash, first);
  title = "The newer one";
  await page.reload();
  await page.getByText("A newer version is here.").waitFor();
  assert.equal(await page.locator("#brief-title").textContent(), "Panelwright", "until then it is the old one throughout");
  await page.getByRole("button", { name: "Use it now" }).click();
  await page.locator("#brief-title", { hasText: title }).waitFor();
  await page.locator(".stage svg").waitFor();
  assert.equal(await page.getByLabel("Height of the cooler, mm").inputValue(), "131");
  assert.deepEqual(wrong, []);
  await own.close();
  await context.close();
});

test("a page that the browser does not keep has everything at hand all the same", async () => {
  const own = await servePage();
  const { page, context } = await newVisitor(browser, { serviceWorkers: "block" });
  await page.addInitScript(() => {
    // A host without encryption: the browser has no service workers for it.
    Reflect.deleteProperty(Navigator.prototype, "serviceWorker");
  });
  /** @type {string[]} */
  const asked = [];
  context.on("request", (request) => asked.push(request.url()));
  await open(page, own.url);
  await page.getByText("works without a network as long as it stays open").waitFor();
  assert.equal(asked.filter((url) => url.endsWith("workshop_bg.wasm")).length, 1);
  await own.close();
  const [download] = await Promise.all([page.waitForEvent("download"), page.getByRole("button", { name: "Save PDF of the templates" }).click()]);
  assert.match(download.suggestedFilename(), /\.pdf$/);
  await context.close();
});

test("the page stands before anything is asked for that only files need", async () => {
  const { page, context } = await newVisitor(browser);
  /** @type {string[]} */
  const asked = [];
  context.on("request", (request) => asked.push(new URL(request.url()).pathname));
  await page.addInitScript(() => {
    // A browser that is never idle: nothing may be needed that waits for it.
    window.requestIdleCallback = () => 0;
  });
  await open(page, host.url);
  await page.getByRole("combobox", { name: "The case is" }).selectOption("smallest");
  await page.getByRole("tab", { name: "Panels" }).click();
  await page.locator(".panel-figure svg").first().waitFor();
  await page.waitForTimeout(500);
  const place = (/** @type {string} */ end) => asked.findIndex((path) => path.endsWith(end));
  assert.equal(asked.filter((path) => path.endsWith("/wasm/panelwright_bg.wasm")).length, 1);
  assert.ok(place("/wasm/panelwright_bg.wasm") < place("/modules/main.js"), "the largest file is asked for first, not when the scripts are read");
  assert.deepEqual(asked.filter((path) => path.includes("workshop")), []);
  await context.close();
});

test("a part of the page that does not load is told so, and is tried again", async () => {
  let away = true;
  const own = await servePage((name, bytes) => {
    if (away && name.startsWith("modules/later/")) throw new Error("not there");
    return bytes;
  });
  const { page, context } = await newVisitor(browser, { serviceWorkers: "block" });
  /** @type {string[]} */
  const asked = [];
  context.on("request", (request) => asked.push(new URL(request.url()).pathname));
  await page.addInitScript(() => {
    window.requestIdleCallback = () => 0;
  });
  await open(page, own.url);
  assert.deepEqual(asked.filter((path) => path.includes("/later/")), [], "the page stands without it");
  await tab(page, "Lists");
  await page.locator(".message.wrong", { hasText: "did not load" }).waitFor();
  assert.equal(await page.getByRole("tab", { selected: true }).innerText(), "Case");
  assert.ok(await page.locator(".stage svg").isVisible(), "the drawing is there as before");
  away = false;
  await tab(page, "Lists");
  await page.locator(".lists-tables table").first().waitFor();
  assert.equal(await page.getByRole("tab", { selected: true }).innerText(), "Lists");
  await own.close();
  await context.close();
});

test("what the tabs bring is at hand when one is pressed: the paper is there with the next frame", async () => {
  const { page, context, wrong } = await newVisitor(browser);
  await page.addInitScript(() => {
    window.requestIdleCallback = () => 0;
  });
  await open(page, host.url);
  const lists = page.getByRole("tab", { name: "Lists" });
  // A browser that is never idle: the hand on the tabs is what brings them.
  const [answer] = await Promise.all([page.waitForResponse(/\/later\/papers\.js$/), lists.hover()]);
  await answer.finished();
  await page.waitForTimeout(100);
  const seen = await lists.evaluate(async (tab) => {
    const head = () => document.querySelector(".drawing-head")?.getBoundingClientRect().height;
    const before = head();
    /** @type {HTMLElement} */ (tab).click();
    await new Promise((resolve) => requestAnimationFrame(resolve));
    return { paper: document.querySelector("#pane-lists .papers") !== null, jump: (head() ?? 0) - (before ?? 0) };
  });
  assert.deepEqual(seen, { paper: true, jump: 0 });
  assert.deepEqual(wrong, []);
  await context.close();
});

test("all sizes stand in a list with their sources", async () => {
  const { page, context } = await newVisitor(browser);
  await open(page, host.url);
  await page.getByRole("button", { name: "Sources of all sizes" }).click();
  const list = page.getByRole("dialog", { name: "Sources of all sizes" });
  await list.waitFor();
  assert.ok((await list.locator("tbody tr").count()) > 100);
  await list.getByText("ATX Specification 2.2, figure 3 (published)").first().waitFor();
  await page.keyboard.press("Escape");
  assert.equal(await list.isVisible(), false);
  await context.close();
});
