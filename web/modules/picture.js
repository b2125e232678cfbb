// A picture that follows its design. Most changes move lines and leave all else as it was, others bring or take a part:
// what is alike stays, with its lines set anew, in a fraction of the time that reading and styling a new picture takes.

import { arrange } from "./dom.js";

/** The lines of a path, which is all that most changes change. */
const LINES = / d="([^"]*)"/;
/** How much thicker or thinner than meant a line may be before all lines are set anew: nobody sees a twentieth. */
const UNSEEN = 0.05;

/**
 * A child of a layer: a shape, or a group of them. Its text is taken apart: what is between lines, lines, what is between
 * lines, …; what is alike but for its lines has the same name.
 * @typedef {{ text: string, name: string, pieces: string[] }} Part
 * @typedef {Part & { element: Element, paths: Element[] }} Drawn
 */

export class Picture {
  /** @type {SVGSVGElement | null} */ element = null;
  #text = "";
  /** @type {{ head: string, element: Element, parts: Drawn[] }[]} */ #layers = [];

  /**
   * Shows a picture.
   * @param {string} text SVG of our own core, never a visitor's
   * @returns {"same" | "moved" | "new"} the picture it was; the same elements with other lines; or with new ones among them
   */
  show(text) {
    if (text === this.#text) return "same";
    this.#text = text;
    const [head, ...lines] = text.split("\n");
    const layers = layered(lines);
    const alike = layers.length === this.#layers.length && layers.every((layer, index) => layer.head === this.#layers[index]?.head);
    if (!this.element || !alike) {
      this.element = drawing(text);
      this.element.setAttribute("aria-hidden", "true");
      const places = [...this.element.children];
      this.#layers = layers.flatMap((layer, index) => {
        const element = places[index];
        return element ? [{ head: layer.head, element, parts: met(layer.parts, element.children) }] : [];
      });
      return "new";
    }
    this.element.setAttribute("viewBox", / viewBox="([^"]*)"/.exec(head ?? "")?.[1] ?? "");
    const fresh = layers.map((layer, index) => {
      const drawn = this.#layers[index];
      return drawn ? follow(drawn, layer.parts) : 0;
    });
    return fresh.some((count) => count > 0) ? "new" : "moved";
  }
}

/**
 * Makes a layer show these parts; says how many had to be made.
 * @param {{ element: Element, parts: Drawn[] }} layer
 * @param {Part[]} parts
 */
function follow(layer, parts) {
  /** @type {Map<string, Drawn[]>} */
  const kept = new Map();
  for (const drawn of layer.parts) {
    const others = kept.get(drawn.name);
    if (others) others.push(drawn);
    else kept.set(drawn.name, [drawn]);
  }
  const found = parts.map((part) => kept.get(part.name)?.shift());
  const missing = parts.filter((_, index) => !found[index]);
  const made = missing.length > 0 ? met(missing, drawing(`<svg>${missing.map(({ text }) => text).join("\n")}</svg>`).children) : [];
  let next = 0;
  layer.parts = parts.flatMap((part, index) => {
    const drawn = found[index];
    const fresh = drawn ? undefined : made[next++];
    return drawn ? [moved(drawn, part)] : fresh ? [fresh] : [];
  });
  arrange(layer.element, layer.parts.map(({ element }) => element));
  return missing.length;
}

/**
 * Sets the lines of a part anew.
 * @param {Drawn} drawn
 * @param {Part} part
 */
function moved(drawn, part) {
  drawn.paths.forEach((path, index) => {
    const lines = part.pieces[2 * index + 1] ?? "";
    if (lines !== drawn.pieces[2 * index + 1]) path.setAttribute("d", lines);
  });
  drawn.pieces = part.pieces;
  return drawn;
}

/**
 * Parts with the elements they have become.
 * @param {Part[]} parts
 * @param {HTMLCollection} elements
 * @returns {Drawn[]}
 */
function met(parts, elements) {
  const all = [...elements];
  return parts.flatMap((part, index) => {
    const element = all[index];
    return element ? [{ ...part, element, paths: element.matches("[d]") ? [element] : [...element.querySelectorAll("[d]")] }] : [];
  });
}

/**
 * The layers of a picture, each with its children. The core writes a start, an end and a whole element on a line each.
 * @param {string[]} lines
 */
function layered(lines) {
  /** @type {{ head: string, parts: Part[] }[]} */
  const layers = [];
  /** @type {string[]} */
  let part = [];
  let depth = 0;
  for (const line of lines) {
    if (depth === 0 && line.startsWith("<g ")) layers.push({ head: line, parts: [] });
    else part.push(line);
    if (line.startsWith("</")) depth -= 1;
    else if (line.startsWith("<") && !line.endsWith("/>") && !line.includes("</")) depth += 1;
    if (depth === 1 && part.length > 0) {
      const text = part.join("\n");
      const pieces = text.split(LINES);
      layers.at(-1)?.parts.push({ text, pieces, name: pieces.filter((_, index) => index % 2 === 0).join("") });
      part = [];
    } else if (depth < 1) part = [];
  }
  return layers;
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
  // Without the ends of its lines, which would be nodes, too.
  holder.innerHTML = text.replaceAll("\n", "");
  const picture = holder.firstElementChild;
  if (!(picture instanceof SVGSVGElement)) throw new Error("this is no drawing");
  picture.remove();
  return picture;
}
