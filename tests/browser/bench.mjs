// Times the core in the browser over seeded random changes: a change and everything the page is told of it, and a
// pack of templates; and the page itself: a change with all that it draws anew, laid out. Prints one JSON object a line,
// as `cargo xtask bench` reads them.

import { DESK, open, servePage, startBrowser } from "./harness.mjs";

const CHANGES = 1000;
const PACKS = 30;
/** Changes drawn on the page, half of them with the case on show and half with the panels. */
const DRAWN = 120;
/** A frame of a screen that shows sixty a second. */
const FRAME_MS = 1000 / 60;

const page = await servePage();
const browser = await startBrowser();
try {
  const tab = await (await browser.newContext()).newPage();
  await tab.goto(page.url);
  const lines = await tab.evaluate(
    async ({ changes, packs, base }) => {
      const core = await import(`${base}wasm/panelwright.js`);
      await core.default();
      const workshop = await import(`${base}wasm/workshop.js`);
      await workshop.default();
      let state = 1;
      // mulberry32: a small generator, the same numbers everywhere.
      const random = () => {
        state = (state + 0x6d2b79f5) | 0;
        let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
        mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
        return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
      };
      const any = (list) => list[Math.floor(random() * list.length)];
      const bench = new core.Workbench();
      const choices = bench.choices().filter((choice) => ["pick", "number"].includes(choice.kind.type));
      const value = ({ kind, default: usual }) => {
        if (kind.type === "pick") return any(kind.options).name;
        if (kind.presets.length > 0) return any(kind.presets).value;
        if (typeof usual !== "number") return null;
        return Math.min(kind.max, Math.max(kind.min, usual + kind.step * Math.floor(random() * 9 - 4)));
      };
      const times = { change: [], pack: [] };
      for (let index = 0; index < changes; index += 1) {
        if (index % 20 === 0) bench.clear();
        const choice = any(choices);
        const next = value(choice);
        const start = performance.now();
        try {
          bench.set(choice.key, next);
        } catch {
          continue;
        }
        bench.view();
        times.change.push(performance.now() - start);
      }
      bench.clear();
      const shop = new workshop.Workshop(bench.link());
      for (let index = 0; index < packs; index += 1) {
        const start = performance.now();
        shop.templates_pdf();
        times.pack.push(performance.now() - start);
      }
      const line = (name, list, budget) => {
        list.sort((a, b) => a - b);
        const at = (share) => list[Math.floor((list.length - 1) * share)];
        return { bench: name, p50_ms: at(0.5), p95_ms: at(0.95), budget_ms: budget };
      };
      return [
        line("full recompute and view after a change", times.change, 4),
        line("all templates as a PDF", times.pack, 50),
      ];
    },
    { changes: CHANGES, packs: PACKS, base: page.url },
  );
  for (const line of lines) console.log(JSON.stringify(line));
  for (const shown of ["Case", "Panels"]) {
    const visitor = await (await browser.newContext(DESK)).newPage();
    await open(visitor, page.url);
    await visitor.getByRole("tab", { name: shown }).click();
    await visitor.waitForTimeout(1000);
    const times = await visitor.evaluate(redraws, DRAWN / 2);
    const at = (/** @type {number} */ share) => times[Math.floor((times.length - 1) * share)];
    console.log(JSON.stringify({ bench: `a change drawn on the page, ${shown.toLowerCase()} on show`, p50_ms: at(0.5), p95_ms: at(0.95), budget_ms: FRAME_MS }));
  }
} finally {
  await browser.close();
  await page.close();
}

/**
 * Milliseconds that changes take, sorted: taking the value, the work of the frame that follows, and laying it out.
 * @param {number} count
 */
async function redraws(count) {
  const box = /** @type {HTMLInputElement} */ (document.querySelector('[aria-label="Height of the cooler, mm"]'));
  const tallest = Number(box.value);
  const frame = window.requestAnimationFrame.bind(window);
  let worked = 0;
  window.requestAnimationFrame = (act) =>
    frame((now) => {
      const start = performance.now();
      act(now);
      worked += performance.now() - start;
    });
  /** @type {number[]} */
  const times = [];
  for (let index = 0; index < count; index += 1) {
    await new Promise((resolve) => setTimeout(resolve, 20));
    worked = 0;
    box.value = String(tallest - 1 - (index % 7));
    const start = performance.now();
    box.dispatchEvent(new Event("input", { bubbles: true }));
    const taken = performance.now() - start;
    await new Promise((resolve) => frame(() => resolve(undefined)));
    const layout = performance.now();
    document.body.getBoundingClientRect();
    times.push(taken + worked + performance.now() - layout);
    await new Promise((resolve) => frame(() => resolve(undefined)));
  }
  return times.sort((a, b) => a - b);
}
