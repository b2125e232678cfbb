// The page loads for a new visitor, from any folder of a host, without asking anyone else.

import assert from "node:assert/strict";
import { readFile } from "node:fs/promises";
import { createRequire } from "node:module";
import { after, before, test } from "node:test";
import { newVisitor, servePage, startBrowser } from "./harness.mjs";

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

test("the core starts and says its version", async () => {
  const { page, context, wrong } = await newVisitor(browser);
  await page.goto(host.url);
  const cargo = await readFile(new URL("../../Cargo.toml", import.meta.url), "utf8");
  const version = /^version = "(.*)"$/m.exec(cargo)?.[1];
  await page.getByText(`Version ${version}`).waitFor();
  assert.deepEqual(wrong, []);
  await context.close();
});

test("nothing on it stands in the way of a screen reader", async () => {
  const { page, context } = await newVisitor(browser);
  await page.goto(host.url);
  await page.getByText("Version").waitFor();
  await page.addScriptTag({ path: createRequire(import.meta.url).resolve("axe-core/axe.min.js") });
  const violations = await page.evaluate(async () => {
    // @ts-expect-error axe is what the script just brought
    const found = await axe.run();
    return found.violations.map((/** @type {any} */ one) => `${one.id}: ${one.nodes.map((/** @type {any} */ n) => n.html)}`);
  });
  assert.deepEqual(violations, []);
  await context.close();
});
