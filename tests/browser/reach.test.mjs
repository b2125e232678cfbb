// The page is within reach: of a phone, of the keyboard, of a screen reader, by day and by night.

import assert from "node:assert/strict";
import { test } from "node:test";
import { PHONE, drawn, newVisitor, open, sideways, startBrowser, violations } from "./harness.mjs";
import { browser, host } from "./stage.mjs";

for (const colorScheme of /** @type {const} */ (["light", "dark"])) {
  for (const [where, options] of Object.entries({ "a desk": { viewport: { width: 1440, height: 900 } }, "a phone": PHONE })) {
    test(`nothing stands in the way of a screen reader on ${where}, ${colorScheme}`, async () => {
      const { page, context } = await newVisitor(browser, { ...options, colorScheme, reducedMotion: "reduce" });
      await open(page, host.url);
      assert.deepEqual(await violations(page), []);
      if (where === "a phone") await page.getByRole("button", { name: "Everything else you can choose" }).click();
      for (const group of await page.locator("details.group > summary").all()) await group.click();
      await page.getByRole("tab", { name: "Panels" }).click();
      assert.deepEqual(await violations(page), [], "with everything open");
      await page.getByRole("button", { name: "Back", exact: true }).click();
      assert.deepEqual(await violations(page), [], "with one panel");
      await context.close();
    });
  }
}

for (const [width, height] of [[360, 780], [1280, 900]]) {
  test(`letters twice as large need no sideways scrolling, ${width} wide`, async () => {
    const large = await startBrowser(["--blink-settings=defaultFontSize=32"]);
    const { page, wrong } = await newVisitor(large, { viewport: { width, height } });
    await open(page, host.url);
    assert.equal(await page.evaluate(() => getComputedStyle(document.documentElement).fontSize), "32px");
    assert.equal(await sideways(page), 0);
    const picture = await page.locator(".stage > svg").boundingBox();
    assert.ok(picture && picture.width > 150 && picture.height > 150, `the case is drawn: ${JSON.stringify(picture)}`);
    assert.deepEqual(wrong, []);
    await large.close();
  });
}

test("a phone 360 wide needs no sideways scrolling, whatever is open", async () => {
  const { page, context } = await newVisitor(browser, PHONE);
  await open(page, host.url);
  assert.equal(await sideways(page), 0);
  await page.getByRole("button", { name: "Everything else you can choose" }).click();
  for (const group of await page.locator("details.group > summary").all()) await group.click();
  assert.equal(await sideways(page), 0, "with every group open");
  await page.getByRole("tab", { name: "Panels" }).click();
  assert.equal(await sideways(page), 0, "with the panels");
  await page.getByRole("button", { name: "Floor", exact: true }).click();
  assert.equal(await sideways(page), 0, "with one panel");
  const order = await page.evaluate(() =>
    ["brief", "drawing", "margin", "handover"].map((id) => document.getElementById(id)?.getBoundingClientRect().top ?? 0),
  );
  assert.deepEqual(order, [...order].sort((a, b) => a - b), "brief, drawing, notes, handover stand below each other");
  await context.close();
});

for (const [width, height] of [[360, 780], [1152, 800], [1280, 900]]) {
  test(`every option fits into its list, ${width} wide`, async () => {
    const { page, context, wrong } = await newVisitor(browser, { viewport: { width, height } });
    await open(page, host.url);
    const more = page.getByRole("button", { name: "Everything else you can choose" });
    if (await more.isVisible()) await more.click();
    await page.locator("details.group").evaluateAll((all) => all.forEach((group) => /** @type {HTMLDetailsElement} */ (group).setAttribute("open", "")));
    await page.locator(".field select").nth(20).waitFor({ state: "attached" });
    const { lists, cut } = await page.evaluate(() => {
      // What only some designs ask for counts as well.
      for (const hidden of document.querySelectorAll("[hidden]")) if (hidden.querySelector("select")) hidden.removeAttribute("hidden");
      const pen = document.createElement("canvas").getContext("2d");
      const lists = [...document.querySelectorAll("select")].filter((list) => list.checkVisibility());
      const cut = lists.flatMap((list) =>
        [...list.options].flatMap((option, index) => {
          list.selectedIndex = index;
          const style = getComputedStyle(list);
          if (pen) pen.font = style.font;
          const room = list.clientWidth - parseFloat(style.paddingLeft) - parseFloat(style.paddingRight);
          const over = (pen?.measureText(option.text).width ?? 0) - room;
          return over > 0.5 ? [`${option.text}: ${over.toFixed(1)} of ${room} pixels too long`] : [];
        }),
      );
      return { lists: lists.length, cut };
    });
    assert.ok(lists > 90, `${lists} lists are open`);
    assert.deepEqual(cut, []);
    assert.deepEqual(wrong, []);
    await context.close();
  });
}

test("on a phone the bar leads everywhere, and a note to its place and back, without touching the design", async () => {
  const { page, context, wrong } = await newVisitor(browser, { ...PHONE, reducedMotion: "reduce" });
  await open(page, host.url);
  await page.waitForFunction(() => location.hash.length > 1);
  const design = page.url();
  const bar = (/** @type {string} */ name) => page.getByRole("navigation", { name: "On this page" }).getByRole("link", { name });
  const top = (/** @type {string} */ id) => page.locator(`#${id}`).evaluate((element) => element.getBoundingClientRect().top);
  for (const [name, id] of [["Take away", "handover"], ["Drawing", "drawing"], ["Notes", "margin"]]) {
    await bar(name).tap();
    assert.ok(Math.abs(await top(id)) < 40, `${name}: ${await top(id)}`);
  }
  const note = page.locator(".note").nth(3);
  await note.locator(".note-button").tap();
  await drawn(page);
  const stage = await page.locator(".stage").boundingBox();
  assert.ok(stage && stage.y > -60 && stage.y + stage.height < 780, "the drawing is in the window");
  assert.ok(await page.locator(".leader.selected").isVisible(), "and the place is marked");
  await bar("Notes").tap();
  const box = await note.boundingBox();
  assert.ok(box && box.y > 0 && box.y + box.height < 732, "the bar leads back to the note");
  assert.equal(await page.locator("#messages").innerText(), "");
  await page.waitForTimeout(400);
  assert.equal(page.url(), design);
  assert.deepEqual(wrong, []);
  await context.close();
});

test("the link to skip to the drawing takes the keyboard there, and a message goes by Escape", async () => {
  const { page, context, wrong } = await newVisitor(browser, { viewport: { width: 1280, height: 800 } });
  await open(page, host.url);
  await page.keyboard.press("Tab");
  await page.keyboard.press("Enter");
  assert.equal(await page.evaluate(() => document.activeElement?.id), "drawing");
  assert.equal(await page.locator("#messages").innerText(), "");
  await page.keyboard.press("Tab");
  assert.equal(await page.evaluate(() => document.activeElement?.id), "tab-case");
  await page.evaluate(() => {
    location.hash = "#1nonsense";
  });
  await page.locator(".message.wrong").waitFor();
  await page.getByRole("button", { name: "Close", exact: true }).focus();
  await page.keyboard.press("Escape");
  assert.equal(await page.locator(".message").count(), 0);
  assert.equal(await page.evaluate(() => document.activeElement?.id), "tab-case", "the keyboard is where it was");
  assert.deepEqual(wrong, []);
  await context.close();
});

test("targets take a whole fingertip", async () => {
  const { page, context } = await newVisitor(browser, PHONE);
  await open(page, host.url);
  await page.getByRole("button", { name: "Everything else you can choose" }).click();
  await page.locator("details.group > summary").nth(2).click();
  const small = await page.evaluate(() =>
    [...document.querySelectorAll("button, select, input, summary, .jump a")]
      .filter((element) => element.checkVisibility() && !element.closest(".said, .points") && element.tabIndex >= 0)
      .map((element) => {
        const box = element.getBoundingClientRect();
        const more = Number.parseFloat(getComputedStyle(element, "::after").height) || 0;
        return { height: Math.max(box.height, more), name: element.outerHTML.slice(0, 90) };
      })
      .filter(({ height }) => height > 0 && height < 43.9),
  );
  assert.deepEqual(small, []);
  await context.close();
});

test("the whole job can be done by keyboard", async () => {
  const { page, context, wrong } = await newVisitor(browser, { viewport: { width: 1440, height: 900 } });
  await open(page, host.url);
  const focused = () => page.evaluate(() => document.activeElement?.getAttribute("aria-label") ?? document.activeElement?.textContent ?? "");
  /** @param {(name: string) => boolean} wanted */
  const tabTo = async (wanted) => {
    for (let step = 0; step < 120; step += 1) {
      await page.keyboard.press("Tab");
      if (wanted(await focused())) return;
    }
    assert.fail(`not reached by Tab; last: ${await focused()}`);
  };
  await page.keyboard.press("Tab");
  assert.equal(await focused(), "Skip to the drawing");
  await tabTo((name) => name === "Height of the cooler, mm");
  await page.keyboard.press("ArrowUp");
  assert.equal(await page.getByLabel("Height of the cooler, mm").inputValue(), "159");
  await tabTo((name) => name === "The case is");
  await page.keyboard.press("ArrowDown");
  await tabTo((name) => name === "Case");
  await page.keyboard.press("Tab");
  await tabTo((name) => name.startsWith("The case, seen from"));
  const from = await focused();
  for (let turns = 0; turns < 3; turns += 1) await page.keyboard.press("ArrowRight");
  assert.notEqual(await focused(), from, "the arrows turn the case");
  await tabTo((name) => name === "Save PDF of the templates");
  const [download] = await Promise.all([page.waitForEvent("download"), page.keyboard.press("Enter")]);
  assert.match(download.suggestedFilename(), /templates-a4\.pdf$/);
  assert.deepEqual(wrong, []);
  await context.close();
});

test("the whole job can be done by touch on a phone, and its link opens on another", async () => {
  const { page, context, wrong } = await newVisitor(browser, PHONE);
  await context.grantPermissions(["clipboard-read", "clipboard-write"]);
  await open(page, host.url);
  await page.locator(".sentence").getByRole("combobox", { name: "Board" }).selectOption("microatx");
  await page.getByRole("button", { name: "Everything else you can choose" }).tap();
  await page.getByRole("heading", { name: "Feet", exact: true }).tap();
  await page.locator('.field[data-key="feet.height"]').getByRole("spinbutton").fill("45");
  const size = page.getByRole("combobox", { name: "The case is" });
  await size.selectOption("given");
  await page.getByLabel("Outside height, mm").fill("150");
  const blocks = page.locator("li.note.is-blocks .note-button").first();
  await blocks.waitFor();
  await page.getByRole("link", { name: "Notes" }).tap();
  await blocks.tap();
  await page.locator(".leader.selected").waitFor();
  await page.getByRole("link", { name: "Brief" }).tap();
  await size.selectOption("smallest");
  await page.locator(".verdict.clear").waitFor();
  await page.getByRole("link", { name: "Take away" }).tap();
  const [download] = await Promise.all([page.waitForEvent("download"), page.getByRole("button", { name: "Save PDF of the templates" }).tap()]);
  assert.match(download.suggestedFilename(), /templates-a4\.pdf$/);
  await page.getByRole("button", { name: "Copy link" }).tap();
  await page.getByText("Copied.").waitFor();
  const link = await page.evaluate(() => navigator.clipboard.readText());
  const other = await newVisitor(browser, PHONE);
  await open(other.page, link);
  for (const each of [page, other.page]) await each.locator("#title-block .outside dd").waitFor();
  assert.equal(await other.page.locator("#title-block .outside dd").innerText(), await page.locator("#title-block .outside dd").innerText());
  assert.deepEqual([...wrong, ...other.wrong], []);
  await other.context.close();
  await context.close();
});

test("every hole says why it is there, to the keyboard too", async () => {
  const { page, context } = await newVisitor(browser, { viewport: { width: 1440, height: 900 } });
  await open(page, host.url);
  await page.getByRole("tab", { name: "Case" }).focus();
  await page.keyboard.press("ArrowRight");
  await page.getByRole("button", { name: "Floor", exact: true }).press("Enter");
  const stage = page.getByRole("group", { name: /^Floor/ });
  await stage.focus();
  /** @type {Set<string>} */
  const told = new Set();
  const note = page.locator(".hole-note");
  const count = await page.locator(".hole-key li").count();
  assert.ok(count > 3, "the floor has a hole key");
  for (let step = 0; step < 30; step += 1) {
    await page.keyboard.press("ArrowRight");
    told.add(await note.innerText());
  }
  assert.ok([...told].some((text) => /standoff/i.test(text) && /ATX|ITX/i.test(text)), [...told].join("\n"));
  await context.close();
});

test("what a change did is told to those who do not see it", async () => {
  const { page, context } = await newVisitor(browser);
  await open(page, host.url);
  await page.getByRole("combobox", { name: "The case is" }).selectOption("smallest");
  await page.waitForFunction(() => /^Outside [\d.]+ wide/.test(document.getElementById("live")?.textContent ?? ""));
  await context.close();
});
