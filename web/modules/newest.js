// What follows a design on show: one request at a time, and always for the newest design.

/** @template T */
export class Newest {
  /** @type {(link: string) => Promise<T>} */ #ask;
  /** @type {(answer: T) => void} */ #show;
  /** @type {(why: Error) => void} */ #wrong;
  /** @type {string | null} */ #wanted = null;
  #asking = false;

  /**
   * @param {(link: string) => Promise<T>} ask
   * @param {(answer: T) => void} show what to do with an answer that is still wanted
   * @param {(why: Error) => void} wrong
   */
  constructor(ask, show, wrong) {
    this.#ask = ask;
    this.#show = show;
    this.#wrong = wrong;
  }

  /** @param {string} link */
  want(link) {
    this.#wanted = link;
    if (!this.#asking) void this.#turn();
  }

  async #turn() {
    this.#asking = true;
    while (this.#wanted !== null) {
      const link = this.#wanted;
      this.#wanted = null;
      const done = await this.#ask(link).then(
        (answer) => () => this.#show(answer),
        (error) => () => this.#wrong(error instanceof Error ? error : new Error(String(error))),
      );
      if (this.#wanted === null) done();
    }
    this.#asking = false;
  }
}
