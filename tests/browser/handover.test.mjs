// What a visitor takes away is what the page said it would be, and it opens again elsewhere.

import assert from "node:assert/strict";
import { execFileSync } from "node:child_process";
import { readFile, writeFile } from "node:fs/promises";
import { join } from "node:path";
import { test } from "node:test";
import { drawn, figure, newVisitor, open, taken, told } from "./harness.mjs";
import { browser, folder, host } from "./stage.mjs";

/** Paper sizes in points: ISO 216 and ANSI Y14.1, 72 points an inch. */
const PAPERS = { a4: [595.276, 841.89], letter: [612, 792] };

for (const [paper, size] of Object.entries(PAPERS)) {
  test(`the templates for ${paper} are a PDF of the pages and the paper that were promised`, async () => {
    const { page, context, wrong } = await newVisitor(browser);
    await open(page, host.url);
    await page.getByRole("combobox", { name: "Paper in the printer" }).selectOption(paper);
    const promise = page.locator(".entry", { hasText: "Templates" }).locator(".contains");
    await drawn(page);
    await page.locator('.entry .contains[aria-busy="false"]', { hasText: /^\d+ pages?, true size/ }).waitFor();
    const pages = Number.parseInt(await promise.innerText());
    const path = await taken(page, folder, "Save PDF of the templates");
    assert.equal((await readFile(path)).subarray(0, 5).toString(), "%PDF-");
    const info = execFileSync("pdfinfo", ["-f", "1", "-l", "99", path], { encoding: "utf8" });
    assert.equal(Number(/^Pages:\s+(\d+)/m.exec(info)?.[1]), pages);
    for (const [, width, height] of info.matchAll(/^Page\s+\d+ size:\s+([\d.]+) x ([\d.]+)/gm)) {
      const [short, long] = [Number(width), Number(height)].sort((a, b) => a - b);
      assert.ok(Math.abs(short - size[0]) < 0.1 && Math.abs(long - size[1]) < 0.1, `${width} x ${height}`);
    }
    assert.match(execFileSync("qpdf", ["--check", path], { encoding: "utf8" }), /No syntax or stream encoding errors/);
    assert.deepEqual(wrong, []);
    await context.close();
  });
}

test("the cutting file of a panel is as large as the panel is said to be", async () => {
  const { page, context } = await newVisitor(browser);
  await open(page, host.url);
  await page.getByRole("combobox", { name: "Which panel" }).selectOption("left");
  const svg = await readFile(await taken(page, folder, "Save SVG of the chosen panels"), "utf8");
  const width = /width="([\d.]+)mm"/.exec(svg)?.[1];
  const box = /viewBox="0 0 ([\d.]+) ([\d.]+)"/.exec(svg);
  assert.equal(width, box?.[1], "a unit is a millimetre");
  await page.getByRole("tab", { name: "Panels" }).click();
  const said = await page.getByRole("button", { name: /^Left panel/ }).locator(".caption").innerText();
  const [panel] = /([\d.]+) × ([\d.]+) mm/.exec(said)?.slice(1).map(Number) ?? [];
  assert.ok(Number(width) >= Number(panel) && Number(width) < Number(panel) + 40, `${width} for ${said}`);
  await page.getByRole("combobox", { name: "Which panel" }).selectOption("");
  /** @type {string[]} */
  const names = [];
  page.on("download", (download) => names.push(download.suggestedFilename()));
  await page.getByRole("button", { name: "Save DXF of the chosen panels" }).click();
  await told(page, /6 cutting files saved/);
  await page.waitForTimeout(300);
  assert.deepEqual(names.sort(), ["back", "floor", "front", "left", "right", "top"].map((id) => `case-${id}.dxf`));
  await context.close();
});

test("a design file opens again where it was not made", async () => {
  const { page, context } = await newVisitor(browser);
  await open(page, host.url);
  await page.getByLabel("Design", { exact: true }).fill("Small oak");
  await page.locator(".sentence").getByRole("combobox", { name: "Board" }).selectOption("microatx");
  await page.waitForTimeout(100);
  const size = await figure(page, "Outside, W × D × H").innerText();
  const path = await taken(page, folder, "Save the design file");
  assert.match(path, /small-oak\.json$/);
  await context.close();

  const other = await newVisitor(browser);
  await open(other.page, host.url);
  await other.page.locator(".entry input[type=file]").setInputFiles(path);
  await other.page.getByText("small-oak.json is on the bench").waitFor();
  assert.equal(await figure(other.page, "Outside, W × D × H").innerText(), size);
  const bad = join(folder, "bad.json");
  await writeFile(bad, '{ "cooler.height": 900 }');
  await other.page.locator(".entry input[type=file]").setInputFiles(bad);
  const message = other.page.getByRole("alert");
  await message.getByText("Height of the cooler: 900 is not allowed").waitFor();
  assert.match(await message.innerText(), /stays as it was/);
  assert.equal(await figure(other.page, "Outside, W × D × H").innerText(), size);
  // What is no design at all says so in words that help, wherever it is brought.
  const pick = other.page.locator(".entry input[type=file]");
  for (const [text, words] of [
    ["{ cooler: 5 }", "it is not JSON: line 1, column 3: cooler stands where a key in quotation marks belongs"],
    ["[1]", "it begins with a list"],
    ["\u{feff}", "it is empty"],
  ]) {
    await writeFile(bad, text);
    await pick.setInputFiles(bad);
    await message.getByText(words).waitFor();
  }
  // Saved by an editor that marks its texts, or writes two bytes a letter.
  for (const [name, kind] of /** @type {[string, BufferEncoding][]} */ ([["marked", "utf8"], ["wide", "utf16le"]])) {
    await pick.setInputFiles({ name: `${name}.json`, mimeType: "application/json", buffer: Buffer.from(`\u{feff}{ "design.title": "${name}" }`, kind) });
    await other.page.getByText(`${name}.json is on the bench`).waitFor();
    await other.page.waitForFunction((title) => document.querySelector(".name input")?.value === title, name);
  }
  await other.context.close();
});

test("a link opens with a fresh profile, also with a full stop behind it", async () => {
  const { page, context } = await newVisitor(browser);
  await context.grantPermissions(["clipboard-read", "clipboard-write"]);
  await open(page, host.url);
  await page.getByLabel("Height of the cooler, mm").fill("125.5");
  await page.getByLabel("Height of the cooler, mm").press("Enter");
  await page.waitForTimeout(100);
  await page.getByRole("button", { name: "Copy link" }).click();
  await page.getByText("Copied.").waitFor();
  const link = await page.evaluate(() => navigator.clipboard.readText());
  assert.ok(link.length < 400 && link.includes("#1"), link);
  await page.waitForFunction((url) => location.href === url, link);
  await context.close();

  const other = await newVisitor(browser);
  await open(other.page, `${link}.`);
  assert.equal(await other.page.getByLabel("Height of the cooler, mm").inputValue(), "125.5");
  assert.deepEqual(other.wrong, []);
  await other.context.close();
});

test("a damaged link keeps the design on screen and says what is wrong", async () => {
  const { page, context } = await newVisitor(browser);
  await open(page, host.url);
  await page.waitForFunction(() => location.hash.length > 5);
  const first = await page.evaluate(() => location.hash);
  await page.getByLabel("Height of the cooler, mm").fill("125.5");
  await page.getByLabel("Height of the cooler, mm").press("Enter");
  await page.waitForFunction((text) => location.hash !== text, first);
  const link = await page.evaluate(() => location.hash);
  await page.evaluate((text) => {
    location.hash = text.slice(0, -3);
  }, link);
  await page.getByRole("alert").getByText("The link is cut short").waitFor();
  assert.equal(await page.getByLabel("Height of the cooler, mm").inputValue(), "125.5");
  await page.waitForFunction((text) => location.hash === text, link);
  // The same for one who comes with it: the design kept on the device is shown.
  await page.goto("about:blank");
  await open(page, `${host.url}${link.slice(0, 8)}x${link.slice(9)}`);
  await page.getByRole("alert").getByText("The link is damaged").waitFor();
  assert.equal(await page.getByLabel("Height of the cooler, mm").inputValue(), "125.5");
  await context.close();
});

test("the design is still there at the next visit", async () => {
  const { page, context } = await newVisitor(browser);
  await open(page, host.url);
  await page.getByLabel("Height of the cooler, mm").fill("133");
  await page.getByLabel("Height of the cooler, mm").press("Enter");
  await page.goto("about:blank");
  await open(page, host.url);
  assert.equal(await page.getByLabel("Height of the cooler, mm").inputValue(), "133");
  await context.close();
});
