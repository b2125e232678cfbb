// The kerf test piece: its files, and what measuring it says of the laser.

import { h, say } from "../dom.js";
import { fileName, handOutCutting } from "../keep.js";
import { plain, typed } from "../words.js";

/** @typedef {import("../../wasm/panelwright.js").View} View */
/** @typedef {import("../ui/handover.js").Take} KerfEvents */

const KEY = "laser.kerf";

export class Kerf {
  /** @type {KerfEvents} */ #events;
  /** @type {View | null} */ #view = null;
  #now = h("p", {});
  #measured = h("input", {
    type: "text",
    id: "kerf-measured",
    inputmode: "decimal",
    autocomplete: "off",
    spellcheck: "false",
    "aria-describedby": "kerf-said",
    // What is said belongs to the measure before.
    oninput: () => this.#tell("", false),
  });
  #said = h("p", { class: "print-said", id: "kerf-said", role: "status" });
  #dialog;

  /** @param {KerfEvents} events */
  constructor(events) {
    this.#events = events;
    const save = (/** @type {"dxf" | "svg"} */ kind, /** @type {string} */ label) =>
      h("button", { type: "button", class: "framed", "aria-label": `Save ${label} of the kerf test piece`, onclick: () => void this.#save(kind) }, label);
    this.#dialog = h(
      "dialog",
      { class: "sources prints", "aria-labelledby": "kerf-title" },
      h(
        "div",
        { class: "dialog-head" },
        h("h2", { id: "kerf-title" }, "Kerf test"),
        h("button", { type: "button", class: "framed", onclick: () => this.#dialog.close() }, "Close"),
      ),
      h(
        "div",
        { class: "dialog-body", tabindex: "0", role: "region", "aria-label": "Kerf test" },
        h("p", {}, "How wide does your laser cut in this sheet? First cut the test piece: ten pieces in a row, 100 mm as drawn."),
        h("div", { class: "acts" }, save("dxf", "DXF"), save("svg", "SVG")),
        h(
          "form",
          {
            onsubmit: (/** @type {Event} */ event) => {
              event.preventDefault();
              void this.#enter();
            },
          },
          h("p", {}, "Then push the ten loose pieces together again and measure them along the row."),
          h("label", { for: "kerf-measured" }, "They measure together, mm"),
          h("div", { class: "acts" }, this.#measured, h("button", { type: "submit", class: "framed" }, "Enter")),
          this.#said,
        ),
        this.#now,
      ),
    );
    document.body.append(this.#dialog);
  }

  /** @param {View} view */
  update(view) {
    this.#view = view;
    const kerf = view.values[KEY];
    say(this.#now, typeof kerf === "number" ? `The design allows for a cut of ${plain(kerf)} mm.` : "So far the design allows for a cut of average width in such sheet.");
  }

  show() {
    if (!this.#dialog.open) this.#dialog.showModal();
    this.#measured.focus();
  }

  /** @param {"dxf" | "svg"} kind */
  async #save(kind) {
    const link = this.#view?.link ?? "";
    const files = await this.#events.make("The kerf test piece", (workshop) => workshop.ask(link, "kerf_test", kind));
    if (files === null) return;
    await handOutCutting(fileName(this.#view?.title ?? ""), files, kind);
    this.#events.said("Kerf test piece saved. Cut it, push its pieces together and measure them.");
  }

  /** What the measure gives becomes the design's own. */
  async #enter() {
    const text = this.#measured.value.trim();
    const measured = typed(text);
    const link = this.#view?.link ?? "";
    const kerf = measured === null ? undefined : await this.#events.make("The sum", (workshop) => workshop.ask(link, "kerf", measured));
    if (kerf === null) return;
    if (kerf === undefined) {
      const what = text === "" ? "A number is needed here." : measured === null ? `“${text}” is not a number.` : `${plain(measured)} mm cannot be.`;
      this.#tell(`${what} Together the pieces measure 90 to 100 mm. Nothing was lost.`, true);
      return;
    }
    const refused = this.#events.set(KEY, kerf);
    this.#events.settle();
    this.#tell(refused ?? `Your laser's cut is ${plain(kerf)} mm wide; it is entered under “How it is made”.`, refused !== null);
  }

  /**
   * @param {string} words
   * @param {boolean} wrong
   */
  #tell(words, wrong) {
    this.#measured.setAttribute("aria-invalid", String(wrong));
    this.#said.classList.toggle("wrong", wrong);
    say(this.#said, words);
  }
}
