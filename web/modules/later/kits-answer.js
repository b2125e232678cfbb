// What was found for the kits: how many of each design, and every sheet with its panels.

import { h } from "../dom.js";
import { drawing } from "../picture.js";
import { counted, plain } from "../words.js";

/** @typedef {import("../../wasm/workshop.js").KitsFound} KitsFound */
/** @typedef {KitsFound["answer"]["stacks"][number]} Stack */

const PARTS = { case: "whole case", sleeve: "sleeve only", chassis: "chassis only" };

/** @param {KitsFound} found */
export function answered({ answer, pictures }) {
  const most = answer.ask === "most";
  const heads = ["Design", "Panels", ...(most ? ["In a round", "In all"] : ["Wanted"]), "Fingerprint"];
  const blocked = answer.units.filter((unit) => unit.blocked);
  return [
    ...(blocked.length === 0 ? [] : [h("p", { class: "kits-blocked" }, `Do not cut ${blocked.map((unit) => unit.label).join(", ")} as it is: its checks block it. Open it on the bench and read its notes.`)]),
    h(
      "div",
      { class: "sideways", tabindex: "0", role: "region", "aria-label": "Designs of the kits" },
      h(
        "table",
        {},
        h("thead", {}, h("tr", {}, ...heads.map((head, column) => h("th", { scope: "col", class: column > 1 && "number" }, head)))),
        h(
          "tbody",
          {},
          ...answer.units.map((unit) =>
            h(
              "tr",
              {},
              h("th", { scope: "row" }, unit.label),
              h("td", {}, PARTS[unit.part]),
              h("td", { class: "number" }, String(unit.count)),
              most ? h("td", { class: "number" }, String(unit.total)) : null,
              h("td", { class: "number" }, unit.fingerprint),
            ),
          ),
        ),
      ),
    ),
    ...answer.stacks.map((stack, index) => laid(stack, pictures[index] ?? [], answer.rounds)),
  ];
}

/**
 * @param {Stack} stack
 * @param {string[]} pictures
 * @param {number} rounds
 */
function laid({ label, rounds: held, yield_share, unused, layouts }, pictures, rounds) {
  const { sheets, bound, bound_by, unplaced } = layouts;
  const said = [`${label}: ${counted(sheets.length, "sheet")}, ${plain(100 * yield_share, 0)} % of ${sheets.length === 1 ? "it" : "them"} panels; at least ${bound} by ${bound_by}.`];
  if (held > rounds) said.push(`This layout holds ${counted(held, "round")}, more than the other sheets give.`);
  if (unused.length > 0) said.push(`Left over: ${unused.map(([name, count]) => `${count} × ${name}`).join(", ")}.`);
  if (unplaced.length > 0) said.push(`No place for ${unplaced.join("; ")}.`);
  return h(
    "section",
    { class: "kits-stack" },
    h("p", {}, said.join(" ")),
    h("div", { class: "sheets" }, ...sheets.map((sheet, index) => figure(label, sheet, index, sheets.length, pictures[index]))),
  );
}

/**
 * @param {string} stack
 * @param {Stack["layouts"]["sheets"][number]} sheet
 * @param {number} index
 * @param {number} of
 * @param {string | undefined} picture
 */
function figure(stack, sheet, index, of, picture) {
  const name = `Sheet ${index + 1} of ${of}`;
  return h(
    "figure",
    { class: "stock-sheet" },
    h("figcaption", {}, h("h4", {}, name), h("p", {}, `${sheet.size_mm.map((side) => plain(side, 1)).join(" × ")} mm, ${counted(sheet.panels.length, "panel")}, ${plain(100 * sheet.yield_share, 0)} % used.`)),
    picture ? h("div", { class: "stock-picture", role: "img", "aria-label": `${stack}, ${name.toLowerCase()} with its panels` }, drawing(picture)) : null,
    h("details", { class: "source" }, h("summary", {}, "What is on it"), h("ul", {}, ...sheet.panels.map((panel) => h("li", {}, panel)))),
    sheet.cuts.length === 0 ? null : h("details", { class: "source" }, h("summary", {}, `${counted(sheet.cuts.length, "saw cut")} in order`), h("ol", { class: "cuts" }, ...sheet.cuts.map((cut) => h("li", {}, cut)))),
  );
}
