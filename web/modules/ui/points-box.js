// Measured points: a row of two numbers each, as many as were measured.

import { h, say } from "../dom.js";
import { allowed, plain, typed } from "../words.js";

/** @typedef {import("../../wasm/panelwright.js").Choice} Choice */
/** @typedef {import("../../wasm/panelwright.js").Value} Value */

export class PointsBox {
  /** @type {Choice} */ #choice;
  /** @type {import("./number-box.js").ChoiceEvents} */ #events;
  #rows = h("ol", { class: "points" });
  #shown = "";

  /**
   * @param {Choice} choice of kind "points"
   * @param {import("./number-box.js").ChoiceEvents} events
   */
  constructor(choice, events) {
    this.#choice = choice;
    this.#events = events;
    this.refused = h("span", { class: "refused", "aria-live": "polite" });
    this.add = h("button", { type: "button", class: "framed", onclick: () => this.#addRow() }, "Add a measured hole");
    this.element = h("div", { role: "group", "aria-label": choice.label }, this.#rows, this.add);
  }

  /** @param {Value} value */
  update(value) {
    const points = /** @type {[number, number][]} */ (value);
    const text = JSON.stringify(points);
    if (text === this.#shown) return;
    this.#shown = text;
    this.#rows.replaceChildren(...points.map((point, index) => this.#row(point, index)));
    const { kind } = this.#choice;
    this.add.disabled = kind.type === "points" && points.length >= kind.max;
  }

  /**
   * @param {[number | null, number | null]} point
   * @param {number} index
   */
  #row(point, index) {
    const box = (/** @type {number} */ axis) =>
      h("input", {
        type: "text",
        inputmode: "decimal",
        autocomplete: "off",
        value: point[axis] === null ? "" : plain(Number(point[axis])),
        "aria-label": `Hole ${index + 1}, ${axis === 0 ? "from the left" : "from below"}, in mm`,
        onchange: () => this.#take(),
      });
    const drop = h(
      "button",
      {
        type: "button",
        class: "quiet",
        "aria-label": `Take hole ${index + 1} away`,
        onclick: () => {
          row.remove();
          this.#take();
          this.add.focus();
        },
      },
      "×",
    );
    const row = h("li", {}, box(0), h("span", {}, "from the left,"), box(1), h("span", {}, "from below"), drop);
    return row;
  }

  #addRow() {
    const row = this.#row([null, null], this.#rows.childElementCount);
    this.#rows.append(row);
    row.querySelector("input")?.focus();
  }

  #take() {
    const rows = [...this.#rows.children].map((row) => [...row.querySelectorAll("input")].map((box) => box.value));
    if (rows.some((row) => row.some((text) => text.trim() === ""))) return;
    const points = rows.map((row) => row.map(typed));
    const bad = points.some((point) => point.some((number) => number === null));
    const value = /** @type {[number, number][]} */ (points);
    if (bad || this.#events.set(this.#choice.key, value) !== null) {
      say(this.refused, `This was not taken. Allowed: ${allowed(this.#choice)}. Nothing was lost.`);
    } else {
      say(this.refused, "");
      this.#shown = JSON.stringify(value);
    }
    this.#events.settle();
  }
}
