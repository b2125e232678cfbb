// Keeps the page on the device, so that it works without a network after the first visit.

import { idle } from "./idle.js";

/**
 * @typedef {object} OfflineEvents
 * @property {() => void} ready everything is on the device
 * @property {() => void} none nothing can be kept here: a host without encryption, or a browser that keeps nothing
 * @property {(use: () => void) => void} newer another version of the page waits to be used
 */

/**
 * Registers the service worker, once the page has nothing better to do: it fetches all files, the second module too.
 * @param {OfflineEvents} events
 */
export function workOffline(events) {
  if (!("serviceWorker" in navigator)) {
    events.none();
    return;
  }
  idle(() => void begin(events));
}

/** @param {OfflineEvents} events */
async function begin(events) {
  const { serviceWorker } = navigator;
  try {
    const registration = await serviceWorker.register(new URL("../sw.js", import.meta.url), { type: "module" });
    const offer = () => {
      const next = registration.waiting;
      // The first version that comes to a device waits for nobody.
      if (next && registration.active) events.newer(() => next.postMessage("use"));
    };
    registration.addEventListener("updatefound", () => {
      const coming = registration.installing;
      coming?.addEventListener("statechange", () => {
        if (coming.state === "installed") offer();
        // A file did not come: the page works on, and will try at the next visit.
        if (coming.state === "redundant" && !registration.active) events.none();
      });
    });
    offer();
    const had = serviceWorker.controller !== null;
    serviceWorker.addEventListener("controllerchange", () => {
      if (had) location.reload();
    });
    await serviceWorker.ready;
    events.ready();
  } catch {
    events.none();
  }
}
