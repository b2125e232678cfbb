// A field for one number: what fits is taken while it is typed, what does not is refused in words beside it and
// loses nothing.

import { h, say, unique, wide } from "../dom.js";
import { allowed, plain, typed } from "../words.js";

/** @typedef {import("../../wasm/panelwright.js").Choice} Choice */
/** @typedef {import("../../wasm/panelwright.js").Value} Value */

/**
 * What a control tells the page.
 * @typedef {object} ChoiceEvents
 * @property {(key: string, value: Value) => string | null} set takes a value; a text is the reason of a refusal
 * @property {() => void} settle ends a run of small changes that undo takes back together
 */

export class NumberBox {
  /** @type {Choice} */ #choice;
  /** @type {ChoiceEvents} */ #events;
  /** @type {Value} */ #value = null;
  #wrong = false;

  /**
   * @param {Choice} choice of kind "number"
   * @param {ChoiceEvents} events
   * @param {{ label?: string, describedBy?: string, placeholder?: string }} [options]
   */
  constructor(choice, events, options = {}) {
    this.#choice = choice;
    this.#events = events;
    const { kind } = choice;
    if (kind.type !== "number") throw new Error(`${choice.key} is no number`);
    const refusedId = unique("refused");
    this.refused = h("span", { class: "refused", id: refusedId, "aria-live": "polite" });
    this.input = h("input", {
      type: "text",
      role: "spinbutton",
      inputmode: Number.isInteger(kind.step) && kind.unit === "" ? "numeric" : "decimal",
      autocomplete: "off",
      spellcheck: "false",
      "aria-valuemin": kind.min,
      "aria-valuemax": kind.max,
      "aria-label": options.label,
      "aria-describedby": [options.describedBy, refusedId].filter(Boolean).join(" "),
      placeholder: options.placeholder,
      oninput: () => this.#typing(),
      onchange: () => this.#done(),
      onblur: () => this.#events.settle(),
      onkeydown: (/** @type {KeyboardEvent} */ event) => this.#key(event),
    });
  }

  /** @param {Value} value */
  update(value) {
    const changed = value !== this.#value;
    this.#value = value;
    const own = document.activeElement === this.input;
    if (changed && typed(this.input.value) === value) this.#accept();
    else if (changed || (!own && !this.#wrong)) {
      if (!own || typed(this.input.value) !== value) this.#show();
    }
    if (value === null) this.input.removeAttribute("aria-valuenow");
    else this.input.setAttribute("aria-valuenow", String(value));
    this.input.setAttribute("aria-valuetext", value === null ? "left open" : `${value} ${this.#unit()}`.trim());
    wide(this.input, Math.max(2, this.input.value.length || (this.input.placeholder || "").length));
  }

  #unit() {
    return this.#choice.kind.type === "number" ? this.#choice.kind.unit : "";
  }

  #show() {
    this.input.value = this.#value === null ? "" : plain(Number(this.#value));
    this.#accept();
  }

  #accept() {
    this.#wrong = false;
    this.input.removeAttribute("aria-invalid");
    say(this.refused, "");
  }

  #typing() {
    const number = typed(this.input.value);
    if (number !== null && this.#events.set(this.#choice.key, number) === null) this.#accept();
  }

  #done() {
    const text = this.input.value.trim();
    const { kind } = this.#choice;
    const number = typed(text);
    if (text === "" && kind.type === "number" && kind.optional) {
      this.#events.set(this.#choice.key, null);
      this.#accept();
    } else if (text === "") {
      this.#refuse("A number is needed here.");
    } else if (number === null) {
      this.#refuse(`“${text}” is not a number.`);
    } else if (this.#events.set(this.#choice.key, number) !== null) {
      this.#refuse(`${text} is not possible.`);
    } else {
      this.#show();
    }
    this.#events.settle();
  }

  /** @param {string} why */
  #refuse(why) {
    this.#wrong = true;
    this.input.setAttribute("aria-invalid", "true");
    const kept = this.#value === null ? "It is still open" : `It is still ${plain(Number(this.#value))} ${this.#unit()}`.trim();
    say(this.refused, `${why} Allowed: ${allowed(this.#choice)}. ${kept}; nothing was lost.`);
  }

  /** @param {KeyboardEvent} event */
  #key(event) {
    const { kind } = this.#choice;
    if (kind.type !== "number") return;
    if (event.key === "Enter") this.#done();
    if (event.key === "Escape" && this.#wrong) this.#show();
    const steps = { ArrowUp: 1, ArrowDown: -1, PageUp: 10, PageDown: -10 }[event.key];
    if (steps === undefined) return;
    event.preventDefault();
    const step = Math.max(kind.step, kind.unit === "mm" && kind.max > 10 ? 1 : kind.step);
    const from = typeof this.#value === "number" ? this.#value : kind.min;
    const to = Math.min(kind.max, Math.max(kind.min, Number((from + steps * step).toFixed(2))));
    if (this.#events.set(this.#choice.key, to) === null) {
      this.#value = to;
      this.#show();
      this.input.select();
    }
  }
}
