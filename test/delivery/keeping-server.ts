import type { AddressInfo } from 'node:net';
import { setTimeout as pause } from 'node:timers/promises';
import { SMTPServer } from 'smtp-server';

/** A mail server on loopback that keeps whole mails by their Message-ID, also where its answer will never be heard. */
export interface KeepingServer {
  readonly port: number;
  /** Copies of each mail, by Message-ID. */
  readonly copies: ReadonlyMap<string, readonly Buffer[]>;
  /** How many mails it got so far, copies too. */
  readonly count: () => number;
  /** Settles once no conversation is open. */
  idle(): Promise<void>;
  close(): Promise<void>;
}

/** @param answerMs how long it takes to answer the final dot, so that there is a time in which to be killed [ms] */
export async function keepingServer(answerMs: number): Promise<KeepingServer> {
  const copies = new Map<string, Buffer[]>();
  let count = 0;
  const server = new SMTPServer({
    disabledCommands: ['AUTH', 'STARTTLS'],
    onData: (stream, _session, callback) => {
      const chunks: Buffer[] = [];
      stream.on('data', (chunk: Buffer) => chunks.push(chunk));
      stream.on('end', () => {
        const raw = Buffer.concat(chunks);
        const id = /^Message-ID: (<.*>)\r?$/m.exec(raw.toString('latin1'))?.[1] ?? '';
        copies.set(id, [...(copies.get(id) ?? []), raw]);
        count += 1;
        setTimeout(() => callback(), answerMs);
      });
    },
  });
  server.on('error', () => undefined);
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  const openConversations = (): Promise<number> =>
    new Promise((resolve, reject) =>
      server.server.getConnections((error, count) => (error ? reject(error) : resolve(count))),
    );
  return {
    port: (server.server.address() as AddressInfo).port,
    copies,
    count: () => count,
    idle: async () => {
      while ((await openConversations()) > 0) await pause(10);
    },
    close: () => new Promise((resolve) => server.close(() => resolve())),
  };
}
