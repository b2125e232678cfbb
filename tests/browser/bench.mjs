// Times the core in the browser over seeded random changes: a change and everything the page is told of it, and a
// pack of templates. Prints one JSON object a line, as `cargo xtask bench` reads them.

import { servePage, startBrowser } from "./harness.mjs";

const CHANGES = 1000;
const PACKS = 30;

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
} finally {
  await browser.close();
  await page.close();
}
