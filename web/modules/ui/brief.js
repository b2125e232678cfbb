// The brief: one sentence that says what is built. Its underlined values are real controls, edited in place.

import { h, say, wide } from "../dom.js";
import { article, inWords } from "../words.js";
import { NumberBox } from "./number-box.js";

/** @typedef {import("../../wasm/panelwright.js").Choice} Choice */
/** @typedef {import("../../wasm/panelwright.js").Value} Value */
/** @typedef {import("../../wasm/panelwright.js").View} View */
/** @typedef {import("./number-box.js").ChoiceEvents & { setAll: (changes: [string, Value][]) => void, reset: (key: string) => void }} BriefEvents */

/** Options as they read inside the sentence, where the list's own label does not fit it. */
const WORDING = /** @type {Record<string, Record<string, string>>} */ ({
  "cooler.kind": { none: "no" },
  "card.kind": { none: "no", "low-profile": "low-profile", standard: "standard-height" },
  "supply.kind": { "full-size": "full-size" },
  "size.rule": { paper: "no panel larger than", smallest: "as small as the parts allow", given: "outside" },
});

export class Brief {
  /** @type {Map<string, Choice>} */ #choices;
  /** @type {BriefEvents} */ #events;
  /** @type {((view: View) => void)[]} */ #updates = [];
  /** @type {View | null} */ #view = null;
  /** The kinds of all drives a design may have. */
  #driveKeys;
  #refusals = h("div");

  /**
   * @param {HTMLElement} container
   * @param {Choice[]} choices
   * @param {BriefEvents} events
   */
  constructor(container, choices, events) {
    this.#choices = new Map(choices.map((choice) => [choice.key, choice]));
    this.#driveKeys = choices.map(({ key }) => key).filter((key) => /^drive\d+\.kind$/.test(key));
    this.#events = events;
    container.querySelector("#loading")?.remove();
    container.append(this.#sentence(), this.#refusals);
  }

  /** @param {View} view */
  update(view) {
    for (const update of this.#updates) update(view);
  }

  #sentence() {
    const is = (/** @type {string} */ key, /** @type {string} */ name) => (/** @type {View} */ view) =>
      view.values[key] === name;
    const not = (/** @type {string} */ key, /** @type {string} */ name) => (/** @type {View} */ view) =>
      view.values[key] !== name;
    return h(
      "p",
      { class: "sentence" },
      "A case of ",
      this.#number("sheet.nominal", " mm "),
      this.#pick("sheet.material"),
      " for ",
      this.#article("board.form"),
      this.#pick("board.form"),
      " board with ",
      this.#when(not("cooler.kind", "none"), "a ", this.#number("cooler.height", " mm ")),
      this.#pick("cooler.kind"),
      " cooler, ",
      this.#when(not("card.kind", "none"), "a ", this.#count("card.slots"), "-slot "),
      this.#pick("card.kind"),
      " card",
      this.#when(not("card.kind", "none"), " ", this.#number("card.length", " mm long")),
      " and ",
      this.#article("supply.kind"),
      this.#pick("supply.kind"),
      this.#when(
        not("supply.kind", "brick"),
        " supply ",
        this.#number("supply.depth", " mm deep", "of usual depth"),
      ),
      ", with ",
      this.#drives("2.5", "2.5 in drive"),
      " and ",
      this.#drives("3.5", "3.5 in drive"),
      "; ",
      this.#pick("size.rule"),
      this.#when(is("size.rule", "paper"), " ", this.#pick("size.paper")),
      this.#when(
        is("size.rule", "given"),
        " ",
        this.#number("size.width", " × "),
        this.#number("size.depth", " × "),
        this.#number("size.height", " mm"),
      ),
      ".",
    );
  }

  /** @param {string} key */
  #choice(key) {
    const choice = this.#choices.get(key);
    if (!choice) throw new Error(`no choice ${key}`);
    return choice;
  }

  /**
   * Part of the sentence that is there only sometimes.
   * @param {(view: View) => boolean} test
   * @param {...(Node | string)} parts
   */
  #when(test, ...parts) {
    const span = h("span", {}, ...parts);
    this.#updates.push((view) => {
      span.hidden = !test(view);
    });
    return span;
  }

  /**
   * "a " or "an " before the option in effect.
   * @param {string} key
   */
  #article(key) {
    const text = document.createTextNode("a ");
    this.#updates.push((view) => say(text, `${article(this.#word(key, String(view.values[key])))} `));
    return text;
  }

  /**
   * @param {string} key
   * @param {string} name
   */
  #word(key, name) {
    const { kind } = this.#choice(key);
    const label = kind.type === "pick" ? kind.options.find((option) => option.name === name)?.label : undefined;
    return WORDING[key]?.[name] ?? label ?? name;
  }

  /** @param {string} key */
  #pick(key) {
    const choice = this.#choice(key);
    const options = choice.kind.type === "pick" ? choice.kind.options : [];
    const list = this.#list(
      choice.label,
      options.map((option) => [option.name, this.#word(key, option.name)]),
      (name) => {
        this.#events.set(key, name);
        this.#events.settle();
      },
    );
    this.#updates.push((view) => this.#show(list, String(view.values[key])));
    return list;
  }

  /**
   * A small count as a word.
   * @param {string} key
   */
  #count(key) {
    const choice = this.#choice(key);
    const { min, max } = choice.kind.type === "number" ? choice.kind : { min: 0, max: 0 };
    const counts = Array.from({ length: max - min + 1 }, (_, index) => min + index);
    const list = this.#list(
      choice.label,
      counts.map((count) => [String(count), inWords(count)]),
      (name) => {
        this.#events.set(key, Number(name));
        this.#events.settle();
      },
    );
    this.#updates.push((view) => this.#show(list, String(view.values[key])));
    return list;
  }

  /**
   * A number and the words behind it; `open` are the words of one left open.
   * @param {string} key
   * @param {string} behind
   * @param {string} [open]
   */
  #number(key, behind, open) {
    const choice = this.#choice(key);
    const unit = choice.kind.type === "number" ? choice.kind.unit : "";
    const box = new NumberBox(choice, this.#events, { label: `${choice.label}, ${unit}`, placeholder: open });
    this.#refusals.append(box.refused);
    const after = document.createTextNode(behind);
    this.#updates.push((view) => {
      const value = view.values[key] ?? null;
      box.update(value);
      say(after, value === null && open !== undefined ? "" : behind);
    });
    return h("span", {}, box.input, after);
  }

  /**
   * How many drives of a width: the design has places for some, this fills and empties them.
   * @param {string} kind
   * @param {string} words
   */
  #drives(kind, words) {
    const list = this.#list(
      `How many ${words}s`,
      Array.from({ length: this.#driveKeys.length + 1 }, (_, count) => [String(count), inWords(count)]),
      (name) => this.#setDrives(kind, Number(name)),
    );
    const noun = document.createTextNode("");
    this.#updates.push((view) => {
      this.#view = view;
      const count = this.#driveKeys.filter((key) => view.values[key] === kind).length;
      const free = this.#driveKeys.filter((key) => view.values[key] === "none").length;
      for (const option of list.options) option.disabled = Number(option.value) > count + free;
      this.#show(list, String(count));
      say(noun, ` ${words}${count === 1 ? "" : "s"}`);
    });
    return h("span", {}, list, noun);
  }

  /**
   * @param {string} kind
   * @param {number} wanted
   */
  #setDrives(kind, wanted) {
    const values = this.#view?.values ?? {};
    const of = (/** @type {string} */ name) => this.#driveKeys.filter((key) => values[key] === name);
    const there = of(kind);
    /** @type {[string, Value][]} */
    const changes =
      wanted > there.length
        ? of("none").slice(0, wanted - there.length).map((key) => [key, kind])
        : there.slice(wanted).map((key) => [key, "none"]);
    this.#events.setAll(changes);
  }

  /**
   * @param {string} label
   * @param {[string, string][]} options
   * @param {(name: string) => void} take
   */
  #list(label, options, take) {
    const list = h(
      "select",
      { "aria-label": label, onchange: () => take(list.value) },
      ...options.map(([name, word]) => h("option", { value: name }, word)),
    );
    return list;
  }

  /**
   * @param {HTMLSelectElement} list
   * @param {string} name
   */
  #show(list, name) {
    if (list.value !== name) list.value = name;
    wide(list, list.selectedOptions[0]?.text.length ?? 4);
  }
}
