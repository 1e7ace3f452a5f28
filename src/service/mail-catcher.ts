import { randomBytes } from 'node:crypto';
import { mkdir, open, readdir, readFile, rename } from 'node:fs/promises';
import type { AddressInfo } from 'node:net';
import { join } from 'node:path';
import { simpleParser } from 'mailparser';
import { SMTPServer } from 'smtp-server';
import type { Clock } from './clock.ts';
import { isoUtc } from './clock.ts';

/** A caught mail, as a list shows it. */
export interface CaughtMail {
  readonly id: string;
  readonly from: string;
  readonly to: string;
  readonly subject: string;
  readonly messageId: string;
  /** ISO text in UTC: when the mail was caught. */
  readonly caughtAt: string;
}

/** A caught mail, ready to be read on a page. */
export interface CaughtMailContent extends CaughtMail {
  readonly text: string;
  /**
   * The HTML part with its inline pictures inside; null where there is none. It is a stranger's text: show it in an iframe
   * with an empty `sandbox` and no other way.
   */
  readonly html: string | null;
  readonly files: readonly { readonly name: string; readonly contentType: string; readonly content: Uint8Array }[];
  readonly raw: Uint8Array;
}

/** A mail server on loopback that keeps what it gets in a folder, one `.eml` file a mail. */
export interface MailCatcher {
  readonly port: number;
  /** Newest first. */
  list(): Promise<readonly CaughtMail[]>;
  /** Null where there is no such mail. */
  get(id: string): Promise<CaughtMailContent | null>;
  close(): Promise<void>;
}

const LARGEST_MAIL_BYTES = 25 * 1024 * 1024;
const ID_SHAPE = /^(\d{8}T\d{9}Z)-[0-9a-f]{8}$/;

const compactTime = (iso: string): string => iso.replace(/[-:.]/g, '');
const isoFromCompact = (compact: string): string =>
  compact.replace(/^(\d{4})(\d{2})(\d{2})T(\d{2})(\d{2})(\d{2})(\d{3})Z$/, '$1-$2-$3T$4:$5:$6.$7Z');

/** Writes the mail so that it is either there whole or not at all, also after a power cut. */
async function keep(folder: string, id: string, raw: Uint8Array): Promise<void> {
  const path = join(folder, `${id}.eml`);
  const file = await open(`${path}.part`, 'w');
  try {
    await file.writeFile(raw);
    await file.sync();
  } finally {
    await file.close();
  }
  await rename(`${path}.part`, path);
}

async function read(folder: string, id: string): Promise<CaughtMailContent | null> {
  const compact = ID_SHAPE.exec(id)?.[1];
  if (!compact) return null;
  let raw: Buffer;
  try {
    raw = await readFile(join(folder, `${id}.eml`));
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === 'ENOENT') return null;
    throw error;
  }
  const mail = await simpleParser(raw);
  const to = Array.isArray(mail.to) ? mail.to : mail.to ? [mail.to] : [];
  return {
    id,
    from: mail.from?.text ?? '',
    to: to.map((each) => each.text).join(', '),
    subject: mail.subject ?? '',
    messageId: mail.messageId ?? '',
    caughtAt: isoFromCompact(compact),
    text: mail.text ?? '',
    html: mail.html === false ? null : (mail.html ?? null),
    files: mail.attachments
      .filter((file) => !file.related)
      .map((file) => ({ name: file.filename ?? 'file', contentType: file.contentType, content: file.content })),
    raw,
  };
}

function listed(mail: CaughtMailContent): CaughtMail {
  const { id, from, to, subject, messageId, caughtAt } = mail;
  return { id, from, to, subject, messageId, caughtAt };
}

/**
 * Starts the catcher on loopback. A mail is acknowledged only once it is on disk; what was caught before is still there.
 * @param options.port port to listen on, 0 for any free one
 * @param options.folder where the mails are kept; made where it is missing
 */
export async function startMailCatcher(options: {
  readonly port: number;
  readonly folder: string;
  readonly now: Clock;
}): Promise<MailCatcher> {
  const { folder } = options;
  await mkdir(folder, { recursive: true });
  const known = new Map<string, CaughtMail>();
  const server = new SMTPServer({
    disabledCommands: ['AUTH', 'STARTTLS'],
    size: LARGEST_MAIL_BYTES,
    onData: (stream, _session, callback) => {
      const chunks: Buffer[] = [];
      stream.on('data', (chunk: Buffer) => chunks.push(chunk));
      stream.on('end', () => {
        const id = `${compactTime(isoUtc(options.now()))}-${randomBytes(4).toString('hex')}`;
        keep(folder, id, Buffer.concat(chunks)).then(() => callback(), callback);
      });
    },
  });
  // a client that breaks off is no reason to stop the service
  server.on('error', () => undefined);
  await new Promise<void>((resolve, reject) => {
    server.server.once('error', reject);
    server.listen(options.port, '127.0.0.1', resolve);
  });
  return {
    port: (server.server.address() as AddressInfo).port,
    list: async () => {
      const ids = (await readdir(folder)).filter((name) => name.endsWith('.eml')).map((name) => name.slice(0, -4));
      const mails: CaughtMail[] = [];
      for (const id of ids.sort().reverse()) {
        const mail = known.get(id) ?? (await read(folder, id).then((content) => content && listed(content)));
        if (!mail) continue;
        known.set(id, mail);
        mails.push(mail);
      }
      return mails;
    },
    get: (id) => read(folder, id),
    close: () => new Promise((resolve) => server.close(() => resolve())),
  };
}
