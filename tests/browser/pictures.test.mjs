// Pictures follow a change by moving lines: they must be, line by line, what a new page draws of the same design.

import assert from "node:assert/strict";
import { test } from "node:test";
import { drawn, newVisitor, open } from "./harness.mjs";
import { browser, host } from "./stage.mjs";

/**
 * The pictures on show, without their size on the screen.
 * @param {import("playwright-core").Page} page
 */
const pictures = (page) =>
  page.locator(".pane:not([hidden]) svg.picture").evaluateAll((all) =>
    all.map((picture) => {
      const copy = /** @type {Element} */ (picture.cloneNode(true));
      for (const name of ["width", "height", "style"]) copy.removeAttribute(name);
      for (const one of copy.querySelectorAll(".marked, .hovered")) one.classList.remove("marked", "hovered");
      return copy.outerHTML.replaceAll(' class=""', "");
    }),
  );

/**
 * The first line that differs: whole pictures would fill the report.
 * @param {string[]} all
 * @param {string[]} others
 */
const differing = (all, others) => {
  const [lines, wanted] = [all, others].map((pictures) => pictures.join("\n").split("\n"));
  const place = lines?.findIndex((line, index) => line !== wanted?.[index]) ?? -1;
  return place < 0 && lines?.length === wanted?.length ? "" : `line ${place}: ${lines?.[place]?.slice(0, 200)} and ${wanted?.[place]?.slice(0, 200)}`;
};

/** @param {import("playwright-core").Page} page @param {string} name */
const tab = async (page, name) => {
  await page.getByRole("tab", { name }).click();
  await page.locator(".pane:not([hidden]) svg.picture").first().waitFor();
};

for (const shown of ["Case", "Panels"]) {
  test(`${shown.toLowerCase()}: lines that were moved are those that a new page draws`, async () => {
    const { page, wrong, context } = await newVisitor(browser);
    await open(page, host.url);
    await tab(page, shown);
    const first = await page.locator(".pane:not([hidden]) svg.picture").first().elementHandle();
    let before = await pictures(page);
    const box = (/** @type {string} */ label) => page.locator(".brief").getByLabel(label, { exact: true });
    const steps = [
      async () => box("Height of the cooler, mm").fill("151.5"),
      async () => box("Length of the card, mm").fill("251"),
      async () => page.getByRole("combobox", { name: "The case is" }).selectOption("smallest"),
      async () => box("Height of the cooler, mm").fill("163"),
      async () => page.getByRole("combobox", { name: "How many 2.5 in drives" }).selectOption("2"),
      async () => box("Height of the cooler, mm").fill("120"),
    ];
    for (const [index, step] of steps.entries()) {
      const address = page.url();
      await step();
      await page.waitForURL((url) => url.href !== address);
      await drawn(page);
      const other = await newVisitor(browser);
      await open(other.page, page.url());
      await tab(other.page, shown);
      const now = await pictures(page);
      assert.equal(differing(now, await pictures(other.page)), "", `after step ${index + 1}`);
      assert.notEqual(differing(now, before), "", `step ${index + 1} changed what is shown`);
      before = now;
      assert.deepEqual(other.wrong, []);
      await other.context.close();
      if (index === 0) assert.ok(await first?.evaluate((picture) => picture.isConnected), "the elements stay, their lines move");
    }
    assert.deepEqual(wrong, []);
    await context.close();
  });
}

test("everything that a picture names is drawn by a rule of the style sheets", async () => {
  const { page, wrong, context } = await newVisitor(browser);
  await open(page, host.url);
  for (const name of ["Case", "Panels", "Sheets"]) {
    await tab(page, name);
    const unknown = await page.evaluate(() => {
      // A page that nothing made smaller brings its styles by imports.
      /** @type {(sheet: CSSStyleSheet) => CSSRule[]} */
      const within = (sheet) =>
        [...sheet.cssRules].flatMap((rule) => (rule instanceof CSSImportRule && rule.styleSheet ? within(rule.styleSheet) : [rule]));
      const rules = [...document.styleSheets].flatMap(within).map((rule) => rule.cssText.split("{")[0] ?? "");
      const names = new Set([...document.querySelectorAll(".pane:not([hidden]) svg.picture [class]")].flatMap((one) => [...one.classList]));
      const drawn = [...names].filter((one) => /^(fill|line)-|^(thick|bare|lit|dim|dark)$/.test(one));
      if (drawn.length < 3) return ["hardly any class at all"];
      return drawn.filter((one) => !rules.some((rule) => new RegExp(`\\.${one}(?![\\w-])`).test(rule)));
    });
    assert.deepEqual(unknown, [], name);
    // What has a surface shows it, and each of its lights is another colour.
    const fills = await page
      .locator('.pane:not([hidden]) svg.picture [class*="fill-sheet"]')
      .evaluateAll((all) => [...new Set(all.map((one) => getComputedStyle(one).fill))]);
    assert.ok(fills.length > 0 && !fills.includes("none") && !fills.includes("rgb(0, 0, 0)"), fills.join());
  }
  assert.deepEqual(wrong, []);
  await context.close();
});
