// What the tests of a file work with: the page on a host of its own, a browser, and a folder for what a visitor takes
// away. They are there before the first test and gone after the last.

import { mkdtemp, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { after } from "node:test";
import { servePage, startBrowser } from "./harness.mjs";

// Awaited here, not in a hook: a file's own first steps may need them.
export const host = await servePage();
export const browser = await startBrowser();
export const folder = await mkdtemp(join(tmpdir(), "panelwright-"));

after(async () => {
  await browser.close();
  await host.close();
  await rm(folder, { recursive: true });
});
