// What the tests of a file work with: the page on a host of its own, a browser, and a folder for what a visitor takes
// away. They are there before the first test and gone after the last.

import { mkdtemp, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { after, before } from "node:test";
import { servePage, startBrowser } from "./harness.mjs";

/** @type {Awaited<ReturnType<typeof servePage>>} */
export let host;
/** @type {import("playwright-core").Browser} */
export let browser;
/** @type {string} */
export let folder;

before(async () => {
  host = await servePage();
  browser = await startBrowser();
  folder = await mkdtemp(join(tmpdir(), "panelwright-"));
});

after(async () => {
  await browser?.close();
  await host?.close();
  if (folder) await rm(folder, { recursive: true });
});
