// Leader lines: each note is tied to the place it speaks about. Where notes lie below the drawing, the place gets the
// note's number instead.

import { s } from "../dom.js";
import { balloon } from "./margin.js";

/** Length of the level part at the note, in pixels. */
const SHOULDER = 14;
/** More lines than this would cover the drawing: then only the weighty ones and the chosen one are drawn. */
const MOST = 7;

export class Leaders {
  /** @type {HTMLElement} */ #sheet;
  /** @type {import("./margin.js").Margin} */ #margin;
  /** @type {import("./drawing.js").Drawing} */ #drawing;
  #lines = s("svg", { class: "leaders", "aria-hidden": "true" });
  #due = 0;

  /**
   * @param {HTMLElement} sheet
   * @param {import("./margin.js").Margin} margin
   * @param {import("./drawing.js").Drawing} drawing
   */
  constructor(sheet, margin, drawing) {
    this.#sheet = sheet;
    this.#margin = margin;
    this.#drawing = drawing;
    sheet.append(this.#lines);
  }

  /** Draws them anew with the next frame. */
  draw() {
    if (this.#due !== 0) return;
    this.#due = requestAnimationFrame(() => {
      this.#due = 0;
      this.#drawNow();
    });
  }

  #drawNow() {
    const origin = this.#sheet.getBoundingClientRect();
    const { selected } = this.#margin;
    const beside = this.#margin.scroller.getBoundingClientRect().left > origin.left + origin.width / 2;
    const notes = this.#margin.places().flatMap((note) => {
      const point = this.#drawing.pointOf(note.index);
      return point ? [{ ...note, px: point.x - origin.left, py: point.y - origin.top, nx: note.x - origin.left, ny: note.y - origin.top }] : [];
    });
    const heavy = notes.filter((note) => note.severity !== "note");
    // Between flat panels and notes lies the hole key: there only the chosen note has a line.
    const some = !this.#drawing.showsCase && beside ? [] : notes.length <= MOST ? notes : heavy.slice(0, MOST);
    const drawn = some.filter((note) => note.index !== selected);
    const chosen = notes.filter((note) => note.index === selected);
    const elements = [...drawn, ...chosen].map((note) => {
      const look = `leader is-${note.severity}${note.index === selected ? " selected" : ""}`;
      if (!beside) {
        const mark = balloon(note.severity, String(note.index + 1));
        for (const [name, value] of Object.entries({ x: note.px - 11, y: note.py - 11, width: 22, height: 22 })) mark.setAttribute(name, String(value));
        return s("g", { class: look }, mark);
      }
      const end = note.nx - 4;
      return s(
        "g",
        { class: look },
        s("path", { d: `M${end} ${note.ny}H${end - SHOULDER}L${note.px} ${note.py}` }),
        s("circle", { cx: note.px, cy: note.py, r: 3 }),
      );
    });
    this.#lines.replaceChildren(...elements);
  }
}
