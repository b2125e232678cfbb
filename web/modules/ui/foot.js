// The foot of the page: cautions of the trade, and the sizes everything is made from with their sources.

import { h, say } from "../dom.js";

/** @typedef {import("../../wasm/workshop.js").Source} Source */

export class Foot {
  #offline = h("p", { class: "offline" }, "Fetching what is needed without a network.");
  #newer = h("p", { hidden: true });

  /**
   * @param {HTMLElement} container
   * @param {{ cautions: string[], sources: () => Promise<Source[] | null>, version: string }} facts
   */
  constructor(container, facts) {
    const dialog = h("dialog", { class: "sources", "aria-labelledby": "sources-title" });
    const open = h(
      "button",
      {
        type: "button",
        class: "framed",
        onclick: async () => {
          if (!dialog.firstChild) {
            const sources = await facts.sources();
            if (sources === null || dialog.firstChild) return;
            fill(dialog, sources);
          }
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
        h("p", {}, "Panelwright works on your device. It asks no server and keeps no account."),
        this.#offline,
        this.#newer,
        h("p", {}, `Version ${facts.version}`),
      ),
      dialog,
    );
  }

  /**
   * Whether the page works without a network from now on.
   * @param {string} text
   */
  offline(text) {
    say(this.#offline, text);
  }

  /**
   * Offers a newer version of the page.
   * @param {() => void} use
   */
  newer(use) {
    const button = h("button", { type: "button", class: "framed", onclick: use }, "Use it now");
    this.#newer.replaceChildren("A newer version is here. Your design stays. ", button);
    this.#newer.hidden = false;
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
