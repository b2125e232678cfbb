// The margin: what someone who has checked the drawing would write beside it. Each note has its own number in a shape
// that says how much it weighs.

import { arrange, h, s, say } from "../dom.js";
import { valueInWords } from "../words.js";

/** @typedef {import("../../wasm/panelwright.js").View} View */
/** @typedef {import("../../wasm/panelwright.js").Finding} Finding */
/** @typedef {"all" | Finding["severity"]} Filter */
/** @typedef {import("../../wasm/panelwright.js").Choice} Choice */
/** @typedef {import("../../wasm/panelwright.js").Value} Value */
/**
 * @typedef {object} MarginEvents
 * @property {(index: number | null) => void} show
 * @property {() => void} arranged
 * @property {(changes: [string, Value][]) => void} setAll
 */

const WORDS = { blocks: "Blocks", caution: "Caution", note: "Note" };
const SEVERITIES = /** @type {const} */ (["blocks", "caution", "note"]);

export class Margin {
  /** @type {Choice[]} */ #choices;
  /** @type {MarginEvents} */ #events;
  /** @type {Filter} */ #filter = "all";
  /** @type {View | null} */ #view = null;
  /** @type {number | null} */ #selected = null;
  /** @type {Map<string, HTMLLIElement>} */ #notes = new Map();
  /** @type {HTMLLIElement[]} */ #shown = [];
  /** @type {WeakMap<HTMLLIElement, string>} what each note says: most changes leave most of them as they are */
  #written = new WeakMap();
  #verdict = h("p", { class: "verdict" });
  #filters;
  #list = h("ol", { class: "notes" });

  /**
   * @param {HTMLElement} container
   * @param {Choice[]} choices
   * @param {MarginEvents} events
   */
  constructor(container, choices, events) {
    this.#choices = choices;
    this.#events = events;
    this.#filters = h(
      "div",
      { class: "filters", role: "group", "aria-label": "Which notes" },
      ...["all", ...SEVERITIES].map((name) =>
        h(
          "button",
          {
            type: "button",
            class: "quiet",
            "data-filter": name,
            title: name === "all" ? undefined : WORDS[/** @type {Finding["severity"]} */ (name)],
            onclick: () => {
              this.#filter = /** @type {Filter} */ (name);
              if (this.#view) this.update(this.#view);
              this.#events.arranged();
            },
          },
          name === "all" ? h("span", {}, "All") : balloon(/** @type {Finding["severity"]} */ (name), ""),
          h("span", { class: "filter-count" }),
          name === "all" ? null : h("span", { class: "said" }, ` ${name}`),
        ),
      ),
    );
    this.scroller = h("div", { class: "notes-scroll", tabindex: 0, role: "group", "aria-label": "List of notes" }, this.#verdict, this.#list);
    container.append(this.#filters, this.scroller);
    this.scroller.addEventListener("scroll", () => events.arranged(), { passive: true });
  }

  /** @param {View} view */
  update(view) {
    this.#view = view;
    this.#count(view);
    say(this.#verdict, view.verdict);
    this.#verdict.classList.toggle("clear", view.counts.blocks === 0);
    const { chosen } = this;
    // Notes that stay are kept, so that the keyboard keeps its place and nothing jumps.
    /** @type {Map<string, HTMLLIElement>} */
    const kept = new Map();
    this.#shown = view.findings.map((finding, index) => {
      const name = nameOf(finding, kept);
      const note = this.#notes.get(name) ?? this.#note(finding);
      kept.set(name, note);
      const words = JSON.stringify([index, finding]);
      if (this.#written.get(note) !== words) {
        this.#written.set(note, words);
        fill(note, finding, index);
        this.#offer(note, finding);
      }
      note.hidden = this.#filter !== "all" && this.#filter !== finding.severity;
      return note;
    });
    this.#notes = kept;
    arrange(this.#list, this.#shown);
    if (!chosen) return;
    // Others may have come before it; with its trouble gone nothing is chosen.
    const index = this.#shown.indexOf(chosen);
    this.#selected = index < 0 ? null : index;
    if (index < 0) this.#events.show(null);
  }

  /** @param {number | null} index */
  select(index) {
    this.#selected = index;
    this.#shown.forEach((note, at) => {
      note.classList.toggle("selected", at === index);
      note.querySelector(".note-button")?.setAttribute("aria-pressed", String(at === index));
    });
  }

  /** The note that is chosen. */
  get chosen() {
    return this.#selected === null ? null : (this.#shown[this.#selected] ?? null);
  }

  get selected() {
    return this.#selected;
  }

  /**
   * The notes that can be seen now, with the place their leader line starts at, in pixels of the window.
   * @returns {{ index: number, severity: Finding["severity"], x: number, y: number }[]}
   */
  places() {
    const window = this.scroller.getBoundingClientRect();
    return this.#shown.flatMap((note, index) => {
      if (note.hidden) return [];
      const box = note.querySelector(".balloon")?.getBoundingClientRect();
      const severity = this.#view?.findings[index]?.severity;
      if (!box || !severity) return [];
      const y = box.top + box.height / 2;
      const seen = y > window.top && y < window.bottom;
      return seen ? [{ index, severity, x: box.left, y }] : [];
    });
  }

  /** @param {View} view */
  #count(view) {
    for (const button of this.#filters.querySelectorAll("button")) {
      const name = button.dataset.filter ?? "all";
      const count = name === "all" ? view.findings.length : view.counts[/** @type {Finding["severity"]} */ (name)];
      const place = button.querySelector(".filter-count");
      if (place) say(place, String(count));
      button.setAttribute("aria-pressed", String(name === this.#filter));
    }
  }

  /** @param {Finding} finding */
  #note(finding) {
    const note = h(
      "li",
      { class: `note is-${finding.severity}` },
      balloon(finding.severity, ""),
      h(
        "div",
        {},
        h(
          "button",
          {
            type: "button",
            class: "note-button",
            "aria-pressed": "false",
            onclick: () => {
              const index = this.#shown.indexOf(note);
              this.#events.show(index === this.#selected ? null : index);
            },
          },
          h("span", { class: "note-word" }, WORDS[finding.severity]),
          h("span", { class: "note-what" }),
        ),
        h("p", { class: "note-remedy" }),
        h("div", { class: "presets mends", role: "group", "aria-label": "Make a change" }),
        h("details", { class: "source", ontoggle: () => this.#events.arranged() }, h("summary", {}, "Source"), h("p", { class: "note-source" })),
      ),
    );
    return note;
  }

  /**
   * Offers each change that clears a finding by itself as a button.
   * @param {HTMLElement} note
   * @param {Finding} finding
   */
  #offer(note, finding) {
    const place = /** @type {HTMLElement} */ (note.querySelector(".mends"));
    const words = finding.mends.map((mend) => Object.entries(mend).map(([key, value]) => this.#words(key, value)).join(", "));
    // The same offers keep their buttons, and the keyboard its place.
    if (place.dataset.words === words.join()) return;
    place.dataset.words = words.join();
    place.replaceChildren(
      ...finding.mends.map((mend, index) =>
        h(
          "button",
          {
            type: "button",
            title: "Make this change; undo takes it back",
            onclick: () => {
              // The note goes with its trouble, and the button with it.
              this.scroller.focus({ preventScroll: true });
              this.#events.setAll(Object.entries(mend));
            },
          },
          words[index],
        ),
      ),
    );
  }

  /**
   * A choice with a new value, so that it can be read away from its group: "Feet, their height: 36 mm".
   * @param {string} key
   * @param {Value} value
   */
  #words(key, value) {
    const choice = this.#choices.find((one) => one.key === key);
    if (!choice) return key;
    const { label, group_label } = choice;
    const [stem] = /^\w+\d\./.exec(key) ?? [];
    const thing = stem ? this.#choices.find((one) => one.key.startsWith(stem))?.label : /\b(its?|their|that)\b|, measured/i.test(label) ? group_label : "";
    return `${thing ? `${thing}, ${label.charAt(0).toLowerCase()}${label.slice(1)}` : label}: ${valueInWords(choice, value)}`;
  }
}

/**
 * A name that stays when only the numbers of a finding change.
 * @param {Finding} finding
 * @param {Map<string, unknown>} taken
 */
function nameOf(finding, taken) {
  const stem = `${finding.severity} ${finding.rule} ${finding.about.join(" ")}`;
  let name = stem;
  for (let again = 2; taken.has(name); again += 1) name = `${stem} ${again}`;
  return name;
}

/**
 * @param {HTMLElement} note
 * @param {Finding} finding
 * @param {number} index
 */
function fill(note, finding, index) {
  const put = (/** @type {string} */ place, /** @type {string} */ text) => {
    const element = note.querySelector(place);
    if (element) say(element, text);
  };
  put(".balloon text", String(index + 1));
  put(".note-what", finding.text);
  put(".note-remedy", finding.remedy);
  put(".note-source", finding.source);
  const remedy = /** @type {HTMLElement | null} */ (note.querySelector(".note-remedy"));
  if (remedy) remedy.hidden = finding.remedy === "";
}

/** Outlines: a plate with cut corners stops, a triangle warns, a circle tells. */
const SHAPES = {
  blocks: "M8 2h12l6 6v12l-6 6H8l-6-6V8z",
  caution: "M14 2.500 27 25.500H1z",
  note: "M14 2a12 12 0 1 1 0 24a12 12 0 1 1 0-24z",
};

/**
 * The number of a note in the shape of its weight.
 * @param {Finding["severity"]} severity
 * @param {string} text
 */
export function balloon(severity, text) {
  const number = s("text", { x: 14, y: severity === "caution" ? 22.5 : 18.6, "text-anchor": "middle" });
  number.textContent = text;
  return s(
    "svg",
    { class: `balloon is-${severity}`, viewBox: "0 0 28 28", "aria-hidden": "true" },
    s("path", { d: SHAPES[severity] }),
    number,
  );
}
