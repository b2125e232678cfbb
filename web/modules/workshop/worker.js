// The worker's side of the workshop: it holds the second module of the core and answers one request after the other. A
// search gives way to them between its slices.

import start, { Workshop } from "../../wasm/workshop.js";

/** @typedef {import("../../wasm/workshop.js").Layout} Layout */
/** @typedef {import("../../wasm/workshop.js").KitLayout} KitLayout */
/** @typedef {{ id: number, link: string, name?: string, args?: unknown[], search?: number, kits?: string, sheet?: number, kind?: string, begin?: boolean }} Request */

/** Steps of a search between two looks at what else is asked; they take some milliseconds. */
const SLICE = 60_000;
/** How often a search tells where it is, in milliseconds; a better layout is told at once. */
const TELL_MS = 100;

const started = start();
// Told to whoever asks first.
started.catch(() => undefined);
/** The design at hand. */
let link = "";
/** @type {Workshop | null} */
let workshop = null;
/** What was laid last, and of which design or kits.
 * @type {{ sheets: { of: string, layout: Layout | null }, kits: { of: string, layout: KitLayout | null } }} */
const laid = { sheets: { of: "", layout: null }, kits: { of: "", layout: null } };
/** The search under way. There is one at most: a newer one takes its place. */
let searching = 0;

addEventListener("message", async ({ data }) => {
  if (data.stop) {
    if (data.stop === searching) searching = 0;
    return;
  }
  const { id } = data;
  try {
    await started;
  } catch {
    postMessage({ broken: true });
    return;
  }
  try {
    const answer = data.search === undefined ? answered(data) : await search(data);
    // A file is handed over, not copied.
    postMessage({ id, answer }, answer instanceof Uint8Array ? [answer.buffer] : []);
  } catch (error) {
    postMessage(error === STOPPED ? { id, stopped: true } : { id, wrong: error instanceof Error ? error.message : String(error) });
  }
});

const STOPPED = Symbol("stopped");

/** @param {Request} request */
function answered(request) {
  if (request.begin) return undefined;
  if (request.sheet !== undefined) {
    const { of, layout } = laid.sheets;
    if (!layout || of !== request.link) throw new Error("The sheets of this design are not laid yet. Wait a moment and try again.");
    return layout.files(request.sheet, request.kind ?? "");
  }
  if (request.kits !== undefined) {
    const { of, layout } = laid.kits;
    if (!layout || of !== request.kits) throw new Error("These kits are not laid yet. Ask for them again.");
    return layout.zip();
  }
  const maker = /** @type {any} */ (at(request.link));
  return maker[request.name ?? ""](...(request.args ?? []));
}

/**
 * The workshop with a design in it.
 * @param {string} wanted
 */
function at(wanted) {
  if (!workshop || link !== wanted) {
    const next = new Workshop(wanted);
    workshop?.free();
    workshop = next;
    link = wanted;
  }
  return workshop;
}

/**
 * The layout that is asked for, as far as it has come.
 * @param {Request} request
 */
function layoutOf({ link: wanted, kits }) {
  const key = kits ?? wanted;
  const place = kits === undefined ? laid.sheets : laid.kits;
  if (!place.layout || place.of !== key) {
    const next = kits === undefined ? at(wanted).layout() : at(wanted).kits(kits);
    place.layout?.free();
    place.layout = /** @type {any} */ (next);
    place.of = key;
  }
  return { place, layout: /** @type {Layout | KitLayout} */ (place.layout) };
}

/** @param {Request} request */
async function search(request) {
  const { id, search: until = 0 } = request;
  searching = id;
  const { place, layout } = layoutOf(request);
  const progress = (/** @type {boolean} */ better) => {
    const told = { steps: layout.steps(), done: layout.done() };
    postMessage({ id, progress: better ? { ...told, found: layout.found() } : told });
  };
  // Kits are looked at now and then only.
  const lastLook = () => "look" in layout && layout.look();
  progress(true);
  let told = performance.now();
  while (!layout.done() && layout.steps() < until) {
    await turn();
    if (searching !== id) {
      // A newer search may have put its own in this one's place.
      if (place.layout === layout && lastLook()) progress(true);
      throw STOPPED;
    }
    const better = layout.step(SLICE);
    if (better || performance.now() - told > TELL_MS) {
      progress(better);
      told = performance.now();
    }
  }
  progress(lastLook());
}

const { port1, port2 } = new MessageChannel();
/** @type {(() => void)[]} */
const turns = [];
port1.onmessage = () => turns.shift()?.();

/**
 * Lets what has come in the meantime go first. A timer would wait some milliseconds each time.
 * @returns {Promise<void>}
 */
function turn() {
  return new Promise((resolve) => {
    turns.push(resolve);
    port2.postMessage(null);
  });
}
