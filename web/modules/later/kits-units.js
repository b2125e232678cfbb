// The designs of the kits: the one on the bench, and those brought as files, packs or links.

import { h, say } from "../dom.js";
import { ended } from "../words.js";
import { Refused } from "./refused.js";

/** @typedef {import("../../wasm/panelwright.js").View} View */
/** @typedef {import("../../wasm/workshop.js").KitRequest} KitRequest */
/** @typedef {import("../../wasm/workshop.js").KitPart} KitPart */
/** @typedef {{ name: string, link: string | null, row: HTMLElement, label: HTMLElement, part: HTMLSelectElement, count: HTMLInputElement }} Unit `link` is null for the design on the bench */

/** @type {[KitPart, string][]} */
const PARTS = [
  ["case", "Whole case"],
  ["sleeve", "Sleeve only"],
  ["chassis", "Chassis only"],
];
const BENCH = "The design on the bench";

export class KitUnits {
  /** @type {import("../ui/work.js").WorkEvents} */ #events;
  #changed;
  /** @type {View | null} */ #view = null;
  /** @type {Unit[]} */ #units = [];
  #list = h("ul", { class: "kit-rows" });
  #said = h("p", { class: "kits-said", role: "status" });
  #link = h("input", { type: "text", "aria-label": "Link of a further design", placeholder: "or paste a link", autocomplete: "off", spellcheck: "false" });

  /**
   * @param {import("../ui/work.js").WorkEvents} events
   * @param {() => void} changed
   */
  constructor(events, changed) {
    this.#events = events;
    this.#changed = changed;
    const pick = h("input", { type: "file", multiple: true, accept: ".json,.zip,application/json,application/zip", class: "said", tabindex: -1, "aria-hidden": "true", onchange: () => void this.#picked(pick) });
    this.element = h(
      "div",
      {},
      this.#list,
      h(
        "form",
        {
          class: "acts compare-acts",
          onsubmit: (/** @type {Event} */ event) => {
            event.preventDefault();
            void this.#linked();
          },
        },
        h("button", { type: "button", class: "framed", onclick: () => pick.click() }, "Add design files or packs"),
        pick,
        this.#link,
        h("button", { type: "submit", class: "framed", "aria-label": "Add the design of the link" }, "Add"),
      ),
      this.#said,
    );
    this.#add(BENCH, null);
  }

  /**
   * The rows as they stand, to be kept.
   * @returns {import("./kits-kept.js").KeptUnit[]}
   */
  get rows() {
    return this.#units.map(({ name, link, part, count }) => ({ name, link, part: partOf(part), count: count.value }));
  }

  /**
   * Puts kept rows back. A design that cannot be read any more is left out, and said to be.
   * @param {import("./kits-kept.js").KeptUnit[]} rows
   * @param {string} bench link of the design on the bench
   */
  async restore(rows, bench) {
    this.#units = [];
    this.#list.replaceChildren();
    for (const row of rows) this.#add(row.link === null ? BENCH : row.name, row.link, row);
    const { workshop } = this.#events;
    /** @type {string[]} */
    const lost = [];
    try {
      await workshop.begin();
    } catch {
      // Without the workshop nothing can be judged: they stay, and whoever asks for them is told.
      return;
    }
    for (const unit of [...this.#units]) {
      if (unit.link === null) continue;
      try {
        const looked = await workshop.ask(bench, "look_at", unit.name, new TextEncoder().encode(`#${unit.link}`));
        if (looked.is !== "marked") unit.link = looked.link;
      } catch (error) {
        if (error instanceof Error && error.name === "Stopped") return;
        lost.push(unit.name);
        unit.row.remove();
        this.#units = this.#units.filter((each) => each !== unit);
      }
    }
    if (lost.length === 0) return;
    say(this.#said, `Kept from your last visit, but not to be read any more, and left out: ${lost.join(", ")}. Bring the design again.`);
    this.#changed();
  }

  /** @param {View} view */
  update(view) {
    this.#view = view;
    for (const unit of this.#units) {
      if (unit.link === null) say(unit.label, view.title ? `${view.title} (on the bench)` : BENCH);
    }
  }

  /**
   * What is wanted of each design.
   * @returns {KitRequest["units"]}
   */
  wanted() {
    return this.#units.map(({ name, link, part, count }) => {
      const many = Number(count.value);
      if (!Number.isInteger(many) || many < 1) throw new Refused(count, `${name}: how many? A whole number, 1 or more.`);
      const title = this.#view?.title ?? "";
      return {
        design: `#${link ?? this.#view?.link ?? ""}`,
        label: link === null ? title || BENCH : name,
        count: many,
        part: partOf(part),
      };
    });
  }

  /**
   * @param {string} name
   * @param {string | null} link
   * @param {{ part: KitPart, count: string }} [as]
   */
  #add(name, link, as = { part: "case", count: "1" }) {
    const label = h("span", { class: "kit-name" }, name);
    const part = h("select", { "aria-label": `Panels of ${name}`, onchange: () => this.#changed() }, ...PARTS.map(([value, word]) => h("option", { value, selected: value === as.part }, word)));
    const count = h("input", {
      type: "number",
      min: 1,
      step: 1,
      value: as.count,
      class: "kit-number",
      "aria-label": `How many of ${name}`,
      oninput: () => {
        count.removeAttribute("aria-invalid");
        this.#changed();
      },
    });
    const remove = h("button", { type: "button", class: "quiet", "aria-label": `Leave out ${name}`, onclick: () => this.#remove(unit) }, "Leave out");
    const row = h("li", {}, label, h("span", { class: "kit-fields" }, part, h("span", { class: "kit-times" }, count, " of it"), link === null ? null : remove));
    const unit = { name, link, row, label, part, count };
    this.#units.push(unit);
    this.#list.append(row);
  }

  /** @param {Unit} unit */
  #remove(unit) {
    unit.row.remove();
    this.#units = this.#units.filter((each) => each !== unit);
    // The button that had the focus is gone.
    this.#units.at(-1)?.count.focus();
    say(this.#said, `${unit.name} is left out.`);
    this.#changed();
  }

  /** @param {HTMLInputElement} pick */
  async #picked(pick) {
    const files = [...(pick.files ?? [])];
    pick.value = "";
    const bring = files.map(async (file) => ({ name: file.name, bytes: new Uint8Array(await file.arrayBuffer()) }));
    await this.#bring(await Promise.all(bring));
  }

  async #linked() {
    const text = this.#link.value.trim();
    if (text === "") {
      say(this.#said, "Paste a link first, or choose design files.");
      return;
    }
    // Without its mark a link could not be told from any other word.
    const link = text.includes("#") ? text : `#${text}`;
    if (await this.#bring([{ name: "The link", bytes: new TextEncoder().encode(link) }])) this.#link.value = "";
  }

  /**
   * Takes in the designs that can be read, and says of the others why not.
   * @param {{ name: string, bytes: Uint8Array }[]} brought
   */
  async #bring(brought) {
    const link = this.#view?.link ?? "";
    /** @type {string[]} */
    const wrong = [];
    let added = 0;
    for (const { name, bytes } of brought) {
      try {
        const looked = await this.#events.workshop.ask(link, "look_at", name, bytes);
        if (looked.is === "marked") {
          wrong.push(`${name}: this is a file of design ${looked.fingerprints.join(", ")}, not the design itself; bring its design file or its pack.`);
          continue;
        }
        this.#add(this.#free(looked.title || (name === "The link" ? `Design ${looked.fingerprint}` : name.replace(/\.(json|zip)$/i, ""))), looked.link);
        added += 1;
      } catch (error) {
        wrong.push(`${name}: ${ended(error instanceof Error ? error.message : String(error))}`);
      }
    }
    const said = added === 0 ? "" : `${added === 1 ? "1 design" : `${added} designs`} added. `;
    say(this.#said, `${said}${wrong.join(" ")}${wrong.length > 0 ? " Nothing was lost." : ""}`);
    if (added > 0) this.#changed();
    return wrong.length === 0;
  }

  /**
   * A name that no other design of the kits has.
   * @param {string} name
   */
  #free(name) {
    const taken = (/** @type {string} */ one) => this.#units.some((unit) => unit.name === one);
    let free = name;
    for (let number = 2; taken(free); number += 1) free = `${name} (${number})`;
    return free;
  }
}

/** @param {HTMLSelectElement} list */
function partOf(list) {
  return PARTS.find(([each]) => each === list.value)?.[0] ?? "case";
}
