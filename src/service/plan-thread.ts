import { Worker } from 'node:worker_threads';
import type { Register } from '../register/database.ts';
import type { Clock } from './clock.ts';
import { systemClock } from './clock.ts';

/** What the thread is told. */
export interface PlanThreadTask {
  readonly registerPath: string;
  /** Weeks to plan; null: until the last season has opened. */
  readonly weeks: number | null;
  /** How far the service's clock is ahead of the computer's [ms]: the thread keeps the service's time. */
  readonly clockAheadMs: number;
}

/** How far the making of a plan has come; all fences looked at: the weeks are being filled. */
export interface PlanProgress {
  readonly done: number;
  readonly total: number;
}

/** What came of it: the number under which the plan is stored, or that there is no crew whose weeks could be filled. */
type PlanEnd = { readonly kind: 'made'; readonly number: number } | { readonly kind: 'no crew' };

/** What the thread tells. */
export type PlanThreadMessage =
  | { readonly kind: 'progress'; readonly progress: PlanProgress }
  | { readonly kind: 'ended'; readonly end: PlanEnd };

/** The making of a plan in a thread of its own, on a connection of its own. */
export interface PlanThread {
  /** Rejects where the thread fails or is stopped. */
  readonly done: Promise<PlanEnd>;
  /** Ends the thread at once; a plan that was not stored yet is lost, and nothing else. */
  stop(): Promise<void>;
}

/** True where the program runs from its TypeScript source: the thread then begins by registering the loader. */
const fromSource = import.meta.url.endsWith('.ts');

function startWorker(task: PlanThreadTask): Worker {
  const options = { workerData: task, execArgv: [] };
  if (!fromSource) return new Worker(new URL('./plan-worker.js', import.meta.url), options);
  const loader = import.meta.resolve('tsx/esm/api');
  const program = new URL('./plan-worker.ts', import.meta.url).href;
  const begin = `import(${JSON.stringify(loader)}).then(({ register }) => { register(); return import(${JSON.stringify(program)}); })`;
  return new Worker(begin, { ...options, eval: true });
}

/** Starts to make and store a season plan in a worker thread. */
export function startPlanThread(
  register: Register,
  options: {
    readonly clock: Clock;
    readonly weeks: number | null;
    readonly onProgress: (progress: PlanProgress) => void;
  },
): PlanThread {
  const worker = startWorker({
    registerPath: register.path,
    weeks: options.weeks,
    clockAheadMs: options.clock().diff(systemClock()).as('milliseconds'),
  });
  const done = new Promise<PlanEnd>((resolve, reject) => {
    let end: PlanEnd | null = null;
    worker.on('message', (message: PlanThreadMessage) => {
      if (message.kind === 'progress') options.onProgress(message.progress);
      else end = message.end;
    });
    worker.once('error', reject);
    worker.once('exit', (code) =>
      end ? resolve(end) : reject(new Error(`the plan's thread ended with code ${code} and no plan`)),
    );
  });
  return {
    done,
    stop: async () => {
      await worker.terminate();
    },
  };
}
