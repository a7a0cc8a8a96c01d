// Keeps the nights' pages that were opened, with their files, for where there is no signal. Below /watches/ alone; nothing else is kept.

const NIGHTS = "nights-1";
const MOST = 8;

const isNight = (url) => /\/watches\/[^/]+\/nights\/\d{4}-\d\d-\d\d$/.test(url.pathname);
const isFile = (url) => url.pathname.includes("/assets/");

async function keep(request, response) {
  const cache = await caches.open(NIGHTS);
  await cache.put(request, response);
  // The oldest first: keys come in the order in which they were put.
  const nights = (await cache.keys()).filter((kept) => isNight(new URL(kept.url)));
  for (const old of nights.slice(0, Math.max(0, nights.length - MOST))) await cache.delete(old);
}

async function night(request) {
  const cache = await caches.open(NIGHTS);
  let response;
  try {
    response = await fetch(request);
  } catch (offline) {
    const kept = await cache.match(request);
    if (kept) return kept;
    throw offline;
  }
  // A service or proxy that fails for a while is as good as no signal.
  if (response.status >= 500) return (await cache.match(request)) ?? response;
  // A link that opens nothing any more (deleted, unsubscribed, another address) leaves no copy behind.
  if (response.ok || response.status === 404 || response.status === 410) await cache.delete(request);
  if (response.ok) await keep(request, response.clone());
  return response;
}

async function file(request) {
  const kept = await (await caches.open(NIGHTS)).match(request);
  return kept ?? fetch(request);
}

self.addEventListener("install", () => self.skipWaiting());
self.addEventListener("activate", (event) => {
  event.waitUntil((async () => {
    for (const name of await caches.keys()) if (name.startsWith("nights-") && name !== NIGHTS) await caches.delete(name);
    await self.clients.claim();
  })());
});

self.addEventListener("fetch", (event) => {
  const url = new URL(event.request.url);
  if (event.request.method !== "GET" || url.origin !== self.location.origin) return;
  if (event.request.mode === "navigate" && isNight(url)) event.respondWith(night(event.request));
  else if (isFile(url)) event.respondWith(file(event.request));
});

// The first visit was not through the worker, so the page asks for its copy.
self.addEventListener("message", (event) => {
  const { keep: page, files } = event.data ?? {};
  if (!page || new URL(page).origin !== self.location.origin || !isNight(new URL(page))) return;
  event.waitUntil((async () => {
    const cache = await caches.open(NIGHTS);
    const wanted = files.filter((address) => new URL(address).origin === self.location.origin && isFile(new URL(address)));
    const kept = new Set((await cache.keys()).map((request) => request.url));
    await Promise.all(wanted.filter((address) => !kept.has(address)).map((address) => cache.add(address)));
    if (!kept.has(page)) {
      const response = await fetch(page, { cache: "no-cache" });
      if (response.ok) await keep(new Request(page), response);
    }
    event.ports[0]?.postMessage("kept");
  })());
});
