// What to buy, bag, cut and drill. The lists are worked out when they are first looked at, and again a moment after a
// change while they are on show, so that no change waits for them.

import { h, say } from "../dom.js";
import { fileName, handOut } from "../keep.js";
import { Newest } from "../newest.js";
import { capital, counted, ended, plain, size } from "../words.js";
import { listTable } from "./list-table.js";

/** @typedef {import("../../wasm/panelwright.js").View} View */
/** @typedef {import("../../wasm/workshop.js").Lists} Lists */
/** @typedef {import("../../wasm/workshop.js").ListTable} ListTable */
/** @typedef {import("../ui/work.js").WorkEvents} ListsEvents */

const PAUSE_MS = 250;

export class ListsView {
  /** @type {ListsEvents} */ #events;
  /** @type {View | null} */ #view = null;
  /** The design the lists on show were made for. */
  #made = "";
  #waiting = 0;
  #newest;
  #sum = h("p", { class: "lists-sum" }, "Counting.");
  #tables = h("div", { class: "lists-tables" });

  /**
   * @param {HTMLElement} container
   * @param {HTMLElement} tools
   * @param {ListsEvents} events
   */
  constructor(container, tools, events) {
    this.#events = events;
    this.#newest = new Newest(
      (link) => events.workshop.ask(link, "lists"),
      (lists) => {
        say(this.#sum, inShort(lists));
        this.#tables.replaceChildren(...lists.tables.map((table) => this.#table(table)));
      },
      (why) => {
        this.#made = "";
        say(this.#sum, ended(capital(why.message)));
        this.#tables.replaceChildren();
      },
    );
    tools.append(h("button", { type: "button", class: "framed", "aria-label": "Save PDF of all lists", onclick: () => void this.#pdf() }, "Save PDF"));
    container.append(h("div", { class: "papers", tabindex: "0", role: "region", "aria-label": "Lists" }, this.#sum, this.#tables));
  }

  /** @param {View} view */
  update(view) {
    this.#view = view;
    if (this.#made === view.link) return;
    clearTimeout(this.#waiting);
    this.#waiting = window.setTimeout(() => this.#fill(), this.#made === "" ? 0 : PAUSE_MS);
  }

  fit() {}

  #fill() {
    if (!this.#view) return;
    this.#made = this.#view.link;
    this.#newest.want(this.#made);
  }

  /** @param {ListTable} list */
  #table(list) {
    return h(
      "section",
      { "aria-label": list.title, "data-list": list.name },
      h(
        "div",
        { class: "list-head" },
        h("h3", {}, list.title),
        h("button", { type: "button", class: "framed", "aria-label": `Save CSV: ${list.title}`, onclick: () => void this.#csv(list) }, "Save CSV"),
      ),
      h(
        "div",
        { class: "sideways", tabindex: "0", role: "region", "aria-label": `${list.title}, table` },
        listTable(list),
      ),
      ...list.notes.map((note) => h("p", { class: "list-note" }, note)),
    );
  }

  /** @param {ListTable} list */
  async #csv(list) {
    const csv = await this.#events.make(list.title, (workshop) => workshop.ask(this.#made, "list_csv", list.name));
    if (csv === null) return;
    handOut(`${this.#name()}-${list.name}.csv`, csv, "text/csv");
    this.#events.said(`${list.title} saved.`);
  }

  async #pdf() {
    const view = this.#view;
    if (!view) return;
    const paper = String(view.values["template.paper"] ?? "");
    const pdf = await this.#events.make("The PDF of all lists", (workshop) => workshop.ask(view.link, "lists_pdf", paper));
    if (pdf === null) return;
    handOut(`${this.#name()}-lists.pdf`, /** @type {BlobPart} */ (pdf), "application/pdf");
    this.#events.said(`Lists saved: ${size(pdf.byteLength)}.`);
  }

  #name() {
    return fileName(this.#view?.title ?? "");
  }
}

/** @param {Lists} lists */
function inShort(lists) {
  const said = [`For ${lists.cases === 1 ? "one case" : counted(lists.cases, "case")}.`];
  if (lists.total !== null) said.push(`Together ${lists.currency} ${lists.total.toFixed(2)}`.replace("  ", " ") + (lists.open_prices > 0 ? `, ${counted(lists.open_prices, "line")} without a price.` : "."));
  else if (!lists.sheets_uncounted) said.push("Enter prices in the group “Prices and pace” for a sum.");
  if (lists.sheets_uncounted) said.push("The sheets are in no sum: so many cases are not laid on sheets at once.");
  if (lists.mass_kg !== null) said.push(`The panels of a case weigh ${plain(lists.mass_kg, 1)} kg.`);
  if (lists.minutes !== null) said.push(`Work, at your pace: ${hours(lists.minutes)}.`);
  return said.join(" ");
}

/** @param {number} minutes */
function hours(minutes) {
  const whole = Math.round(minutes);
  return whole < 90 ? `${whole} min` : `${Math.floor(whole / 60)} h ${whole % 60} min`;
}
