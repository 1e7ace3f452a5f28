// Keeps today's pages on the phone, for the crew that is signed in and nobody else.
import { pageAccount, word } from './kept-list.js';

/** Name of the cache of pages, which the worker reads and every sign-out takes away. */
const PAGES = 'stormpale-pages';
/** Name of the cache of what pages look like and run. */
const LOOKS = 'stormpale-looks';
const WORKER = '/crew-worker.js';
const KEPT_FOR = 'stormpale-kept-for';

const phone = /** @type {HTMLElement} */ (document.getElementById('phone'));
const line = /** @type {HTMLElement} */ (document.getElementById('phone-kept'));
const canKeep = 'serviceWorker' in navigator && 'caches' in window;

/** @param {string} path */
async function keep(path) {
  const response = await fetch(path, { credentials: 'same-origin', headers: { accept: 'text/html' } });
  // a page that leads elsewhere is one of somebody who is signed out
  if (!response.ok || response.redirected) return false;
  await (await caches.open(PAGES)).put(path, response);
  return true;
}

/** Paths of this page and of those it leads to that are wanted in the field. */
function wanted() {
  const links = /** @type {NodeListOf<HTMLAnchorElement>} */ (document.querySelectorAll('a[data-keep]'));
  return [...new Set([...links].map((link) => new URL(link.href).pathname))];
}

/** @param {readonly string[]} paths */
async function prune(paths) {
  const cache = await caches.open(PAGES);
  for (const request of await cache.keys()) {
    const { pathname } = new URL(request.url);
    const isWanted = paths.some((path) => pathname === path || pathname.startsWith(`${path}/fences/`));
    if (pathname !== '/today' && !isWanted) await cache.delete(request);
  }
}

/**
 * Keeps pages again, after what they show has changed.
 * @param {readonly string[]} paths
 */
export async function keepAgain(paths) {
  if (!canKeep || phone.dataset.keeps !== 'yes') return;
  const cache = await caches.open(PAGES);
  for (const path of new Set(paths)) {
    if (await cache.match(path)) await keep(path).catch(() => false);
  }
}

/** Puts the worker in place and keeps the pages that this one leads to. */
export async function keepPages() {
  if (phone.dataset.keeps !== 'yes') return;
  line.hidden = false;
  line.textContent = word(canKeep ? 'kept' : 'notKept');
  if (!canKeep) return;
  if (localStorage.getItem(KEPT_FOR) !== pageAccount) {
    await caches.delete(PAGES);
    localStorage.setItem(KEPT_FOR, pageAccount);
  }
  await navigator.serviceWorker.register(WORKER);
  // entries that wait must not be what a phone clears first when it is full
  await navigator.storage?.persist?.().catch(() => false);
  const isToday = location.pathname === '/today';
  const paths = wanted();
  const statics = [...document.querySelectorAll('link[rel="stylesheet"], script[src]')].map(
    (each) => each.getAttribute('href') ?? each.getAttribute('src') ?? '',
  );
  const scripts = SCRIPTS.map((name) => new URL(name, import.meta.url).pathname);
  const looks = await caches.open(LOOKS);
  const look = [...new Set([...statics, ...scripts, ...FONTS])].filter((path) => path !== '');
  for (const path of look) if (!(await looks.match(path))) await looks.add(path);
  for (const path of [location.pathname, ...paths]) {
    if (!(await keep(path).catch(() => false))) return;
  }
  if (isToday) {
    await prune(paths);
    // every page that is kept is of this version now: what older ones looked like and ran is of no use any more
    for (const request of await looks.keys()) {
      if (!look.includes(new URL(request.url).pathname)) await looks.delete(request);
    }
  }
  document.documentElement.dataset.kept = 'yes';
}

const SCRIPTS = [
  './crew-page.js',
  './entry-box.js',
  './keep-pages.js',
  './kept-list.js',
  './level.js',
  './method-choice.js',
  './send-entries.js',
  './smaller-photo.js',
];
const FONTS = ['/fonts/source-sans-3-400.ttf', '/fonts/source-sans-3-600.ttf', '/icon.svg'];
