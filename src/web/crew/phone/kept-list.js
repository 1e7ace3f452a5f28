// Shows what waits on the phone: its number at the top of every page, and each entry with what stands against it and the way out.
import { allEntries, dropEntry, putEntry } from './entry-box.js';
import { connection, isHeldBack, sendEntries } from './send-entries.js';

/** @typedef {import('./entry-box.js').KeptEntry} KeptEntry */

const phone = /** @type {HTMLElement} */ (document.getElementById('phone'));
const words = /** @type {Record<string, string>} */ (JSON.parse(phone.dataset.words ?? '{}'));
const account = phone.dataset.account ?? '';
const stateLine = /** @type {HTMLElement} */ (document.getElementById('phone-state'));
const allList = /** @type {HTMLElement} */ (document.getElementById('phone-entries'));

/** @param {string} key */
export const word = (key) => words[key] ?? key;
/** Number of the account whose page this is. */
export const pageAccount = account;

/** @param {number} n @param {string} one @param {string} many */
const counted = (n, one, many) => (n === 1 ? word(one) : word(many).replace('{n}', String(n)));

/** @param {string} text @param {() => void} act @param {string} [className] */
function button(text, act, className = 'wide') {
  const made = document.createElement('button');
  made.type = 'button';
  made.className = className;
  made.textContent = text;
  made.addEventListener('click', act);
  return made;
}

/** @param {KeptEntry} entry */
const sendAgain = (entry) => putEntry({ ...entry, state: 'waiting', reasons: [], question: false }).then(sendEntries);

/** @param {KeptEntry} entry @param {readonly KeptEntry[]} all @param {boolean} isElsewhere */
function row(entry, all, isElsewhere) {
  const item = document.createElement('li');
  item.dataset.state = entry.state;
  const head = document.createElement('b');
  head.textContent = entry.state === 'refused' ? word('refused') : word('waiting');
  const what = document.createElement('span');
  const clock = new Date(entry.madeAt).toLocaleTimeString(word('locale'), { hour: '2-digit', minute: '2-digit' });
  what.textContent = `${isElsewhere ? `${entry.title}${entry.summary ? ': ' : ''}` : ''}${entry.summary || (isElsewhere ? '' : entry.title)} (${clock})`;
  item.append(head, what);
  const reasons = [...entry.reasons];
  if (entry.account !== account) reasons.push(word('otherAccount'));
  else if (isHeldBack(entry, all)) reasons.push(word('holdsBack'));
  for (const reason of reasons) {
    const why = document.createElement('p');
    why.textContent = reason;
    item.append(why);
  }
  const acts = document.createElement('div');
  acts.className = 'acts';
  if (entry.state === 'refused' && entry.account === account) {
    if (entry.question) {
      const sure = /** @type {const} */ (['sure', 'yes']);
      acts.append(button(word('confirm'), () => void sendAgain({ ...entry, fields: [...entry.fields, sure] })));
    } else acts.append(button(word('again'), () => void sendAgain(entry)));
  }
  if (isElsewhere && entry.page !== location.pathname) {
    const link = document.createElement('a');
    link.className = 'wide';
    link.href = `${entry.page}${entry.section ? `#${entry.section}` : ''}`;
    link.textContent = word('open');
    acts.append(link);
  }
  const drop = button(word('throwAway'), () => {
    if (drop.textContent === word('throwAwaySure')) void dropEntry(entry);
    else drop.textContent = word('throwAwaySure');
  });
  acts.append(drop);
  item.append(acts);
  return item;
}

/** @param {readonly KeptEntry[]} entries */
function stateText(entries) {
  const waiting = entries.filter(({ state }) => state === 'waiting').length;
  const refused = entries.length - waiting;
  return [
    ...(refused > 0 ? [counted(refused, 'refusedOne', 'refusedMany')] : []),
    ...(waiting > 0 ? [counted(waiting, 'waitingOne', 'waitingMany')] : []),
    ...(waiting > 0 && connection() === 'no signal' ? [word('noSignal')] : []),
    ...(waiting > 0 && connection() === 'sending' ? [word('sending')] : []),
    ...(waiting > 0 && connection() === 'signed out' ? [word('signIn')] : []),
  ].join(' ');
}

/** Draws everything that waits anew. */
export async function showEntries() {
  const entries = await allEntries();
  const text = stateText(entries);
  stateLine.hidden = text === '';
  if (stateLine.textContent !== text) stateLine.textContent = text;
  if (text !== '' && connection() === 'signed out') {
    const link = document.createElement('a');
    link.className = 'wide';
    link.href = `/sign-in?${new URLSearchParams({ next: location.pathname })}`;
    link.textContent = word('signInLink');
    stateLine.append(' ', link);
  }
  const own = /** @type {NodeListOf<HTMLElement>} */ (document.querySelectorAll('[data-entries-of]'));
  const shown = new Set();
  for (const list of own) {
    const here = entries.filter(
      ({ page, section }) => page === location.pathname && section === list.dataset.entriesOf,
    );
    for (const { id } of here) shown.add(id);
    list.replaceChildren(...here.map((entry) => row(entry, entries, false)));
    list.hidden = here.length === 0;
    list.closest('section')?.classList.toggle('has-kept', here.length > 0);
  }
  const others = entries.filter(({ id }) => !shown.has(id));
  allList.replaceChildren(...others.map((entry) => row(entry, entries, true)));
  allList.hidden = others.length === 0;
  return entries;
}
