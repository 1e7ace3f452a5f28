/** A header field as it stands in a mail, folded as it was. */
interface Field {
  readonly name: string;
  readonly body: string;
}

/** Longest line without its CRLF [characters] (RFC 5322, 2.1.1). */
const LONGEST_LINE = 998;
/** Longest encoded word [characters] (RFC 2047, 2). */
const LONGEST_ENCODED_WORD = 75;

const ATEXT = "[A-Za-z0-9!#$%&'*+/=?^_`{|}~-]+";
const DOT_ATOM = `${ATEXT}(\\.${ATEXT})*`;
/** RFC 5322, 3.6.4, without comments, quoted pairs and domain literals. */
const MESSAGE_ID = new RegExp(`^<${DOT_ATOM}@${DOT_ATOM}>$`);
const ADDRESS = new RegExp(`^${DOT_ATOM}@${DOT_ATOM}$`);
/** RFC 5322, 3.4: a phrase (words, quoted strings, encoded words) and an address in brackets, or an address alone. */
const MAILBOX = new RegExp(
  `^((("([^"\\\\\\r\\n]|\\\\.)*"|=\\?[^? ]+\\?[BbQq]\\?[^? ]*\\?=|${ATEXT}) *)*<${DOT_ATOM}@${DOT_ATOM}>|${DOT_ATOM}@${DOT_ATOM})$`,
);
/** RFC 5322, 3.3. */
const DATE =
  /^((Mon|Tue|Wed|Thu|Fri|Sat|Sun), )?\d{1,2} (Jan|Feb|Mar|Apr|May|Jun|Jul|Aug|Sep|Oct|Nov|Dec) \d{4} \d{2}:\d{2}(:\d{2})? [+-]\d{4}$/;
/** Fields that a mail has at most once (RFC 5322, 3.6; RFC 2045; RFC 2369, 3). */
const AT_MOST_ONCE: readonly string[] = [
  'date from sender reply-to to cc bcc message-id in-reply-to references subject mime-version content-type',
  'content-transfer-encoding list-unsubscribe list-unsubscribe-post list-help list-id auto-submitted',
].flatMap((names) => names.split(' '));

function fieldsOf(head: string): readonly Field[] {
  const fields: { name: string; body: string }[] = [];
  for (const line of head.split('\r\n')) {
    const last = fields.at(-1);
    if (/^[ \t]/.test(line) && last) last.body += `\r\n${line}`;
    else {
      const colon = line.indexOf(':');
      fields.push({ name: line.slice(0, Math.max(colon, 0)), body: line.slice(colon + 1) });
    }
  }
  return fields;
}

const unfolded = ({ body }: Field): string => body.replace(/\r\n(?=[ \t])/g, '').trim();

/** URIs of a list header: in angle brackets, apart by commas (RFC 2369, 2); null where it is not written so. */
function listUris(text: string): readonly string[] | null {
  const parts = text.split(',').map((part) => part.trim());
  return parts.every((part) => /^<[a-z][a-z0-9+.-]*:[^<>\s]+>$/i.test(part))
    ? parts.map((part) => part.slice(1, -1))
    : null;
}

function lineFaults(raw: string): readonly string[] {
  const faults: string[] = [];
  if (/(^|[^\r])\n|\r(?!\n)/.test(raw)) faults.push('RFC 5322, 2.3: a CR or LF stands alone');
  if (raw.includes('\0')) faults.push('RFC 5322, 2.3 and 4: a NUL');
  if (raw.split('\r\n').some((line) => line.length > LONGEST_LINE)) {
    faults.push(`RFC 5322, 2.1.1: a line of more than ${LONGEST_LINE} characters`);
  }
  return faults;
}

function fieldFaults(fields: readonly Field[]): readonly string[] {
  const faults: string[] = [];
  for (const field of fields) {
    const { name, body } = field;
    if (!/^[!-9;-~]+$/.test(name)) faults.push(`RFC 5322, 2.2: ${JSON.stringify(name)} is no field name`);
    if (!/^[\t\r\n -~]*$/.test(body)) faults.push(`RFC 5322, 2.2: ${name} holds characters beyond US-ASCII`);
    if (/\r\n[ \t]*(\r\n|$)/.test(body)) faults.push(`RFC 5322, 3.2.2: ${name} folds into a line of blanks`);
    for (const word of unfolded(field).match(/=\?[^?\s]+\?[BbQq]\?[^?\s]*\?=/g) ?? []) {
      if (word.length > LONGEST_ENCODED_WORD) faults.push(`RFC 2047, 2: ${name} has an encoded word too long`);
    }
  }
  const names = fields.map(({ name }) => name.toLowerCase());
  for (const name of AT_MOST_ONCE) {
    if (names.filter((each) => each === name).length > 1) faults.push(`RFC 5322, 3.6: ${name} stands more than once`);
  }
  for (const name of ['date', 'from']) {
    if (!names.includes(name)) faults.push(`RFC 5322, 3.6: ${name} is missing`);
  }
  return faults;
}

function valueFaults(value: (name: string) => string | null, today: Date): readonly string[] {
  const faults: string[] = [];
  const date = value('date') ?? '';
  if (!DATE.test(date)) faults.push('RFC 5322, 3.3: the date is not written so');
  else {
    const moment = new Date(date);
    const day = moment.toLocaleDateString('en-US', { weekday: 'short', timeZone: 'UTC' });
    if (Number.isNaN(moment.getTime())) faults.push('RFC 5322, 3.3: there is no such date');
    else if (/\+0000$/.test(date) && !date.startsWith(day)) faults.push('RFC 5322, 3.3: the weekday is another');
    else if (Math.abs(moment.getTime() - today.getTime()) > 1000)
      faults.push('RFC 5322, 3.6.1: not when it was written');
  }
  if (!MESSAGE_ID.test(value('message-id') ?? '')) faults.push('RFC 5322, 3.6.4: no Message-ID, or not written so');
  for (const name of ['from', 'to', 'reply-to']) {
    const text = value(name);
    if (text !== null && !MAILBOX.test(text)) faults.push(`RFC 5322, 3.4: ${name} is no mailbox: ${text}`);
  }
  if (value('mime-version') !== '1.0') faults.push('RFC 2045, 4: no MIME-Version 1.0');
  const type = value('content-type') ?? '';
  if (type.startsWith('multipart/') && !/boundary="?[^"\s;]{1,70}"?/.test(type)) {
    faults.push('RFC 2046, 5.1.1: a multipart without a boundary of 1 to 70 characters');
  }
  if (value('auto-submitted') !== 'auto-generated') faults.push('RFC 3834, 5: not said to be auto-generated');
  return faults;
}

function listFaults(value: (name: string) => string | null): readonly string[] {
  const faults: string[] = [];
  const unsubscribe = value('list-unsubscribe');
  const uris = unsubscribe === null ? [] : listUris(unsubscribe);
  if (uris === null) faults.push('RFC 2369, 2: List-Unsubscribe is no list of URIs in angle brackets');
  for (const uri of uris ?? []) {
    const known = /^(mailto|https):/i.exec(uri);
    if (!known) faults.push(`RFC 2369, 2 and 3.2: ${uri} is neither mailto nor https`);
    const address = decodeURIComponent(/^mailto:([^?]*)/i.exec(uri)?.[1] ?? 'a@example.org');
    if (!ADDRESS.test(address)) faults.push(`RFC 6068, 2: ${uri} names no address`);
  }
  const post = value('list-unsubscribe-post');
  if (post === null) return faults;
  if (post !== 'List-Unsubscribe=One-Click') faults.push('RFC 8058, 3.1: List-Unsubscribe-Post says something else');
  if (!uris?.some((uri) => uri.startsWith('https:'))) faults.push('RFC 8058, 3.1: no https URI to post to');
  const signed =
    /\bh=([^;]*)/
      .exec(value('dkim-signature') ?? '')?.[1]
      ?.toLowerCase()
      .split(/\s*:\s*/) ?? null;
  for (const name of ['list-unsubscribe', 'list-unsubscribe-post']) {
    if (signed !== null && !signed.map((each) => each.trim()).includes(name)) {
      faults.push(`RFC 8058, 4: the signature does not cover ${name}`);
    }
  }
  return faults;
}

/**
 * What is wrong with a mail by the standards, each with its section; nothing where nothing is. Written from the standards and
 * not from the program.
 * @param raw its bytes as latin1 text
 * @param today when it was written
 */
export function mailFaults(raw: string, today: Date): readonly string[] {
  const end = raw.indexOf('\r\n\r\n');
  if (end < 0) return ['RFC 5322, 2.1: no empty line between header and body', ...lineFaults(raw)];
  const fields = fieldsOf(raw.slice(0, end));
  const value = (name: string): string | null => {
    const field = fields.find((each) => each.name.toLowerCase() === name);
    return field ? unfolded(field) : null;
  };
  return [...lineFaults(raw), ...fieldFaults(fields), ...valueFaults(value, today), ...listFaults(value)];
}
