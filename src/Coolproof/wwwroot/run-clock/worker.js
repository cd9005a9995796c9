// The service worker of the run clock: its page and its files, so that it opens without a network. Two lines are put before this when it is served:
// VERSION and FILES. Entries are never its business: they go through the page's own outbox.
/* global VERSION, FILES */

const pageWaitMs = 2_000;
const pages = "run-clock-pages";

self.addEventListener("install", (event) => {
    event.waitUntil(caches.open(`run-clock-${VERSION}`).then((cache) => cache.addAll(FILES)).then(() => self.skipWaiting()));
});

self.addEventListener("activate", (event) => {
    event.waitUntil(takeOver());
});

async function takeOver() {
    // The files of the version before stay until the next: an open page may still want them.
    const old = (await caches.keys()).filter((name) => name.startsWith("run-clock-") && name !== pages && name !== `run-clock-${VERSION}`);
    await Promise.all(old.slice(0, -1).map((name) => caches.delete(name)));
    await self.clients.claim();
    // The page that brought this worker was loaded before it listened.
    for (const client of await self.clients.matchAll({ type: "window" })) {
        const path = new URL(client.url).pathname;
        if (isPage(path)) await fetch(path, { headers: { accept: "text/html" } }).then((answer) => remember(path, answer)).catch(() => {});
    }
}

self.addEventListener("fetch", (event) => {
    const url = new URL(event.request.url);
    if (event.request.method !== "GET" || url.origin !== self.location.origin) return;
    if (event.request.mode === "navigate" && isPage(url.pathname)) event.respondWith(page(event, url.pathname));
    else if (FILES.includes(url.pathname) || url.pathname.startsWith("/run-clock/")) event.respondWith(caches.match(url.pathname).then((known) => known ?? fetch(event.request)));
});

const isPage = (path) => /^\/clock\/[0-9a-f-]{36}$/i.test(path);

async function remember(path, answer) {
    if (answer.ok && !answer.redirected) await (await caches.open(pages)).put(path, answer);
}

/** The page as the bench has it when it answers in time, else as it was; of a day not seen before, the page of another: they differ only in the day. */
async function page(event, path) {
    const request = event.request;
    const fresh = fetch(request);
    event.waitUntil(fresh.then((answer) => remember(path, answer.clone())).catch(() => {}));
    const late = new Promise((resolve) => setTimeout(resolve, pageWaitMs, null));
    const answer = await Promise.race([fresh.catch(() => null), late]);
    if (answer) return answer;
    const cache = await caches.open(pages);
    const known = (await cache.match(path)) ?? (await cache.match((await cache.keys())[0]));
    return known ?? fresh;
}
