// The panels on the stock. A first layout is shown as soon as it is there; the workshop looks on for a better one until
// none can be better or the maker has seen enough.

import { h, say } from "../dom.js";
import { drawing } from "../picture.js";
import { fileName, handOutCutting } from "../keep.js";
import { BOTH_GOES, counted, ended, plain } from "../words.js";
import { LookOn } from "./look-on.js";

/** @typedef {import("../../wasm/panelwright.js").View} View */
/** @typedef {import("../../wasm/workshop.js").StockLayout} StockLayout */
/** @typedef {import("../ui/work.js").WorkEvents & { choices: import("../../wasm/panelwright.js").Choice[], kits: typeof import("../later.js").laterKits }} SheetsEvents */
/** @typedef {import("./kits.js").KitsView} KitsView */

const PAUSE_MS = 250;

export class SheetsView {
  /** @type {SheetsEvents} */ #events;
  /** @type {View | null} */ #view = null;
  /** The design whose sheets are on show, or being looked for. */
  #made = "";
  #waiting = 0;
  #container;
  #sum = h("p", { class: "sheets-sum", role: "status" }, "Laying the panels on the sheets.");
  #sheets = h("div", { class: "sheets" });
  /** @type {LookOn<StockLayout>} */ #look = new LookOn({
    bar: "Looking for a better layout",
    further: "Look further for a better layout",
    search: (until, told) => this.#events.workshop.search(this.#made, until, told),
    found: (found) => this.#show(found),
    failed: (message) => {
      // Without a design on show the next change asks anew.
      this.#made = "";
      this.#sheets.replaceChildren();
      say(this.#sum, `These panels cannot be laid: ${ended(message)}`);
    },
  });
  #own = h("div", { class: "papers", tabindex: "0", role: "region", "aria-label": "Sheets" }, h("div", { class: "sheets-head" }, this.#sum, h("div", { class: "acts" }, this.#look.bar, this.#look.button)), this.#sheets);
  #ofKits = h("div", { class: "papers kits", tabindex: "0", role: "region", "aria-label": "Kits", hidden: true });
  /** @type {KitsView | null} */ #kits = null;
  /** Whether kits are on show rather than the design alone. */
  #chosen = false;
  /** @type {[HTMLButtonElement, HTMLButtonElement]} */ #picks;

  /**
   * @param {HTMLElement} container
   * @param {HTMLElement} tools
   * @param {SheetsEvents} events
   */
  constructor(container, tools, events) {
    this.#events = events;
    this.#container = container;
    const pick = (/** @type {boolean} */ kits, /** @type {string} */ label) => h("button", { type: "button", class: "quiet", onclick: () => void this.#choose(kits) }, label);
    this.#picks = [pick(false, "This design"), pick(true, "Kits of several")];
    tools.append(h("div", { class: "picker", role: "group", "aria-label": "What the sheets are for" }, ...this.#picks));
    container.append(this.#own, this.#ofKits);
    this.#pressed();
  }

  /** @param {View} view */
  update(view) {
    this.#view = view;
    this.#kits?.update(view);
    if (this.#chosen) return;
    if (this.#made === view.link) {
      this.#look.resume();
      return;
    }
    this.#look.rest();
    clearTimeout(this.#waiting);
    this.#waiting = window.setTimeout(() => this.#begin(), this.#made === "" ? 0 : PAUSE_MS);
  }

  /** Nobody looks: the search rests until the sheets are on show again. */
  hide() {
    this.#look.rest();
    this.#kits?.hide();
  }

  fit() {}

  /** @param {boolean} kits */
  async #choose(kits) {
    if (kits && !this.#kits) {
      const part = await this.#events.make("The sheet for kits", this.#events.kits);
      if (part === null) return;
      this.#kits ??= new part.KitsView(this.#ofKits, this.#events);
    }
    this.hide();
    this.#chosen = kits;
    this.#own.hidden = kits;
    this.#ofKits.hidden = !kits;
    this.#pressed();
    if (this.#view) this.update(this.#view);
  }

  #pressed() {
    for (const [index, button] of this.#picks.entries()) button.setAttribute("aria-pressed", String(this.#chosen === (index === 1)));
  }

  #begin() {
    if (!this.#view || this.#container.hidden || this.#chosen) return;
    this.#made = this.#view.link;
    this.#look.begin();
  }

  /** @param {StockLayout} found */
  #show(found) {
    say(this.#sum, inShort(found));
    this.#sheets.replaceChildren(...found.sheets.map((_, index) => this.#sheet(found, index)));
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
      h("button", { type: "button", class: "framed", "aria-label": `Save ${kind.toUpperCase()}: ${name}`, onclick: () => void this.#save(index, kind) }, kind.toUpperCase());
    return h(
      "figure",
      { class: "stock-sheet" },
      h("figcaption", {}, h("h3", {}, name), h("p", {}, `${sheet.size_mm.map((side) => plain(side, 1)).join(" × ")} mm, ${counted(sheet.panels, "panel")}, ${plain(100 * sheet.yield_share, 0)} % used${left}.`)),
      h("div", { class: "stock-picture", role: "img", "aria-label": `${name} with its panels` }, drawing(sheet.picture)),
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
  async #save(index, kind) {
    const files = await this.#events.make("The cutting file of the sheet", (workshop) => workshop.sheetFiles(this.#made, index, kind));
    if (files === null) return;
    await handOutCutting(fileName(this.#view?.title ?? ""), files, kind);
    this.#events.said(files.length === 1 ? "Cutting file of the sheet saved." : BOTH_GOES);
  }
}

/** @param {StockLayout} found */
function inShort({ sheets, bound, missing, yield_share }) {
  const used = `${counted(sheets.length, "sheet")}; no layout needs fewer than ${bound}. ${plain(100 * yield_share, 0)} % of ${sheets.length === 1 ? "it" : "them"} is used.`;
  return missing.length === 0 ? used : `Not everything finds a place: ${missing.join("; ")}. ${used}`;
}
