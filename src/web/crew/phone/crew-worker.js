// The worker that answers for the network where there is none: today's pages, and what they look like. It keeps nothing of other
// pages, and lets go of everything as soon as somebody signs out.
const PAGES = 'stormpale-pages';
const LOOKS = 'stormpale-looks';
/** How long the network is waited for where a kept page is at hand [ms]. */
const PATIENCE_MS = 4000;
/** What changes its address with what it says, or hardly ever changes. */
const LOOKS_PATH = /^\/(style-[0-9a-f]+\.css|crew-script\/[0-9a-f]+\/[a-z-]+\.js|fonts\/[a-z0-9-]+\.ttf|icon\.svg)$/;
const TODAY_PATH = /^\/today(\/visits\/|$)/;

/**
 * @typedef {Event & { readonly request: Request, waitUntil(work: Promise<unknown>): void, respondWith(answer: Promise<Response>): void }} WorkerEvent
 * @typedef {object} PageWorker
 * @property {(kind: string, listener: (event: WorkerEvent) => void) => void} addEventListener
 * @property {() => Promise<void>} skipWaiting
 * @property {{ claim(): Promise<void> }} clients
 */
const worker = /** @type {PageWorker} */ (/** @type {unknown} */ (self));

const NOT_KEPT = `<!doctype html><html lang="en"><head><meta charset="utf-8"><meta name="viewport" content="width=device-width, initial-scale=1"><title>No signal · Sin señal</title></head><body><main><h1>No signal</h1><p>This page is not kept on this phone. What you entered is. <a href="/today">Back to today</a></p><h2 lang="es">Sin señal</h2><p lang="es">Esta página no está en este teléfono. Lo que anotó sí. <a href="/today">Volver a hoy</a></p></main></body></html>`;

worker.addEventListener('install', (event) => event.waitUntil(worker.skipWaiting()));
worker.addEventListener('activate', (event) => event.waitUntil(worker.clients.claim()));

/** @param {Request} request */
async function looks(request) {
  const cache = await caches.open(LOOKS);
  const kept = await cache.match(request, { ignoreVary: true });
  if (kept) return kept;
  const response = await fetch(request);
  if (response.ok) await cache.put(request, response.clone());
  return response;
}

/** @param {string} pathname @returns {Promise<Response | undefined>} */
const keptPage = async (pathname) =>
  (await caches.open(PAGES)).match(pathname, { ignoreSearch: true, ignoreVary: true });

/** @param {number} ms @returns {Promise<null>} */
const after = (ms) => new Promise((resolve) => setTimeout(() => resolve(null), ms));

/** @param {Request} request */
async function page(request) {
  const { pathname } = new URL(request.url);
  const kept = await keptPage(pathname);
  const asked = fetch(request).then(
    async (response) => {
      // led away from one's own page: nobody is signed in any more
      if (response.type === 'opaqueredirect') await caches.delete(PAGES);
      else if (response.ok && kept) await (await caches.open(PAGES)).put(pathname, response.clone());
      return response;
    },
    () => null,
  );
  const answer = await (kept ? Promise.race([asked, after(PATIENCE_MS)]) : asked);
  if (answer && answer.status < 500) return answer;
  if (kept) return kept;
  if (answer) return answer;
  return new Response(NOT_KEPT, { status: 503, headers: { 'Content-Type': 'text/html; charset=utf-8' } });
}

worker.addEventListener('fetch', (event) => {
  const { request } = event;
  const url = new URL(request.url);
  if (url.origin !== location.origin) return;
  if (request.method === 'POST') {
    if (url.pathname === '/sign-out') event.waitUntil(caches.delete(PAGES));
    return;
  }
  if (request.method !== 'GET') return;
  if (LOOKS_PATH.test(url.pathname)) event.respondWith(looks(request));
  else if (request.mode === 'navigate' && TODAY_PATH.test(url.pathname)) event.respondWith(page(request));
});
