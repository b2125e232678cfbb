// What was done, so that it can be undone. A step is a whole design, held as its link.

/** Steps kept; a link is some hundred characters. */
const MOST = 200;

export class History {
  /** @type {string[]} */ #before = [];
  /** @type {string[]} */ #after = [];
  /** @type {string | null} */ #run = null;

  /**
   * Takes note of a design that is about to change. Changes of one run (a number being typed) are one step.
   * @param {string} link the design before the change
   * @param {string | null} run what is being changed little by little; null for a step of its own
   */
  note(link, run) {
    if (run === null || run !== this.#run) {
      this.#before.push(link);
      if (this.#before.length > MOST) this.#before.shift();
    }
    this.#run = run;
    this.#after = [];
  }

  /** Ends a run. */
  settle() {
    this.#run = null;
  }

  /**
   * @param {string} now the design as it is
   * @returns {string | null} the design to go back to
   */
  undo(now) {
    return this.#move(this.#before, this.#after, now);
  }

  /**
   * @param {string} now the design as it is
   * @returns {string | null} the design to go forward to
   */
  redo(now) {
    return this.#move(this.#after, this.#before, now);
  }

  get canUndo() {
    return this.#before.length > 0;
  }

  get canRedo() {
    return this.#after.length > 0;
  }

  /**
   * @param {string[]} from
   * @param {string[]} to
   * @param {string} now
   */
  #move(from, to, now) {
    this.#run = null;
    let link = from.pop();
    // A run that ended where it began left a step that changes nothing.
    while (link === now) link = from.pop();
    if (link === undefined) return null;
    to.push(now);
    return link;
  }
}
