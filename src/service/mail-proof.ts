import { createHmac } from 'node:crypto';
import type { Register } from '../register/database.ts';
import type { MailHistory, MailReport, MailTry } from '../register/mail-history.ts';
import { loadMailHistory } from '../register/mail-history.ts';
import { mailSecret } from '../register/mail-secret.ts';
import type { OutboxEntry } from '../register/outbox.ts';
import { listOutbox, loadOutboxBytes } from '../register/outbox.ts';
import { canonicalJson, sha256 } from './canonical-json.ts';
import type { Clock } from './clock.ts';
import { isoUtc } from './clock.ts';
import { isSameSecret, newSecret } from './secret-token.ts';

/** What a history says of the message itself. */
type ProvenMessage = Pick<
  OutboxEntry,
  | 'id'
  | 'messageId'
  | 'channel'
  | 'ownerRef'
  | 'ownerName'
  | 'subject'
  | 'envelopeFrom'
  | 'envelopeTo'
  | 'state'
  | 'attempts'
  | 'sentAt'
  | 'createdAt'
  | 'sha256'
> & { readonly bytes: number };

/** What was sent and what became of it, as it is exported. Times are ISO text in UTC. */
export interface ProvenHistory {
  readonly message: ProvenMessage;
  readonly notices: MailHistory['notices'];
  readonly tries: MailHistory['tries'];
  /** Without their bytes, which lie beside the history. */
  readonly reports: readonly Omit<MailReport, 'raw'>[];
  /** How often pages were asked for by its links; a mail scanner asks too, so that only what was sent (POST) speaks of a person. */
  readonly visits: MailHistory['visits'];
  readonly answers: MailHistory['answers'];
  readonly exportedAt: string;
  /** HMAC-SHA-256 of the rest under the register's own secret, hex. */
  readonly seal: string;
}

/** A message's exact bytes, its history, and the bytes of the reports that came back. */
export interface MailProof {
  readonly raw: Uint8Array;
  readonly history: ProvenHistory;
  readonly reports: readonly Uint8Array[];
}

const sealOf = (history: Omit<ProvenHistory, 'seal'>, secret: string): string =>
  createHmac('sha256', secret)
    .update(`mail history ${canonicalJson(history)}`)
    .digest('hex');

function withoutBytes(report: MailReport): Omit<MailReport, 'raw'> {
  const { receivedAt, foundBy, action, status, recipient, diagnostic, sha256: digest } = report;
  return { receivedAt, foundBy, action, status, recipient, diagnostic, sha256: digest };
}

/** The proof of one message by its number or its Message-ID; null where there is no such message. */
export async function mailProof(
  register: Register,
  which: { readonly id: number } | { readonly messageId: string },
  options: { readonly now: Clock },
): Promise<MailProof | null> {
  const all = await listOutbox(register, { limit: Number.MAX_SAFE_INTEGER });
  const entry = all.find((each) => ('id' in which ? each.id === which.id : each.messageId === which.messageId));
  const stored = entry && (await loadOutboxBytes(register, entry.id));
  if (!entry || !stored) return null;
  const { notices, tries, reports, visits, answers } = await loadMailHistory(register, entry.id);
  const { id, messageId, channel, ownerRef, ownerName, subject, envelopeFrom, envelopeTo } = entry;
  const { state, attempts, sentAt, createdAt } = entry;
  const history = {
    message: {
      ...{ id, messageId, channel, ownerRef, ownerName, subject, envelopeFrom, envelopeTo },
      ...{ state, attempts, sentAt, createdAt, sha256: entry.sha256, bytes: stored.raw.length },
    },
    notices,
    tries,
    reports: reports.map(withoutBytes),
    visits,
    answers,
    exportedAt: isoUtc(options.now()),
  };
  const seal = sealOf(history, await mailSecret(register, newSecret()));
  return { raw: stored.raw, history: { ...history, seal }, reports: reports.map(({ raw }) => raw) };
}

/** One try in a line. */
export const tryLine = ({ at, outcome, envelopeTo, reply, mayHaveArrived }: MailTry): string => {
  const ends = {
    sent: 'taken by',
    again: 'put off by',
    parked: 'refused by',
    lost: 'cut short on its way to',
  } as const;
  const unsure = mayHaveArrived ? ' (the server may have taken it without our knowing)' : '';
  return `${at}  ${ends[outcome]} the mail server for ${envelopeTo}: ${reply || 'no words'}${unsure}`;
};

/** One delivery report in a line. */
export const reportLine = (report: Omit<MailReport, 'raw'>): string => {
  const { receivedAt, action, status, recipient, diagnostic, foundBy } = report;
  return `${receivedAt}  report: ${action} ${status} for ${recipient || 'an address it does not name'}: ${diagnostic || 'no words'} (found by its ${foundBy})`;
};

const visitLine = ({ page, way, visits, firstAt, lastAt }: MailHistory['visits'][number]): string => {
  const who = { head: 'looked up, as scanners do', get: 'opened, by a person or a scanner', post: 'form sent' }[way];
  return `${firstAt}  ${page}: ${who}, ${visits} ${visits === 1 ? 'time' : `times until ${lastAt}`}`;
};

const answerLine = ({ at, kind, subject, detail }: MailHistory['answers'][number]): string =>
  `${at}  ${kind}${subject === '' ? '' : ` (${subject})`}${detail === '{}' ? '' : `: ${detail}`}`;

/** A history in plain words, to print and to file. */
export function historyText(history: ProvenHistory): string {
  const { message, notices, tries, reports, visits, answers, exportedAt } = history;
  const sent = message.sentAt === null ? `not sent; it is ${message.state}` : `sent ${message.sentAt}`;
  const lines = [
    `Message ${message.id} to ${message.ownerName} (${message.ownerRef}), by ${message.channel}`,
    `Subject: ${message.subject}`,
    `Message-ID: ${message.messageId}`,
    ...(message.envelopeTo === null ? [] : [`Envelope: from ${message.envelopeFrom ?? ''} to ${message.envelopeTo}`]),
    `Written ${message.createdAt}, ${sent}`,
    `${message.bytes} bytes, SHA-256 ${message.sha256}`,
    '',
    'It tells:',
    ...notices.map((told) => `${told.decidedAt}  notice ${told.number}: fence ${told.fenceRef}, ${told.matter}`),
    '',
    ...(tries.length === 0 ? ['No try was made.'] : ['Tries:', ...tries.map(tryLine)]),
    ...(reports.length === 0 ? ['No delivery report came back.'] : ['Reports:', ...reports.map(reportLine)]),
    ...(visits.length === 0
      ? ['No page was asked for by its links.']
      : ['Pages asked for by its links:', ...visits.map(visitLine)]),
    ...(answers.length === 0 ? ['No answer came by its links.'] : ['Answers:', ...answers.map(answerLine)]),
    '',
    `Written out ${exportedAt}. Times are UTC. "stormpale mail verify" checks that the message beside this page is the one that was sent.`,
  ];
  return `${lines.join('\n')}\n`;
}

/** One thing that was checked of an exported message. */
export interface ProofCheck {
  readonly what: string;
  /** Null where it could not be checked. */
  readonly ok: boolean | null;
  readonly found: string;
}

/** Checks a message's bytes against a history, and the history's seal against the register where there is one. */
export async function checkProof(
  raw: Uint8Array,
  history: ProvenHistory,
  register: Register | null,
): Promise<readonly ProofCheck[]> {
  const digest = sha256(raw);
  const { message } = history;
  const checks: ProofCheck[] = [
    { what: 'its bytes have the SHA-256 of the history', ok: digest === message.sha256, found: digest },
    { what: 'it is as long as the history says', ok: raw.length === message.bytes, found: `${raw.length} bytes` },
  ];
  if (message.channel === 'mail') {
    const head = Buffer.from(raw).toString('latin1').split('\r\n\r\n')[0] ?? '';
    const id = /^message-id:\s*(<[^<>\s]+>)/im.exec(head)?.[1] ?? 'none';
    checks.push({ what: 'its Message-ID is that of the history', ok: id === message.messageId, found: id });
  }
  const { seal, ...rest } = history;
  const what = 'the history is as this register wrote it';
  if (register === null) checks.push({ what, ok: null, found: 'no register to ask' });
  else {
    const ok = isSameSecret(seal, sealOf(rest, await mailSecret(register, newSecret())));
    checks.push({ what, ok, found: ok ? 'its seal is right' : 'its seal is not of this register, or it was changed' });
  }
  return checks;
}
