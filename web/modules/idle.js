// Work that can wait until the page has nothing better to do.

/** @param {() => void} act */
export function idle(act) {
  if (window.requestIdleCallback) window.requestIdleCallback(act);
  else setTimeout(act, 500);
}
