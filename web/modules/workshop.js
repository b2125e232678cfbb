// The workshop beside the page: what takes longer than a frame or is not needed for a change is done by a second module
// in a worker. It starts when it is first asked for something. A request is a method of `Workshop` in the core; its
// name, arguments and answer are checked against the core's types.

/** @typedef {import("../wasm/workshop.js").Workshop} Maker */
/** @typedef {import("../wasm/workshop.js").StockLayout} StockLayout */
/** @typedef {import("../wasm/workshop.js").KitsFound} KitsFound */
/** @typedef {import("../wasm/workshop.js").CuttingFile} CuttingFile */
/** @typedef {Exclude<keyof Maker, "free" | "layout" | "kits" | symbol>} Name what can be asked for */
/**
 * @template [T=StockLayout]
 * @typedef {{ steps: number, done: boolean, found?: T }} Progress of a search for a layout; `found` when it is a better one
 */
/** @typedef {{ resolve: (answer: any) => void, reject: (why: Error) => void, told?: (progress: Progress<any>) => void }} Waiting */

/** Why an answer will not come: the maker stopped it, or a newer request took its place. */
export class Stopped extends Error {
  constructor() {
    super("It was stopped.");
    // What is loaded later has no hold of this class.
    this.name = "Stopped";
  }
}

export class Workshop {
  /** @type {Worker | null} */ #worker = null;
  /** @type {Map<number, Waiting>} */ #waiting = new Map();
  #count = 0;

  /**
   * Asks for something that is made of a design.
   * @template {Name} N
   * @param {string} link the design
   * @param {N} name
   * @param {Parameters<Maker[N]>} args
   * @returns {Promise<ReturnType<Maker[N]>>}
   */
  ask(link, name, ...args) {
    return this.#send({ link, name, args }).answer;
  }

  /**
   * Looks for a better and better layout on the stock.
   * @param {string} link
   * @param {number} steps how far to look, counted from the first
   * @param {(progress: Progress) => void} told at first, on the way, and at the end
   * @returns {Search}
   */
  search(link, steps, told) {
    return this.#look({ link, search: steps }, told);
  }

  /**
   * The same for kits of several designs.
   * @param {string} link the design on the bench
   * @param {string} kits a `KitRequest` as JSON
   * @param {number} steps
   * @param {(progress: Progress<KitsFound>) => void} told
   * @returns {Search}
   */
  searchKits(link, kits, steps, told) {
    return this.#look({ link, kits, search: steps }, told);
  }

  /**
   * Every file of the kits that were laid last, in one zip.
   * @param {string} link
   * @param {string} kits
   * @returns {Promise<Uint8Array>}
   */
  kitsZip(link, kits) {
    return this.#send({ link, kits }).answer;
  }

  /**
   * A sheet of the layout that was found last, to cut: a file for each go.
   * @param {string} link
   * @param {number} index
   * @param {"dxf" | "svg"} kind
   * @returns {Promise<CuttingFile[]>}
   */
  sheetFiles(link, index, kind) {
    return this.#send({ link, sheet: index, kind }).answer;
  }

  /**
   * @param {object} request
   * @param {(progress: Progress<any>) => void} told
   * @returns {Search}
   */
  #look(request, told) {
    const { id, answer } = this.#send(request, told);
    return { ended: answer, stop: () => this.#worker?.postMessage({ stop: id }) };
  }

  /** Loads the worker and its module now, before they are needed. */
  async begin() {
    await this.#send({ begin: true }).answer;
  }

  /** Stops all that is being done, in the middle of it if need be. */
  stop() {
    this.#end(new Stopped());
  }

  /**
   * @param {object} request
   * @param {(progress: Progress<any>) => void} [told]
   */
  #send(request, told) {
    const id = ++this.#count;
    const answer = new Promise((resolve, reject) => {
      this.#waiting.set(id, { resolve, reject, told });
      try {
        this.#open().postMessage({ id, ...request });
      } catch (error) {
        this.#end(new Error(`Files cannot be made here: this browser starts no worker (${error instanceof Error ? error.message : error}).`));
      }
    });
    return { id, answer };
  }

  #open() {
    if (this.#worker) return this.#worker;
    const worker = new Worker(new URL("./workshop/worker.js", import.meta.url), { type: "module", name: "workshop" });
    const broken = () => this.#end(new Error("The part of the page that makes files did not load. Try again with a network; nothing was lost."));
    worker.onmessage = ({ data }) => (data.broken ? broken() : this.#take(data));
    worker.onerror = (event) => {
      event.preventDefault();
      broken();
    };
    this.#worker = worker;
    return worker;
  }

  /** @param {{ id: number, answer?: unknown, wrong?: string, stopped?: boolean, progress?: Progress }} told */
  #take({ id, answer, wrong, stopped, progress }) {
    const waiting = this.#waiting.get(id);
    if (progress) {
      waiting?.told?.(progress);
      return;
    }
    this.#waiting.delete(id);
    if (stopped) waiting?.reject(new Stopped());
    else if (wrong !== undefined) waiting?.reject(new Error(wrong));
    else waiting?.resolve(answer);
  }

  /** @param {Error} why */
  #end(why) {
    this.#worker?.terminate();
    this.#worker = null;
    const waiting = [...this.#waiting.values()];
    this.#waiting.clear();
    for (const { reject } of waiting) reject(why);
  }
}

/**
 * @typedef {object} Search
 * @property {Promise<void>} ended when nothing better is left or it looked far enough; rejected when it was stopped
 * @property {() => void} stop
 */
