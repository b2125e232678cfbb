// A visitor changes things: numbers follow, wrong ones are refused in words, everything can be undone.

import assert from "node:assert/strict";
import { test } from "node:test";
import { drawn, field, figure, newVisitor, open, sentence } from "./harness.mjs";
import { browser, host } from "./stage.mjs";

/** @type {Awaited<ReturnType<typeof newVisitor>>} */
let visitor;
/** @type {import("playwright-core").Page} */
let page;

/** @param {(page: import("playwright-core").Page) => Promise<void>} act */
const asVisitor = (act) => async () => {
  visitor = await newVisitor(browser);
  page = visitor.page;
  await open(page, host.url);
  await act(page);
  assert.deepEqual(visitor.wrong, []);
  await visitor.context.close();
};

const outside = () => figure(page, "Outside, W × D × H").innerText();

test(
  "a taller cooler in the smallest case makes the case higher by as much, within two frames",
  asVisitor(async () => {
    await page.getByRole("combobox", { name: "The case is" }).selectOption("smallest");
    await page.getByLabel("Height of the cooler, mm").fill("170");
    await drawn(page);
    const [width, depth, height] = (await outside()).split(" × ").map(Number.parseFloat);
    const picture = await page.locator(".stage svg").getAttribute("viewBox");
    await page.getByLabel("Height of the cooler, mm").fill("185");
    await drawn(page);
    const after = (await outside()).split(" × ").map(Number.parseFloat);
    assert.deepEqual(after.slice(0, 2), [width, depth]);
    assert.ok(Math.abs((after[2] ?? 0) - (height ?? 0) - 15) < 0.051, `${height} became ${after[2]}`);
    assert.notEqual(await page.locator(".stage svg").getAttribute("viewBox"), picture, "the drawing follows");
  }),
);

test(
  "a part that is taken out of the sentence takes its words, its fields and its notes along",
  asVisitor(async () => {
    const card = await field(page, "Card", "Length of the card");
    assert.ok(await card.isVisible());
    await page.locator(".sentence").getByRole("combobox", { name: "Card" }).selectOption("none");
    await drawn(page);
    assert.match(await sentence(page), /, no card and a full-size supply/);
    assert.equal(await card.isVisible(), false);
    assert.equal(await page.locator('.stage [data-about="card"]').count(), 0);
  }),
);

test(
  "drives are counted in the sentence and placed in the list",
  asVisitor(async () => {
    await page.getByRole("combobox", { name: "How many 2.5 in drives" }).selectOption("2");
    await drawn(page);
    assert.equal(await page.locator('.stage [data-about="drive-2"]').count() > 0, true);
    const second = await field(page, "Drives", "Drive 2");
    assert.equal(await second.locator("select").inputValue(), "2.5");
    await page.getByRole("button", { name: "Undo", exact: true }).click();
    await drawn(page);
    assert.equal(await page.locator('.stage [data-about="drive-2"]').count(), 0, "one step brings both back");
  }),
);

test(
  "a number out of range is refused in words beside its field and nothing is lost",
  asVisitor(async () => {
    const before = await outside();
    const cooler = await field(page, "Cooler", "Height of the cooler");
    const box = cooler.getByRole("spinbutton");
    await box.fill("900");
    await box.press("Tab");
    const refused = cooler.locator(".refused");
    assert.equal(
      await refused.innerText(),
      "900 is not possible. Allowed: 20 to 200 mm. It is still 158 mm; nothing was lost.",
    );
    assert.equal(await box.getAttribute("aria-invalid"), "true");
    assert.equal(await outside(), before);
    await box.fill("twelve");
    await box.press("Tab");
    assert.match(await refused.innerText(), /“twelve” is not a number/);
    await box.fill("120,5");
    await box.press("Tab");
    assert.equal(await refused.isVisible(), false);
    assert.equal(await box.inputValue(), "120.5", "a comma counts as a point");
  }),
);

test(
  "undo and redo go back and forth by button and by keys, a typed number as one step",
  asVisitor(async () => {
    const box = page.getByLabel("Height of the cooler, mm");
    await box.click();
    await box.press("Control+a");
    await page.keyboard.type("121");
    await box.press("Tab");
    await page.locator(".sentence").getByRole("combobox", { name: "Board" }).selectOption("microatx");
    await drawn(page);
    const changed = await outside();
    await page.keyboard.press("Control+z");
    await drawn(page);
    assert.equal(await page.locator(".sentence").getByRole("combobox", { name: "Board" }).inputValue(), "mini-itx");
    await page.keyboard.press("Control+z");
    await drawn(page);
    assert.equal(await box.inputValue(), "158");
    assert.equal(await page.getByRole("button", { name: "Undo", exact: true }).getAttribute("aria-disabled"), "true");
    await page.getByRole("button", { name: /^Redo/ }).click();
    await page.keyboard.press("Control+Shift+Z");
    await drawn(page);
    assert.equal(await outside(), changed);
  }),
);

test(
  "a changed choice says so and goes back to what it was at first",
  asVisitor(async () => {
    const standoff = await field(page, "Board", "Standoff height");
    await standoff.getByRole("button", { name: "30 mm" }).click();
    await drawn(page);
    assert.equal(await standoff.getByRole("spinbutton").inputValue(), "30");
    await standoff.getByRole("button", { name: "Undo this, Standoff height: back to 25 mm" }).click();
    await drawn(page);
    assert.equal(await standoff.getByRole("spinbutton").inputValue(), "25");
    assert.equal(await standoff.locator(".reset").isVisible(), false);
  }),
);

test(
  "a number may be left open or be the maker's own measure",
  asVisitor(async () => {
    const depth = await field(page, "Supply", "Depth of the supply");
    await depth.getByRole("button", { name: /^Depth of the supply:.*Measure mine$/ }).click();
    const box = depth.getByRole("spinbutton");
    assert.ok(await box.evaluate((element) => element === document.activeElement), "the field has the keyboard");
    await box.fill("175");
    await box.press("Enter");
    await drawn(page);
    assert.match(await sentence(page), /supply 175 mm deep, with/);
    assert.equal(await page.getByLabel("Depth of the supply, mm").inputValue(), "175");
    await depth.getByRole("button", { name: "Depth of the supply: Leave open" }).click();
    await drawn(page);
    assert.ok(await depth.getByText("Left open").isVisible());
  }),
);

test(
  "what does not fit is noted, and a click on the note shows the place",
  asVisitor(async () => {
    await page.getByRole("combobox", { name: "The case is" }).selectOption("given");
    await page.getByLabel("Outside height, mm").fill("150");
    await page.getByLabel("Outside height, mm").press("Enter");
    await drawn(page);
    const blocks = page.locator("li.note.is-blocks", { hasText: /cooler/i }).first();
    await blocks.waitFor();
    assert.match(await page.locator(".verdict").innerText(), /in the way/);
    await blocks.locator(".note-button").click();
    await drawn(page);
    assert.ok((await page.locator(".leader.selected circle").count()) === 1, "a leader line ends in the drawing");
    assert.ok((await page.locator('.stage [data-about="cooler"].marked').count()) > 0, "the cooler is marked");
    await page.keyboard.press("Escape");
    await drawn(page);
    assert.equal(await page.locator(".stage .marked").count(), 0);
    await page.getByRole("button", { name: /note/ }).last().click();
    assert.equal(await page.locator("li.note.is-blocks:visible").count(), 0, "the filter hides the others");
  }),
);
