// Tells a screen reader what a change did, once things have come to rest.

import { counted, tenths } from "../words.js";

const PAUSE_MS = 600;

export class Announcer {
  /** @type {HTMLElement} */ #place;
  #waiting = 0;
  #told = "";

  /** @param {HTMLElement} place a live region */
  constructor(place) {
    this.#place = place;
  }

  /** @param {import("../../wasm/panelwright.js").View} view */
  tell(view) {
    const [width, depth, height] = view.case.outside_mm;
    const { blocks, caution, note } = view.counts;
    const fit = blocks > 0 ? `${blocks} in the way` : "Nothing stands in the way";
    const text = `Outside ${tenths(width)} wide, ${tenths(depth)} deep, ${tenths(height)} high. ${fit}, ${counted(caution, "caution")}, ${counted(note, "note")}.`;
    const first = this.#told === "";
    if (text === this.#told) return;
    this.#told = text;
    if (!first) this.say(text);
  }

  /** @param {string} text */
  say(text) {
    clearTimeout(this.#waiting);
    this.#waiting = window.setTimeout(() => {
      this.#place.textContent = text;
    }, PAUSE_MS);
  }
}
