// Sends what waits, in order, each until the service says what came of it. An entry leaves the phone only once its answer is there:
// where the answer was lost it is sent again under the same id, and the service answers as it did the first time.
import { allEntries, dropEntry, putEntry } from './entry-box.js';

/** @typedef {import('./entry-box.js').KeptEntry} KeptEntry */
/** @typedef {'idle' | 'sending' | 'no signal' | 'signed out'} Connection */

/** How long an answer is waited for [ms]; a photo takes longer on a poor connection. */
const PATIENCE_MS = 20_000;
const PHOTO_PATIENCE_MS = 120_000;

/** @type {Connection} */
let state = 'idle';
/** @type {(state: Connection) => void} */
let tellState = () => {};
/** @type {(entry: KeptEntry) => void} */
let tellSent = () => {};

/**
 * @param {{ readonly onState: (state: Connection) => void, readonly onSent: (entry: KeptEntry) => void }} callbacks
 */
export function listenToSending({ onState, onSent }) {
  tellState = onState;
  tellSent = onSent;
}

/** @param {Connection} next */
function become(next) {
  state = next;
  tellState(next);
}

/**
 * @param {string} path
 * @param {RequestInit} init
 * @param {number} patienceMs
 * @returns {Promise<Response | null>} null where nothing came back
 */
async function ask(path, init, patienceMs) {
  const giveUp = new AbortController();
  const timer = setTimeout(() => giveUp.abort(), patienceMs);
  try {
    return await fetch(path, {
      ...init,
      redirect: 'manual',
      credentials: 'same-origin',
      cache: 'no-store',
      signal: giveUp.signal,
    });
  } catch {
    return null;
  } finally {
    clearTimeout(timer);
  }
}

/** Who is signed in, with the token of the session's forms. */
async function session() {
  const response = await ask('/today/session.json', { headers: { accept: 'application/json' } }, PATIENCE_MS);
  if (response === null || response.status >= 500) return 'no signal';
  if (!response.ok) return 'signed out';
  return /** @type {{ account: number, formToken: string }} */ (await response.json());
}

/**
 * @param {KeptEntry} entry
 * @param {string} formToken
 * @returns {Promise<'sent' | 'refused' | 'no signal' | 'signed out'>}
 */
async function send(entry, formToken) {
  const hasFile = entry.fields.some(([, value]) => value instanceof Blob);
  const body = hasFile ? new FormData() : new URLSearchParams();
  body.append('form_token', formToken);
  body.append('entry', entry.id);
  for (const [name, value] of entry.fields) {
    if (value instanceof Blob) /** @type {FormData} */ (body).append(name, value, 'photo.jpg');
    else body.append(name, value);
  }
  const init = { method: 'POST', body, headers: { accept: 'application/json' } };
  const response = await ask(entry.path, init, hasFile ? PHOTO_PATIENCE_MS : PATIENCE_MS);
  if (response === null || response.status >= 500) return 'no signal';
  // it led to the page where one signs in
  if (response.type === 'opaqueredirect' || response.status === 401) return 'signed out';
  const told = /** @type {{ stored?: boolean, reasons?: string[], question?: boolean } | null} */ (
    await response.json().catch(() => null)
  );
  if (response.ok && told?.stored === true) {
    await dropEntry(entry);
    tellSent(entry);
    return 'sent';
  }
  // something else than the service answered that all is well, as the page of a hotel's network does
  if (response.ok) return 'no signal';
  await putEntry({
    ...entry,
    state: 'refused',
    reasons: told?.reasons ?? [`${response.status} ${response.statusText}`.trim()],
    question: told?.question === true,
  });
  return 'refused';
}

/** @param {KeptEntry} a @param {KeptEntry} b */
const sameVisit = (a, b) => a.path.split('/')[3] === b.path.split('/')[3];

/**
 * True where a visit is to be finished while something else of it, entered before, is still on the phone.
 * @param {KeptEntry} entry
 * @param {readonly KeptEntry[]} all
 */
export const isHeldBack = (entry, all) =>
  entry.kind === 'visit-done' &&
  all.some((other) => other.id !== entry.id && (other.order ?? 0) < (entry.order ?? 0) && sameVisit(other, entry));

async function sendAll() {
  const first = (await allEntries()).find((entry) => entry.state === 'waiting');
  if (!first) return become('idle');
  become('sending');
  const who = await session();
  if (typeof who === 'string') return become(who);
  for (const field of document.querySelectorAll('input[name="form_token"]')) {
    /** @type {HTMLInputElement} */ (field).value = who.formToken;
  }
  for (const { order } of await allEntries()) {
    // another window may have sent it, or somebody thrown it away, meanwhile
    const all = await allEntries();
    const entry = all.find((each) => each.order === order);
    if (entry?.state !== 'waiting' || entry.account !== String(who.account)) continue;
    if (isHeldBack(entry, all)) continue;
    const came = await send(entry, who.formToken);
    if (came === 'no signal' || came === 'signed out') return become(came);
  }
  become('idle');
}

/** @type {Promise<void> | null} */
let running = null;
let isAskedAgain = false;

/** Sends what waits; one window at a time. @returns {Promise<void>} */
export function sendEntries() {
  if (running) {
    isAskedAgain = true;
    return running;
  }
  const once = async () => {
    do {
      isAskedAgain = false;
      await ('locks' in navigator ? navigator.locks.request('stormpale-sending', sendAll) : sendAll());
    } while (isAskedAgain);
  };
  running = once()
    .catch(() => become('no signal'))
    .finally(() => {
      running = null;
    });
  return running;
}

export const connection = () => state;
