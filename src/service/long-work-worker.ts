import { constants, platform, setPriority } from 'node:os';
import { parentPort, workerData } from 'node:worker_threads';
import { DateTime } from 'luxon';
import { openRegister } from '../register/database.ts';
import { LONG_TASKS } from './long-tasks.ts';
import type { LongThreadMessage, LongThreadSetting, LongThreadTask } from './long-work-thread.ts';
import type { TaskContext } from './task-context.ts';

const { registerPath } = workerData as LongThreadSetting;
const port = parentPort;
if (!port) throw new Error('long-work-worker runs as a worker thread of the service only');
const tell = (message: LongThreadMessage): void => port.postMessage(message);

/** Progress is told so often at most [ms]. */
const TOLD_EVERY_MS = 200;

// Linux gives each thread a priority of its own, elsewhere it is the whole service's: where cores are few, pages come first
if (platform() === 'linux') setPriority(0, constants.priority.PRIORITY_BELOW_NORMAL);

const register = await openRegister(registerPath);

function progressTeller(): TaskContext['onProgress'] {
  let last = performance.now();
  return (done, total) => {
    if (performance.now() - last < TOLD_EVERY_MS) return;
    last = performance.now();
    tell({ kind: 'progress', progress: { done, total } });
  };
}

const done = async ({ name, input, now }: LongThreadTask): Promise<unknown> => {
  const moment = DateTime.fromISO(now, { zone: 'utc' });
  const task = LONG_TASKS[name] as (context: TaskContext, asked: unknown) => Promise<unknown>;
  return task({ register, now: () => moment, onProgress: progressTeller() }, input);
};

port.on('message', (task: LongThreadTask) => {
  done(task).then(
    (output) => tell({ kind: 'done', output }),
    (error: unknown) => tell({ kind: 'failed', error }),
  );
});
