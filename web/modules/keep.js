// Keeps the design where a visitor finds it again: in the address behind the #, and on the device.

const KEY = "panelwright-design";

/** Wait before the address is written: browsers allow some hundred writes a minute. */
const PAUSE_MS = 250;

let waiting = 0;

/**
 * Keeps a design, soon.
 * @param {string} link
 */
export function keep(link) {
  clearTimeout(waiting);
  waiting = window.setTimeout(() => {
    waiting = 0;
    write(link);
  }, PAUSE_MS);
}

/**
 * Keeps a design at once.
 * @param {string} link
 */
export function write(link) {
  history.replaceState(null, "", `#${link}`);
  try {
    localStorage.setItem(KEY, link);
  } catch {
    // A browser that keeps nothing for pages still has the address.
  }
}

/** The design in the address; empty when there is none, or the name of a place on the page. */
export function fromAddress() {
  const text = location.hash.replace(/^#/, "");
  return document.getElementById(text) ? "" : text;
}

/** The design kept on the device; empty when there is none. */
export function fromDevice() {
  try {
    return localStorage.getItem(KEY) ?? "";
  } catch {
    return "";
  }
}

/**
 * The whole address of a design, to hand on.
 * @param {string} link
 */
export function address(link) {
  return `${location.href.split("#")[0]}#${link}`;
}

/**
 * Hands a file to the visitor.
 * @param {string} name
 * @param {BlobPart} content
 * @param {string} type
 */
export function handOut(name, content, type) {
  const url = URL.createObjectURL(new Blob([content], { type }));
  const link = document.createElement("a");
  link.href = url;
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(url), 10_000);
}

/**
 * Hands cutting files to the visitor, one after the other: a browser drops files that come all at once.
 * @param {string} start of their names
 * @param {import("../wasm/workshop.js").CuttingFile[]} files
 * @param {"dxf" | "svg"} kind
 */
export async function handOutCutting(start, files, kind) {
  for (const { name, text } of files) {
    handOut(`${start}-${name}.${kind}`, text, kind === "dxf" ? "image/vnd.dxf" : "image/svg+xml");
    await new Promise((resolve) => setTimeout(resolve, 150));
  }
}

/**
 * The start of a file's name: the design's own, or "case".
 * @param {string} title
 */
export function fileName(title) {
  return title.normalize("NFD").replace(/\p{M}/gu, "").toLowerCase().replace(/[^a-z0-9]+/g, "-").replace(/^-|-$/g, "") || "case";
}
