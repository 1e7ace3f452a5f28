import { simpleParser } from 'mailparser';
import { cautionsIn } from '../drawing/cautions.ts';
import { loadMailHistory } from '../register/mail-history.ts';
import type { OutboxEntry } from '../register/outbox.ts';
import { cancelMessage, listOutbox, loadOutboxBytes, markLetterPosted, retryMessages } from '../register/outbox.ts';
import { readSettings } from '../register/settings-store.ts';
import type { OutboxState } from '../register/sweep-tables.ts';
import { dayInZone, isoUtc } from '../service/clock.ts';
import { reportLine, tryLine } from '../service/mail-proof.ts';
import type { CliContext, GlobalOptions } from './cli-context.ts';
import { configOf, withExistingRegister } from './cli-context.ts';
import { CliError } from './cli-error.ts';
import { EXIT } from './exit-codes.ts';
import { plainTable } from './plain-table.ts';
import { jsonText } from './terminal.ts';

/** Options of the `mail` commands. */
export interface MailOptions extends GlobalOptions {
  readonly json?: boolean;
}

/** Options of `mail posted`. */
export interface PostedOptions extends MailOptions {
  readonly by?: string;
  /** The day on which it was posted, `YYYY-MM-DD`; today where left out. */
  readonly on?: string;
}

/** Longest name of who posted a letter [characters]. */
const LONGEST_NAME = 200;
const EVERYTHING = Number.MAX_SAFE_INTEGER;
const WAITING: readonly OutboxState[] = ['queued', 'leased', 'parked', 'to print'];

/** Lists what has not left: waiting, under way, parked, letters to print; with `parked` only the parked. */
export async function runMailList(context: CliContext, which: 'queue' | 'parked', options: MailOptions): Promise<void> {
  const entries = await withExistingRegister(configOf(context, options), (register) =>
    listOutbox(register, which === 'parked' ? { state: 'parked', limit: EVERYTHING } : { limit: EVERYTHING }),
  );
  const shown = entries.filter((entry) => WAITING.includes(entry.state));
  const { terminal } = context;
  if (options.json) terminal.out(jsonText(shown));
  else if (shown.length === 0) {
    terminal.out(which === 'parked' ? 'No message is parked.\n' : 'No message is waiting.\n');
  } else {
    const headings = ['No.', 'State', 'To', 'Subject', 'Tries', 'Next try', 'The server said'];
    terminal.out(plainTable(headings, shown.map(queueRow), [0, 4]));
    terminal.out(`${cautionsIn('en').brief}\n`);
  }
}

const queueRow = (entry: OutboxEntry): readonly string[] => [
  String(entry.id),
  entry.heldBy === null ? entry.state : `held by: ${entry.heldBy}`,
  entry.envelopeTo ?? `${entry.ownerName} (letter)`,
  entry.subject,
  String(entry.attempts),
  entry.dueAt ?? '–',
  entry.lastReply ?? '–',
];

/** Puts one waiting or parked message, or all of them, first in the queue; the running service sends them. */
export async function runMailRetry(context: CliContext, id: string | undefined, options: MailOptions): Promise<void> {
  const which = id === undefined ? 'all' : messageNumber(id);
  const queued = await withExistingRegister(configOf(context, options), (register) =>
    retryMessages(register, which, isoUtc(context.clock())),
  );
  if (which !== 'all' && queued === 0) {
    throw new CliError(
      EXIT.notFound,
      `no message ${which} is waiting or parked`,
      'see "stormpale mail queue" for those that are; what was sent is never sent again',
    );
  }
  const { terminal } = context;
  if (options.json) terminal.out(jsonText({ queued }));
  else terminal.out(`${queued} queued for a try at once; the running service sends them.\n`);
}

/** Shows one message of the outbox: where it stands and what it says. */
export async function runMailShow(context: CliContext, id: string, options: MailOptions): Promise<void> {
  const number = messageNumber(id);
  const [entry, bytes, history] = await withExistingRegister(configOf(context, options), async (register) => [
    (await listOutbox(register, { limit: EVERYTHING })).find((each) => each.id === number),
    await loadOutboxBytes(register, number),
    await loadMailHistory(register, number),
  ]);
  if (!entry || !bytes) {
    throw new CliError(
      EXIT.notFound,
      `no message ${number} in the outbox`,
      'see "stormpale mail queue" or the page /outbox for the numbers',
    );
  }
  const text = await textOf(bytes.channel, Buffer.from(bytes.raw));
  const { terminal } = context;
  if (options.json) {
    terminal.out(jsonText({ ...entry, text }));
    return;
  }
  const head = [
    `No. ${entry.id}, ${entry.state}, written ${entry.createdAt}`,
    `To: ${entry.envelopeTo ?? `${entry.ownerName} (letter)`}`,
    `Subject: ${entry.subject}`,
    `Message-ID: ${entry.messageId}`,
    ...(entry.postedOn === null
      ? []
      : [`Posted: ${entry.postedOn}${entry.postedBy === '' ? '' : `, by ${entry.postedBy}`}`]),
    ...(entry.lastReply === null ? [] : [`The server said: ${entry.lastReply}`]),
    ...(entry.heldBy === null
      ? []
      : [
          `Held by: ${entry.heldBy}, ${entry.heldBy === 'stopped address' ? 'until it is resumed' : `until ${entry.dueAt ?? 'it is due'}`}`,
        ]),
    ...history.tries.map(tryLine),
    ...history.reports.map(reportLine),
  ];
  terminal.out(`${head.join('\n')}\n\n${text.trimEnd()}\n`);
}

/** The text part of a mail; a letter, which is HTML alone, as text without its pictures. */
async function textOf(channel: 'mail' | 'letter', raw: Buffer): Promise<string> {
  if (channel === 'mail') return (await simpleParser(raw)).text ?? '';
  const html = raw.toString('utf8').replace(/<img\b[^>]*>/g, '');
  const head = 'Content-Type: text/html; charset=utf-8\r\nContent-Transfer-Encoding: 8bit\r\n\r\n';
  return (await simpleParser(Buffer.from(head + html, 'utf8'))).text ?? '';
}

/** Notes that a printed letter was posted, so that it no longer waits to be printed. */
export async function runMailPosted(context: CliContext, id: string, options: PostedOptions): Promise<void> {
  const number = messageNumber(id);
  const by = options.by?.trim() ?? '';
  if (by.length > LONGEST_NAME) {
    throw new CliError(EXIT.usage, `--by: ${by.length} characters, and ${LONGEST_NAME} are kept`, 'write it shorter');
  }
  const { posted, on } = await withExistingRegister(configOf(context, options), async (register) => {
    const today = dayInZone(context.clock(), (await readSettings(register.db)).timeZone);
    const day = options.on ?? today;
    if (day > today) throw new CliError(EXIT.usage, `--on ${day} is still to come`, `today is ${today}`);
    const posting = { by, on: day, at: isoUtc(context.clock()) };
    return { posted: await markLetterPosted(register, number, posting), on: day };
  });
  if (!posted) {
    throw new CliError(
      EXIT.notFound,
      `no message ${number} is a letter to print`,
      'see "stormpale mail queue" for the letters that wait; mails are sent by the service and never posted by hand',
    );
  }
  const { terminal } = context;
  if (options.json) terminal.out(jsonText({ posted: number, by, on }));
  else terminal.out(`Letter ${number} counts as posted on ${on}${by === '' ? '' : ` by ${by}`}.\n`);
}

/** Takes a message that has not left out of the outbox; its owner is not told by it. */
export async function runMailCancel(context: CliContext, id: string, options: MailOptions): Promise<void> {
  const number = messageNumber(id);
  const cancelled = await withExistingRegister(configOf(context, options), (register) =>
    cancelMessage(register, number),
  );
  if (!cancelled) {
    throw new CliError(
      EXIT.notFound,
      `no message ${number} is waiting, parked or to print`,
      'see "stormpale mail queue" for those that are; what was sent or is being sent cannot be called back',
    );
  }
  const { terminal } = context;
  if (options.json) terminal.out(jsonText({ cancelled: number }));
  else terminal.out(`Message ${number} is cancelled and will not be sent.\n`);
}

/** The number of a message from what a person wrote. Throws `CliError` where it is none. */
export function messageNumber(id: string): number {
  if (/^\d{1,15}$/.test(id)) return Number(id);
  throw new CliError(
    EXIT.usage,
    `${JSON.stringify(id)} is no message number`,
    'write a number as "stormpale mail queue" shows them',
  );
}
