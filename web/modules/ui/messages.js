// What the page has to say as a whole: a damaged link, a file that was put on the bench.

import { h } from "../dom.js";

export class Messages {
  /** @type {HTMLElement} */ #place;
  /** @type {Element | null} where the keyboard was when the message came */ #before = null;

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
    const held = this.#place.contains(document.activeElement);
    this.#place.replaceChildren();
    // The button that had the keyboard's place is gone.
    if (held && this.#before instanceof HTMLElement) this.#before.focus();
  }

  /**
   * @param {string} text
   * @param {string} look
   */
  #show(text, look) {
    if (!this.#place.contains(document.activeElement)) this.#before = document.activeElement;
    const close = h("button", { type: "button", class: "quiet", onclick: () => this.clear() }, "Close");
    this.#place.replaceChildren(h("div", { class: look }, h("p", {}, text), close));
  }
}
