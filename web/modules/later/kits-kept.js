// The kits, kept on the device as the design is. What is read back is believed only as far as it holds together: another
// version may have written it, or somebody else.

/** @typedef {import("../../wasm/workshop.js").KitPart} KitPart */
/** @typedef {{ name: string, link: string | null, part: KitPart, count: string }} KeptUnit `link` is null for the design on the bench */
/** @typedef {{ width: string, height: string, count: string, material: string }} KeptSize */
/** @typedef {{ units: KeptUnit[], sizes: KeptSize[] }} Kept */

const KEY = "panelwright-kits";
const FORMAT = 1;
/** More than anybody lays at once; whoever wrote more did not write kits. */
const MOST = 200;
const LONGEST = 4000;
const PARTS = ["case", "sleeve", "chassis"];

/**
 * Keeps the kits; none are kept where nothing was made up yet.
 * @param {Kept} kits
 */
export function keep({ units, sizes }) {
  const [only] = units;
  const untouched = units.length === 1 && only?.part === "case" && only.count === "1" && sizes.length === 0;
  try {
    if (untouched) localStorage.removeItem(KEY);
    else localStorage.setItem(KEY, JSON.stringify({ format: FORMAT, units, sizes }));
  } catch {
    // A browser that keeps nothing for pages: the kits last as long as the page stays open.
  }
}

/**
 * The kits of the last visit; null when there are none, or none that hold together.
 * @returns {Kept | null}
 */
export function kept() {
  try {
    const found = JSON.parse(localStorage.getItem(KEY) ?? "null");
    if (found?.format !== FORMAT) return null;
    const units = list(found.units).map((one) => ({ name: text(one.name), link: one.link === null ? null : text(one.link), part: part(one.part), count: text(one.count) }));
    const sizes = list(found.sizes).map((one) => ({ width: text(one.width), height: text(one.height), count: text(one.count), material: text(one.material) }));
    // The design on the bench is one of them, once.
    return units.filter((unit) => unit.link === null).length === 1 ? { units, sizes } : null;
  } catch {
    return null;
  }
}

/**
 * @param {unknown} value
 * @returns {any[]}
 */
function list(value) {
  if (!Array.isArray(value) || value.length > MOST) throw new Error("no list of kits");
  return value;
}

/** @param {unknown} value */
function text(value) {
  if (typeof value !== "string" || value.length > LONGEST) throw new Error("no text of kits");
  return value;
}

/** @param {unknown} value */
function part(value) {
  const index = PARTS.indexOf(text(value));
  if (index < 0) throw new Error("no part of a kit");
  return /** @type {KitPart} */ (value);
}
