// What a closed group of choices holds, in one line.

import { inWords, plain } from "../words.js";

/** @typedef {import("../../wasm/panelwright.js").Choice} Choice */
/** @typedef {Record<string, import("../../wasm/panelwright.js").Value>} Values */

/**
 * The line of a group.
 * @param {string} group the group's name
 * @param {Values} values
 * @param {Choice[]} choices those of the group
 */
export function summary(group, values, choices) {
  const label = (/** @type {string} */ key) => {
    const kind = choices.find((choice) => choice.key === key)?.kind;
    return (kind?.type === "pick" && kind.options.find((option) => option.name === values[key])?.label) || "";
  };
  const mm = (/** @type {string} */ key) => `${plain(Number(values[key]))} mm`;
  const usual = (/** @type {string} */ key) => values[key] === choices.find((choice) => choice.key === key)?.default;
  const line = LINES[group];
  return line ? line(values, label, mm, usual) : "";
}

/** @type {Record<string, (values: Values, label: (key: string) => string, mm: (key: string) => string, usual: (key: string) => boolean) => string>} */
const LINES = {
  design: (values) => String(values["design.title"] || "no name yet"),
  board: (_, label, mm) => `${label("board.form")} on ${mm("board.standoff")} standoffs`,
  card: (values, label, mm) =>
    values["card.kind"] === "none"
      ? "none"
      : `${inWords(Number(values["card.slots"]))} slots, ${mm("card.length")}, ${label("card.kind")}`,
  cooler: (values, label, mm) =>
    values["cooler.kind"] === "none" ? "none" : `${label("cooler.kind")}, ${mm("cooler.height")}`,
  supply: (values, label, mm) => {
    const name = label("supply.kind").replace(/ \(.*/, "");
    if (values["supply.kind"] === "brick") return name;
    return values["supply.depth"] === null ? `${name}, usual depth` : `${name}, ${mm("supply.depth")} deep`;
  },
  drives: (values) => several(values, /^drive\d\.kind$/, (value) => `${value} in`),
  fans: (values) => several(values, /^fan\d\.size$/, (value, key) => `${value} mm, ${values[key.replace("size", "wall")]}`),
  front: (values, label) => {
    const button = values["button.wall"] === "none" ? "no button" : `button on the ${label("button.wall")}`;
    return values["ports.wall"] === "none" ? button : `${button}, connectors on the ${label("ports.wall")}`;
  },
  size: (values, label) => {
    if (values["size.rule"] === "paper") return `no panel larger than ${label("size.paper")}`;
    if (values["size.rule"] === "smallest") return "as small as the parts allow";
    return `${["width", "depth", "height"].map((side) => plain(Number(values[`size.${side}`]))).join(" × ")} mm`;
  },
  sheet: (values, label, mm) => {
    const measured = values["sheet.measured"];
    return `${label("sheet.material")}, ${mm("sheet.nominal")}${measured === null ? "" : `, measured ${mm("sheet.measured")}`}`;
  },
  sleeve: (values, label, mm, usual) => {
    // The usual figure stands for what the making needs, unless it is said to be the maker's own.
    const made = values["sleeve.clearance_by"] === "method" && usual("sleeve.clearance");
    return `${made ? "clearance by the making" : `${mm("sleeve.clearance")} clearance`}, off ${label("sleeve.slide")}`;
  },
  hardware: (_, label) => `${label("hardware.thread")}, ${label("hardware.fit")} holes`,
  feet: (values, label, mm) =>
    values["feet.kind"] === "none" ? "none" : `${label("feet.kind").replace(/,? (through|screwed).*/, "")}, ${mm("feet.height")}`,
  vents: (values) => {
    const vents = ["card", "supply", "cooler", "extra"].filter((name) => values[`vent_${name}.pattern`] !== "none");
    return vents.length === 0 ? "none" : vents.map((name) => name.replace("extra", "one more")).join(", ");
  },
  templates: (values, label, mm) => {
    const read = values["printer.across"] !== null || values["printer.down"] !== null;
    return `on ${label("template.paper")}, margin ${mm("template.margin")}${read ? ", printer corrected" : ""}`;
  },
  making: (values, label) => {
    const own = Object.keys(values).filter((key) => key.startsWith("method.") && values[key] !== "same" && values[key] !== values.method).length;
    return `${label("method")}${own > 0 ? `, ${inWords(own)} ${own > 1 ? "panels" : "panel"} in another way` : ""}`;
  },
  joints: (values, label) => {
    const own = Object.keys(values).filter((key) => /^joint\.\w+_/.test(key) && values[key] !== "auto");
    if (own.length === 0) return "as the method suggests";
    const kinds = [...new Set(own.map((key) => label(key).replace(/,.*/, "").replace("butt", "butt joints")))];
    return `${inWords(own.length)} ${own.length > 1 ? "corners" : "corner"} chosen: ${kinds.join("; ")}`;
  },
  stock: (values) => {
    const cases = Number(values["kit.count"]);
    const count = values["stock.count"];
    const other = ["stock2", "stock3"].filter((name) => values[`${name}.width`] !== null && values[`${name}.height`] !== null).length;
    const sheets = count === null ? "as many sheets as it takes" : `${count} ${count === 1 ? "sheet" : "sheets"}`;
    return `${cases === 1 ? "one case" : `${cases} cases`}, ${sheets}${other > 0 ? ` and ${inWords(other)} of another size` : ""}`;
  },
  prices: (values) => {
    const stated = (/** @type {RegExp} */ keys) => Object.keys(values).filter((key) => keys.test(key) && values[key] !== null).length;
    const prices = stated(/^price\.(?!currency)/);
    const priced = prices === 0 ? "no prices yet" : `${inWords(prices)} ${prices > 1 ? "prices" : "price"}`;
    return `${priced}, ${stated(/^rate\./) === 0 ? "no pace yet" : "your pace"}`;
  },
};

/**
 * Numbered things that are there.
 * @param {Values} values
 * @param {RegExp} keys
 * @param {(value: import("../../wasm/panelwright.js").Value, key: string) => string} words
 */
function several(values, keys, words) {
  const there = Object.keys(values).filter((key) => keys.test(key) && values[key] !== "none");
  /** @type {Map<string, number>} */
  const counts = new Map();
  for (const key of there) {
    const word = words(values[key] ?? null, key);
    counts.set(word, (counts.get(word) ?? 0) + 1);
  }
  return counts.size === 0 ? "none" : [...counts].map(([word, count]) => (count > 1 ? `${inWords(count)} ${word}` : word)).join("; ");
}
