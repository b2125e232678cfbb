// Kits: the design on the bench and further ones, whole or in part, on the same sheets. How many sheets do they take, or
// how many do the sheets give?

import { h, say } from "../dom.js";
import { fileName, handOut } from "../keep.js";
import { capital, ended, size } from "../words.js";
import { answered } from "./kits-answer.js";
import { keep, kept } from "./kits-kept.js";
import { KitSheets } from "./kits-sheets.js";
import { KitUnits } from "./kits-units.js";
import { LookOn } from "./look-on.js";
import { Refused } from "./refused.js";

/** @typedef {import("../../wasm/panelwright.js").View} View */
/** @typedef {import("../../wasm/workshop.js").KitsFound} KitsFound */
/** @typedef {import("../../wasm/workshop.js").KitRequest} KitRequest */
/** @typedef {import("./sheets-view.js").SheetsEvents} KitsEvents */

export class KitsView {
  /** @type {KitsEvents} */ #events;
  /** @type {View | null} */ #view = null;
  #units;
  #sheets;
  /** What was asked last, as JSON; empty when nothing was. */
  #asked = "";
  /** Whether the kits or the bench changed since. */
  #stale = false;
  #said = h("p", { class: "sheets-sum", role: "status" });
  #old = h("p", { class: "kits-old", hidden: true }, "Something was changed since: ask again.");
  #save = h("button", { type: "button", class: "framed", "aria-label": "Save zip of the kits", hidden: true, onclick: () => void this.#zip() }, "Save zip");
  #answer = h("div", { class: "kits-answer" });
  /** @type {LookOn<KitsFound>} */ #look = new LookOn({
    bar: "Looking for better layouts of the kits",
    further: "Look further for better layouts",
    search: (until, told) => this.#events.workshop.searchKits(this.#view?.link ?? "", this.#asked, until, told),
    found: (found) => this.#show(found),
    failed: (message) => {
      this.#asked = "";
      this.#answer.replaceChildren();
      say(this.#said, ended(capital(message)));
    },
    told: () => this.#tell(),
  });

  /**
   * @param {HTMLElement} container
   * @param {KitsEvents} events
   */
  constructor(container, events) {
    this.#events = events;
    const changed = () => this.#changed();
    this.#units = new KitUnits(events, changed);
    this.#sheets = new KitSheets(events.choices, changed);
    const ask = (/** @type {KitRequest["ask"]} */ what, /** @type {string} */ label) => h("button", { type: "button", class: "framed", onclick: () => this.#ask(what) }, label);
    container.append(
      h("p", {}, "Cut several designs from the same sheets: whole cases, or only sleeves or chassis. What is small finds its place beside what is large."),
      h("h3", {}, "Designs"),
      this.#units.element,
      h("h3", {}, "Sheets at hand"),
      this.#sheets.element,
      h("div", { class: "acts kits-asks" }, ask("counts", "How many sheets for these counts"), ask("most", "How many from these sheets")),
      this.#said,
      this.#old,
      h("div", { class: "acts" }, this.#look.bar, this.#look.button, this.#save),
      this.#answer,
    );
  }

  /** @param {View} view */
  update(view) {
    const first = this.#view === null;
    const other = !first && view.link !== this.#view?.link;
    this.#view = view;
    const before = first ? kept() : null;
    if (before) {
      this.#sheets.restore(before.sizes);
      void this.#units.restore(before.units, view.link);
    }
    this.#units.update(view);
    this.#sheets.update(view);
    if (other) this.#outdate();
  }

  /** Nobody looks: the search rests. */
  hide() {
    this.#look.rest();
  }

  /** @param {KitRequest["ask"]} ask */
  #ask(ask) {
    this.#look.rest();
    try {
      this.#asked = JSON.stringify({ units: this.#units.wanted(), sheets: this.#sheets.wanted(), ask });
    } catch (error) {
      if (!(error instanceof Refused)) throw error;
      error.input.setAttribute("aria-invalid", "true");
      error.input.focus();
      say(this.#said, error.message);
      return;
    }
    this.#stale = false;
    say(this.#said, "Laying the kits on the sheets.");
    this.#answer.replaceChildren();
    if (this.#view) this.#look.begin();
  }

  #changed() {
    keep({ units: this.#units.rows, sizes: this.#sheets.rows });
    this.#outdate();
  }

  /** The answer on show is of something that was changed since. */
  #outdate() {
    if (this.#asked === "") return;
    this.#stale = true;
    this.#look.rest();
    this.#look.tell();
  }

  #tell() {
    const there = this.#answer.childElementCount > 0;
    // Without an answer, or with an old one, there is nothing to better.
    if (!this.#look.looks && (this.#stale || !there)) this.#look.button.hidden = true;
    this.#old.hidden = !this.#stale || !there;
    this.#save.hidden = !there;
  }

  /** @param {KitsFound} found */
  #show(found) {
    say(this.#said, found.sentence);
    this.#answer.replaceChildren(...answered(found));
  }

  async #zip() {
    const asked = this.#asked;
    const link = this.#view?.link ?? "";
    const zip = await this.#events.make("The zip of the kits", (workshop) => workshop.kitsZip(link, asked));
    if (zip === null) return;
    handOut(`${fileName(this.#view?.title ?? "")}-kits.zip`, /** @type {BlobPart} */ (zip), "application/zip");
    this.#events.said(`Kits saved: ${size(zip.byteLength)}.`);
  }
}
