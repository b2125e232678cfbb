// One choice among the others: label, field with unit, presets, one sentence of help, source on demand, and a way
// back to the value it had at first.

import { h, say, unique } from "../dom.js";
import { plain, valueInWords } from "../words.js";
import { NumberBox } from "./number-box.js";
import { PointsBox } from "./points-box.js";

/** @typedef {import("../../wasm/panelwright.js").Choice} Choice */
/** @typedef {import("../../wasm/panelwright.js").Value} Value */
/** @typedef {import("../../wasm/panelwright.js").View} View */
/** @typedef {import("./number-box.js").ChoiceEvents & { reset: (key: string) => void }} FieldEvents */

/** Lengths that are chosen, not found on a part or a sheet: there is nothing to measure. */
const CHOSEN = /^(drive\d\.a|fan\d\.(across|up)|button|ports|vent_|joint|stock|bracket)/;

export class Field {
  /** @type {Choice} */ choice;
  /** @type {FieldEvents} */ #events;
  /** @type {(value: Value) => void} */ #show = () => {};
  #reset;
  #helpId;

  /**
   * @param {Choice} choice
   * @param {FieldEvents} events
   */
  constructor(choice, events) {
    this.choice = choice;
    this.#events = events;
    this.#helpId = unique("help");
    const id = unique(choice.key);
    this.#reset = h(
      "button",
      {
        type: "button",
        class: "reset",
        "aria-label": `Undo this, ${choice.label}: back to ${valueInWords(choice, choice.default)}`,
        title: `Back to ${valueInWords(choice, choice.default)}`,
        onclick: () => {
          events.reset(choice.key);
          /** @type {HTMLElement | null} */ (this.element.querySelector("input, select, button"))?.focus();
        },
      },
      "Undo this",
    );
    const label =
      choice.kind.type === "points"
        ? h("span", { class: "field-label" }, choice.label)
        : h("label", { class: "field-label", for: id }, choice.label);
    const source = h(
      "details",
      { class: "source" },
      h("summary", {}, /memory/.test(choice.confidence) ? "Source: from memory" : "Source"),
      h("p", {}, choice.source),
    );
    this.element = h(
      "div",
      { class: "field", "data-key": choice.key },
      h("div", { class: "field-head" }, label, this.#reset),
      ...this.#control(id),
      h("p", { class: "help", id: this.#helpId }, choice.help),
      source,
    );
  }

  /** @param {View} view */
  update(view) {
    const { key } = this.choice;
    this.element.hidden = view.idle.has(key);
    const changed = view.changed.includes(key);
    this.#reset.hidden = !changed;
    this.element.classList.toggle("changed", changed);
    if (!this.element.hidden) this.#show(view.values[key] ?? null);
  }

  /**
   * @param {string} id
   * @returns {HTMLElement[]}
   */
  #control(id) {
    const { choice } = this;
    switch (choice.kind.type) {
      case "pick":
        return this.#pick(id, choice.kind.options);
      case "number":
        return choice.kind.optional ? this.#measure(id) : this.#number(id);
      case "switch":
        return this.#tick(id);
      case "points": {
        const box = new PointsBox(choice, this.#events);
        this.#show = (value) => box.update(value);
        return [box.element, box.refused];
      }
      case "text":
        return this.#text(id, choice.kind.max_chars);
    }
  }

  /**
   * @param {string} id
   * @param {{ name: string, label: string }[]} options
   */
  #pick(id, options) {
    const list = h(
      "select",
      {
        id,
        "aria-describedby": this.#helpId,
        onchange: () => {
          this.#events.set(this.choice.key, list.value);
          this.#events.settle();
        },
      },
      ...options.map((option) => h("option", { value: option.name }, option.label)),
    );
    this.#show = (value) => {
      if (list.value !== value) list.value = String(value);
    };
    return [list];
  }

  /** @param {string} id */
  #number(id) {
    const box = new NumberBox(this.choice, this.#events, { describedBy: this.#helpId });
    box.input.id = id;
    const presets = this.#presets();
    this.#show = (value) => {
      box.update(value);
      this.#mark(presets, value);
    };
    return [this.#withUnit(box.input), box.refused, ...presets];
  }

  /**
   * A number that may be left open, or be the maker's own measure.
   * @param {string} id
   */
  #measure(id) {
    const box = new NumberBox(this.choice, this.#events, { describedBy: this.#helpId });
    box.input.id = id;
    let wanted = false;
    /** @type {Value} */ let shown = null;
    const show = () => {
      const own = wanted || shown !== null;
      field.hidden = !own;
      leave.hidden = !own;
      measure.hidden = own;
    };
    const measure = h(
      "button",
      {
        type: "button",
        class: "framed measure",
        "aria-describedby": this.#helpId,
        onclick: () => {
          wanted = true;
          show();
          box.input.focus();
        },
      },
      h("span", {}, h("span", { class: "said" }, `${this.choice.label}: `), "Left open"),
      h("span", { class: "act" }, this.choice.kind.type === "number" && this.choice.kind.unit === "mm" && !CHOSEN.test(this.choice.key) ? "Measure mine" : "Set it"),
    );
    const leave = h(
      "button",
      {
        type: "button",
        class: "quiet",
        onclick: () => {
          wanted = false;
          this.#events.set(this.choice.key, null);
          this.#events.settle();
          show();
          measure.focus();
        },
      },
      h("span", { class: "said" }, `${this.choice.label}: `),
      "Leave open",
    );
    const field = this.#withUnit(box.input);
    const presets = this.#presets();
    this.#show = (value) => {
      if (value !== null) wanted = false;
      shown = value;
      box.update(value);
      this.#mark(presets, value);
      show();
    };
    return [h("div", { class: "row" }, measure, field, leave), box.refused, ...presets];
  }

  /** @param {string} id */
  #tick(id) {
    const box = h("input", {
      type: "checkbox",
      id,
      "aria-describedby": this.#helpId,
      onchange: () => {
        this.#events.set(this.choice.key, box.checked);
        this.#events.settle();
      },
    });
    const word = h("span", { "aria-hidden": "true" });
    this.#show = (value) => {
      box.checked = value === true;
      say(word, value ? "yes" : "no");
    };
    return [h("label", { class: "tick" }, box, word)];
  }

  /**
   * @param {string} id
   * @param {number} most
   */
  #text(id, most) {
    const box = h("input", {
      type: "text",
      id,
      maxlength: most,
      autocomplete: "off",
      "aria-describedby": this.#helpId,
      oninput: () => this.#events.set(this.choice.key, box.value),
      onchange: () => this.#events.settle(),
    });
    this.#show = (value) => {
      if (document.activeElement !== box || box.value !== value) box.value = String(value);
    };
    return [box];
  }

  /** @param {HTMLElement} input */
  #withUnit(input) {
    const unit = this.choice.kind.type === "number" ? this.choice.kind.unit : "";
    return h("span", { class: "with-unit" }, input, h("span", { class: "unit", "aria-hidden": "true" }, unit));
  }

  /** @returns {HTMLElement[]} one row of buttons, or none */
  #presets() {
    const { kind } = this.choice;
    if (kind.type !== "number" || kind.presets.length === 0) return [];
    const { unit } = kind;
    return [
      h(
        "div",
        { class: "presets", role: "group", "aria-label": `${this.choice.label}: usual values` },
        ...kind.presets.map((preset) =>
          h(
            "button",
            {
              type: "button",
              "data-value": preset.value,
              "aria-label": `${preset.label === plain(preset.value) ? "" : `${preset.label}: `}${plain(preset.value)} ${unit}`.trim(),
              onclick: () => {
                this.#events.set(this.choice.key, preset.value);
                this.#events.settle();
              },
            },
            preset.label,
          ),
        ),
      ),
    ];
  }

  /**
   * Marks the preset in effect.
   * @param {HTMLElement[]} rows
   * @param {Value} value
   */
  #mark(rows, value) {
    for (const button of rows[0]?.querySelectorAll("button") ?? []) {
      button.setAttribute("aria-pressed", String(button.dataset.value === String(value)));
    }
  }
}
