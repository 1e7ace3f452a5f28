import type { AddressInfo } from 'node:net';
import { SMTPServer } from 'smtp-server';
import { onTestFinished } from 'vitest';

/** A mail as a server got it. */
export interface Received {
  readonly to: string;
  readonly raw: string;
}

/** What a server answers: null accepts, else code and words of its refusal. */
export type Answer = { readonly code: number; readonly words: string } | null;

/** A real mail server that keeps what it gets. */
export interface TestMailServer {
  readonly port: number;
  readonly received: readonly Received[];
  close(): Promise<void>;
}

const refusal = ({ code, words }: NonNullable<Answer>): Error =>
  Object.assign(new Error(words), { responseCode: code });

/** Starts a mail server on loopback; it is closed when the test is over. */
export async function mailServer(
  options: {
    readonly port?: number;
    /** Asked once a message is complete, before it is kept. */
    readonly onMessage?: (mail: Received, count: number) => Answer | Promise<Answer>;
    readonly onRecipient?: (to: string) => Answer;
    readonly onSender?: (from: string) => Answer;
    /** Password it asks for; none where not given. */
    readonly password?: string;
  } = {},
): Promise<TestMailServer> {
  const received: Received[] = [];
  const server = new SMTPServer({
    disabledCommands: options.password === undefined ? ['AUTH', 'STARTTLS'] : ['STARTTLS'],
    allowInsecureAuth: true,
    onAuth: (auth, _session, callback) => {
      if (auth.password === options.password) callback(null, { user: auth.username });
      else callback(refusal({ code: 535, words: 'not the password' }));
    },
    onMailFrom: (address, _session, callback) => {
      const answer = options.onSender?.(address.address) ?? null;
      callback(answer ? refusal(answer) : null);
    },
    onRcptTo: (address, _session, callback) => {
      const answer = options.onRecipient?.(address.address) ?? null;
      callback(answer ? refusal(answer) : null);
    },
    onData: (stream, session, callback) => {
      const chunks: Buffer[] = [];
      stream.on('data', (chunk: Buffer) => chunks.push(chunk));
      stream.on('end', () => {
        const to = session.envelope.rcptTo[0]?.address ?? '';
        const mail = { to, raw: Buffer.concat(chunks).toString('utf8') };
        void Promise.resolve(options.onMessage?.(mail, received.length + 1) ?? null).then((answer) => {
          if (answer) return callback(refusal(answer));
          received.push(mail);
          return callback();
        });
      });
    },
  });
  server.on('error', () => undefined);
  await new Promise<void>((resolve) => server.listen(options.port ?? 0, '127.0.0.1', resolve));
  const { port } = server.server.address() as AddressInfo;
  let closed: Promise<void> | null = null;
  const close = (): Promise<void> => {
    closed ??= new Promise((resolve) => server.close(() => resolve()));
    return closed;
  };
  onTestFinished(close);
  return { port, received, close };
}

/** A port on which nobody listens. */
export async function freePort(): Promise<number> {
  const server = await mailServer();
  await server.close();
  return server.port;
}

/** The Message-ID of a mail. */
export const messageIdOf = (mail: Received): string => /^Message-ID: (<.*>)\r?$/m.exec(mail.raw)?.[1] ?? '';
