/// <reference lib="webworker" />

/**
 * Keeps the page for use without a network. Everything the page is built of is fetched once, when this worker is
 * installed, and answered from there: a page always gets the files it was built with. A newer build is another worker,
 * which waits until the person asks for it.
 */
const worker = self as unknown as ServiceWorkerGlobalScope;

/** Written in by the build: the version of the build, and its files below the page's folder. */
declare const __BUILD__: { readonly version: string; readonly files: readonly string[] };

const CACHE_PREFIX = "wellsweep-";
const CACHE = `${CACHE_PREFIX}${__BUILD__.version}`;

worker.addEventListener("install", (event) => {
  const requests = __BUILD__.files.map((file) => new Request(file, { cache: "no-cache" }));
  event.waitUntil(caches.open(CACHE).then((cache) => cache.addAll(requests)));
});

worker.addEventListener("activate", (event) => {
  event.waitUntil(dropOlderBuilds().then(() => worker.clients.claim()));
});

worker.addEventListener("message", (event) => {
  if (event.data === "apply-update") void worker.skipWaiting();
});

worker.addEventListener("fetch", (event) => {
  const { request } = event;
  const isOurs = request.method === "GET" && new URL(request.url).origin === worker.location.origin;
  if (isOurs) event.respondWith(answer(request));
});

async function answer(request: Request): Promise<Response> {
  const cache = await caches.open(CACHE);
  const isPage = request.mode === "navigate" && isPageAddress(request.url);
  const kept = await cache.match(isPage ? "./" : request, { ignoreSearch: true, ignoreVary: true });
  return kept ?? fetch(request);
}

/** The folder of the page, or its index.html: other pages below it, such as documents, are not ours to answer. */
function isPageAddress(url: string): boolean {
  const folder = new URL("./", worker.location.href).pathname;
  const { pathname } = new URL(url);
  return pathname === folder || pathname === `${folder}index.html`;
}

async function dropOlderBuilds(): Promise<void> {
  const names = await caches.keys();
  const older = names.filter((name) => name.startsWith(CACHE_PREFIX) && name !== CACHE);
  await Promise.all(older.map((name) => caches.delete(name)));
}
