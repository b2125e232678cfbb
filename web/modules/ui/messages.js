// What the page has to say as a whole: a damaged link, a file that was put on the bench.

import { h } from "../dom.js";

export class Messages {
  /** @type {HTMLElement} */ #place;

  /** @param {HTMLElement} place */
  constructor(place) {
    this.#place = place;
  }

  /** @param {string} text */
  say(text) {
    this.#show(text, "message");
  }

  /** @param {string} text */
  wrong(text) {
    this.#show(text, "message wrong");
  }

  clear() {
    this.#place.replaceChildren();
  }

  /**
   * @param {string} text
   * @param {string} look
   */
  #show(text, look) {
    const close = h("button", { type: "button", class: "quiet", onclick: () => this.clear() }, "Close");
    this.#place.replaceChildren(h("div", { class: look }, h("p", {}, text), close));
  }
}
