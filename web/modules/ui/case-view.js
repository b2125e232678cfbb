// The case as one sees it: turned by quarters, by dragging or by the arrow keys; panels taken off one by one, seen
// through, or pulled apart.

import { calm, h, s, say } from "../dom.js";
import { Picture, size } from "../picture.js";

/** @typedef {import("../../wasm/panelwright.js").View} View */
/** @typedef {import("../../wasm/panelwright.js").CasePicture} CasePicture */
/** @typedef {import("../../wasm/panelwright.js").Look} Look */

/** From the front right, a little above: front, right and top show. */
const FIRST_AZIMUTH = -58;
const FIRST_ELEVATION = 24;
const LOWEST = -20;
const HIGHEST = 80;
const KEY_STEP = 15;
const DRAG_DEG_PER_PX = 0.4;
const MOVE_MS = 200;

const SIDES = ["right", "back right", "back", "back left", "left", "front left", "front", "front right"];

export class CaseView {
  /** @type {import("./drawing.js").DrawingEvents} */ #events;
  /** @type {Look} */ #look = { azimuth_deg: FIRST_AZIMUTH, elevation_deg: FIRST_ELEVATION, off: [], see_through: true, apart: 0 };
  /** @type {View | null} */ #view = null;
  /** @type {CasePicture | null} */ #picture = null;
  #drawn = new Picture();
  /** @type {string[]} */ #marked = [];
  #stage;
  #off = h("div", { class: "off", role: "group", "aria-label": "Panels taken off" });
  #through;
  #apart;
  #where = h("span", { class: "where" });
  /** The name of the thing under the pointer. */
  #tag = h("span", { class: "tag", hidden: true });
  #moving = 0;
  /** Where the movement ends: one that begins in the middle of another goes on from where that was to end. */
  #goal = { azimuth_deg: FIRST_AZIMUTH, apart: 0 };
  /** The stage's size as last seen: asking for it in the middle of a change would lay out the page twice. */
  #room = { width: 0, height: 0 };

  /**
   * @param {HTMLElement} container
   * @param {HTMLElement} tools
   * @param {import("./drawing.js").DrawingEvents} events
   */
  constructor(container, tools, events) {
    this.#events = events;
    this.#stage = h("div", {
      class: "stage",
      tabindex: 0,
      role: "img",
      "aria-label": "The case",
      onkeydown: (/** @type {KeyboardEvent} */ event) => this.#key(event),
    });
    this.#drag();
    const toggle = (/** @type {string} */ label, /** @type {() => void} */ act) =>
      h("button", { type: "button", class: "quiet", "aria-pressed": "false", onclick: act }, label);
    this.#through = toggle("See through", () => {
      this.#look.see_through = !this.#look.see_through;
      this.#draw();
    });
    this.#apart = toggle("Pull apart", () => this.#move({ apart: 1 - this.#goal.apart }));
    const turn = (/** @type {string} */ label, /** @type {string} */ path, /** @type {number} */ by) =>
      h(
        "button",
        { type: "button", class: "turn", "aria-label": label, title: label, onclick: () => this.#move({ turn: by }) },
        s("svg", { class: "icon", viewBox: "0 0 20 20", "aria-hidden": "true" }, s("path", { d: path })),
      );
    tools.append(this.#through, this.#apart);
    container.append(
      this.#stage,
      h(
        "div",
        { class: "under" },
        h("div", { class: "turns", role: "group", "aria-label": "Turn the case" }, turn("Turn by a quarter to the left", "M4 9c0-2 2.700-3.500 6-3.500s6 1.500 6 3.500-2.700 3.500-6 3.500M7 6 3.800 9.200 1.500 5.500", -90), this.#where, turn("Turn by a quarter to the right", "M16 9c0-2-2.700-3.500-6-3.500S4 7 4 9s2.700 3.500 6 3.500M13 6l3.200 3.200 2.300-3.700", 90)),
        h("div", { class: "off-row" }, h("span", { class: "off-label", "aria-hidden": "true" }, "Take off"), this.#off),
      ),
    );
  }

  get #svg() {
    return this.#drawn.element;
  }

  /** @param {View} view */
  update(view) {
    this.#view = view;
    if (this.#off.childElementCount !== view.panels.length) this.#listPanels(view);
    this.#draw();
  }

  /** @param {string[]} ids */
  mark(ids) {
    this.#marked = ids.map((id) => id.split("/")[0] ?? id);
    this.#showMarks();
  }

  /** @param {number} index */
  pointOf(index) {
    const point = this.#picture?.points[index];
    if (!point || !this.#svg || !this.#picture) return null;
    const box = this.#svg.getBoundingClientRect();
    return {
      x: box.left + (point[0] / this.#picture.width_mm) * box.width,
      y: box.top + (point[1] / this.#picture.height_mm) * box.height,
    };
  }

  /** Sizes the picture so that it keeps its scale while it turns. */
  fit() {
    this.#room = { width: this.#stage.clientWidth, height: this.#stage.clientHeight };
    this.#scale();
  }

  #scale() {
    if (!this.#svg || !this.#picture || !this.#view) return;
    if (this.#room.width === 0) this.#room = { width: this.#stage.clientWidth, height: this.#stage.clientHeight };
    const { width: clientWidth, height: clientHeight } = this.#room;
    const [width, depth, height] = this.#view.case.outside_mm;
    const across = Math.hypot(width, depth);
    const lift = (Math.abs(this.#look.elevation_deg) * Math.PI) / 180;
    const steady = Math.min(clientWidth / across, clientHeight / (height * Math.cos(lift) + across * Math.sin(lift)));
    const most = Math.min(clientWidth / this.#picture.width_mm, clientHeight / this.#picture.height_mm);
    size(this.#svg, 0.94 * Math.min(steady, most), { width: this.#picture.width_mm, height: this.#picture.height_mm });
  }

  /** @param {View} view */
  #listPanels(view) {
    this.#off.replaceChildren(
      ...view.panels.map((panel) =>
        h(
          "button",
          {
            type: "button",
            class: "quiet",
            "aria-pressed": "false",
            "data-panel": panel.id,
            onclick: () => {
              const { off } = this.#look;
              this.#look.off = off.includes(panel.id) ? off.filter((id) => id !== panel.id) : [...off, panel.id];
              this.#draw();
            },
          },
          panel.label.replace(/ panel$/i, ""),
        ),
      ),
    );
  }

  #draw() {
    if (!this.#view) return;
    this.#picture = this.#events.casePicture(this.#look);
    const { svg } = this.#picture;
    const shown = this.#drawn.show(svg);
    if (shown === "new" && this.#svg) {
      if (this.#svg.parentElement !== this.#stage) this.#stage.replaceChildren(this.#svg, this.#tag);
      this.#showMarks();
    }
    // A change of paper, prices or a name leaves the picture as it is.
    if (shown !== "same") this.#scale();
    this.#through.setAttribute("aria-pressed", String(this.#look.see_through));
    this.#apart.setAttribute("aria-pressed", String(this.#goal.apart === 1));
    for (const button of this.#off.querySelectorAll("button")) {
      button.setAttribute("aria-pressed", String(this.#look.off.includes(button.dataset.panel ?? "")));
    }
    const eighth = ((Math.round(this.#look.azimuth_deg / 45) % 8) + 8) % 8;
    const side = SIDES[eighth] ?? "";
    say(this.#where, `from the ${side}`);
    this.#stage.setAttribute("aria-label", `The case, seen from the ${side}. Arrow keys turn it.`);
    this.#events.drawn();
  }

  /** What is marked keeps its strength, all else steps back: so what lies behind other things is seen, too. */
  #showMarks() {
    for (const element of this.#svg?.querySelectorAll(".marked") ?? []) element.classList.remove("marked");
    for (const id of this.#marked) {
      for (const element of this.#svg?.querySelectorAll(`[data-about="${CSS.escape(id)}"]`) ?? []) element.classList.add("marked");
    }
    this.#svg?.classList.toggle("pointing", this.#svg.querySelector(".marked") !== null);
  }

  /**
   * Turns or pulls apart, in a short movement unless the reader wants none.
   * @param {{ turn?: number, apart?: number }} to
   */
  #move({ turn = 0, apart = this.#goal.apart }) {
    cancelAnimationFrame(this.#moving);
    const from = { ...this.#look };
    const goal = { azimuth_deg: this.#goal.azimuth_deg + turn, apart };
    this.#goal = goal;
    const begin = performance.now();
    const step = (/** @type {number} */ now) => {
      const part = calm() ? 1 : Math.min(1, (now - begin) / MOVE_MS);
      const eased = part * (2 - part);
      this.#look.azimuth_deg = from.azimuth_deg + (goal.azimuth_deg - from.azimuth_deg) * eased;
      this.#look.apart = from.apart + (goal.apart - from.apart) * eased;
      this.#draw();
      if (part < 1) this.#moving = requestAnimationFrame(step);
    };
    step(calm() ? begin : begin + 1);
  }

  /** @param {KeyboardEvent} event */
  #key(event) {
    const turns = { ArrowLeft: [-KEY_STEP, 0], ArrowRight: [KEY_STEP, 0], ArrowUp: [0, KEY_STEP], ArrowDown: [0, -KEY_STEP] }[event.key];
    if (!turns || event.ctrlKey || event.metaKey || event.altKey) return;
    event.preventDefault();
    this.#turn(turns[0] ?? 0, turns[1] ?? 0);
  }

  /**
   * Turns at once. It takes over from a movement, which ends there.
   * @param {number} around
   * @param {number} up
   */
  #turn(around, up) {
    cancelAnimationFrame(this.#moving);
    this.#look.azimuth_deg = (this.#look.azimuth_deg + around) % 360;
    this.#look.apart = this.#goal.apart;
    this.#goal.azimuth_deg = this.#look.azimuth_deg;
    this.#look.elevation_deg = Math.min(HIGHEST, Math.max(LOWEST, this.#look.elevation_deg + up));
    this.#draw();
  }

  /**
   * Names and marks the part or panel under the pointer.
   * @param {PointerEvent | null} event
   */
  #name(event) {
    const id = event?.target instanceof Element ? event.target.closest("[data-about]")?.getAttribute("data-about") : null;
    const thing = id ? [...(this.#view?.parts ?? []), ...(this.#view?.panels ?? [])].find((one) => one.id === id) : null;
    for (const element of this.#svg?.querySelectorAll("[data-about]") ?? []) {
      element.classList.toggle("hovered", element.getAttribute("data-about") === thing?.id);
    }
    this.#tag.hidden = !thing;
    if (!thing || !event) return;
    say(this.#tag, thing.label);
    const box = this.#stage.getBoundingClientRect();
    const left = Math.max(0, Math.min(event.clientX - box.left + 14, box.width - this.#tag.offsetWidth));
    const top = Math.max(0, event.clientY - box.top - 34);
    this.#tag.style.transform = `translate(${left}px, ${top}px)`;
  }

  #drag() {
    const stage = this.#stage;
    /** @type {{ x: number, y: number } | null} */ let held = null;
    let around = 0;
    let up = 0;
    let due = 0;
    stage.addEventListener("pointerdown", (event) => {
      if (event.button !== 0) return;
      held = { x: event.clientX, y: event.clientY };
      this.#name(event);
      stage.setPointerCapture(event.pointerId);
    });
    stage.addEventListener("pointerleave", (event) => {
      if (event.pointerType === "mouse") this.#name(null);
    });
    stage.addEventListener("pointermove", (event) => {
      if (!held) {
        this.#name(event);
        return;
      }
      this.#name(null);
      around -= (event.clientX - held.x) * DRAG_DEG_PER_PX;
      up += event.pointerType === "touch" ? 0 : (event.clientY - held.y) * DRAG_DEG_PER_PX;
      held = { x: event.clientX, y: event.clientY };
      if (due === 0) {
        due = requestAnimationFrame(() => {
          due = 0;
          this.#turn(around, up);
          around = 0;
          up = 0;
        });
      }
    });
    for (const end of ["pointerup", "pointercancel"]) {
      stage.addEventListener(end, () => {
        held = null;
      });
    }
  }
}
