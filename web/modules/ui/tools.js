// Undo, redo, day and night.

import { h, s } from "../dom.js";

const LIGHT = "panelwright-light";

/** @typedef {{ undo: () => void, redo: () => void }} ToolEvents */

export class Tools {
  #undo;
  #redo;

  /**
   * @param {HTMLElement} container
   * @param {ToolEvents} events
   */
  constructor(container, events) {
    this.#undo = button("Undo", "M7 7H13a4 4 0 0 1 0 8H6M10 3.500 6.500 7 10 10.500", events.undo, "Ctrl+Z");
    this.#redo = button("Redo", "M13 7H7a4 4 0 0 0 0 8h7M10 3.500 13.500 7 10 10.500", events.redo, "Ctrl+Shift+Z");
    container.append(this.#undo, this.#redo, light());
  }

  /** @param {{ canUndo: boolean, canRedo: boolean }} view */
  update({ canUndo, canRedo }) {
    // A button that falls asleep under the finger must not lose the keyboard's place.
    this.#undo.setAttribute("aria-disabled", String(!canUndo));
    this.#redo.setAttribute("aria-disabled", String(!canRedo));
  }
}

/**
 * @param {string} label
 * @param {string} path
 * @param {() => void} act
 * @param {string} [keys]
 */
function button(label, path, act, keys) {
  return h(
    "button",
    { type: "button", class: "quiet", "aria-label": label, title: keys ? `${label} (${keys})` : label, onclick: act },
    s("svg", { class: "icon", viewBox: "0 0 20 20", "aria-hidden": "true" }, s("path", { d: path })),
  );
}

/** A switch between day and night; until it is used the system decides. */
function light() {
  const root = document.documentElement;
  try {
    const kept = localStorage.getItem(LIGHT);
    if (kept === "day" || kept === "night") root.dataset.light = kept;
  } catch {
    // Without a memory the system decides each time.
  }
  const isNight = () =>
    root.dataset.light === "night" || (!root.dataset.light && matchMedia("(prefers-color-scheme: dark)").matches);
  const lamp = button("Night", "M10 3v1.500M10 15.500V17M3 10h1.500M15.500 10H17M5 5l1 1M14 14l1 1M5 15l1-1M14 6l1-1M10 6.500a3.500 3.500 0 1 0 0 7z", () => {
    root.dataset.light = isNight() ? "day" : "night";
    try {
      localStorage.setItem(LIGHT, root.dataset.light);
    } catch {
      // See above.
    }
    show();
  });
  const show = () => {
    lamp.setAttribute("aria-pressed", String(isNight()));
    lamp.title = isNight() ? "Day colours" : "Night colours";
  };
  matchMedia("(prefers-color-scheme: dark)").addEventListener("change", show);
  show();
  return lamp;
}
