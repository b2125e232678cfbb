// The panels, flat: all of them in one scale, or one of them large with the key to its holes. Each hole says why it is
// there and from which source, to the pointer, the finger and the keyboard alike.

import { drawing, h, say } from "../dom.js";
import { counted, plain, tenths } from "../words.js";

/** @typedef {import("../../wasm/panelwright.js").View} View */
/** @typedef {import("../../wasm/panelwright.js").Panel} Panel */
/** @typedef {import("../../wasm/panelwright.js").Feature} Feature */
/** @typedef {import("../../wasm/panelwright.js").Finding} Finding */
/** @typedef {{ panelPicture: (id: string) => string, drawn: () => void }} PanelsEvents */

/** Between panels in a row, and above a row with the words below it, as the style sheet has them. */
const GAP = 24;
const ABOVE = 12;
const CAPTION = 42;
/** Left free around a panel, mm, so that its outline keeps its weight. */
const AIR = 1;
/** A hole this near to the pointer is meant, in pixels. */
const REACH = 22;

export class PanelsView {
  /** @type {PanelsEvents} */ #events;
  /** @type {View | null} */ #view = null;
  /** @type {string} */ #chosen = "";
  /** @type {string} */ #fingerprint = "";
  /** @type {string[]} */ #marked = [];
  #container;
  #picker = h("div", { class: "picker", role: "group", "aria-label": "Which panel" });
  #floor = h("div", { class: "panels" });
  /** @type {Map<string, HTMLElement>} */ #figures = new Map();
  /** @type {OnePanel | null} */ #one = null;

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
    this.#marked = ids.filter((id) => id.includes("/"));
    this.#one?.mark(this.#marked);
    for (const [id, figure] of this.#figures) figure.classList.toggle("marked", ids.some((each) => each.split("/")[0] === id));
  }

  /** @param {Finding} finding */
  pointOf(finding) {
    for (const id of finding.about) {
      const [panelId, featureId] = id.split("/");
      const panel = this.#view?.panels.find((one) => one.id === panelId);
      const feature = panel?.features.find((one) => one.id === featureId);
      const svg = this.#figures.get(panelId ?? "")?.querySelector("svg");
      if (panel && feature && svg) return place(svg, panel, feature.centre_mm);
    }
    return null;
  }

  fit() {
    if (!this.#view) return;
    const panels = this.#chosen === "" ? this.#view.panels : this.#view.panels.filter((one) => one.id === this.#chosen);
    const { clientWidth, clientHeight } = this.#container;
    const rows = this.#chosen === "" ? inRows(panels, clientWidth) : [panels];
    const width = this.#chosen !== "" && clientWidth > 560 ? clientWidth - 288 : clientWidth;
    const shown = (/** @type {Panel} */ one) => this.#figures.get(one.id)?.querySelector("svg")?.viewBox.baseVal ?? { width: 1, height: 1 };
    const across = Math.max(...rows.map((row) => sum(row.map((one) => shown(one).width))));
    const most = Math.max(...rows.map((row) => row.length));
    const high = sum(rows.map((row) => Math.max(...row.map((one) => shown(one).height))));
    const byWidth = (width - GAP * (most + 1)) / across;
    const byHeight = (clientHeight - (ABOVE + CAPTION) * rows.length - ABOVE) / high;
    const scale = Math.max(clientWidth < 560 ? byWidth : Math.min(byWidth, byHeight), 0.2);
    for (const panel of panels) {
      const svg = this.#figures.get(panel.id)?.querySelector("svg");
      if (!svg) continue;
      const box = svg.viewBox.baseVal;
      svg.setAttribute("width", String(box.width * scale));
      svg.setAttribute("height", String(box.height * scale));
      svg.style.setProperty("--px", String(1 / scale));
    }
    this.#one?.place();
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

  #draw() {
    const view = this.#view;
    if (!view) return;
    this.#figures.clear();
    const panel = view.panels.find((one) => one.id === this.#chosen);
    if (panel) {
      this.#one = new OnePanel(panel, this.#events.panelPicture(panel.id));
      this.#figures.set(panel.id, this.#one.figure);
      this.#floor.replaceChildren(this.#one.element);
      this.#one.mark(this.#marked);
    } else {
      this.#one = null;
      this.#floor.replaceChildren(
        ...inRows(view.panels, this.#container.clientWidth).map((row) =>
          h("div", { class: "panel-row" }, ...row.map((each) => this.#figure(each))),
        ),
      );
      for (const each of view.panels) this.#crop(each);
    }
    this.fit();
    this.#events.drawn();
  }

  /**
   * Among all panels there is no room for dimensions and words: only the panel itself is shown.
   * @param {Panel} panel
   */
  #crop(panel) {
    const svg = this.#figures.get(panel.id)?.querySelector("svg");
    if (!svg) return;
    const { x, y, width, height } = face(svg, panel);
    svg.setAttribute("viewBox", `${x - AIR} ${y - AIR} ${width + 2 * AIR} ${height + 2 * AIR}`);
  }

  /** @param {Panel} panel */
  #figure(panel) {
    const svg = drawing(this.#events.panelPicture(panel.id));
    svg.setAttribute("aria-hidden", "true");
    const figure = h(
      "button",
      { type: "button", class: "panel-figure", onclick: () => this.#choose(panel.id) },
      svg,
      caption(panel),
    );
    this.#figures.set(panel.id, figure);
    return figure;
  }
}

/** One panel, large, with its hole key. */
class OnePanel {
  /** @type {Panel} */ #panel;
  /** @type {SVGSVGElement} */ #svg;
  /** @type {Feature | null} */ #feature = null;
  /** @type {string[]} */ #marked = [];
  #marks;
  #note = h("div", { class: "hole-note", "aria-live": "polite", hidden: true });
  #rows;

  /**
   * @param {Panel} panel
   * @param {string} picture
   */
  constructor(panel, picture) {
    this.#panel = panel;
    this.#svg = drawing(picture);
    this.#svg.setAttribute("aria-hidden", "true");
    for (const title of this.#svg.querySelectorAll("title")) title.remove();
    this.#marks = document.createElementNS("http://www.w3.org/2000/svg", "g");
    this.#marks.setAttribute("class", "marks");
    this.#svg.append(this.#marks);
    const stage = h(
      "div",
      {
        class: "panel-stage",
        tabindex: 0,
        role: "group",
        "aria-label": `${panel.label}, seen from outside. Arrow keys go from hole to hole.`,
        onkeydown: (/** @type {KeyboardEvent} */ event) => this.#key(event),
        onpointermove: (/** @type {PointerEvent} */ event) => {
          if (event.pointerType === "mouse") this.#near(event);
        },
        onpointerup: (/** @type {PointerEvent} */ event) => this.#near(event),
        onpointerleave: (/** @type {PointerEvent} */ event) => {
          if (event.pointerType === "mouse") this.#choose(null);
        },
      },
      this.#svg,
      this.#note,
    );
    this.figure = h("div", { class: "panel-large" }, stage, caption(panel));
    this.#rows = this.#key_list();
    this.element = h(
      "div",
      { class: "one-panel" },
      this.figure,
      h("div", { class: "hole-key" }, h("h3", {}, "Hole key"), ...(this.#rows.length > 0 ? [h("ul", {}, ...this.#rows)] : [h("p", {}, "Nothing is drilled or cut in it.")])),
    );
  }

  /** @param {string[]} ids */
  mark(ids) {
    this.#marked = ids.filter((id) => id.startsWith(`${this.#panel.id}/`)).map((id) => id.slice(this.#panel.id.length + 1));
    this.#show();
  }

  /** Puts the note beside its hole again after a change of size. */
  place() {
    const feature = this.#feature;
    if (!feature) return;
    const stage = this.#note.parentElement;
    if (!stage) return;
    const box = stage.getBoundingClientRect();
    const at = place(this.#svg, this.#panel, feature.centre_mm);
    const left = Math.min(Math.max(0, at.x - box.left + 14), Math.max(0, box.width - this.#note.offsetWidth));
    const below = at.y - box.top + 14;
    const top = below + this.#note.offsetHeight > box.height ? Math.max(0, at.y - box.top - 14 - this.#note.offsetHeight) : below;
    this.#note.style.transform = `translate(${left}px, ${top}px)`;
  }

  /** Holes alike in letter and reason stand in one row. */
  #key_list() {
    /** @type {Map<string, Feature[]>} */
    const groups = new Map();
    for (const feature of this.#panel.features) {
      const name = `${feature.key ?? ""}|${feature.kind}|${feature.diameter_mm ?? feature.size_mm.join("x")}|${feature.why}`;
      groups.set(name, [...(groups.get(name) ?? []), feature]);
    }
    const rows = [...groups.values()].sort((a, b) => order(a[0]).localeCompare(order(b[0])));
    return rows.map((features) => {
      const [first] = features;
      if (!first) return h("li");
      const mark = () => {
        this.#marked = features.map((feature) => feature.id);
        this.#show();
      };
      const clear = () => {
        this.#marked = [];
        this.#show();
      };
      return h(
        "li",
        { onpointerenter: mark, onpointerleave: clear },
        h(
          "details",
          { ontoggle: mark },
          h(
            "summary",
            { onfocus: mark, onblur: clear },
            h("span", { class: "letter" }, first.key ?? "–"),
            h("span", { class: "what" }, `${measure(first)}${features.length > 1 ? ` × ${features.length}` : ""}`),
            h("span", { class: "why" }, first.why),
          ),
          h("p", { class: "from" }, first.source),
        ),
      );
    });
  }

  /** @param {PointerEvent} event */
  #near(event) {
    let best = null;
    let least = REACH;
    for (const feature of this.#panel.features) {
      const at = place(this.#svg, this.#panel, feature.centre_mm);
      const scale = this.#svg.getBoundingClientRect().width / this.#svg.viewBox.baseVal.width;
      const inside = (/** @type {number} */ axis, /** @type {number} */ off) => Math.max(0, Math.abs(off) - ((feature.size_mm[axis] ?? 0) / 2) * scale);
      const away = Math.hypot(inside(0, event.clientX - at.x), inside(1, event.clientY - at.y));
      const area = feature.size_mm[0] * feature.size_mm[1];
      // Among those under the pointer the smallest is meant.
      const far = away + area * 1e-6;
      if (far < least) {
        least = far;
        best = feature;
      }
    }
    this.#choose(best);
  }

  /** @param {KeyboardEvent} event */
  #key(event) {
    const { features } = this.#panel;
    const step = { ArrowRight: 1, ArrowDown: 1, ArrowLeft: -1, ArrowUp: -1 }[event.key];
    if (event.key === "Escape") this.#choose(null);
    if (step === undefined || features.length === 0) return;
    event.preventDefault();
    const now = this.#feature ? features.indexOf(this.#feature) : step > 0 ? -1 : 0;
    this.#choose(features[(now + step + features.length) % features.length] ?? null);
  }

  /** @param {Feature | null} feature */
  #choose(feature) {
    if (feature === this.#feature) return;
    this.#feature = feature;
    this.#note.hidden = feature === null;
    if (feature) {
      this.#note.replaceChildren(
        h("p", { class: "hole-head" }, ...(feature.key ? [h("span", { class: "letter" }, feature.key)] : []), `${title(feature)}, ${measure(feature)}`),
        h("p", {}, feature.why),
        h("p", { class: "from" }, feature.source),
      );
      this.place();
    }
    this.#show();
  }

  #show() {
    const meant = this.#panel.features.filter((feature) => feature === this.#feature || this.#marked.includes(feature.id));
    this.#marks.replaceChildren(
      ...meant.map((feature) => {
        const { x, y } = onPicture(this.#svg, this.#panel, feature.centre_mm);
        const [width, height] = feature.size_mm;
        const mark = document.createElementNS("http://www.w3.org/2000/svg", "rect");
        const air = 2.5;
        const round = feature.diameter_mm === null ? 1.5 : width / 2 + air;
        for (const [name, value] of Object.entries({
          x: x - width / 2 - air,
          y: y - height / 2 - air,
          width: width + 2 * air,
          height: height + 2 * air,
          rx: round,
        })) mark.setAttribute(name, String(value));
        mark.setAttribute("class", "spot");
        return mark;
      }),
    );
  }
}

/** @param {Feature} feature */
function title(feature) {
  return feature.kind.charAt(0).toUpperCase() + feature.kind.slice(1);
}

/** @param {Feature | undefined} feature */
function order(feature) {
  return feature ? (feature.key ? `0${feature.key.padStart(3)}` : `1${feature.id}`) : "";
}

/** @param {Feature} feature */
function measure(feature) {
  const size = feature.diameter_mm === null ? feature.size_mm.map((side) => plain(side, 1)).join(" × ") : `⌀ ${plain(feature.diameter_mm)}`;
  return `${size}${feature.depth_mm === null ? "" : `, ${plain(feature.depth_mm)} deep`} mm`;
}

/** @param {Panel} panel */
function caption(panel) {
  const holes = panel.features.filter((feature) => feature.kind === "hole").length;
  const line = h("span", { class: "caption" }, h("span", { class: "caption-name" }, panel.label), h("span", {}, ""));
  say(/** @type {Node} */ (line.lastChild), `${panel.size_mm.map(tenths).join(" × ")} mm, ${counted(holes, "hole")}`);
  return line;
}

/**
 * The panel's own outline in its picture, apart from dimensions and words.
 * @param {SVGSVGElement} svg
 * @param {Panel} panel
 */
function face(svg, panel) {
  const outline = svg.querySelector(`#flat-${panel.id}`);
  return outline instanceof SVGGraphicsElement ? outline.getBBox() : svg.viewBox.baseVal;
}

/**
 * A point of a panel in its picture, y turned over.
 * @param {SVGSVGElement} svg
 * @param {Panel} panel
 * @param {[number, number]} point
 */
function onPicture(svg, panel, [u, v]) {
  const { x, y } = face(svg, panel);
  return { x: x + u, y: y + panel.size_mm[1] - v };
}

/**
 * The same in pixels of the window.
 * @param {SVGSVGElement} svg
 * @param {Panel} panel
 * @param {[number, number]} point
 */
function place(svg, panel, point) {
  const box = svg.getBoundingClientRect();
  const { x, y } = onPicture(svg, panel, point);
  const shown = svg.viewBox.baseVal;
  return {
    x: box.left + ((x - shown.x) / shown.width) * box.width,
    y: box.top + ((y - shown.y) / shown.height) * box.height,
  };
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
  const rows = (width < 560 ? narrow : wide).filter((row) => row.length > 0);
  return sum(rows.map((row) => row.length)) === panels.length ? rows : [panels];
}

/** @param {number[]} numbers */
function sum(numbers) {
  return numbers.reduce((all, one) => all + one, 0);
}
