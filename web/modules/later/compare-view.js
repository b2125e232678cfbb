// What the design on the bench means for a case built already: an older design file or link is compared with it, panel
// by panel. The answer follows the design while it is on show.

import { h, say } from "../dom.js";
import { drawing } from "../picture.js";
import { Newest } from "../newest.js";
import { counted, ended, plain } from "../words.js";

/** @typedef {import("../../wasm/panelwright.js").View} View */
/** @typedef {import("../../wasm/workshop.js").Comparison} Comparison */
/** @typedef {import("../ui/work.js").WorkEvents} CompareEvents */
/** @typedef {{ name: string, text: string, link: boolean }} Old a design file, or a link, with its text */

const PAUSE_MS = 250;

/** @type {Record<string, string>} */
const VERDICTS = { unchanged: "Unchanged", "drill-more": "Drill more", trim: "Trim", recut: "Recut" };

export class CompareView {
  /** @type {CompareEvents} */ #events;
  /** @type {Old | null} what is compared with */ #old = null;
  /** @type {Old | null} what was brought last; it takes that place when it can be read */ #brought = null;
  #made = "";
  /** @type {View | null} */ #view = null;
  #waiting = 0;
  #newest;
  #said = h("p", { class: "compare-said", role: "status" });
  #answer = h("div", { class: "compared" });
  #link = h("input", { type: "text", "aria-label": "Link of the older design", placeholder: "or paste its link", autocomplete: "off", spellcheck: "false" });

  /**
   * @param {HTMLElement} container
   * @param {HTMLElement} _tools
   * @param {CompareEvents} events
   */
  constructor(container, _tools, events) {
    this.#events = events;
    this.#newest = new Newest(
      async (link) => ({ link, old: this.#brought, found: await this.#compare(link) }),
      ({ link, old, found }) => {
        this.#old = old;
        this.#made = link;
        if (old && found) this.#show(old.name, found);
      },
      (why) => {
        say(this.#said, `${this.#brought?.name ?? "It"} cannot be read: ${ended(why.message)} Nothing was lost.`);
        this.#brought = this.#old;
      },
    );
    const pick = h("input", { type: "file", accept: ".json,application/json", class: "said", tabindex: -1, "aria-hidden": "true", onchange: () => void this.#file(pick) });
    container.append(
      h(
        "div",
        { class: "papers", tabindex: "0", role: "region", "aria-label": "Compare with an older design" },
        h("p", {}, "A case is built already, or its panels are cut? Bring the design it was made from, and see which panels stay, which want more holes, and which are to be cut again."),
        h(
          "form",
          {
            class: "acts compare-acts",
            onsubmit: (/** @type {Event} */ event) => {
              event.preventDefault();
              const text = this.#link.value.trim();
              if (text === "") say(this.#said, "Paste a link first, or choose a design file.");
              else this.#take({ name: "the link", text, link: true });
            },
          },
          h("button", { type: "button", class: "framed", onclick: () => pick.click() }, "Choose the older design file"),
          pick,
          this.#link,
          h("button", { type: "submit", class: "framed" }, "Compare"),
        ),
        this.#said,
        this.#answer,
      ),
    );
  }

  /** @param {View} view */
  update(view) {
    this.#view = view;
    if (!this.#old || this.#made === view.link) return;
    clearTimeout(this.#waiting);
    this.#waiting = window.setTimeout(() => this.#newest.want(view.link), PAUSE_MS);
  }

  fit() {}

  /** @param {HTMLInputElement} pick */
  async #file(pick) {
    const file = pick.files?.[0];
    pick.value = "";
    if (file) this.#take({ name: file.name, text: await file.text(), link: false });
  }

  /** @param {Old} old */
  #take(old) {
    this.#brought = old;
    if (this.#view) this.#newest.want(this.#view.link);
  }

  /** @param {string} link */
  async #compare(link) {
    const { workshop } = this.#events;
    const old = this.#brought;
    if (!old) return null;
    return workshop.ask(link, old.link ? "recut_from_link" : "recut_from_file", old.text);
  }

  /**
   * @param {string} name
   * @param {Comparison} found
   */
  #show(name, found) {
    const count = (/** @type {string} */ verdict) => found.panels.filter((panel) => panel.verdict === verdict).length;
    const sum = Object.entries(VERDICTS)
      .filter(([verdict]) => count(verdict) > 0)
      .map(([verdict, word]) => `${count(verdict)} ${word.toLowerCase()}`);
    say(this.#said, `From ${name} to the design on the bench: ${sum.join(", ")}${found.fasteners.length > 0 ? `; ${counted(found.fasteners.length, "kind")} of fasteners in other numbers` : ""}${found.cover.length > 0 ? "; other film or paint" : ""}.`);
    this.#answer.replaceChildren(
      ...found.panels.map((panel) =>
        h(
          "section",
          { class: `change is-${panel.verdict}`, "data-panel": panel.panel },
          h("h3", {}, h("span", { class: "change-word" }, VERDICTS[panel.verdict] ?? panel.verdict), ` ${panel.label}`),
          h("ul", {}, ...panel.why.map((text) => h("li", {}, text))),
          panel.picture === "" || panel.verdict === "unchanged"
            ? null
            : h("div", { class: "overlay", role: "img", "aria-label": `${panel.label}, old and new over each other` }, drawing(panel.picture)),
        ),
      ),
    );
    this.#more("Film and paint", found.cover);
    this.#more(
      "Fasteners",
      found.fasteners.map((one) => `${one.what}${one.length_mm === null ? "" : `, ${plain(one.length_mm)} mm`}: ${one.old} before, ${one.new} now`),
    );
  }

  /**
   * What changes besides the panels, when anything does.
   * @param {string} title
   * @param {string[]} lines
   */
  #more(title, lines) {
    if (lines.length === 0) return;
    this.#answer.append(h("section", { class: "change" }, h("h3", {}, title), h("ul", {}, ...lines.map((line) => h("li", {}, line)))));
  }
}
