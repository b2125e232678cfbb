// Links to places on this page: the bar of a phone, and the one that skips to the drawing. The address holds the design,
// so they leave it alone.

import { byId, calm } from "../dom.js";

/** @param {() => Element | null} chosen the note that is chosen, the place to go back to */
export function workJumps(chosen) {
  document.addEventListener("click", (event) => {
    const link = event.target instanceof Element ? event.target.closest('a[href^="#"]') : null;
    if (!link || event.ctrlKey || event.metaKey || event.shiftKey) return;
    event.preventDefault();
    const place = byId(link.getAttribute("href")?.slice(1) ?? "");
    const note = link.id === "jump-notes" ? chosen() : null;
    show(note ?? place, note ? "center" : "start");
    // The next Tab goes on from here.
    place.tabIndex = -1;
    place.focus({ preventScroll: true });
  });
}

/**
 * Brings a place into the window.
 * @param {Element} place
 * @param {ScrollLogicalPosition} block
 */
export function show(place, block) {
  place.scrollIntoView({ block, behavior: calm() ? "auto" : "smooth" });
}

/**
 * Whether enough of a place is in the window to be looked at.
 * @param {Element} place
 */
export function inSight(place) {
  const { top, bottom, height } = place.getBoundingClientRect();
  const seen = Math.min(bottom, innerHeight) - Math.max(top, 0);
  return seen > 0.6 * Math.min(height, innerHeight);
}
