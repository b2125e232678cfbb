// A list as a table that fits a narrow paper: what stands in one column again and again becomes a line above its rows,
// remarks go below what they speak of, and columns that say nothing are left out. Files hold every column.

import { h } from "../dom.js";
import { plain } from "../words.js";

/** @typedef {import("../../wasm/workshop.js").ListTable} ListTable */
/** @typedef {ListTable["rows"][number]} Row */

/**
 * @param {ListTable} list
 */
export function listTable(list) {
  const { columns, rows } = list;
  const all = columns.map((_, column) => column);
  const cell = (/** @type {Row} */ row, /** @type {number} */ column) => {
    const value = row[column];
    return typeof value === "number" ? plain(value) : (value ?? "");
  };
  const same = (/** @type {number} */ a, /** @type {number} */ b) => rows.every((row) => row[a] === row[b]);
  const every = (/** @type {number} */ column, /** @type {unknown} */ value) => rows.every((row) => row[column] === value);
  const titled = (/** @type {string} */ title) => columns.findIndex((column) => column.title === title);
  const singly = every(titled("in a pack"), 1);
  const idle = (/** @type {number} */ column) => {
    const title = columns[column]?.title ?? "";
    if (rows.every((row) => row[column] === null || row[column] === "")) return true;
    // For one case, what each takes is what all take.
    if (/\ball$/.test(title)) return same(column, column - 1);
    if (title === "unit") return every(column, "pieces");
    return singly && (title === "in a pack" || title === "packs");
  };
  const above = headings(list);
  const main = above.length;
  const below = all.filter((column) => column > main && !columns[column]?.numbers && columns[column]?.title !== "unit" && !idle(column));
  const shown = all.filter((column) => column >= main && !below.includes(column) && !idle(column));
  const look = (/** @type {number} */ column) => (columns[column]?.numbers ? "number" : "");
  const remarks = (/** @type {Row} */ row, /** @type {number[]} */ of) => of.map((column) => cell(row, column)).filter(Boolean).map((text) => h("span", { class: "remark" }, text));
  const runs = inRuns(rows, above);
  const lines = runs.flatMap((run) => {
    const [first] = run;
    // A remark on all of them stands above them.
    const common = above.length === 0 || !first || run.length === 1 ? [] : below.filter((column) => run.every((row) => row[column] === first[column]));
    const own = below.filter((column) => !common.includes(column));
    const heading = first && above.length > 0 ? [h("tr", { class: "heading" }, h("th", { colspan: shown.length, scope: "rowgroup" }, above.map((column) => cell(first, column)).join(" "), ...remarks(first, common)))] : [];
    return [
      ...heading,
      ...run.map((row) => h("tr", {}, ...shown.map((column) => h("td", { class: look(column) }, cell(row, column), ...(column === main ? remarks(row, own) : []))))),
    ];
  });
  return h(
    "table",
    {},
    h("thead", {}, h("tr", {}, ...shown.map((column) => h("th", { scope: "col", class: look(column) }, columns[column]?.title)))),
    h("tbody", {}, ...lines),
  );
}

/**
 * The first columns, when they say the same for several rows that follow one another and words come after them; the
 * second goes with the first when it follows from it.
 * @param {ListTable} list
 */
function headings({ columns, rows }) {
  if (columns[0]?.numbers || columns[1]?.numbers || inRuns(rows, [0]).length > 0.7 * rows.length) return [];
  return inRuns(rows, [0]).length === inRuns(rows, [1]).length ? [0, 1] : [0];
}

/**
 * Rows that follow one another and say the same in some columns.
 * @param {Row[]} rows
 * @param {number[]} columns none: all rows are one run
 */
function inRuns(rows, columns) {
  /** @type {Row[][]} */
  const runs = [];
  for (const row of rows) {
    const run = runs.at(-1);
    if (run && columns.every((column) => run[0]?.[column] === row[column])) run.push(row);
    else runs.push([row]);
  }
  return runs;
}
