// Choices that stand better in one line than in a field each: a panel's own method, a corner's joint, a price and its
// pack. Several choices share a line; their help and source stand once above them.

import { h, unique } from "../dom.js";
import { capital } from "../words.js";
import { NumberBox } from "./number-box.js";

/** @typedef {import("../../wasm/panelwright.js").Choice} Choice */
/** @typedef {import("../../wasm/panelwright.js").View} View */
/** @typedef {import("./number-box.js").ChoiceEvents} ChoiceEvents */

/**
 * Where a choice stands among the lines.
 * @typedef {object} Place
 * @property {string} block name of the block of lines
 * @property {string} title what stands above the block
 * @property {string} row name of the line
 * @property {string} label the line's own words
 * @property {string} word what stands before the control in its line, or above its column
 */

/**
 * The place of a choice among lines; null when it gets a field of its own.
 * @param {Choice} choice
 * @returns {Place | null}
 */
export function placeOf(choice) {
  const [stem = "", name = ""] = choice.key.split(".");
  switch (stem) {
    case "method":
      return name === ""
        ? null
        : { block: "method", title: "A panel made in another way", row: name, label: choice.label.replace(/ is made$/, ""), word: "" };
    case "joint":
    case "through":
      return /_/.test(name)
        ? {
            block: "corner",
            title: "Each corner",
            row: name,
            label: `${capital(name.split("_")[0] ?? "")} to ${name.split("_")[1]}`,
            word: stem === "joint" ? "" : "runs through",
          }
        : null;
    case "stock2":
    case "stock3":
      return {
        block: "stock",
        title: "Other sheets and offcuts you have",
        row: stem,
        label: `Sheet ${stem.slice(-1)}`,
        word: { width: "Width, mm", height: "Height, mm", count: "How many" }[name] ?? name,
      };
    case "price":
      if (/^(bracket|captive|screw|nut|washer|standoff|foot|fan)$/.test(name)) return bought(name, choice.label, "Price");
      return name === "currency" ? null : { block: "price", title: "What you pay", row: name, label: choice.label, word: "Price" };
    case "pack":
      return bought(name, choice.label, "In a pack");
    case "rate":
      return { block: "rate", title: "Your pace, in minutes", row: name, label: capital(choice.label.replace(/^Minutes for /, "")), word: "Minutes" };
    default:
      return null;
  }
}

/**
 * @param {string} row
 * @param {string} label
 * @param {string} word
 */
function bought(row, label, word) {
  return { block: "bought", title: "What you pay for a pack", row, label: capital(label.replace(/^(A|In a) pack of /, "")), word };
}

/** One block of such lines. */
export class Rows {
  /** @type {Map<string, { element: HTMLElement, cells: Cell[] }>} */ #rows = new Map();
  #help;
  #places;

  /**
   * @param {Choice[]} choices in the order of the list
   * @param {ChoiceEvents} events
   */
  constructor(choices, events) {
    this.#places = new Map(choices.map((choice) => [choice.key, placeOf(choice)]));
    const first = choices[0] ?? null;
    const place = first && placeOf(first);
    const title = unique("rows");
    // Each different sentence of help once.
    const helps = [...new Set(choices.map((choice) => choice.help))];
    const sources = [...new Set(choices.map((choice) => choice.source))];
    this.#help = unique("help");
    const numbers = first?.kind.type === "number";
    const words = [...new Set(choices.map((choice) => placeOf(choice)?.word ?? ""))];
    this.element = h(
      "div",
      { class: `block rows ${numbers ? "in-columns" : ""} rows-${place?.block}`, role: "group", "aria-labelledby": title, style: `--columns: ${words.length}` },
      h("h4", { id: title }, place?.title),
      h("p", { class: "help", id: this.#help }, helps.join(" ")),
      h("details", { class: "source" }, h("summary", {}, "Source"), ...sources.map((text) => h("p", {}, text))),
      numbers && words.length > 1
        ? h("div", { class: "line heads", "aria-hidden": "true" }, h("span", {}, ""), ...words.map((word) => h("span", {}, word)))
        : null,
    );
    for (const choice of choices) this.#add(choice, events, numbers);
  }

  /** @param {View} view */
  update(view) {
    for (const { element, cells } of this.#rows.values()) {
      for (const cell of cells) cell.update(view);
      element.hidden = cells.every((cell) => cell.element.hidden);
    }
    this.element.hidden = [...this.#rows.values()].every(({ element }) => element.hidden);
  }

  /**
   * @param {Choice} choice
   * @param {ChoiceEvents} events
   * @param {boolean} numbers
   */
  #add(choice, events, numbers) {
    const place = this.#places.get(choice.key);
    if (!place) return;
    let row = this.#rows.get(place.row);
    if (!row) {
      row = { element: h("div", { class: "line" }, h("span", { class: "line-label" }, place.label)), cells: [] };
      this.#rows.set(place.row, row);
      this.element.append(row.element);
    }
    const cell = new Cell(choice, events, {
      name: [place.label, place.word].filter(Boolean).join(": "),
      word: numbers ? "" : place.word,
      describedBy: this.#help,
    });
    row.cells.push(cell);
    row.element.append(cell.element, ...(cell.refused ? [cell.refused] : []));
  }
}

/** One control in a line. */
class Cell {
  /** @type {Choice} */ #choice;
  /** @type {(value: import("../../wasm/panelwright.js").Value) => void} */ #show;
  /** @type {HTMLElement | null} */ refused = null;

  /**
   * @param {Choice} choice
   * @param {ChoiceEvents} events
   * @param {{ name: string, word: string, describedBy: string }} words
   */
  constructor(choice, events, { name, word, describedBy }) {
    this.#choice = choice;
    const { kind } = choice;
    if (kind.type === "pick") {
      const list = h(
        "select",
        {
          "aria-label": name,
          "aria-describedby": describedBy,
          onchange: () => {
            events.set(choice.key, list.value);
            events.settle();
          },
        },
        // A line has less room than a field.
        ...kind.options.map((option) => h("option", { value: option.name }, option.label.replace(/^as chosen for/, "as for"))),
      );
      this.element = h("span", { class: "cell", "data-key": choice.key }, word ? h("span", { class: "cell-word", "aria-hidden": "true" }, word) : null, list);
      this.#show = (value) => {
        if (list.value !== value) list.value = String(value);
      };
    } else {
      const box = new NumberBox(choice, events, { label: name, describedBy, placeholder: "open" });
      this.refused = box.refused;
      this.element = h("span", { class: "cell", "data-key": choice.key }, box.input);
      this.#show = (value) => box.update(value);
    }
  }

  /** @param {View} view */
  update(view) {
    const { key } = this.#choice;
    this.element.hidden = view.idle.has(key);
    this.element.classList.toggle("changed", view.changed.includes(key));
    if (!this.element.hidden) this.#show(view.values[key] ?? null);
  }
}
