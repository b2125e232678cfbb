// Keeps the page on the device, so that it works without a network after the first visit.

/** Registers the service worker where the browser has one. */
export function workOffline() {
  if (!("serviceWorker" in navigator)) return;
  // A page opened from a file, or a host without encryption, has no worker and works all the same.
  navigator.serviceWorker.register(new URL("../sw.js", import.meta.url), { type: "module" }).catch(() => undefined);
}
