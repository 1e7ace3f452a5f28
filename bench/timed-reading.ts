import { type ChildProcess, fork } from 'node:child_process';
import { Agent, get } from 'node:http';
import { join } from 'node:path';
import { setTimeout } from 'node:timers/promises';
import type { Shown } from './bench-readers.ts';
import type { ListedPage } from './listed-pages.ts';
import { READER_HEADER, type TimedServiceMessage } from './timed-message.ts';

/** How long a reader thinks between two pages [ms]. */
export const THINK_MS = 1_000;

/** One page as a reader got it. */
export interface Answer {
  readonly status: number;
  readonly body: string;
  readonly tookMs: number;
}

/** What so many readers saw, and what the pages took. */
export interface Reading {
  /** Times from the parsed request to the last byte given to the socket, by who asks and path [ms]. */
  readonly pages: Readonly<Record<string, readonly number[]>>;
  /** Times as the readers saw them [ms]. */
  readonly seenMs: readonly number[];
  readonly sweptMeanwhile: number;
  /** Processor time of all threads of the service [ms]. */
  readonly cpuMs: number;
}

/** A service at work as a process of its own. */
export interface TimedService {
  readonly ask: (page: ListedPage) => Promise<Answer>;
  readonly told: () => Promise<Extract<TimedServiceMessage, { readonly kind: 'took' }>>;
  readonly read: (pages: readonly ListedPage[], readers: number, seconds: number) => Promise<Reading>;
  readonly end: () => Promise<void>;
}

const heard = <K extends TimedServiceMessage['kind']>(
  child: ChildProcess,
  kind: K,
): Promise<Extract<TimedServiceMessage, { readonly kind: K }>> =>
  new Promise((resolve, reject) => {
    const onExit = (code: number | null): void => reject(new Error(`the service ended with ${code}`));
    const hear = (message: TimedServiceMessage): void => {
      if (message.kind !== kind) return;
      child.off('message', hear);
      child.off('exit', onExit);
      resolve(message as Extract<TimedServiceMessage, { readonly kind: K }>);
    };
    child.on('message', hear);
    child.once('exit', onExit);
  });

/** Starts the service on a folder's register, in a process of its own that tells what its pages took. */
export async function startTimedService(folder: string, shown: Shown): Promise<TimedService> {
  const child = fork(join(import.meta.dirname, 'timed-service.ts'), {
    execArgv: ['--import', 'tsx'],
    stdio: ['ignore', 'ignore', 'inherit', 'ipc'],
    env: { ...process.env, STORMPALE_DATA: folder, STORMPALE_PORT: '0', STORMPALE_TIME_ZONE: 'UTC' },
  });
  const { url } = await heard(child, 'up');
  const agent = new Agent({ keepAlive: true, maxSockets: 100 });

  const askOnce = ({ path, as = 'office' }: ListedPage): Promise<Answer> => {
    const from = performance.now();
    return new Promise((resolve, reject) => {
      get(`${url}${path}`, { agent, headers: { ...shown[as], [READER_HEADER]: as } }, (answer) => {
        const parts: Buffer[] = [];
        answer.on('data', (part: Buffer) => parts.push(part));
        answer.on('error', reject);
        answer.on('end', () =>
          resolve({
            status: answer.statusCode ?? 0,
            body: Buffer.concat(parts).toString('utf8'),
            tookMs: performance.now() - from,
          }),
        );
      }).on('error', reject);
    });
  };
  /** A kept connection that the server closed just then is not a page's fault: it is asked again. */
  const ask = async (page: ListedPage): Promise<Answer> => {
    try {
      return await askOnce(page);
    } catch (error) {
      if ((error as { readonly code?: string }).code !== 'ECONNRESET') throw error;
      return askOnce(page);
    }
  };
  const told = () => {
    const answer = heard(child, 'took');
    child.send('tell');
    return answer;
  };
  return {
    ask,
    told,
    read: async (pages, readers, seconds) => {
      child.send('forget');
      const before = await told();
      const seenMs: number[] = [];
      const until = performance.now() + seconds * 1000;
      await Promise.all(
        Array.from({ length: readers }, async (_, reader) => {
          await setTimeout((reader * THINK_MS) / readers);
          for (let turn = reader; performance.now() < until; turn += 1) {
            const page = pages[turn % pages.length]!;
            const { status, tookMs } = await ask(page);
            if (status !== 200) throw new Error(`${page.path} answers ${status}`);
            seenMs.push(tookMs);
            await setTimeout(THINK_MS);
          }
        }),
      );
      const after = await told();
      return {
        pages: after.pages,
        seenMs,
        sweptMeanwhile: (after.sweptSoFar ?? 0) - (before.sweptSoFar ?? 0),
        cpuMs: 1000 * (after.cpuSeconds - before.cpuSeconds),
      };
    },
    end: async () => {
      agent.destroy();
      const ended = new Promise((resolve) => child.once('exit', resolve));
      child.kill('SIGKILL');
      await ended;
    },
  };
}
