// What is brought back to the bench: a pack gives its design back, files and prints say whose they are.

import assert from "node:assert/strict";
import { readFile, writeFile } from "node:fs/promises";
import { join } from "node:path";
import { before, test } from "node:test";
import { DESK, PHONE, figure, newVisitor, open, sideways, taken, violations } from "./harness.mjs";
import { browser, folder, host } from "./stage.mjs";

/** A pack, and other files of its design and of another one. */
const made = { pack: "", outside: "", pdf: "", strange: "", build: "" };

before(async () => {
  const { page, context } = await newVisitor(browser);
  await open(page, host.url);
  made.strange = await taken(page, join(folder, "strange"), "Save PDF of the templates");
  await page.getByLabel("Design", { exact: true }).fill("Quay");
  await page.locator(".sentence").getByRole("combobox", { name: "Board" }).selectOption("microatx");
  await page.waitForTimeout(100);
  made.outside = await figure(page, "Outside, W × D × H").innerText();
  made.pack = await taken(page, folder, "Save zip of the whole pack");
  made.pdf = await taken(page, folder, "Save PDF of the templates");
  await context.close();
});

const chooser = ".entry input[type=file]";
/** @param {import("playwright-core").Page} page */
const dialog = (page) => page.getByRole("dialog", { name: "Prints and files" });

test("a pack gives its design back and says that its files belong together", async () => {
  const { page, context, wrong } = await newVisitor(browser);
  await open(page, host.url);
  const before = await figure(page, "Outside, W × D × H").innerText();
  await page.locator(chooser).setInputFiles(made.pack);
  await dialog(page).getByText(/quay-pack\.zip is on the bench.*All \d+ files belong to design [2-9A-Z]{8}/).waitFor();
  const [, count] = /All (\d+) files/.exec(await dialog(page).innerText()) ?? [];
  assert.ok(Number(count) > 20, count);
  assert.equal(await figure(page, "Outside, W × D × H").innerText(), made.outside);
  await dialog(page).getByText("Belongs").click();
  await dialog(page).getByText("cut/left.dxf", { exact: true }).waitFor();
  await page.keyboard.press("Escape");
  assert.equal(await dialog(page).count(), 0);
  await page.getByRole("button", { name: "Undo" }).click();
  await page.waitForFunction((text) => document.getElementById("title-block")?.innerText.includes(text), before);
  assert.deepEqual(wrong, []);
  await context.close();
});

test("files let in together are held against the design among them", async () => {
  const { page, context, wrong } = await newVisitor(browser);
  await open(page, host.url);
  const note = join(folder, "notes.txt");
  await writeFile(note, "bought on Friday");
  await page.locator(chooser).setInputFiles([made.strange, made.pack, made.pdf, note]);
  const list = dialog(page);
  await list.getByText(/to another: do not mix them/).waitFor();
  assert.match(await list.locator(".is-other").innerText(), /Another design\s+1 file\s+case-templates-a4\.pdf\s+design [2-9A-Z]{8}/);
  assert.match(await list.locator(".is-unread").innerText(), /notes\.txt.*no file of Panelwright/is);
  await list.locator("details.is-belongs summary").click();
  await list.getByText("quay-templates-a4.pdf", { exact: true }).waitFor();
  assert.deepEqual(await violations(page), []);
  assert.deepEqual(wrong, []);
  await context.close();
});

test("a file that bears a fingerprint says whether it belongs to the bench, and leaves it as it is", async () => {
  const { page, context, wrong } = await newVisitor(browser);
  await open(page, host.url);
  const before = await figure(page, "Outside, W × D × H").innerText();
  await page.locator(chooser).setInputFiles(made.strange);
  await dialog(page).getByText("It belongs to the design on the bench.").waitFor();
  await dialog(page).locator("input[type=file]").setInputFiles(made.pdf);
  await dialog(page).getByText("It does not belong to the design on the bench: do not mix them.").waitFor();
  assert.equal(await figure(page, "Outside, W × D × H").innerText(), before);
  assert.deepEqual(wrong, []);
  await context.close();
});

test("what cannot be opened is said in words, and nothing is lost", async () => {
  const { page, context } = await newVisitor(browser);
  await open(page, host.url);
  const before = await figure(page, "Outside, W × D × H").innerText();
  const whole = await readFile(made.pack);
  const cut = join(folder, "cut.zip");
  await writeFile(cut, whole.subarray(0, whole.length / 2));
  const picture = join(folder, "picture.png");
  await writeFile(picture, Buffer.from([0x89, 0x50, 0x4e, 0x47, 1, 2, 3]));
  for (const [file, why] of /** @type {[string, RegExp][]} */ ([[cut, /cut\.zip: .*stays as it was/s], [picture, /picture\.png: .*no file of Panelwright.*stays as it was/s]])) {
    await page.locator(chooser).setInputFiles(file);
    await page.getByRole("alert").getByText(why).waitFor();
    assert.equal(await figure(page, "Outside, W × D × H").innerText(), before);
  }
  await context.close();
});

for (const [where, options] of /** @type {const} */ ([["a desk", DESK], ["a phone", PHONE]])) {
  test(`what is wrong with a file is in sight where it was chosen, on ${where}`, async () => {
    const { page, context, wrong } = await newVisitor(browser, options);
    await open(page, host.url);
    await page.locator("#handover").scrollIntoViewIfNeeded();
    await page.locator(chooser).setInputFiles({ name: "holiday.png", mimeType: "image/png", buffer: Buffer.from("sand") });
    const message = page.locator(".message.wrong");
    await message.waitFor();
    assert.match(await message.innerText(), /^holiday\.png: This is no design file.*\.\nThe design on screen stays as it was\./);
    // The frame in which the sheet makes room for it.
    await page.waitForTimeout(200);
    const height = page.viewportSize()?.height ?? 0;
    const [said, away] = await Promise.all([message.boundingBox(), page.locator("#handover").boundingBox()]);
    assert.ok(said && said.y >= 0 && said.y + said.height < height, `the message is in the window: ${JSON.stringify(said)}`);
    if (options === DESK) assert.ok(away && away.y + away.height <= height, `and what can be taken away still is: ${JSON.stringify(away)}`);
    assert.deepEqual(wrong, []);
    await context.close();
  });
}

test("a name with accents gives its files a name that can be read", async () => {
  const { page, context } = await newVisitor(browser);
  await open(page, host.url);
  await page.getByLabel("Design", { exact: true }).fill("Étude à l'Été");
  assert.match(await taken(page, folder, "Save the design file"), /etude-a-l-ete\.json$/);
  await context.close();
});

test("a fingerprint read from paper is judged, by keyboard alone", async () => {
  const { page, context, wrong } = await newVisitor(browser);
  await open(page, host.url);
  await page.getByRole("button", { name: "Check a print" }).focus();
  await page.keyboard.press("Enter");
  const field = dialog(page).getByLabel("Fingerprint on a print");
  await field.waitFor();
  assert.ok(await field.evaluate((input) => input === document.activeElement), "one can type at once");
  const mark = /design ([2-9A-Z]{8})/.exec(await dialog(page).innerText())?.[1] ?? "";
  // The same eight characters stand on the print itself.
  assert.ok((await readFile(made.strange, "latin1")).includes(mark), mark);
  const said = dialog(page).locator(".print-said");
  const close = `${mark.startsWith("A") ? "B" : "A"}${mark.slice(1)}`;
  const other = [...mark].map((letter) => (letter === "7" ? "8" : "7")).join("");
  for (const [text, answer] of /** @type {[string, RegExp][]} */ ([
    [`${mark.slice(0, 4).toLowerCase()} ${mark.slice(4)}`, /^This print belongs to the design on the bench\.$/],
    [close, new RegExp(`^Nearly.*${mark}`)],
    [other, /another design/],
    ["7K3", /8/],
    ["7K3MWQ2O", /No fingerprint holds "O"/],
  ])) {
    await field.fill(text);
    await page.keyboard.press("Enter");
    await page.waitForFunction((source) => new RegExp(source).test(document.querySelector(".print-said")?.textContent ?? ""), answer.source);
    assert.match(await said.innerText(), answer);
  }
  await page.keyboard.press("Escape");
  assert.ok(await page.getByRole("button", { name: "Check a print" }).evaluate((button) => button === document.activeElement), "the focus comes back");
  assert.deepEqual(wrong, []);
  await context.close();
});

for (const [where, options] of Object.entries({ "a desk": DESK, "a phone": PHONE })) {
  for (const colorScheme of /** @type {const} */ (["light", "dark"])) {
    test(`prints and files are within reach on ${where}, ${colorScheme}`, async () => {
      const { page, context } = await newVisitor(browser, { ...options, colorScheme, reducedMotion: "reduce" });
      await open(page, host.url);
      await page.locator(chooser).setInputFiles([made.pack, made.strange]);
      await dialog(page).locator(".is-other").waitFor();
      await dialog(page).locator("details.is-belongs summary").click();
      assert.deepEqual(await violations(page), []);
      assert.equal(await sideways(page), 0);
      await context.close();
    });
  }
}
