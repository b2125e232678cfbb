// One panel, large, with the key to its holes. Each hole says why it is there and from which source, to the pointer, the
// finger and the keyboard alike.

import { h, s } from "../dom.js";
import { drawing } from "../picture.js";
import { capital, plain } from "../words.js";
import { caption, onPicture, place } from "./panel-places.js";

/** @typedef {import("../../wasm/panelwright.js").Panel} Panel */
/** @typedef {import("../../wasm/panelwright.js").Feature} Feature */

/** A hole this near to the pointer is meant, in pixels. */
const REACH = 22;

export class OnePanel {
  /** @type {Panel} */ #panel;
  /** @type {Feature[]} */ #features;
  /** @type {SVGSVGElement} */ #svg;
  /** @type {Feature | null} */ #feature = null;
  /** @type {string[]} */ #marked = [];
  #marks;
  #stage;
  #key;
  #note = h("div", { class: "hole-note", "aria-live": "polite", hidden: true });

  /**
   * @param {Panel} panel
   * @param {Feature[]} features
   * @param {string} picture
   */
  constructor(panel, features, picture) {
    this.#panel = panel;
    this.#features = features;
    this.#svg = drawing(picture);
    this.#svg.setAttribute("aria-hidden", "true");
    for (const title of this.#svg.querySelectorAll("title")) title.remove();
    this.#marks = s("g", { class: "marks" });
    this.#svg.append(this.#marks);
    this.#stage = h(
      "div",
      {
        class: "panel-stage",
        tabindex: 0,
        role: "group",
        "aria-label": `${panel.label}, seen from outside. Arrow keys go from hole to hole.`,
        onkeydown: (/** @type {KeyboardEvent} */ event) => this.#step(event),
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
    this.figure = h("div", { class: "panel-large" }, this.#stage, caption(panel));
    const rows = this.#keyRows();
    this.#key = h("div", { class: "hole-key" }, h("h3", {}, "Hole key"), ...(rows.length > 0 ? [h("ul", {}, ...rows)] : [h("p", {}, "Nothing is drilled or cut in it.")]));
    this.element = h("div", { class: "one-panel" }, this.figure, this.#key);
  }

  focus() {
    this.#stage.focus({ preventScroll: true });
  }

  /**
   * What the maker was looking at, to go on with when the panel was changed; null for another panel.
   * @param {Panel} panel
   */
  state(panel) {
    if (panel.id !== this.#panel.id) return null;
    return {
      feature: this.#feature?.id ?? null,
      scrolled: this.#key.scrollTop,
      open: [...this.#key.querySelectorAll("li")].map((row) => row.querySelector("details")?.open === true),
      focused: document.activeElement === this.#stage,
    };
  }

  /** @param {NonNullable<ReturnType<OnePanel["state"]>>} state */
  restore({ feature, scrolled, open, focused }) {
    const rows = [...this.#key.querySelectorAll("details")];
    // Another number of holes is another list.
    if (rows.length === open.length) rows.forEach((row, index) => row.toggleAttribute("open", open[index]));
    if (scrolled > 0) this.#key.scrollTop = scrolled;
    if (focused) this.focus();
    this.#choose(this.#features.find((one) => one.id === feature) ?? null);
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
    const box = this.#stage.getBoundingClientRect();
    const at = place(this.#svg, this.#panel, feature.centre_mm);
    const left = Math.min(Math.max(0, at.x - box.left + 14), Math.max(0, box.width - this.#note.offsetWidth));
    const below = at.y - box.top + 14;
    const top = below + this.#note.offsetHeight > box.height ? Math.max(0, at.y - box.top - 14 - this.#note.offsetHeight) : below;
    this.#note.style.transform = `translate(${left}px, ${top}px)`;
  }

  /** Holes alike in letter and reason stand in one row. */
  #keyRows() {
    /** @type {Map<string, Feature[]>} */
    const groups = new Map();
    for (const feature of this.#features) {
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
          // A row that a change opens again marks nothing.
          { ontoggle: (/** @type {Event} */ { target }) => target instanceof Element && target.matches(":hover, :focus-within") && mark() },
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
    const scale = this.#svg.getBoundingClientRect().width / this.#svg.viewBox.baseVal.width;
    for (const feature of this.#features) {
      const at = place(this.#svg, this.#panel, feature.centre_mm);
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
  #step(event) {
    const features = this.#features;
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
        h("p", { class: "hole-head" }, ...(feature.key ? [h("span", { class: "letter" }, feature.key)] : []), `${capital(feature.kind)}, ${measure(feature)}`),
        h("p", {}, feature.why),
        h("p", { class: "from" }, feature.source),
      );
      this.place();
    }
    this.#show();
  }

  #show() {
    const meant = this.#features.filter((feature) => feature === this.#feature || this.#marked.includes(feature.id));
    this.#marks.replaceChildren(
      ...meant.map((feature) => {
        const { x, y } = onPicture(this.#svg, this.#panel, feature.centre_mm);
        const [width, height] = feature.size_mm;
        const air = 2.5;
        return s("rect", {
          class: "spot",
          x: x - width / 2 - air,
          y: y - height / 2 - air,
          width: width + 2 * air,
          height: height + 2 * air,
          rx: feature.diameter_mm === null ? 1.5 : width / 2 + air,
        });
      }),
    );
  }
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
