// From a case that fits to sawdust: method, joints, cutting files, sheets, lists, and what an older case keeps.

import assert from "node:assert/strict";
import { readFile, writeFile } from "node:fs/promises";
import { join } from "node:path";
import { test } from "node:test";
import { inflateRawSync } from "node:zlib";
import { DESK, PHONE, field, figure, newVisitor, open, sideways, tab, taken, violations } from "./harness.mjs";
import { browser, folder, host } from "./stage.mjs";

/**
 * The file that a button gives, and its text.
 * @param {import("playwright-core").Page} page
 * @param {string} name
 */
async function read(page, name) {
  const path = await taken(page, folder, name);
  return { path, text: await readFile(path, "latin1") };
}

test("a laser gives the panels fingers and files that allow for its beam", async () => {
  const { page, context, wrong } = await newVisitor(browser);
  await open(page, host.url);
  await tab(page, "Panels");
  await page.getByRole("button", { name: "Left", exact: true }).click();
  const corners = () => page.locator("#flat-left").getAttribute("d").then((path) => (path ?? "").split(/[A-Z]/i).length);
  const plain = await corners();
  const size = await figure(page, "Sheet used").innerText();
  const method = await field(page, "How it is made", "Panels are made");
  await method.locator("select").selectOption("laser");
  await page.waitForFunction((before) => document.querySelector("#title-block")?.textContent?.includes(before) === false, size);
  assert.ok((await corners()) > plain + 12, "fingers have corners");
  assert.equal(await page.locator("details.group", { hasText: "How it is made" }).locator(".group-line").innerText(), "with a laser");

  const entry = page.locator(".entry", { hasText: "Cutting files" });
  assert.match(await entry.locator(".contains").innerText(), /laser: the beam's cut is allowed for/);
  await page.getByRole("combobox", { name: "Which panel" }).selectOption("left");
  const dxf = await read(page, "Save DXF of the chosen panels");
  assert.match(dxf.path, /case-left\.dxf$/);
  assert.match(dxf.text, /^(999\r?\n.*\r?\n)*\s*0\r?\nSECTION\r?\n/);
  assert.match(dxf.text, /\$INSUNITS\r?\n\s*70\r?\n\s*4\r?\n/);
  assert.match(dxf.text, /EOF\s*$/);

  await page.getByRole("combobox", { name: "Left panel", exact: true }).selectOption("hand");
  await page.waitForFunction(() => /by hand/.test([...document.querySelectorAll(".entry .contains")].map((each) => each.textContent).join()));
  assert.deepEqual(wrong, []);
  await context.close();
});

test("a laser's test piece is the pack's own, and what it measures becomes the width of the cut", async () => {
  const { page, context, wrong } = await newVisitor(browser);
  await open(page, host.url);
  const button = page.getByRole("button", { name: "Kerf test" });
  assert.equal(await button.isVisible(), false, "nothing is cut by a laser yet");
  const method = await field(page, "How it is made", "Panels are made");
  await method.locator("select").selectOption("laser");
  await button.click();
  const dxf = await taken(page, folder, "Save DXF of the kerf test piece");
  assert.match(dxf, /case-kerf-test\.dxf$/);
  const piece = await readFile(dxf);
  assert.match(piece.toString("latin1"), /\(100 - S\) \/ 10 mm/);
  const measured = page.getByLabel("They measure together, mm");
  const said = page.locator("#kerf-said");
  for (const [text, words] of [["", /number is needed.*90 to 100 mm/], ["wide", /“wide” is not a number/], ["100.2", /100\.2 mm cannot be/], ["80", /80 mm cannot be/]]) {
    await measured.fill(String(text));
    await page.keyboard.press("Enter");
    await page.waitForFunction((pattern) => new RegExp(pattern).test(document.querySelector("#kerf-said")?.textContent ?? ""), /** @type {RegExp} */ (words).source);
    assert.equal(await measured.getAttribute("aria-invalid"), "true");
  }
  await measured.fill("98,5");
  await page.keyboard.press("Enter");
  await said.getByText("Your laser's cut is 0.15 mm wide").waitFor();
  assert.deepEqual(await violations(page), []);
  await page.getByRole("dialog", { name: "Kerf test" }).getByRole("button", { name: "Close" }).click();
  assert.equal(await page.getByRole("spinbutton", { name: "Width of the beam's cut" }).inputValue(), "0.15");
  await page.keyboard.press("Control+z");
  await page.waitForFunction(() => !document.querySelector('[aria-valuetext="0.15 mm"]'));
  // The pack holds the same bytes, deflated behind the entry's name.
  const zip = await readFile(await taken(page, folder, "Save zip of the whole pack"));
  const name = "cut/kerf-test.dxf";
  assert.ok(inflateRawSync(zip.subarray(zip.indexOf(name) + name.length)).equals(piece), "the same file");
  assert.deepEqual(wrong, []);
  await context.close();
});

test("on a phone a list is read without moving it: what, how long, how many", async () => {
  const { page, context, wrong } = await newVisitor(browser, PHONE);
  await open(page, host.url);
  await tab(page, "Lists");
  for (const list of ["shopping", "bags"]) {
    const table = page.locator(`[data-list="${list}"] table`);
    await table.waitFor();
    const { wide, room } = await table.evaluate((element) => ({ wide: element.scrollWidth, room: element.parentElement?.clientWidth ?? 0 }));
    assert.ok(wide <= room, `${list}: ${wide} of ${room} pixels`);
  }
  const shopping = page.locator('[data-list="shopping"]');
  // For one case nothing is said twice, and no column is empty; the file has all of them.
  assert.deepEqual(await shopping.locator("thead th").allInnerTexts(), ["what", "length, mm", "for one case", "spare"]);
  assert.deepEqual(await shopping.locator(".heading th").allInnerTexts().then((all) => all.slice(0, 2)), ["Sheets", "Brackets"]);
  assert.deepEqual(await shopping.locator("tr", { hasText: "Captive-nut bracket" }).first().locator("td").allInnerTexts(), ["Captive-nut bracket", "16", "3", "0"]);
  const { text } = await read(page, "Save CSV: Shopping list");
  assert.match(text, /for all.*in a pack.*note/);
  assert.deepEqual(wrong, []);
  await context.close();
});

test("lists count, print, and follow a change", async () => {
  const { page, context, wrong } = await newVisitor(browser);
  await open(page, host.url);
  assert.equal(await page.locator(".lists-tables table").count(), 0, "nothing is counted before it is looked at");
  await tab(page, "Lists");
  await page.locator(".lists-tables table").first().waitFor();
  const rows = await page.locator('[data-list="shopping"] tbody tr:not(.heading)').count();
  const csv = await read(page, "Save CSV: Shopping list");
  assert.equal(csv.text.split("\r\n").filter(Boolean).length, rows + 1);
  assert.ok((await read(page, "Save PDF of all lists")).text.startsWith("%PDF-"));
  await (await field(page, "Prices and pace", "Currency")).locator("input").fill("EUR");
  await page.getByRole("spinbutton", { name: "One sheet, as bought: Price" }).fill("12.5");
  await page.waitForFunction(() => /Together EUR 12\.50, \d+ lines? without a price/.test(document.querySelector(".lists-sum")?.textContent ?? ""));
  assert.deepEqual(wrong, []);
  await context.close();
});

test("the sheets say how near to the fewest they are, and follow a change", async () => {
  const { page, context, wrong } = await newVisitor(browser);
  await open(page, host.url);
  await tab(page, "Sheets");
  await page.locator(".stock-picture svg").first().waitFor();
  assert.match(await page.locator(".sheets-sum").innerText(), /^1 sheet; no layout needs fewer than 1\./);
  const dxf = await read(page, "Save DXF: Sheet 1 of 1");
  assert.match(dxf.text, /\$INSUNITS/);
  const cases = await field(page, "Sheets to cut from", "Cases to make");
  await cases.getByRole("spinbutton").fill("7");
  await page.waitForFunction(() => document.querySelectorAll(".stock-sheet").length > 1);
  const [, sheets, bound] = /^(\d+) sheets; no layout needs fewer than (\d+)/.exec(await page.locator(".sheets-sum").innerText()) ?? [];
  assert.ok(Number(sheets) >= Number(bound) && Number(bound) > 1, `${sheets} of ${bound}`);
  assert.equal(await page.locator(".stock-sheet").count(), Number(sheets));
  assert.deepEqual(wrong, []);
  await context.close();
});

test("an older design says of each panel what becomes of it, by keyboard alone", async () => {
  const { page, context, wrong } = await newVisitor(browser);
  await open(page, host.url);
  const old = join(folder, "old.json");
  await writeFile(old, await read(page, "Save the design file").then((file) => file.text));
  await page.getByRole("tab", { name: "Case", exact: true }).focus();
  await page.keyboard.press("End");
  assert.equal(await page.getByRole("tab", { name: "Compare" }).getAttribute("aria-selected"), "true");
  const [chooser] = await Promise.all([
    page.waitForEvent("filechooser"),
    page.getByRole("button", { name: "Choose the older design file" }).press("Enter"),
  ]);
  await chooser.setFiles(old);
  await page.getByText(/design on the bench: 6 unchanged/).waitFor();
  // A taller standoff moves holes of the back and leaves the sleeve's front as it is.
  const standoff = await field(page, "Board", "Standoff height");
  await standoff.getByRole("spinbutton").fill("30");
  await page.waitForFunction(() => document.querySelector('.change[data-panel="back"]:not(.is-unchanged)') !== null);
  assert.ok((await page.locator(".change:not(.is-unchanged) .overlay svg").count()) > 0, "old and new are drawn");
  assert.ok((await page.locator('.change[data-panel="back"] li').count()) > 0, "and the reason is said");
  const film = await field(page, "Sheet and finish", "Film on outside faces");
  await film.getByRole("spinbutton").fill("0.3");
  await page.locator(".change").filter({ hasText: "Film and paint" }).locator("li").first().waitFor();
  await page.getByLabel("Link of the older design").fill("#1nonsense");
  await page.getByLabel("Link of the older design").press("Enter");
  await page.getByText(/cannot be read: .*[^.]\. Nothing was lost\./).waitFor();
  assert.ok((await page.locator(".change").count()) >= 6, "the answer before it stays");
  assert.deepEqual(wrong, []);
  await context.close();
});

for (const [where, options] of Object.entries({ "a desk": DESK, "a phone": PHONE })) {
  for (const colorScheme of /** @type {const} */ (["light", "dark"])) {
    test(`sheets, lists and comparing are within reach on ${where}, ${colorScheme}`, async () => {
      const { page, context } = await newVisitor(browser, { ...options, colorScheme, reducedMotion: "reduce" });
      await open(page, host.url);
      // The address takes the design on in a quiet moment.
      await page.waitForFunction(() => location.hash.length > 1);
      const link = await page.evaluate(() => location.href);
      await page.getByLabel("Height of the cooler, mm").fill("120");
      await page.getByRole("combobox", { name: "The case is" }).selectOption("smallest");
      for (const [name, there] of Object.entries({ Sheets: ".stock-picture svg", Lists: ".lists-tables table", Compare: ".compare-acts" })) {
        await tab(page, name);
        await page.locator(there).first().waitFor();
        if (name === "Compare") {
          await page.getByLabel("Link of the older design").fill(link);
          await page.getByRole("button", { name: "Compare", exact: true }).click();
          await page.locator(".overlay svg").first().waitFor();
        }
        assert.deepEqual(await violations(page), [], name);
        assert.equal(await sideways(page), 0, `${name} needs no sideways scrolling`);
      }
      await context.close();
    });
  }
}
