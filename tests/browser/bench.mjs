// Times the core in the browser over seeded random changes: a change and everything the page is told of it, and a
// pack of templates; and the page itself: a change with all that it draws anew, laid out: of one number that a maker
// turns up and down, and of anything there is to choose. Prints one JSON object a line, as `cargo xtask bench` reads them.

import { DESK, open, servePage, startBrowser } from "./harness.mjs";

const CHANGES = 1000;
const PACKS = 30;
/** Changes drawn on the page, of each kind, with the case on show and again with the panels. */
const DRAWN = 200;
/** A frame of a screen that shows sixty a second. */
const FRAME_MS = 1000 / 60;

const page = await servePage();
const browser = await startBrowser();
try {
  const tab = await (await browser.newContext()).newPage();
  await tab.addInitScript(seeded);
  await tab.goto(page.url);
  const lines = await tab.evaluate(
    async ({ changes, packs, base }) => {
      const core = await import(`${base}wasm/panelwright.js`);
      await core.default();
      const workshop = await import(`${base}wasm/workshop.js`);
      await workshop.default();
      const random = /** @type {any} */ (window).seeded();
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
    await visitor.addInitScript(seeded);
    await open(visitor, page.url);
    await visitor.getByRole("tab", { name: shown }).click();
    await visitor.waitForTimeout(1000);
    for (const [what, act] of /** @type {const} */ ([["the cooler's height", heights], ["any choice", anything]])) {
      await visitor.evaluate(measure);
      const times = await visitor.evaluate(act, DRAWN);
      const at = (/** @type {number} */ share) => times[Math.floor((times.length - 1) * share)];
      console.log(JSON.stringify({ bench: `a change of ${what} drawn, ${shown.toLowerCase()} on show`, p50_ms: at(0.5), p95_ms: at(0.95), budget_ms: FRAME_MS }));
    }
  }
} finally {
  await browser.close();
  await page.close();
}

/** Gives the page random numbers, the same everywhere: mulberry32, a small generator. */
function seeded() {
  /** @type {any} */ (window).seeded = () => {
    let state = 1;
    return () => {
      state = (state + 0x6d2b79f5) | 0;
      let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
      mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
      return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
    };
  };
}

/** Gives the page a way to time a change: taking the value, the work of the frame that follows, and laying it out. */
function measure() {
  const page = /** @type {any} */ (window);
  page.frame ??= window.requestAnimationFrame.bind(window);
  let worked = 0;
  window.requestAnimationFrame = (act) =>
    page.frame((/** @type {number} */ now) => {
      const start = performance.now();
      act(now);
      worked += performance.now() - start;
    });
  page.timed = async (/** @type {HTMLInputElement | HTMLSelectElement} */ box, /** @type {string} */ value) => {
    await new Promise((resolve) => setTimeout(resolve, 20));
    worked = 0;
    box.value = value;
    const start = performance.now();
    box.dispatchEvent(new Event(box.matches("select") ? "change" : "input", { bubbles: true }));
    const taken = performance.now() - start;
    await new Promise((resolve) => page.frame(resolve));
    const layout = performance.now();
    document.body.getBoundingClientRect();
    const whole = taken + worked + performance.now() - layout;
    await new Promise((resolve) => page.frame(resolve));
    return whole;
  };
}

/**
 * Milliseconds that changes of one number take, sorted.
 * @param {number} count
 */
async function heights(count) {
  const box = /** @type {HTMLInputElement} */ (document.querySelector('[aria-label="Height of the cooler, mm"]'));
  const tallest = Number(box.value);
  /** @type {number[]} */
  const times = [];
  for (let index = 0; index < count; index += 1) {
    times.push(await /** @type {any} */ (window).timed(box, String(tallest - 1 - (index % 7))));
  }
  return times.sort((a, b) => a - b);
}

/**
 * The same of any control on the page, twenty at a time from the example on.
 * @param {number} count
 */
async function anything(count) {
  const random = /** @type {any} */ (window).seeded();
  const any = (/** @type {any[]} */ list) => list[Math.floor(random() * list.length)];
  /** @type {number[]} */
  const times = [];
  while (times.length < count) {
    const controls = [...document.querySelectorAll(":is(.brief, .choices) :is(select, input[inputmode])")].filter((one) => !one.closest("[hidden]"));
    const box = any(controls);
    const values = box.matches("select")
      ? [...box.options].filter((option) => !option.disabled && option.value !== box.value).map((option) => option.value)
      : box.value && [-4, -3, -2, -1, 1, 2, 3, 4].map((step) => String(Number(box.value) + step));
    if (values.length === 0) continue;
    times.push(await /** @type {any} */ (window).timed(box, any(values)));
    if (times.length % 20 > 0) continue;
    const anew = [...document.querySelectorAll(".choices button")].find((one) => /example/i.test(one.textContent ?? ""));
    /** @type {HTMLButtonElement} */ (anew).click();
    await new Promise((resolve) => setTimeout(resolve, 200));
  }
  return times.sort((a, b) => a - b);
}
