// What was entered and not yet heard to have arrived, kept in the phone's own database (IndexedDB) in the order of entering.

/**
 * @typedef {object} KeptEntry
 * @property {number} [order] given when it is put in; entries are sent in this order
 * @property {string} id made on the phone; the service stores an id once
 * @property {string} account number of the account that entered it
 * @property {string} path where it is sent
 * @property {string} page path of the page it was entered on
 * @property {string} section id of the part of the page it belongs to; empty for the page as a whole
 * @property {string} kind
 * @property {string} title what it is called in the list
 * @property {string} summary what it says
 * @property {readonly (readonly [string, string | Blob])[]} fields as the form would send them, without its token
 * @property {string} madeAt
 * @property {'waiting' | 'refused'} state
 * @property {readonly string[]} reasons why it was refused
 * @property {boolean} question true where it is taken once it is confirmed
 */

const NAME = 'stormpale-crew';
const STORE = 'entries';

/** @type {Promise<IDBDatabase> | null} */
let opened = null;

/** @returns {Promise<IDBDatabase>} */
function open() {
  opened ??= new Promise((resolve, reject) => {
    const request = indexedDB.open(NAME, 1);
    request.onupgradeneeded = () => request.result.createObjectStore(STORE, { keyPath: 'order', autoIncrement: true });
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(new Error(request.error?.message ?? 'no database'));
  });
  return opened;
}

/**
 * @template R
 * @param {IDBTransactionMode} mode
 * @param {(store: IDBObjectStore) => IDBRequest<R>} work
 * @returns {Promise<R>} settles once it is on the disk
 */
async function inStore(mode, work) {
  const database = await open();
  return new Promise((resolve, reject) => {
    const transaction = database.transaction(STORE, mode);
    const request = work(transaction.objectStore(STORE));
    transaction.oncomplete = () => resolve(request.result);
    transaction.onabort = () => reject(new Error(transaction.error?.message ?? 'not kept'));
  });
}

const channel = 'BroadcastChannel' in window ? new BroadcastChannel(NAME) : null;
/** @type {(() => void)[]} */
const listeners = [];

function changed() {
  channel?.postMessage('changed');
  for (const listener of listeners) listener();
}

/**
 * Calls back whenever entries change, in this window or another one.
 * @param {() => void} listener
 */
export function onEntries(listener) {
  listeners.push(listener);
  channel?.addEventListener('message', listener);
}

/** @returns {Promise<KeptEntry[]>} every entry, in the order of entering */
export const allEntries = () => inStore('readonly', (store) => /** @type {IDBRequest<KeptEntry[]>} */ (store.getAll()));

/** @param {KeptEntry} entry */
export async function putEntry(entry) {
  await inStore('readwrite', (store) => store.put(entry));
  changed();
}

/** @param {KeptEntry} entry */
export async function dropEntry({ order }) {
  if (order === undefined) return;
  await inStore('readwrite', (store) => store.delete(order));
  changed();
}

/** An id that was never given. Works without a secure context, where `crypto.randomUUID` is missing. */
export function newEntryId() {
  const bytes = crypto.getRandomValues(new Uint8Array(16));
  return [...bytes].map((byte) => byte.toString(16).padStart(2, '0')).join('');
}
