// Every choice by group. A closed group says in one line what it holds; its fields are made when it is first opened.

import { h, say } from "../dom.js";
import { Field } from "./field.js";
import { Rows, placeOf } from "./rows.js";
import { summary } from "./summaries.js";

/** @typedef {import("../../wasm/panelwright.js").Choice} Choice */
/** @typedef {import("../../wasm/panelwright.js").View} View */

export class ChoicesList {
  /** @type {Group[]} */ #groups;

  /**
   * @param {HTMLElement} container
   * @param {Choice[]} choices
   * @param {import("./field.js").FieldEvents & { anew: () => void }} events
   */
  constructor(container, choices, events) {
    /** @type {Map<string, Choice[]>} */
    const groups = new Map();
    // The name of the design stands in the title block.
    for (const choice of choices.filter((one) => one.group !== "design")) groups.set(choice.group, [...(groups.get(choice.group) ?? []), choice]);
    this.#groups = [...groups].map(([name, list]) => new Group(name, list, events));
    const list = h("div", { class: "groups", id: "groups" }, ...this.#groups.map((group) => group.element));
    list.append(h("button", { type: "button", class: "framed anew", onclick: events.anew }, "Start again from the example"));
    // Where it is narrow the groups wait behind one button, so that the drawing is near.
    const more = h(
      "button",
      {
        type: "button",
        class: "framed more",
        "aria-expanded": "false",
        "aria-controls": "groups",
        onclick: () => {
          const open = container.classList.toggle("open");
          more.setAttribute("aria-expanded", String(open));
          say(more, open ? "Close the list of choices" : "Everything else you can choose");
        },
      },
      "Everything else you can choose",
    );
    container.append(more, list);
  }

  /** @param {View} view */
  update(view) {
    for (const group of this.#groups) group.update(view);
  }
}

class Group {
  /** @type {Choice[]} */ #choices;
  /** @type {import("./field.js").FieldEvents} */ #events;
  /** @type {(Field | Rows)[]} */ #fields = [];
  /** @type {View | null} */ #view = null;
  /** @type {string} */ #name;
  #line = h("span", { class: "group-line" });
  #count = h("span", { class: "group-count" });
  #body = h("div", { class: "group-body" });

  /**
   * @param {string} name
   * @param {Choice[]} choices
   * @param {import("./field.js").FieldEvents} events
   */
  constructor(name, choices, events) {
    this.#name = name;
    this.#choices = choices;
    this.#events = events;
    this.element = h(
      "details",
      {
        class: "group",
        ontoggle: () => {
          if (this.element.open) this.#open();
        },
      },
      h("summary", {}, h("h3", {}, choices[0]?.group_label), this.#line, this.#count),
      this.#body,
    );
  }

  /** @param {View} view */
  update(view) {
    this.#view = view;
    say(this.#line, summary(this.#name, view.values, this.#choices));
    const changed = this.#choices.filter((choice) => view.changed.includes(choice.key)).length;
    say(this.#count, changed > 0 ? `${changed} changed` : "");
    if (!this.element.open || this.#fields.length === 0) return;
    for (const field of this.#fields) field.update(view);
    for (const block of this.#body.children) this.#thin(/** @type {HTMLElement} */ (block), view);
  }

  #open() {
    if (this.#fields.length === 0) this.#fill();
    if (this.#view) this.update(this.#view);
  }

  /** Numbered things (drives, fans, vents) each get a block of their own; what is short stands in lines below. */
  #fill() {
    /** @type {Map<string, { lines: boolean, choices: Choice[] }>} */
    const blocks = new Map();
    for (const choice of this.#choices) {
      const stem = choice.key.split(".")[0] ?? "";
      const row = placeOf(choice)?.block;
      const name = row ?? (/\d$|^vent/.test(stem) ? stem : "");
      // What has no block of its own goes on below the lines before it.
      const last = [...blocks.keys()].at(-1) ?? "";
      const key = name !== "" ? name : blocks.get(last)?.lines ? `after ${last}` : /^after|^$/.test(last) ? last : "";
      const block = blocks.get(key) ?? { lines: row !== undefined, choices: [] };
      blocks.set(key, { ...block, choices: [...block.choices, choice] });
    }
    for (const [name, { lines, choices }] of blocks) {
      if (lines) {
        const rows = new Rows(choices, this.#events);
        this.#fields.push(rows);
        this.#body.append(rows.element);
        continue;
      }
      const fields = choices.map((choice) => new Field(choice, this.#events));
      this.#fields.push(...fields);
      const first = choices[0];
      const own = name !== "" && !name.startsWith("after ");
      const attributes = own ? { class: "block", role: "group", "aria-label": first?.label, "data-first": first?.key } : { class: "block" };
      this.#body.append(h("div", attributes, ...fields.map((field) => field.element)));
    }
  }

  /**
   * Of the numbered things only those there are, and one more to add, are worth showing.
   * @param {HTMLElement} block
   * @param {View} view
   */
  #thin(block, view) {
    const key = block.dataset.first;
    if (!key || !/^\w+\d\./.test(key)) return;
    const firsts = [...this.#body.children].map((one) => /** @type {HTMLElement} */ (one).dataset.first ?? "");
    const next = firsts.find((one) => view.values[one] === "none");
    block.hidden = view.values[key] === "none" && key !== next;
  }
}

