import type { AddressInfo, Socket } from 'node:net';
import { connect, createServer } from 'node:net';

/** A relay between a client and a server on loopback that breaks conversations off. */
export interface CuttingRelay {
  readonly port: number;
  /** How many conversations it broke off so far. */
  readonly cuts: () => number;
  close(): void;
}

/**
 * Starts a relay that passes everything on, and now and then withholds what the server just said and breaks off.
 * @param options.nextCut how many pieces of what the server says are passed on before the next cut; null for no more cuts
 */
export async function cuttingRelay(options: {
  readonly to: number;
  readonly nextCut: () => number | null;
}): Promise<CuttingRelay> {
  let left = options.nextCut();
  let cuts = 0;
  const sockets = new Set<Socket>();
  const server = createServer((client) => {
    const upstream = connect(options.to, '127.0.0.1');
    for (const socket of [client, upstream]) {
      sockets.add(socket);
      socket.setNoDelay(true);
      socket.on('error', () => undefined);
      socket.on('close', () => {
        sockets.delete(socket);
        client.destroy();
        upstream.destroy();
      });
    }
    client.pipe(upstream);
    upstream.on('data', (piece: Buffer) => {
      if (left !== null) left -= 1;
      if (left !== null && left <= 0) {
        left = options.nextCut();
        cuts += 1;
        client.destroy();
        // the server hears of it after it has done what it was told
        upstream.end();
        return;
      }
      client.write(piece);
    });
  });
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  return {
    port: (server.address() as AddressInfo).port,
    cuts: () => cuts,
    close: () => {
      for (const socket of sockets) socket.destroy();
      server.close();
    },
  };
}
