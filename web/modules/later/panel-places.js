// What every view of a flat panel needs: its caption, and where its points lie in its picture and on the screen.

import { h, say } from "../dom.js";
import { counted, tenths } from "../words.js";

/** @typedef {import("../../wasm/panelwright.js").Panel} Panel */

/** @param {Panel} panel */
export function caption(panel) {
  return h("span", { class: "caption" }, h("span", { class: "caption-name" }, panel.label), h("span", {}, said(panel)));
}

/**
 * Says in a caption what has become of its panel.
 * @param {HTMLElement} line
 * @param {Panel} panel
 */
export function recaption(line, panel) {
  if (line.lastChild) say(line.lastChild, said(panel));
}

/** @param {Panel} panel */
function said(panel) {
  return `${panel.size_mm.map(tenths).join(" × ")} mm, ${counted(panel.holes, "hole")}`;
}

/** A picture's outline stays what it is; asking for it anew may lay out the page. @type {WeakMap<SVGSVGElement, DOMRect>} */
const faces = new WeakMap();

/**
 * The panel's own outline in its picture, apart from dimensions and words; one without them lies in its middle.
 * @param {SVGSVGElement} svg
 * @param {Panel} panel
 */
export function face(svg, panel) {
  const known = faces.get(svg);
  if (known) return known;
  const outline = svg.querySelector(`#flat-${panel.id}`);
  if (!(outline instanceof SVGGraphicsElement)) {
    const { width, height } = svg.viewBox.baseVal;
    const [wide, high] = panel.size_mm;
    return new DOMRect((width - wide) / 2, (height - high) / 2, wide, high);
  }
  const box = outline.getBBox();
  // One that is out of sight has no size yet.
  if (box.width > 0) faces.set(svg, box);
  return box;
}

/**
 * A point of a panel in its picture, y turned over.
 * @param {SVGSVGElement} svg
 * @param {Panel} panel
 * @param {[number, number]} point
 */
export function onPicture(svg, panel, [u, v]) {
  const { x, y } = face(svg, panel);
  return { x: x + u, y: y + panel.size_mm[1] - v };
}

/**
 * The same in pixels of the window.
 * @param {SVGSVGElement} svg
 * @param {Panel} panel
 * @param {[number, number]} point
 */
export function place(svg, panel, point) {
  const box = svg.getBoundingClientRect();
  const { x, y } = onPicture(svg, panel, point);
  const shown = svg.viewBox.baseVal;
  return {
    x: box.left + ((x - shown.x) / shown.width) * box.width,
    y: box.top + ((y - shown.y) / shown.height) * box.height,
  };
}
