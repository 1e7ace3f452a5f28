import type { AddressInfo, Socket } from 'node:net';
import { createServer } from 'node:net';
import { createSecureContext, TLSSocket } from 'node:tls';
import { onTestFinished } from 'vitest';
import type { MadeCertificate } from './made-certificate.ts';

/** A point of the conversation at which a mail server can go wrong; `dot`: the whole mail is there and kept. */
export type Step = 'greeting' | 'EHLO' | 'STARTTLS' | 'AUTH' | 'MAIL' | 'RCPT' | 'DATA' | 'body' | 'dot' | 'QUIT';

/** What it does there instead of answering as it should; `lose`: at the dot, breaks off and keeps nothing. */
export type Misdeed = 'cut' | 'silence' | 'lose' | { readonly reply: string };

/** A mail as the peer kept it. */
interface Kept {
  readonly from: string;
  readonly to: string;
  readonly raw: string;
}

/** A mail server that misbehaves as it was told, and well otherwise. */
export interface Peer {
  readonly port: number;
  readonly kept: readonly Kept[];
  /** Commands and steps in the order in which they came, of all conversations. */
  readonly steps: readonly Step[];
  /** Conversations that were begun. */
  readonly conversations: () => number;
}

const VERBS: readonly Step[] = ['EHLO', 'STARTTLS', 'AUTH', 'MAIL', 'RCPT', 'DATA', 'QUIT'];

/**
 * Starts a peer on loopback that is closed when the test is over. Each step's misdeeds are done in their order, one each time
 * the step is reached; then the peer behaves.
 */
export async function misbehavingPeer(options: {
  readonly misdeeds?: Partial<Readonly<Record<Step, readonly Misdeed[]>>>;
  readonly pipelining?: boolean;
  /** Answers DATA with 354 though it took no recipient, as RFC 2920 (3.1) lets a server do. */
  readonly lax?: boolean;
  /** Offers STARTTLS with this certificate. */
  readonly certificate?: MadeCertificate;
  /** Offers AUTH, and takes any password. */
  readonly auth?: boolean;
}): Promise<Peer> {
  const kept: Kept[] = [];
  const steps: Step[] = [];
  const left = new Map(Object.entries(options.misdeeds ?? {}).map(([step, list]) => [step, [...list]]));
  const sockets = new Set<Socket>();
  let conversations = 0;

  function converse(socket: Socket): void {
    let stream: Socket = socket;
    let received = '';
    let inBody = false;
    let silent = false;
    const envelope = { from: '', to: '' };
    let taken = { sender: false, recipient: false };

    /** Does what it was told to do at a step; false where it goes on as it should. */
    function misbehaves(step: Step): boolean {
      steps.push(step);
      const misdeed = left.get(step)?.shift();
      if (misdeed === undefined) return false;
      if (misdeed === 'silence') silent = true;
      else if (misdeed === 'cut' || misdeed === 'lose') {
        silent = true;
        stream.destroy();
        socket.destroy();
      } else {
        answer(misdeed.reply);
        if (misdeed.reply.startsWith('421')) stream.end();
      }
      return true;
    }

    function answer(...lines: readonly string[]): void {
      if (stream.writable) stream.write(`${lines.join('\r\n')}\r\n`);
    }

    function greet(): void {
      const offers = [
        ...(options.pipelining ? ['PIPELINING'] : []),
        ...(options.certificate && !(stream instanceof TLSSocket) ? ['STARTTLS'] : []),
        ...(options.auth ? ['AUTH PLAIN'] : []),
        '8BITMIME',
      ];
      answer('250-peer.example', ...offers.slice(0, -1).map((offer) => `250-${offer}`), `250 ${offers.at(-1) ?? ''}`);
    }

    function upgrade(certificate: MadeCertificate): void {
      answer('220 go ahead');
      socket.removeAllListeners('data');
      const secured = new TLSSocket(socket, { isServer: true, secureContext: createSecureContext(certificate) });
      received = '';
      stream = secured;
      listen(secured);
    }

    function obey(line: string): void {
      const verb = VERBS.find((each) => line.toUpperCase().startsWith(each));
      if (verb === undefined) {
        answer(/^HELO/i.test(line) ? '250 peer.example' : '250 ok');
        return;
      }
      if (verb === 'MAIL') taken = { sender: false, recipient: false };
      if (misbehaves(verb)) return;
      const address = /<([^>]*)>/.exec(line)?.[1] ?? '';
      if (verb === 'EHLO') greet();
      else if (verb === 'STARTTLS' && options.certificate) upgrade(options.certificate);
      else if (verb === 'AUTH') answer('235 welcome');
      else if (verb === 'DATA' && !(taken.sender && taken.recipient) && !options.lax) answer('503 5.5.1 no recipient');
      else if (verb === 'DATA') {
        inBody = true;
        answer('354 go on');
      } else if (verb === 'QUIT') {
        answer('221 bye');
        stream.end();
      } else {
        if (verb === 'MAIL') envelope.from = address;
        else envelope.to = address;
        taken = { sender: taken.sender || verb === 'MAIL', recipient: taken.sender && verb === 'RCPT' };
        answer('250 ok');
      }
    }

    function read(): void {
      while (!silent) {
        if (inBody) {
          if (received === '') return;
          if (!taken.recipient) {
            // nobody to keep it for: a dot alone ends what was begun
            if (!received.includes('.\r\n')) return;
            received = received.slice(received.indexOf('.\r\n') + 3);
            inBody = false;
            answer('554 5.5.1 no valid recipients');
            continue;
          }
          if (!steps.includes('body') || left.get('body')?.length) {
            if (misbehaves('body')) return;
          }
          const end = received.indexOf('\r\n.\r\n');
          if (end < 0) return;
          const raw = received.slice(0, end + 2).replace(/^\./gm, '');
          received = received.slice(end + 5);
          inBody = false;
          const loses = left.get('dot')?.[0] === 'lose' || typeof left.get('dot')?.[0] === 'object';
          if (!loses) kept.push({ ...envelope, raw });
          if (!misbehaves('dot')) answer(`250 kept as ${kept.length}`);
          continue;
        }
        const end = received.indexOf('\r\n');
        if (end < 0) return;
        const line = received.slice(0, end);
        received = received.slice(end + 2);
        obey(line);
      }
    }

    function listen(from: Socket): void {
      from.on('data', (chunk: Buffer) => {
        received += chunk.toString('latin1');
        read();
      });
      from.on('error', () => undefined);
    }

    listen(socket);
    if (!misbehaves('greeting')) answer('220 peer.example ESMTP');
  }

  const server = createServer((socket) => {
    conversations += 1;
    sockets.add(socket);
    socket.on('close', () => sockets.delete(socket));
    converse(socket);
  });
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  onTestFinished(
    () =>
      new Promise<void>((resolve) => {
        for (const socket of sockets) socket.destroy();
        server.close(() => resolve());
      }),
  );
  const { port } = server.address() as AddressInfo;
  return { port, kept, steps, conversations: () => conversations };
}
