// Making elements. Text is always set as text, never read as markup.

/** @typedef {string | number | boolean | null | undefined | ((event: any) => void)} Attribute */
/** @typedef {Node | string | null | undefined | false} Child */

/**
 * An element with attributes (`onclick` and the like are listeners) and children.
 * @template {keyof HTMLElementTagNameMap} K
 * @param {K} tag
 * @param {Record<string, Attribute>} [attributes]
 * @param {...Child} children
 * @returns {HTMLElementTagNameMap[K]}
 */
export function h(tag, attributes = {}, ...children) {
  const element = document.createElement(tag);
  dress(element, attributes);
  for (const child of children) if (child) element.append(child);
  return element;
}

/**
 * The same for a drawing.
 * @template {keyof SVGElementTagNameMap} K
 * @param {K} tag
 * @param {Record<string, Attribute>} [attributes]
 * @param {...Child} children
 * @returns {SVGElementTagNameMap[K]}
 */
export function s(tag, attributes = {}, ...children) {
  const element = document.createElementNS("http://www.w3.org/2000/svg", tag);
  dress(element, attributes);
  for (const child of children) if (child) element.append(child);
  return element;
}

/**
 * @param {Element} element
 * @param {Record<string, Attribute>} attributes
 */
function dress(element, attributes) {
  for (const [name, value] of Object.entries(attributes)) {
    if (typeof value === "function") element.addEventListener(name.slice(2), value);
    else if (value === true) element.setAttribute(name, "");
    else if (value !== false && value !== null && value !== undefined) element.setAttribute(name, String(value));
  }
}

/**
 * The element of this id; the page's own markup promises that it is there.
 * @param {string} id
 */
export function byId(id) {
  const element = document.getElementById(id);
  if (!element) throw new Error(`the page has no place for ${id}`);
  return element;
}

/**
 * Sets text only where it changes, so that nothing is read out or laid out anew for nothing.
 * @param {Node} node
 * @param {string} text
 */
export function say(node, text) {
  if (node.textContent !== text) node.textContent = text;
}

/**
 * Makes these the children, in this order. What is in its place stays: an element put back is styled and laid out anew.
 * @param {Element} parent
 * @param {Element[]} children
 */
export function arrange(parent, children) {
  const stay = new Set(children);
  for (const child of [...parent.children]) if (!stay.has(child)) child.remove();
  let place = parent.firstElementChild;
  for (const child of children) {
    // One that goes further back lets those behind it stand.
    if (place && child === place.nextElementSibling) place = child;
    if (child === place) place = place.nextElementSibling;
    else parent.insertBefore(child, place);
  }
}

/**
 * How many characters a field shows, for browsers that cannot size it by what is in it. Set only where it changes: a
 * style that is set again is worked out again.
 * @param {HTMLElement} field
 * @param {number} chars
 */
export function wide(field, chars) {
  if (field.style.getPropertyValue("--chars") !== String(chars)) field.style.setProperty("--chars", String(chars));
}

let count = 0;

/**
 * A name no other element has.
 * @param {string} stem
 */
export function unique(stem) {
  count += 1;
  return `${stem.replace(/[^a-z0-9]+/gi, "-")}-${count}`;
}

/** Whether the reader asked for less motion. */
export function calm() {
  return matchMedia("(prefers-reduced-motion: reduce)").matches;
}
