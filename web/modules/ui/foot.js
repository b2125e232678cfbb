// The foot of the page: cautions of the trade, and the sizes everything is made from with their sources.

import { h } from "../dom.js";

/** @typedef {import("../../wasm/panelwright.js").Source} Source */

export class Foot {
  /**
   * @param {HTMLElement} container
   * @param {{ cautions: string[], sources: () => Source[], version: string }} facts
   */
  constructor(container, facts) {
    const dialog = h("dialog", { class: "sources", "aria-labelledby": "sources-title" });
    const open = h(
      "button",
      {
        type: "button",
        class: "framed",
        onclick: () => {
          if (!dialog.firstChild) fill(dialog, facts.sources());
          dialog.showModal();
        },
      },
      "Sources of all sizes",
    );
    container.append(
      h("h2", {}, "Before you cut, wire or switch on"),
      h("ul", { class: "cautions" }, ...facts.cautions.map((text) => h("li", {}, text))),
      h(
        "div",
        { class: "about" },
        open,
        h("p", {}, "Panelwright works on your device. It asks no server, keeps no account, and works offline after the first visit."),
        h("p", {}, `Version ${facts.version}`),
      ),
      dialog,
    );
  }
}

/**
 * @param {HTMLDialogElement} dialog
 * @param {Source[]} sources
 */
function fill(dialog, sources) {
  /** @type {Map<string, Source[]>} */
  const groups = new Map();
  for (const source of sources) groups.set(source.group, [...(groups.get(source.group) ?? []), source]);
  const tables = [...groups].map(([group, list]) =>
    h(
      "section",
      {},
      h("h3", {}, group),
      h(
        "table",
        {},
        h("thead", {}, h("tr", {}, ...["Size", "Value", "Source"].map((word) => h("th", { scope: "col" }, word)))),
        h(
          "tbody",
          {},
          ...list.map((one) => h("tr", {}, h("th", { scope: "row" }, one.name), h("td", {}, one.value), h("td", {}, one.source))),
        ),
      ),
    ),
  );
  dialog.append(
    h(
      "div",
      { class: "dialog-head" },
      h("h2", { id: "sources-title" }, "Sources of all sizes"),
      h("button", { type: "button", class: "framed", onclick: () => dialog.close() }, "Close"),
    ),
    h("p", {}, "Every size is published, derived from published ones, common practice, or from memory. Measure yours before you cut."),
    h("div", { class: "dialog-body", tabindex: "0", role: "region", "aria-label": "List of sizes" }, ...tables),
  );
}
