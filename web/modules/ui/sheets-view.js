// The panels on the stock. A first layout is shown at once; a better one is looked for in short slices of time between
// the frames, so that the page stays quick, until none can be better or the maker has seen enough.

import { drawing, h, say } from "../dom.js";
import { fileName, handOut } from "../keep.js";
import { counted, plain } from "../words.js";

/** @typedef {import("../../wasm/panelwright.js").View} View */
/** @typedef {import("../../wasm/panelwright.js").StockLayout} StockLayout */
/** @typedef {import("./lists-view.js").ListsEvents} SheetsEvents */

const PAUSE_MS = 250;
/** Steps of the search between two frames; they take some milliseconds. */
const SLICE = 60_000;
/** After so many steps the search rests until it is asked to go on. */
const ENOUGH = 20_000_000;

export class SheetsView {
  /** @type {SheetsEvents} */ #events;
  /** @type {View | null} */ #view = null;
  #made = "";
  #waiting = 0;
  #frame = 0;
  #until = ENOUGH;
  /** What is drawn now, so that nothing is drawn anew for nothing. */
  #drawn = "";
  #container;
  #sum = h("p", { class: "sheets-sum", role: "status" });
  #progress = h("progress", { max: 100, "aria-label": "Looking for a better layout" });
  #stop = h("button", { type: "button", class: "framed", onclick: () => this.#toggle() }, "Stop");
  #sheets = h("div", { class: "sheets" });

  /**
   * @param {HTMLElement} container
   * @param {HTMLElement} _tools
   * @param {SheetsEvents} events
   */
  constructor(container, _tools, events) {
    this.#events = events;
    this.#container = container;
    container.append(
      h(
        "div",
        { class: "papers", tabindex: "0", role: "region", "aria-label": "Sheets" },
        this.#sum,
        h("div", { class: "acts" }, this.#progress, this.#stop),
        this.#sheets,
      ),
    );
  }

  /** @param {View} view */
  update(view) {
    this.#view = view;
    if (this.#made === view.link) {
      this.#go();
      return;
    }
    this.#rest();
    clearTimeout(this.#waiting);
    this.#waiting = window.setTimeout(() => this.#begin(), this.#made === "" ? 0 : PAUSE_MS);
  }

  fit() {}

  #begin() {
    if (!this.#view) return;
    this.#made = this.#view.link;
    this.#until = ENOUGH;
    this.#drawn = "";
    try {
      this.#events.bench.layout_begin();
    } catch (error) {
      say(this.#sum, `These panels cannot be laid: ${error instanceof Error ? error.message : error}`);
      this.#sheets.replaceChildren();
      return;
    }
    this.#show();
    this.#go();
  }

  /** Looks on, unless there is nothing left to find. */
  #go() {
    if (this.#frame !== 0) return;
    const found = this.#events.bench.layout();
    if (!found || found.done || found.steps >= this.#until) return;
    const turn = () => {
      this.#frame = 0;
      if (this.#container.hidden) return;
      this.#events.bench.layout_step(SLICE);
      const now = this.#show();
      if (now && !now.done && now.steps < this.#until) this.#frame = requestAnimationFrame(turn);
      this.#tell();
    };
    this.#frame = requestAnimationFrame(turn);
    this.#tell();
  }

  #rest() {
    cancelAnimationFrame(this.#frame);
    this.#frame = 0;
  }

  #toggle() {
    if (this.#frame !== 0) {
      this.#rest();
      this.#until = 0;
      this.#tell();
      return;
    }
    this.#until = (this.#events.bench.layout()?.steps ?? 0) + ENOUGH;
    this.#go();
  }

  #tell() {
    const found = this.#events.bench.layout();
    if (!found) return;
    this.#progress.hidden = this.#frame === 0;
    this.#progress.value = 100 - (100 * Math.max(0, this.#until - found.steps)) / ENOUGH;
    this.#stop.hidden = found.done;
    say(this.#stop, this.#frame === 0 ? "Look on for a better layout" : "Stop");
  }

  #show() {
    const found = this.#events.bench.layout();
    if (!found) return null;
    say(this.#sum, inShort(found));
    const { steps: _, ...shown } = found;
    const text = JSON.stringify(shown);
    if (text !== this.#drawn) {
      this.#drawn = text;
      this.#sheets.replaceChildren(...found.sheets.map((_, index) => this.#sheet(found, index)));
    }
    this.#tell();
    return found;
  }

  /**
   * @param {StockLayout} found
   * @param {number} index
   */
  #sheet(found, index) {
    const sheet = found.sheets[index];
    if (!sheet) return "";
    const name = `Sheet ${index + 1} of ${found.sheets.length}`;
    const left = sheet.offcut_mm === null ? "" : `, largest piece left over ${sheet.offcut_mm.map((side) => plain(side, 0)).join(" × ")} mm`;
    const save = (/** @type {"dxf" | "svg"} */ kind) =>
      h("button", { type: "button", class: "framed", "aria-label": `Save ${kind.toUpperCase()}: ${name}`, onclick: () => this.#save(index, kind) }, kind.toUpperCase());
    return h(
      "figure",
      { class: "stock-sheet" },
      h("figcaption", {}, h("h3", {}, name), h("p", {}, `${sheet.size_mm.map((side) => plain(side, 1)).join(" × ")} mm, ${counted(sheet.panels, "panel")}, ${plain(100 * sheet.yield_share, 0)} % used${left}.`)),
      h("div", { class: "stock-picture", role: "img", "aria-label": `${name} with its panels` }, drawing(this.#events.bench.layout_picture(index))),
      sheet.cuts.length === 0
        ? null
        : h("details", { class: "source" }, h("summary", {}, `${counted(sheet.cuts.length, "saw cut")} in order`), h("ol", { class: "cuts" }, ...sheet.cuts.map((cut) => h("li", {}, cut)))),
      h("div", { class: "acts" }, save("dxf"), save("svg")),
    );
  }

  /**
   * @param {number} index
   * @param {"dxf" | "svg"} kind
   */
  #save(index, kind) {
    const text = this.#events.bench.layout_file(index, kind);
    handOut(`${fileName(this.#view?.title ?? "")}-sheet-${index + 1}.${kind}`, text, kind === "dxf" ? "image/vnd.dxf" : "image/svg+xml");
    this.#events.said("Cutting file of the sheet saved.");
  }
}

/** @param {StockLayout} found */
function inShort({ sheets, bound, missing, yield_share }) {
  const used = `${counted(sheets.length, "sheet")}; no layout needs fewer than ${bound}. ${plain(100 * yield_share, 0)} % of ${sheets.length === 1 ? "it" : "them"} is used.`;
  return missing.length === 0 ? used : `Not everything finds a place: ${missing.join("; ")}. ${used}`;
}
