// The worker's side of the workshop: it holds the second module of the core and answers one request after the other. A
// search gives way to them between its slices.

import start, { Workshop } from "../../wasm/workshop.js";

/** @typedef {import("../../wasm/workshop.js").Layout} Layout */
/** @typedef {{ id: number, link: string, name?: string, args?: unknown[], search?: number, sheet?: number, kind?: string, begin?: boolean }} Request */

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
/** The design the layout is of. */
let laid = "";
/** @type {Layout | null} */
let layout = null;
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
    if (!layout || laid !== request.link) throw new Error("The sheets of this design are not laid yet. Wait a moment and try again.");
    return layout.file(request.sheet, request.kind ?? "");
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

/** @param {Request} request */
async function search({ id, link: wanted, search: until = 0 }) {
  searching = id;
  if (!layout || laid !== wanted) {
    const next = at(wanted).layout();
    layout?.free();
    layout = next;
    laid = wanted;
  }
  const progress = (/** @type {boolean} */ better) => {
    if (!layout) return;
    const told = { steps: layout.steps(), done: layout.done() };
    postMessage({ id, progress: better ? { ...told, found: layout.found() } : told });
  };
  progress(true);
  let told = performance.now();
  while (!layout.done() && layout.steps() < until) {
    await turn();
    if (searching !== id) throw STOPPED;
    const better = layout.step(SLICE);
    if (better || performance.now() - told > TELL_MS) {
      progress(better);
      told = performance.now();
    }
  }
  progress(false);
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
