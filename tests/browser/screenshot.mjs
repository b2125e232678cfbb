// Takes the README's picture of the page. Started by `cargo xtask screenshot`.

import { argv } from "node:process";
import { newVisitor, servePage, startBrowser } from "./harness.mjs";

const host = await servePage();
const browser = await startBrowser();
const { page, wrong } = await newVisitor(browser, {
  viewport: { width: 1280, height: 900 },
  colorScheme: "light",
  reducedMotion: "reduce",
});
await page.goto(host.url, { waitUntil: "networkidle" });
await page.evaluate(() => document.fonts.ready);
// Pages are counted when the page is idle.
await page.locator('.contains[aria-busy="false"]').waitFor();
await page.screenshot({ path: argv[2] });
await browser.close();
await host.close();
if (wrong.length > 0) {
  console.error(wrong.join("\n"));
  process.exitCode = 1;
}
