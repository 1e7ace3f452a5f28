// What a page of the crew does with a script: what is entered goes onto the phone first, and from there to the office.
import { allEntries, dropEntry, newEntryId, onEntries, putEntry } from './entry-box.js';
import { keepAgain, keepPages } from './keep-pages.js';
import { pageAccount, showEntries, word } from './kept-list.js';
import { offerLevel } from './level.js';
import { applyMethod, chosenMethod, offerMethods } from './method-choice.js';
import { connection, listenToSending, sendEntries } from './send-entries.js';
import { smallerPhoto } from './smaller-photo.js';

/** @typedef {import('./entry-box.js').KeptEntry} KeptEntry */

/** How soon what waits is tried again at first, and at most how late [ms]: a signal is often there a moment before it carries. */
const FIRST_AGAIN_MS = 1500;
const LAST_AGAIN_MS = 20_000;

/** The day as the phone has it, `YYYY-MM-DD`. */
function today() {
  const now = new Date();
  const two = (/** @type {number} */ number) => String(number).padStart(2, '0');
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}

/** @param {HTMLInputElement | HTMLSelectElement | HTMLTextAreaElement} field */
function nameOf(field) {
  const label = field.labels?.[0]?.textContent?.trim() ?? '';
  if (!(field instanceof HTMLInputElement) || field.type !== 'radio') return label;
  return `${field.closest('fieldset')?.querySelector('legend')?.textContent?.trim() ?? ''}: ${label}`;
}

/** What a form says, in a line. @param {HTMLFormElement} form */
function summaryOf(form) {
  /** @type {string[]} */
  const said = [];
  for (const field of form.elements) {
    if (field instanceof HTMLInputElement) {
      if (['hidden', 'file', 'submit'].includes(field.type) || field.matches(':disabled')) continue;
      if (['checkbox', 'radio'].includes(field.type)) {
        if (field.checked && field.value !== '') said.push(nameOf(field));
      } else if (field.value !== '') {
        const unit = field.parentElement?.querySelector('.unit')?.textContent ?? '';
        said.push(`${nameOf(field)} ${field.value} ${unit}`.trim());
      }
    }
  }
  return said.join('; ');
}

/** @param {HTMLFormElement} form @returns {string} */
const sectionOf = (form) => form.closest('section[id^="post-"]')?.id ?? '';

/**
 * @param {HTMLFormElement} form
 * @param {readonly (readonly [string, string | Blob])[]} fields
 */
async function keepEntry(form, fields) {
  const path = new URL(form.action).pathname;
  const kind = form.dataset.entry ?? '';
  const id = newEntryId();
  // first of all onto the phone: whoever taps and walks off has it there
  await putEntry({
    id,
    account: pageAccount,
    path,
    page: location.pathname,
    section: sectionOf(form),
    kind,
    title: form.dataset.title ?? '',
    summary: ['reading', 'visit-done'].includes(kind) ? summaryOf(form) : '',
    fields,
    madeAt: new Date().toISOString(),
    state: 'waiting',
    reasons: [],
    question: false,
  });
  // what was refused is mended by what was entered in its place
  for (const old of await allEntries()) {
    const isMended = old.state === 'refused' && old.path === path && old.kind === kind && old.id !== id;
    if (isMended && kind !== 'photo') await dropEntry(old);
  }
  void sendEntries();
}

/** @param {HTMLFormElement} form @param {HTMLElement | null} submitter */
async function take(form, submitter) {
  if (form.dataset.entry === 'photo') {
    const input = form.querySelector('input[type="file"]');
    const file = input instanceof HTMLInputElement ? input.files?.[0] : undefined;
    if (!file || !(input instanceof HTMLInputElement)) return;
    const small = await smallerPhoto(file);
    input.value = '';
    const post = form.querySelector('input[name="post"]');
    await keepEntry(form, [
      ...(post instanceof HTMLInputElement ? [/** @type {const} */ (['post', post.value])] : []),
      ['taken_at', new Date().toISOString()],
      ['photo', small],
    ]);
    return;
  }
  /** @type {(readonly [string, string])[]} */
  const fields = [];
  for (const [name, value] of new FormData(form, submitter)) {
    if (name === 'form_token' || name === 'entry' || typeof value !== 'string') continue;
    fields.push([name, name === 'day' && value === '' ? today() : value]);
  }
  await keepEntry(form, fields);
  const details = form.closest('details.post-entry');
  if (details instanceof HTMLDetailsElement) {
    details.open = false;
    details.querySelector('summary')?.focus();
  }
}

/** Ticks the works of a fence of which an entry waits on the phone. @param {readonly KeptEntry[]} entries */
function tickEntered(entries) {
  for (const box of document.querySelectorAll('input[data-once-entered]')) {
    if (!(box instanceof HTMLInputElement)) continue;
    const at = `${box.dataset.onceEntered}/posts/`;
    if (entries.some(({ kind, path }) => ['reading', 'closed-off'].includes(kind) && path.startsWith(at)))
      box.checked = true;
  }
}

/** Fills the forms of the page with what waits for them. @param {readonly KeptEntry[]} entries */
function fillForms(entries) {
  for (const entry of entries) {
    if (entry.page !== location.pathname || !['reading', 'visit-done'].includes(entry.kind)) continue;
    for (const form of document.querySelectorAll('form[data-entry]')) {
      if (!(form instanceof HTMLFormElement) || new URL(form.action).pathname !== entry.path) continue;
      for (const field of form.elements) {
        if (field instanceof HTMLSelectElement || field instanceof HTMLTextAreaElement) {
          const said = entry.fields.find(([name]) => name === field.name);
          if (typeof said?.[1] === 'string') field.value = said[1];
        }
        if (!(field instanceof HTMLInputElement) || field.type === 'hidden') continue;
        const said = entry.fields
          .filter(([name]) => name === field.name)
          .map(([, value]) => (typeof value === 'string' ? value : ''));
        if (['checkbox', 'radio'].includes(field.type)) field.checked = said.includes(field.value);
        else if (said[0] !== undefined && !field.matches(':disabled')) field.value = said[0];
      }
    }
  }
}

/** Refuses at once a length that the post does not have. Fractions and a decimal comma count too. @param {HTMLInputElement} field */
function refuseTooMuch(field) {
  const [, whole = '', over, under] =
    /^(?:(\d+(?:[.,]\d+)?)(?:[ -]|$))?(?:(\d+)\/([1-9]\d*))?$/.exec(field.value.trim()) ?? [];
  const typed = Number(whole.replace(',', '.')) + (over ? Number(over) / Number(under) : 0);
  field.setCustomValidity(typed > Number(field.dataset.most) ? (field.dataset.tooMuch ?? '') : '');
}

/** Gets ready what a script adds to a part of the page. @param {ParentNode} part */
function makeReady(part) {
  for (const button of part.querySelectorAll('form[data-entry="photo"] [data-without-script]')) {
    button.toggleAttribute('hidden', true);
  }
  offerLevel(part);
  applyMethod(part);
}

/** Shows a part of the page as the service has it now. @param {string} section */
async function refresh(section) {
  const query = chosenMethod() === '' ? '' : `?method=${chosenMethod()}`;
  const response = await fetch(`${location.pathname}${query}`, { credentials: 'same-origin', cache: 'no-store' });
  if (!response.ok || response.redirected) return;
  const page = new DOMParser().parseFromString(await response.text(), 'text/html');
  for (const selector of [`#${section}`, '.posts-head', '.post-jump', '.findings', 'section.photos']) {
    const now = page.querySelector(selector);
    const before = document.querySelector(selector);
    if (!now || !before) continue;
    const isOpen = before.querySelector('details.post-entry')?.hasAttribute('open') ?? false;
    const made = document.importNode(now, true);
    // whoever types there already goes on typing
    if (isOpen && before.contains(document.activeElement)) continue;
    before.replaceWith(made);
    makeReady(made);
  }
}

/** @param {KeptEntry} entry */
async function sent(entry) {
  if (entry.page === location.pathname) {
    if (entry.kind === 'visit-done') location.reload();
    else await refresh(entry.section === '' ? 'photos' : entry.section).catch(() => undefined);
  }
  const visit = entry.path.split('/').slice(0, 4).join('/');
  await keepAgain([entry.page, visit, '/today']).catch(() => undefined);
  await showEntries();
}

document.addEventListener('submit', (event) => {
  const form = event.target;
  if (!(form instanceof HTMLFormElement) || form.dataset.entry === undefined) return;
  event.preventDefault();
  // a phone that keeps nothing sends it the plain way
  take(form, event.submitter).catch(() => form.submit());
});
document.addEventListener('input', (event) => {
  if (event.target instanceof HTMLInputElement && event.target.dataset.most !== undefined) refuseTooMuch(event.target);
});
document.addEventListener('change', (event) => {
  const input = event.target;
  if (!(input instanceof HTMLInputElement) || input.type !== 'file' || !input.form) return;
  void take(input.form, null);
});

listenToSending({ onState: () => void showEntries(), onSent: (entry) => void sent(entry) });
onEntries(() => void showEntries());
let againMs = FIRST_AGAIN_MS;
async function keepTrying() {
  await sendEntries();
  againMs = connection() === 'no signal' ? Math.min(againMs * 2, LAST_AGAIN_MS) : FIRST_AGAIN_MS;
  setTimeout(() => void keepTrying(), connection() === 'no signal' ? againMs : LAST_AGAIN_MS);
}
function trySoon() {
  againMs = FIRST_AGAIN_MS;
  void sendEntries();
  setTimeout(() => void sendEntries(), FIRST_AGAIN_MS);
}
window.addEventListener('online', trySoon);
document.addEventListener('visibilitychange', () => {
  if (document.visibilityState === 'visible') trySoon();
});

offerMethods();
makeReady(document);
const entries = await showEntries();
tickEntered(entries);
fillForms(entries);
await keepTrying();
// what waited is with the office before its pages are kept as they are now
await keepPages().catch(() => {
  const line = document.getElementById('phone-kept');
  if (line) line.textContent = word('notKept');
});
document.documentElement.dataset.ready = 'yes';
