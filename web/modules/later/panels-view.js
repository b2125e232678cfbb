// The panels, flat: all of them in one scale, or one of them large with the key to its holes.

import { h } from "../dom.js";
import { Picture, size } from "../picture.js";
import { OnePanel } from "./one-panel.js";
import { caption, place, recaption } from "./panel-places.js";

/** @typedef {import("../../wasm/panelwright.js").View} View */
/** @typedef {import("../../wasm/panelwright.js").Panel} Panel */
/** @typedef {import("../../wasm/panelwright.js").Finding} Finding */
/** @typedef {{ panelPicture: (id: string) => string, smallPicture: (id: string) => string, features: (id: string) => import("../../wasm/panelwright.js").Feature[], drawn: () => void }} PanelsEvents */

/** Between panels in a row, and above a row with the words below it, as the style sheet has them. */
const GAP = 24;
const ABOVE = 12;
const CAPTION = 42;
/** What the hole key takes beside a large panel, with the gap between them, as the style sheet has it. */
const KEY = 244;
/** Below this width there are two panels in a row, and the page scrolls; in pixels. */
const NARROW = 560;

export class PanelsView {
  /** @type {PanelsEvents} */ #events;
  /** @type {View | null} */ #view = null;
  /** @type {string} */ #chosen = "";
  /** @type {string} */ #fingerprint = "";
  /** @type {string[]} what is marked: panels, and features of them */ #marked = [];
  #container;
  #picker = h("div", { class: "picker", role: "group", "aria-label": "Which panel" });
  #floor = h("div", { class: "panels" });
  /** @type {Map<string, HTMLElement>} */ #figures = new Map();
  /** @type {Map<string, { picture: Picture, caption: HTMLElement }>} */ #pictures = new Map();
  /** Which panels stand in which row, as they are laid out now. */
  #arranged = "";
  /** @type {OnePanel | null} */ #one = null;
  /** The pane's size as last seen: asking for it in the middle of a change would lay out the page twice. */
  #room = { width: 0, height: 0 };

  /**
   * @param {HTMLElement} container
   * @param {HTMLElement} tools
   * @param {PanelsEvents} events
   */
  constructor(container, tools, events) {
    this.#events = events;
    this.#container = container;
    tools.append(this.#picker);
    container.append(this.#floor);
    this.#floor.addEventListener("scroll", () => events.drawn(), { passive: true });
  }

  /** @param {View} view */
  update(view) {
    const same = this.#fingerprint === view.fingerprint && this.#floor.childElementCount > 0;
    this.#view = view;
    this.#fingerprint = view.fingerprint;
    if (this.#picker.childElementCount !== view.panels.length + 1) this.#listPanels(view);
    for (const button of this.#picker.querySelectorAll("button")) {
      button.setAttribute("aria-pressed", String(button.dataset.panel === this.#chosen));
    }
    if (same) return;
    this.#draw();
  }

  /** @param {string[]} ids */
  mark(ids) {
    this.#marked = ids;
    const on = ids.flatMap((id) => (id.includes("/") ? [id.split("/")[0] ?? ""] : []));
    // The panel that is large may be another one.
    if (on[0] && this.#chosen !== "" && !on.includes(this.#chosen)) {
      this.#chosen = on[0];
      this.#fingerprint = "";
      // One that is out of sight is drawn when it is opened.
      if (this.#view && !this.#container.hidden) this.update(this.#view);
    }
    this.#showMarks();
  }

  #showMarks() {
    this.#one?.mark(this.#marked);
    for (const [id, figure] of this.#figures) figure.classList.toggle("marked", !this.#one && this.#marked.some((each) => each.split("/")[0] === id));
  }

  /** @param {Finding} finding */
  pointOf(finding) {
    for (const id of finding.about) {
      const [panelId, featureId] = id.split("/");
      const panel = this.#view?.panels.find((one) => one.id === panelId);
      const svg = this.#figures.get(panelId ?? "")?.querySelector("svg");
      if (!panel || !svg || !featureId) continue;
      const feature = this.#events.features(panel.id).find((one) => one.id === featureId);
      if (feature) return place(svg, panel, feature.centre_mm);
    }
    return null;
  }

  /** Sizes the pictures for the room there is now. */
  fit() {
    this.#room = { width: this.#container.clientWidth, height: this.#container.clientHeight };
    this.#arrange();
    this.#scale();
  }

  #scale() {
    if (!this.#view) return;
    const all = this.#chosen === "";
    const panels = all ? this.#view.panels : this.#view.panels.filter((one) => one.id === this.#chosen);
    const rows = all ? inRows(panels, this.#room.width) : [panels];
    const width = !all && this.#room.width > NARROW ? this.#room.width - KEY : this.#room.width;
    const shown = (/** @type {Panel} */ one) => this.#svg(one)?.viewBox.baseVal ?? { width: 1, height: 1 };
    const across = Math.max(...rows.map((row) => sum(row.map((one) => shown(one).width))));
    const most = Math.max(...rows.map((row) => row.length));
    const high = sum(rows.map((row) => Math.max(...row.map((one) => shown(one).height))));
    const byWidth = (width - GAP * (most + 1)) / across;
    const byHeight = (this.#room.height - (ABOVE + CAPTION) * rows.length - ABOVE) / high;
    const scale = Math.max(this.#room.width < NARROW ? byWidth : Math.min(byWidth, byHeight), 0.2);
    for (const panel of panels) {
      const svg = this.#svg(panel);
      if (svg) size(svg, scale, svg.viewBox.baseVal);
    }
    this.#one?.place();
  }

  /** @param {Panel} panel */
  #svg(panel) {
    return this.#figures.get(panel.id)?.querySelector("svg") ?? null;
  }

  /** @param {View} view */
  #listPanels(view) {
    const button = (/** @type {string} */ id, /** @type {string} */ label) =>
      h("button", { type: "button", class: "quiet", "data-panel": id, onclick: () => this.#choose(id) }, label);
    this.#picker.replaceChildren(
      button("", "All"),
      ...view.panels.map((panel) => button(panel.id, panel.label.replace(/ panel$/i, ""))),
    );
  }

  /** @param {string} id */
  #choose(id) {
    this.#chosen = id;
    this.#fingerprint = "";
    if (this.#view) this.update(this.#view);
  }

  /**
   * Shows the panel whose picture was pressed. The picture goes, so the keyboard goes on in the large one.
   * @param {string} id
   */
  #enlarge(id) {
    this.#choose(id);
    this.#one?.focus();
  }

  #draw() {
    const view = this.#view;
    if (!view) return;
    if (this.#room.width === 0) this.#room = { width: this.#container.clientWidth, height: this.#container.clientHeight };
    const panel = view.panels.find((one) => one.id === this.#chosen);
    if (panel) {
      const before = this.#one;
      this.#figures.clear();
      this.#pictures.clear();
      this.#one = new OnePanel(panel, this.#events.features(panel.id), this.#events.panelPicture(panel.id));
      this.#figures.set(panel.id, this.#one.figure);
      const kept = before?.state(panel);
      this.#floor.replaceChildren(this.#one.element);
      if (kept) this.#one.restore(kept);
    } else {
      this.#drawAll(view);
    }
    this.#showMarks();
    this.#scale();
    this.#events.drawn();
  }

  /** @param {View} view */
  #drawAll({ panels }) {
    if (this.#one || this.#pictures.size !== panels.length) {
      this.#one = null;
      this.#arranged = "";
      this.#figures.clear();
      this.#pictures.clear();
    }
    for (const panel of panels) this.#fill(panel);
    this.#arrange();
  }

  /** Puts the panels into rows, where they do not stand in them already. */
  #arrange() {
    if (!this.#view || this.#chosen !== "" || this.#figures.size === 0) return;
    const rows = inRows(this.#view.panels, this.#room.width);
    const arranged = rows.map((row) => row.map(({ id }) => id).join(" ")).join("|");
    if (this.#arranged === arranged) return;
    this.#arranged = arranged;
    this.#floor.replaceChildren(...rows.map((row) => h("div", { class: "panel-row" }, ...row.map(({ id }) => this.#figures.get(id)))));
  }

  /**
   * A panel among the others, without dimensions and words: there is no room for them. Its button stays through a change,
   * so that the keyboard keeps its place.
   * @param {Panel} panel
   */
  #fill(panel) {
    const drawn = this.#pictures.get(panel.id) ?? { picture: new Picture(), caption: caption(panel) };
    this.#pictures.set(panel.id, drawn);
    drawn.picture.show(this.#events.smallPicture(panel.id));
    recaption(drawn.caption, panel);
    const figure =
      this.#figures.get(panel.id) ?? h("button", { type: "button", class: "panel-figure", onclick: () => this.#enlarge(panel.id) });
    this.#figures.set(panel.id, figure);
    const { element } = drawn.picture;
    if (element && element.parentElement !== figure) figure.replaceChildren(element, drawn.caption);
  }
}

/**
 * Chassis above, then the sleeve around its front; two side by side where it is narrow.
 * @param {Panel[]} panels
 * @param {number} width
 */
function inRows(panels, width) {
  const by = (/** @type {string[]} */ ids) => ids.flatMap((id) => panels.filter((panel) => panel.id === id));
  const wide = [by(["floor", "back", "top"]), by(["left", "front", "right"])];
  const narrow = [by(["floor", "back"]), by(["left", "right"]), by(["front", "top"])];
  const rows = (width < NARROW ? narrow : wide).filter((row) => row.length > 0);
  return sum(rows.map((row) => row.length)) === panels.length ? rows : [panels];
}

/** @param {number[]} numbers */
function sum(numbers) {
  return numbers.reduce((all, one) => all + one, 0);
}
