// The view of a design: what the core told of it, with the defaults that the page knows already.

/**
 * @param {import("../wasm/panelwright.js").Told} told
 * @param {import("../wasm/panelwright.js").Choice[]} choices
 * @returns {import("../wasm/panelwright.js").View}
 */
export function viewOf(told, choices) {
  const values = Object.fromEntries(choices.map((choice) => [choice.key, choice.default]));
  return {
    ...told,
    values: Object.assign(values, told.values),
    changed: Object.keys(told.values),
    idle: new Set(told.idle.map((place) => choices[place]?.key ?? "")),
  };
}
