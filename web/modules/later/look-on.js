// A search for a better layout that looks on until none can be better or the maker has seen enough, with its bar and the
// button that stops it or has it look further.

import { h, say } from "../dom.js";

/** @typedef {import("../workshop.js").Search} Search */
/**
 * @template T
 * @typedef {import("../workshop.js").Progress<T>} Progress
 */
/**
 * @template T
 * @typedef {object} Looks
 * @property {string} bar what the bar stands for
 * @property {string} further what the button offers while nobody looks
 * @property {(until: number, told: (progress: Progress<T>) => void) => Search} search asks the workshop for so many steps in all
 * @property {(found: T) => void} found a better one
 * @property {(message: string) => void} failed
 * @property {() => void} [told] after anything has changed
 */

/** After so many steps the search rests until it is asked to go on. */
const ENOUGH = 100_000_000;

/** @template T */
export class LookOn {
  /** @type {Looks<T>} */ #how;
  /** @type {Search | null} */ #search = null;
  /** @type {Progress<T>} */ #progress = { steps: 0, done: false };
  #until = ENOUGH;
  bar;
  button;

  /** @param {Looks<T>} how */
  constructor(how) {
    this.#how = how;
    this.bar = h("progress", { max: 100, "aria-label": how.bar, hidden: true });
    this.button = h("button", { type: "button", class: "framed", hidden: true, onclick: () => this.#toggle() }, "Stop");
  }

  /** Whether it is looking now. */
  get looks() {
    return this.#search !== null;
  }

  /** Looks for something else. */
  begin() {
    this.#search?.stop();
    this.#until = ENOUGH;
    this.#progress = { steps: 0, done: false };
    this.#go();
  }

  /** Looks on after a rest, unless there is nothing more to find or the maker has seen enough. */
  resume() {
    if (!this.#search && !this.#progress.done && this.#progress.steps < this.#until) this.#go();
  }

  /** Nobody looks on: the search rests. */
  rest() {
    this.#search?.stop();
  }

  /** From where the search stood. */
  #go() {
    const search = this.#how.search(this.#until, (progress) => {
      if (this.#search !== search) return;
      this.#progress = progress;
      if (progress.found) this.#how.found(progress.found);
      this.tell();
    });
    this.#search = search;
    this.tell();
    search.ended
      .catch((error) => {
        if (this.#search !== search || error.name === "Stopped") return;
        this.#progress = { steps: 0, done: true };
        this.#how.failed(error.message);
      })
      .finally(() => {
        if (this.#search !== search) return;
        this.#search = null;
        this.tell();
      });
  }

  #toggle() {
    if (this.#search) {
      this.#until = 0;
      this.#search.stop();
    } else {
      this.#until = this.#progress.steps + ENOUGH;
      this.#go();
    }
  }

  /** Brings bar and button up to date. */
  tell() {
    const { steps, done } = this.#progress;
    this.bar.hidden = !this.looks;
    this.bar.value = 100 - (100 * Math.max(0, this.#until - steps)) / ENOUGH;
    this.button.hidden = done;
    say(this.button, this.looks ? "Stop" : this.#how.further);
    this.#how.told?.();
  }
}
