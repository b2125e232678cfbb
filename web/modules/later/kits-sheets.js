// The sheets at hand for the kits: sizes, how many, of which material.

import { h } from "../dom.js";
import { plain, typed } from "../words.js";
import { Refused } from "./refused.js";

/** @typedef {import("../../wasm/panelwright.js").View} View */
/** @typedef {import("../../wasm/panelwright.js").Choice} Choice */
/** @typedef {import("../../wasm/workshop.js").KitRequest} KitRequest */
/** @typedef {import("./kits-kept.js").KeptSize} KeptSize */
/** @typedef {{ row: HTMLElement, width: HTMLInputElement, height: HTMLInputElement, count: HTMLInputElement, material: HTMLSelectElement }} Size */

export class KitSheets {
  #changed;
  #materials;
  /** @type {View | null} */ #view = null;
  /** @type {Size[]} */ #sizes = [];
  #list = h("ul", { class: "kit-rows" });
  #none = h("p", { class: "kits-hint" }, "None named: the sheets of the first design of each material count.");
  #add = h("button", { type: "button", class: "framed", onclick: () => this.#more() }, "Name the sheets you have");

  /**
   * @param {Choice[]} choices
   * @param {() => void} changed
   */
  constructor(choices, changed) {
    this.#changed = changed;
    const kind = choices.find((choice) => choice.key === "sheet.material")?.kind;
    this.#materials = kind?.type === "pick" ? kind.options : [];
    this.element = h("div", {}, this.#none, this.#list, h("div", { class: "acts" }, this.#add));
  }

  /** @param {View} view */
  update(view) {
    this.#view = view;
  }

  /**
   * The sheets that were named.
   * @returns {KitRequest["sheets"]}
   */
  wanted() {
    return this.#sizes.map(({ width, height, count, material }, index) => {
      const side = (/** @type {HTMLInputElement} */ input) => {
        const value = typed(input.value);
        if (value === null || value <= 0) throw new Refused(input, `Size ${index + 1} of the sheets: how large? A length in mm, such as 610.`);
        return value;
      };
      const many = count.value.trim() === "" ? null : Number(count.value);
      if (many !== null && (!Number.isInteger(many) || many < 0)) throw new Refused(count, `Size ${index + 1} of the sheets: how many? A whole number; open: as many as it takes.`);
      return { width_mm: side(width), height_mm: side(height), count: many, material: material.value || null };
    });
  }

  /**
   * The sizes as they stand, to be kept.
   * @returns {KeptSize[]}
   */
  get rows() {
    return this.#sizes.map(({ width, height, count, material }) => ({ width: width.value, height: height.value, count: count.value, material: material.value }));
  }

  /**
   * Puts kept sizes back.
   * @param {KeptSize[]} rows
   */
  restore(rows) {
    for (const row of rows) this.#put(row);
    this.#tell();
  }

  /** One size more, at first that of the sheets on the bench. */
  #more() {
    const start = (/** @type {string} */ key) => (this.#sizes.length === 0 ? plain(Number(this.#view?.values[key] ?? 0), 1) : "");
    const { count } = this.#put({ width: start("stock.width"), height: start("stock.height"), count: "", material: "" });
    this.#tell();
    count.focus();
    this.#changed();
  }

  /** @param {KeptSize} row */
  #put(row) {
    const number = this.#sizes.length + 1;
    const input = (/** @type {string} */ label, /** @type {string} */ value, /** @type {string} */ placeholder) => {
      const field = h("input", {
        type: "text",
        inputmode: "decimal",
        class: "kit-number",
        "aria-label": `Size ${number} of the sheets: ${label}`,
        autocomplete: "off",
        value,
        placeholder,
        oninput: () => {
          field.removeAttribute("aria-invalid");
          this.#changed();
        },
      });
      return field;
    };
    const width = input("width, mm", row.width, "width");
    const height = input("height, mm", row.height, "height");
    const count = input("how many", row.count, "any");
    const material = h(
      "select",
      { "aria-label": `Size ${number} of the sheets: material`, onchange: () => this.#changed() },
      h("option", { value: "" }, "of any material"),
      ...this.#materials.map((option) => h("option", { value: option.name, selected: option.name === row.material }, option.label)),
    );
    const size = { row: h("li"), width, height, count, material };
    const remove = h("button", { type: "button", class: "quiet", "aria-label": `Leave out size ${number} of the sheets`, onclick: () => this.#remove(size) }, "Leave out");
    size.row.append(
      h("span", { class: "kit-fields" }, h("span", { class: "kit-times" }, count, " of"), h("span", { class: "kit-times" }, width, "×", height, " mm"), material, remove),
    );
    this.#sizes.push(size);
    this.#list.append(size.row);
    return size;
  }

  /** @param {Size} size */
  #remove(size) {
    size.row.remove();
    this.#sizes = this.#sizes.filter((each) => each !== size);
    this.#tell();
    this.#add.focus();
    this.#changed();
  }

  #tell() {
    this.#none.hidden = this.#sizes.length > 0;
    this.#add.textContent = this.#sizes.length > 0 ? "One more size" : "Name the sheets you have";
  }
}
