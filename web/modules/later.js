// Parts of the page that are loaded when they are first wanted. Their names stand in `crates/xtask/src/shrink.rs`, too.

/** Panels, sheets, lists and comparing: what lies where the case lies at first. */
export const laterPapers = () => brought(import("./later/papers.js"));

/** The kerf test piece: its files, and the width that measuring it gives. */
export const laterKerf = () => brought(import("./later/kerf.js"));

/** Kits: several designs on the same sheets. */
export const laterKits = () => brought(import("./later/kits.js"));

/** Prints and files: which design they belong to. */
export const laterPrints = () => brought(import("./later/prints.js"));

/**
 * @template T
 * @param {Promise<T>} part
 * @returns {Promise<T>}
 */
async function brought(part) {
  try {
    return await part;
  } catch {
    throw new Error("this part of the page did not load. Try again with a network, or load the page anew; nothing was lost.");
  }
}
