// Kits: the design on the bench and further ones, whole or in part, on the same sheets. How many sheets do they take, or
// how many do the sheets give?

import { h, say } from "../dom.js";
import { fileName, handOut } from "../keep.js";
import { capital, ended, size } from "../words.js";
import { answered } from "./kits-answer.js";
import { keep, kept } from "./kits-kept.js";
import { KitSheets } from "./kits-sheets.js";
import { KitUnits } from "./kits-units.js";
import { Refused } from "./refused.js";

/** @typedef {import("../../wasm/panelwright.js").View} View */
/** @typedef {import("../../wasm/workshop.js").KitsFound} KitsFound */
/** @typedef {import("../../wasm/workshop.js").KitRequest} KitRequest */
/** @typedef {import("../workshop.js").Search} Search */
/** @typedef {import("./sheets-view.js").SheetsEvents} KitsEvents */

/** After so many steps the search rests until it is asked to go on. */
const ENOUGH = 100_000_000;

export class KitsView {
  /** @type {KitsEvents} */ #events;
  /** @type {View | null} */ #view = null;
  #units;
  #sheets;
  /** What was asked last, as JSON; empty when nothing was. */
  #asked = "";
  /** Whether the kits or the bench changed since. */
  #stale = false;
  /** @type {Search | null} */ #search = null;
  #steps = 0;
  #done = false;
  #until = ENOUGH;
  #said = h("p", { class: "sheets-sum", role: "status" });
  #old = h("p", { class: "kits-old", hidden: true }, "Something was changed since: ask again.");
  #bar = h("progress", { max: 100, "aria-label": "Looking for better layouts of the kits", hidden: true });
  #stop = h("button", { type: "button", class: "framed", hidden: true, onclick: () => this.#toggle() }, "Stop");
  #save = h("button", { type: "button", class: "framed", "aria-label": "Save zip of the kits", hidden: true, onclick: () => void this.#zip() }, "Save zip");
  #answer = h("div", { class: "kits-answer" });

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
      h("div", { class: "acts" }, this.#bar, this.#stop, this.#save),
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
    this.#search?.stop();
  }

  /** @param {KitRequest["ask"]} ask */
  #ask(ask) {
    this.#search?.stop();
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
    this.#steps = 0;
    this.#done = false;
    this.#until = ENOUGH;
    say(this.#said, "Laying the kits on the sheets.");
    this.#answer.replaceChildren();
    this.#go();
  }

  /** Looks on, from where the search stood. */
  #go() {
    if (!this.#view) return;
    const search = this.#events.workshop.searchKits(this.#view.link, this.#asked, this.#until, (progress) => {
      if (this.#search !== search) return;
      this.#steps = progress.steps;
      this.#done = progress.done;
      if (progress.found) this.#show(progress.found);
      this.#tell();
    });
    this.#search = search;
    this.#tell();
    search.ended
      .catch((error) => {
        if (this.#search !== search || error.name === "Stopped") return;
        this.#asked = "";
        this.#answer.replaceChildren();
        say(this.#said, ended(capital(error.message)));
      })
      .finally(() => {
        if (this.#search !== search) return;
        this.#search = null;
        this.#tell();
      });
  }

  #toggle() {
    if (this.#search) {
      this.#search.stop();
      return;
    }
    this.#until = this.#steps + ENOUGH;
    this.#go();
  }

  #changed() {
    keep({ units: this.#units.rows, sizes: this.#sheets.rows });
    this.#outdate();
  }

  /** The answer on show is of something that was changed since. */
  #outdate() {
    if (this.#asked === "") return;
    this.#stale = true;
    this.#search?.stop();
    this.#tell();
  }

  #tell() {
    const there = this.#answer.childElementCount > 0;
    this.#bar.hidden = this.#search === null;
    this.#bar.value = 100 - (100 * Math.max(0, this.#until - this.#steps)) / ENOUGH;
    this.#stop.hidden = this.#search === null && (this.#done || this.#stale || !there);
    say(this.#stop, this.#search ? "Stop" : "Look further for better layouts");
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
