// Keeps every file of the page on the device, one store a version. The list and the version are filled in when the
// page is put together.

const BUILD = { version: "", files: [] };

const STORE = `panelwright-${BUILD.version}`;

self.addEventListener("install", (event) => {
  event.waitUntil(
    (async () => {
      const store = await caches.open(STORE);
      // Asked of the host again, or an old file could be kept under the new version; what is the same is not sent twice.
      await store.addAll(BUILD.files.map((file) => new Request(file, { cache: "no-cache" })));
    })(),
  );
});

self.addEventListener("activate", (event) => {
  event.waitUntil(
    (async () => {
      for (const name of await caches.keys()) {
        if (name.startsWith("panelwright-") && name !== STORE) await caches.delete(name);
      }
      await self.clients.claim();
    })(),
  );
});

// A newer version waits until no page of the old one is open, or until a visitor wants it: the two modules of a page
// must be of one version.
self.addEventListener("message", (event) => {
  if (event.data === "use") self.skipWaiting();
});

self.addEventListener("fetch", (event) => {
  const url = new URL(event.request.url);
  if (event.request.method !== "GET" || url.origin !== location.origin) return;
  event.respondWith(
    (async () => {
      const store = await caches.open(STORE);
      const page = new URL("./", location.href).pathname === url.pathname ? "index.html" : event.request;
      const kept = await store.match(page, { ignoreSearch: true });
      return kept ?? fetch(event.request);
    })(),
  );
});
