// What the workshop is making for the maker: said while it lasts, with a way to stop it.

import { h } from "../dom.js";
import { ended } from "../words.js";
import { Stopped } from "../workshop.js";

/** @typedef {import("../workshop.js").Workshop} Workshop */
/**
 * @typedef {object} WorkEvents what a component needs that asks for files
 * @property {Workshop} workshop
 * @property {<T>(what: string, ask: (workshop: Workshop) => Promise<T>) => Promise<T | null>} make null when it was stopped or went wrong
 * @property {(text: string) => void} said
 */

/** What is done sooner needs no words. */
const PAUSE_MS = 400;

export class Work {
  #place;
  #workshop;
  /** @type {{ said: (text: string) => void, wrong: (text: string) => void }} */ #tell;

  /**
   * @param {HTMLElement} place a live region
   * @param {Workshop} workshop
   * @param {{ said: (text: string) => void, wrong: (text: string) => void }} tell
   */
  constructor(place, workshop, tell) {
    this.#place = place;
    this.#workshop = workshop;
    this.#tell = tell;
  }

  /**
   * @template T
   * @param {string} what as it begins a sentence
   * @param {(workshop: Workshop) => Promise<T>} ask
   * @returns {Promise<T | null>}
   */
  async make(what, ask) {
    const line = h(
      "div",
      { class: "at-work" },
      h("p", {}, `${what} is being made.`),
      h("button", { type: "button", class: "framed", onclick: () => this.#workshop.stop() }, "Stop"),
    );
    const waiting = setTimeout(() => this.#place.append(line), PAUSE_MS);
    try {
      return await ask(this.#workshop);
    } catch (error) {
      if (error instanceof Stopped) this.#tell.said(`${what}: stopped, nothing is saved.`);
      else this.#tell.wrong(`${what} could not be made: ${ended(error instanceof Error ? error.message : String(error))}`);
      return null;
    } finally {
      clearTimeout(waiting);
      line.remove();
    }
  }
}
