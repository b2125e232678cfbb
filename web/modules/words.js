// Numbers and words as the page writes them.

/** @typedef {import("../wasm/panelwright.js").Choice} Choice */
/** @typedef {import("../wasm/panelwright.js").Value} Value */

/** What is said when the files of two goes were saved. */
export const BOTH_GOES = "2 cutting files saved: the one whose name ends in -first is cut before the sheet is turned over.";

const COUNTS = ["no", "one", "two", "three", "four", "five", "six", "seven", "eight"];

/**
 * A small count in words.
 * @param {number} count
 */
export function inWords(count) {
  return COUNTS[count] ?? String(count);
}

/**
 * A number with at most so many decimals, trailing zeros dropped.
 * @param {number} value
 * @param {number} [decimals]
 */
export function plain(value, decimals = 2) {
  return String(Number(value.toFixed(decimals)));
}

/**
 * A length with one decimal, as on a drawing: 210.0.
 * @param {number} value
 */
export function tenths(value) {
  return value.toFixed(1);
}

/**
 * What was typed as a number: a comma counts as a point, a unit behind it is let be.
 * @param {string} text
 * @returns {number | null} null when it is no number
 */
export function typed(text) {
  const bare = text.trim().replace(",", ".").replace(/\s*mm$/i, "");
  return /^[+-]?(\d+\.?\d*|\.\d+)$/.test(bare) ? Number(bare) : null;
}

/**
 * "a" or "an" before a word, as it is spoken: an SFX supply, an ATX board.
 * @param {string} word
 */
export function article(word) {
  const spelled = /^[A-Z]{2,}/.test(word) && !/^TFX|^DTX/.test(word);
  return (spelled ? /^[AEFHILMNORSX]/ : /^[aeiou]/i).test(word) ? "an" : "a";
}

/**
 * A value in words, with its unit.
 * @param {Choice} choice
 * @param {Value} value
 */
export function valueInWords(choice, value) {
  const { kind } = choice;
  if (kind.type === "pick") return kind.options.find((option) => option.name === value)?.label ?? "";
  if (value === null) return "left open";
  if (kind.type === "number") return kind.unit ? `${plain(Number(value))} ${kind.unit}` : plain(Number(value));
  if (kind.type === "switch") return value ? "yes" : "no";
  if (kind.type === "points") {
    const points = /** @type {unknown[]} */ (value);
    return points.length === 0 ? "not measured" : `${points.length} measured`;
  }
  return String(value) || "none";
}

/**
 * The allowed values in words: 20 to 200 mm.
 * @param {Choice} choice
 */
export function allowed(choice) {
  const { kind } = choice;
  if (kind.type === "number") {
    const range = `${plain(kind.min)} to ${plain(kind.max)}`;
    return kind.unit ? `${range} ${kind.unit}` : `a whole number, ${range}`;
  }
  if (kind.type === "text") return `at most ${kind.max_chars} characters`;
  if (kind.type === "points") return `at most ${kind.max} points, each 0 to ${kind.limit_mm} mm`;
  return "one of the list";
}

/**
 * A message of the core with the choices' labels instead of their keys.
 * @param {string} message
 * @param {Choice[]} choices
 */
export function withLabels(message, choices) {
  const labels = new Map(choices.map((choice) => [choice.key, choice.label]));
  return message.replace(/[a-z_0-9]+\.[a-z_0-9]+/g, (key) => labels.get(key) ?? key);
}

/**
 * The same with a capital at its start.
 * @param {string} text
 */
export function capital(text) {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

/**
 * The same with a full stop at its end: errors of the core have none, those of the page have one.
 * @param {string} text
 */
export function ended(text) {
  return /[.!?]$/.test(text) ? text : `${text}.`;
}

/**
 * Bytes in words.
 * @param {number} bytes
 */
export function size(bytes) {
  return bytes < 1000 ? `${bytes} bytes` : bytes < 1e6 ? `${Math.round(bytes / 1000)} kB` : `${plain(bytes / 1e6, 1)} MB`;
}

/**
 * A word in its plural where the count asks for it.
 * @param {number} count
 * @param {string} word
 */
export function counted(count, word) {
  return `${count} ${word}${count === 1 ? "" : "s"}`;
}
