// Why something that was typed cannot be used, and which field holds it.

/** A field that keeps an answer from being looked for, and why. */
export class Refused extends Error {
  /**
   * @param {HTMLInputElement} input
   * @param {string} why
   */
  constructor(input, why) {
    super(why);
    this.input = input;
  }
}
