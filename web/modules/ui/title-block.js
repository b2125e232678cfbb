// The title block of the drawing sheet: the case in figures, and the name of the design.

import { h, say } from "../dom.js";
import { plain, tenths } from "../words.js";

/** @typedef {import("../../wasm/panelwright.js").View} View */

/** Square millimetres of a square metre. */
const MM2_PER_M2 = 1e6;

export class TitleBlock {
  /** @type {((view: View) => void)[]} */ #updates = [];

  /**
   * @param {HTMLElement} container
   * @param {import("../../wasm/panelwright.js").Choice[]} choices
   * @param {import("./number-box.js").ChoiceEvents} events
   */
  constructor(container, choices, events) {
    const title = choices.find((choice) => choice.key === "design.title");
    const most = title?.kind.type === "text" ? title.kind.max_chars : 60;
    const name = h("input", {
      type: "text",
      id: "title-block-name",
      maxlength: most,
      placeholder: "give it a name",
      autocomplete: "off",
      oninput: () => events.set("design.title", name.value),
      onchange: () => events.settle(),
    });
    this.#updates.push((view) => {
      if (document.activeElement !== name) name.value = view.title;
    });
    container.append(
      h(
        "dl",
        { class: "figures" },
        h("div", { class: "name" }, h("dt", {}, h("label", { for: "title-block-name" }, "Design")), h("dd", {}, name)),
        this.#figure("Outside, W × D × H", (view) => `${view.case.outside_mm.map(tenths).join(" × ")} mm`, "outside"),
        this.#figure("Volume", (view) => `${tenths(view.case.volume_l)} l`),
        this.#figure("Sheet used", (view) => `${plain(view.case.sheet_mm2 / MM2_PER_M2, 3)} m²`),
        this.#figure("Panels", (view) => String(view.panels.length)),
      ),
    );
  }

  /** @param {View} view */
  update(view) {
    for (const update of this.#updates) update(view);
  }

  /**
   * @param {string} label
   * @param {(view: View) => string} words
   * @param {string} [look]
   */
  #figure(label, words, look) {
    const value = h("dd");
    this.#updates.push((view) => say(value, words(view)));
    return h("div", { class: look }, h("dt", {}, label), value);
  }
}
