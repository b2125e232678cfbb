// The drawing: the case first; the flat panels and the other papers come when they are first wanted, or when the page has
// nothing better to do. One click between them.

import { h } from "../dom.js";
import { idle } from "../idle.js";
import { laterKits, laterPapers } from "../later.js";
import { CaseView } from "./case-view.js";
import { inSight, show } from "./jumps.js";

/** @typedef {import("../../wasm/panelwright.js").View} View */
/** @typedef {import("../../wasm/panelwright.js").Finding} Finding */

/** @typedef {DrawingTakes & Omit<import("../later/sheets-view.js").SheetsEvents, "kits">} DrawingEvents */
/**
 * @typedef {object} DrawingTakes
 * @property {(look: import("../../wasm/panelwright.js").Look) => import("../../wasm/panelwright.js").CasePicture} casePicture
 * @property {(id: string) => string} panelPicture
 * @property {(id: string) => string} smallPicture the panel without dimensions and words
 * @property {(id: string) => import("../../wasm/panelwright.js").Feature[]} features
 * @property {() => void} drawn
 */

/** @typedef {"case" | "panels" | "sheets" | "lists" | "compare"} TabName */
/** @typedef {{ update: (view: View) => void, fit: () => void, hide?: () => void }} Pane */

/** @type {[TabName, string][]} */
const TABS = [
  ["case", "Case"],
  ["panels", "Panels"],
  ["sheets", "Sheets"],
  ["lists", "Lists"],
  ["compare", "Compare"],
];

export class Drawing {
  /** @type {Map<TabName, { tab: HTMLButtonElement, pane: HTMLElement, tools: HTMLElement }>} */ #tabs = new Map();
  /** @type {Map<TabName, Pane>} */ #panes = new Map();
  #container;
  #case;
  /** @type {import("../later/panels-view.js").PanelsView | null} */ #panels = null;
  /** @type {string[]} what is marked in every picture */ #marked = [];
  /** @type {TabName} */ #shown = "case";
  /** @type {View | null} */ #view = null;
  /** @type {DrawingEvents} */ #events;

  /**
   * @param {HTMLElement} container
   * @param {DrawingEvents} events
   */
  constructor(container, events) {
    this.#events = events;
    this.#container = container;
    for (const [name, label] of TABS) {
      const pane = h("div", { class: "pane", id: `pane-${name}`, role: "tabpanel", "aria-labelledby": `tab-${name}` });
      const tab = h(
        "button",
        {
          type: "button",
          class: "tab",
          role: "tab",
          id: `tab-${name}`,
          "aria-controls": `pane-${name}`,
          onclick: () => this.#open(name),
          onkeydown: (/** @type {KeyboardEvent} */ event) => this.#key(event),
        },
        label,
      );
      this.#tabs.set(name, { tab, pane, tools: h("div", { class: "tab-tools" }) });
    }
    const all = [...this.#tabs.values()];
    container.append(
      h(
        "div",
        { class: "drawing-head" },
        h(
          "div",
          // Who reaches for the tabs may want what one of them brings: it is at hand when it is pressed.
          { class: "tabs", role: "tablist", "aria-label": "What the drawing shows", onpointerenter: () => void this.#reach(), onfocusin: () => void this.#reach() },
          ...all.map(({ tab }) => tab),
        ),
        ...all.map(({ tools }) => tools),
      ),
      ...all.map(({ pane }) => pane),
    );
    this.#case = new CaseView(...this.#place("case"), events);
    this.#panes.set("case", this.#case);
    new ResizeObserver(() => this.#fit()).observe(container);
    this.#open("case");
    idle(() => void this.#reach());
  }

  /**
   * @param {TabName} name
   * @returns {[HTMLElement, HTMLElement]}
   */
  #place(name) {
    const place = this.#tabs.get(name);
    if (!place) throw new Error(`the drawing has no ${name}`);
    return [place.pane, place.tools];
  }

  /** @param {View} view */
  update(view) {
    this.#view = view;
    this.#panes.get(this.#shown)?.update(view);
  }

  /** Brings the papers before they are asked for; what goes wrong is said when they are. */
  async #reach() {
    if (this.#panels) return;
    await laterPapers().then(
      (part) => this.#lay(part),
      () => undefined,
    );
  }

  /**
   * Brings the papers that are asked for; without them the drawing goes back to where it was.
   * @param {TabName} from
   */
  async #bring(from) {
    const part = await this.#events.make("This sheet of the drawing", laterPapers);
    if (part) this.#lay(part);
    else if (!this.#panes.has(this.#shown)) this.#open(from);
  }

  /**
   * Puts the papers into their panes, and fills the one that is on show.
   * @param {Awaited<ReturnType<typeof laterPapers>>} part
   */
  #lay(part) {
    if (this.#panels) return;
    this.#panels = new part.PanelsView(...this.#place("panels"), this.#events);
    this.#panels.mark(this.#marked);
    this.#panes
      .set("panels", this.#panels)
      .set("sheets", new part.SheetsView(...this.#place("sheets"), { ...this.#events, kits: laterKits }))
      .set("lists", new part.ListsView(...this.#place("lists"), this.#events))
      .set("compare", new part.CompareView(...this.#place("compare"), this.#events));
    if (this.#shown === "case" || !this.#view) return;
    this.update(this.#view);
    this.#fit();
  }

  /**
   * Shows and marks what a finding is about.
   * @param {Finding | null} finding
   */
  point(finding) {
    const about = finding?.about ?? [];
    const feature = about.find((id) => id.includes("/"));
    const first = this.#view && finding ? this.#view.findings.indexOf(finding) : -1;
    const elsewhere = this.#shown !== "case" && (this.#shown !== "panels" || !feature);
    if (finding && elsewhere && this.#case.pointOf(first) !== null) this.#open("case");
    this.#marked = about;
    this.#case.mark(about);
    this.#panels?.mark(about);
  }

  /** Brings the picture into the window, where it is not in it. */
  bring() {
    const pane = this.#tabs.get(this.#shown)?.pane;
    if (pane && !inSight(pane)) show(this.#container, "start");
  }

  /**
   * Where a finding points, in pixels of the window; null when it cannot be seen now.
   * @param {number} index
   * @returns {{ x: number, y: number } | null}
   */
  pointOf(index) {
    const finding = this.#view?.findings[index];
    if (!finding) return null;
    if (this.#shown === "case") return this.#case.pointOf(index);
    return this.#shown === "panels" ? (this.#panels?.pointOf(finding) ?? null) : null;
  }

  get showsCase() {
    return this.#shown === "case";
  }

  /** @param {TabName} name */
  #open(name) {
    const from = this.#shown;
    if (name !== from) this.#panes.get(from)?.hide?.();
    this.#shown = name;
    if (!this.#panes.has(name)) void this.#bring(from);
    for (const [each, { tab, pane, tools }] of this.#tabs) {
      tab.setAttribute("aria-selected", String(each === name));
      tab.tabIndex = each === name ? 0 : -1;
      pane.hidden = each !== name;
      tools.hidden = each !== name;
    }
    if (this.#view) {
      this.update(this.#view);
      // The window may have changed its size while this was out of sight.
      this.#fit();
    }
    this.#events.drawn();
  }

  /** @param {KeyboardEvent} event */
  #key(event) {
    const names = TABS.map(([name]) => name);
    const now = names.indexOf(this.#shown);
    const steps = { ArrowLeft: now - 1, ArrowRight: now + 1, Home: 0, End: names.length - 1 };
    const to = steps[/** @type {keyof typeof steps} */ (event.key)];
    const next = to === undefined ? undefined : names[(to + names.length) % names.length];
    if (next === undefined) return;
    event.preventDefault();
    this.#open(next);
    this.#tabs.get(next)?.tab.focus();
  }

  #fit() {
    if (!this.#view) return;
    this.#panes.get(this.#shown)?.fit();
    this.#events.drawn();
  }
}
