import { randomUUID } from 'node:crypto';
import { Worker } from 'node:worker_threads';
import type { Register } from '../register/database.ts';
import { releaseSweepClaim } from '../register/sweep-claim.ts';
import type { Clock } from './clock.ts';
import { systemClock } from './clock.ts';
import type { ComposeReport } from './compose-notices.ts';
import type { SweepProgress } from './run-sweep.ts';
import type { SenderConfig, SweepOutcome } from './sweep-register.ts';

/** What a thread does: a sweep and the messages that come of it, or only messages that were not written yet. */
type SweepThreadWork = 'sweep' | 'messages';

/** What the thread is told. */
export interface SweepThreadTask {
  readonly work: SweepThreadWork;
  readonly registerPath: string;
  readonly token: string;
  readonly sender: SenderConfig;
  /** How far the service's clock is ahead of the computer's [ms]: the thread keeps the service's time. */
  readonly clockAheadMs: number;
}

/** What the thread tells. */
export type SweepThreadMessage =
  | { readonly kind: 'progress'; readonly progress: SweepProgress }
  | { readonly kind: 'ended'; readonly end: SweepThreadEnd };

/** What came of a thread's work; no report where it swept nothing. */
type SweepThreadEnd = SweepOutcome | { readonly report: null; readonly composed: ComposeReport };

/** Work in a thread of its own, on a connection of its own: pages and mail never wait for it. */
export interface SweepThread {
  /** Rejects where the thread fails; its claim is then given back. */
  readonly done: Promise<SweepThreadEnd>;
  /** Asks the thread to stop after the fence or the owner at hand. */
  stop(): void;
}

/** True where the program runs from its TypeScript source: the thread then begins by registering the loader. */
const fromSource = import.meta.url.endsWith('.ts');

function startWorker(task: SweepThreadTask): Worker {
  const options = { workerData: task, execArgv: [] };
  if (!fromSource) return new Worker(new URL('./sweep-worker.js', import.meta.url), options);
  const loader = import.meta.resolve('tsx/esm/api');
  const program = new URL('./sweep-worker.ts', import.meta.url).href;
  const begin = `import(${JSON.stringify(loader)}).then(({ register }) => { register(); return import(${JSON.stringify(program)}); })`;
  return new Worker(begin, { ...options, eval: true });
}

/** Starts the work in a worker thread. */
export function startSweepThread(
  register: Register,
  options: {
    readonly work: SweepThreadWork;
    readonly clock: Clock;
    readonly sender: SenderConfig;
    readonly onProgress: (progress: SweepProgress) => void;
  },
): SweepThread {
  const token = randomUUID();
  const { officeName, officePhone, officeEmail, mailFrom, smtpUrl, publicUrl, delivery } = options.sender;
  const task: SweepThreadTask = {
    work: options.work,
    registerPath: register.path,
    token,
    sender: { officeName, officePhone, officeEmail, mailFrom, smtpUrl, publicUrl, ...(delivery ? { delivery } : {}) },
    clockAheadMs: options.clock().diff(systemClock()).as('milliseconds'),
  };
  const worker = startWorker(task);
  const ended = new Promise<SweepThreadEnd>((resolve, reject) => {
    let end: SweepThreadEnd | null = null;
    worker.on('message', (message: SweepThreadMessage) => {
      if (message.kind === 'progress') options.onProgress(message.progress);
      else end = message.end;
    });
    worker.once('error', reject);
    worker.once('exit', (code) =>
      end ? resolve(end) : reject(new Error(`the sweep's thread ended with code ${code} and no outcome`)),
    );
  });
  const done = ended.catch(async (error: unknown) => {
    await releaseSweepClaim(register, token);
    throw error;
  });
  return { done, stop: () => worker.postMessage('stop') };
}
