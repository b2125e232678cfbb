// A picture that follows its design. Most changes move lines and leave all else as it was: then the elements stay, and
// only the lines are set anew, in a fraction of the time that reading and styling a new picture takes.

/** The lines of a path, which is all that most changes change. */
const LINES = / d="([^"]*)"/;
/** How much thicker or thinner than meant a line may be before all lines are set anew: nobody sees a twentieth. */
const UNSEEN = 0.05;

export class Picture {
  /** @type {SVGSVGElement | null} */ element = null;
  #text = "";
  /** Its text, taken apart: what is between lines, lines, what is between lines, … @type {string[]} */ #pieces = [];
  /** @type {Element[]} */ #paths = [];

  /**
   * Shows a picture.
   * @param {string} text SVG of our own core, never a visitor's
   * @returns {"same" | "moved" | "new"} the picture it was; the same elements with other lines; or a new element
   */
  show(text) {
    if (text === this.#text) return "same";
    const [head, pieces] = taken(text);
    const had = this.#pieces;
    const alike = pieces.length === had.length && pieces.every((piece, index) => index % 2 === 1 || piece === had[index]);
    this.#text = text;
    this.#pieces = pieces;
    if (!this.element || !alike) {
      this.element = drawing(text);
      this.element.setAttribute("aria-hidden", "true");
      this.#paths = [...this.element.querySelectorAll("[d]")];
      return "new";
    }
    this.element.setAttribute("viewBox", / viewBox="([^"]*)"/.exec(head)?.[1] ?? "");
    this.#paths.forEach((path, index) => {
      const lines = pieces[2 * index + 1] ?? "";
      if (lines !== had[2 * index + 1]) path.setAttribute("d", lines);
    });
    return "moved";
  }
}

/**
 * Shows a picture in a size, with lines of the same weight on the screen whatever the scale.
 * @param {SVGSVGElement} picture
 * @param {number} scale pixels a millimetre
 * @param {{ width: number, height: number }} shown mm
 */
export function size(picture, scale, { width, height }) {
  picture.setAttribute("width", String(width * scale));
  picture.setAttribute("height", String(height * scale));
  if (Math.abs(Number(picture.style.getPropertyValue("--px")) * scale - 1) < UNSEEN) return;
  picture.style.setProperty("--px", String(1 / scale));
}

/**
 * A picture file's worth of SVG text as an element. It comes from our own core, never from a visitor.
 * @param {string} text
 */
export function drawing(text) {
  // Read as part of this page: several times faster than as a document of its own, and nothing is made twice.
  const holder = document.createElement("div");
  holder.innerHTML = text;
  const picture = holder.firstElementChild;
  if (!(picture instanceof SVGSVGElement)) throw new Error("this is no drawing");
  picture.remove();
  return picture;
}

/**
 * The picture's own tag, and what is in it, taken apart at the lines of its paths.
 * @param {string} text
 * @returns {[string, string[]]}
 */
function taken(text) {
  const end = text.indexOf(">");
  return [text.slice(0, end), text.slice(end).split(LINES)];
}
