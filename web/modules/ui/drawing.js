// The drawing: the case first, the flat panels next, one click between them.

import { h } from "../dom.js";
import { CaseView } from "./case-view.js";
import { PanelsView } from "./panels-view.js";

/** @typedef {import("../../wasm/panelwright.js").View} View */
/** @typedef {import("../../wasm/panelwright.js").Finding} Finding */

/**
 * @typedef {object} DrawingEvents
 * @property {(look: import("../../wasm/panelwright.js").Look) => import("../../wasm/panelwright.js").CasePicture} casePicture
 * @property {(id: string) => string} panelPicture
 * @property {() => void} drawn
 */

const TABS = /** @type {const} */ (["case", "panels"]);

export class Drawing {
  /** @type {Record<"case" | "panels", { tab: HTMLButtonElement, pane: HTMLElement }>} */ #tabs;
  #case;
  #panels;
  /** @type {"case" | "panels"} */ #shown = "case";
  /** @type {View | null} */ #view = null;
  /** @type {DrawingEvents} */ #events;

  /**
   * @param {HTMLElement} container
   * @param {DrawingEvents} events
   */
  constructor(container, events) {
    this.#events = events;
    const pane = (/** @type {string} */ name) =>
      h("div", { class: "pane", id: `pane-${name}`, role: "tabpanel", "aria-labelledby": `tab-${name}` });
    const tab = (/** @type {"case" | "panels"} */ name, /** @type {string} */ label) =>
      h(
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
    this.#tabs = {
      case: { tab: tab("case", "Case"), pane: pane("case") },
      panels: { tab: tab("panels", "Panels"), pane: pane("panels") },
    };
    const places = { case: h("div", { class: "tab-tools" }), panels: h("div", { class: "tab-tools" }) };
    container.append(
      h(
        "div",
        { class: "drawing-head" },
        h("div", { class: "tabs", role: "tablist", "aria-label": "What the drawing shows" }, ...TABS.map((name) => this.#tabs[name].tab)),
        places.case,
        places.panels,
      ),
      ...TABS.map((name) => this.#tabs[name].pane),
    );
    this.#case = new CaseView(this.#tabs.case.pane, places.case, events);
    this.#panels = new PanelsView(this.#tabs.panels.pane, places.panels, {
      panelPicture: events.panelPicture,
      drawn: events.drawn,
    });
    this.#tools = places;
    new ResizeObserver(() => this.#fit()).observe(container);
    this.#open("case");
  }

  #tools;

  /** @param {View} view */
  update(view) {
    this.#view = view;
    if (this.#shown === "case") this.#case.update(view);
    else this.#panels.update(view);
  }

  /**
   * Shows and marks what a finding is about.
   * @param {Finding | null} finding
   */
  point(finding) {
    const about = finding?.about ?? [];
    const feature = about.find((id) => id.includes("/"));
    const first = this.#view && finding ? this.#view.findings.indexOf(finding) : -1;
    if (finding && this.#shown === "panels" && !feature && this.#case.pointOf(first) !== null) this.#open("case");
    this.#case.mark(about);
    this.#panels.mark(about);
  }

  /**
   * Where a finding points, in pixels of the window; null when it cannot be seen now.
   * @param {number} index
   * @returns {{ x: number, y: number } | null}
   */
  pointOf(index) {
    const finding = this.#view?.findings[index];
    if (!finding) return null;
    return this.#shown === "case" ? this.#case.pointOf(index) : this.#panels.pointOf(finding);
  }

  get showsCase() {
    return this.#shown === "case";
  }

  /** @param {"case" | "panels"} name */
  #open(name) {
    this.#shown = name;
    for (const each of TABS) {
      const { tab, pane } = this.#tabs[each];
      tab.setAttribute("aria-selected", String(each === name));
      tab.tabIndex = each === name ? 0 : -1;
      pane.hidden = each !== name;
      this.#tools[each].hidden = each !== name;
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
    if (!["ArrowLeft", "ArrowRight", "Home", "End"].includes(event.key)) return;
    event.preventDefault();
    const other = this.#shown === "case" ? "panels" : "case";
    this.#open(other);
    this.#tabs[other].tab.focus();
  }

  #fit() {
    if (!this.#view) return;
    if (this.#shown === "case") this.#case.fit();
    else this.#panels.fit();
    this.#events.drawn();
  }
}
