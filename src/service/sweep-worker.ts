import { constants, platform, setPriority } from 'node:os';
import { parentPort, workerData } from 'node:worker_threads';
import { openRegister } from '../register/database.ts';
import { systemClock } from './clock.ts';
import type { SweepProgress } from './run-sweep.ts';
import { sweepRegister, writeMessages } from './sweep-register.ts';
import type { SweepThreadMessage, SweepThreadTask } from './sweep-thread.ts';

const task = workerData as SweepThreadTask;
const port = parentPort;
if (!port) throw new Error('sweep-worker runs as a worker thread of the service only');
const tell = (message: SweepThreadMessage): void => port.postMessage(message);

const stop = new AbortController();
port.on('message', () => stop.abort());

// Linux gives each thread a priority of its own, elsewhere it is the whole service's: where cores are few, pages come first
if (platform() === 'linux') setPriority(0, constants.priority.PRIORITY_BELOW_NORMAL);

const register = await openRegister(task.registerPath);
try {
  const options = {
    now: () => systemClock().plus({ milliseconds: task.clockAheadMs }),
    sender: task.sender,
    signal: stop.signal,
  };
  if (task.work === 'messages') {
    tell({ kind: 'ended', end: { report: null, composed: await writeMessages(register, options) } });
  } else {
    const onProgress = (progress: SweepProgress): void => tell({ kind: 'progress', progress });
    tell({ kind: 'ended', end: await sweepRegister(register, { ...options, token: task.token, onProgress }) });
  }
} finally {
  await register.close();
  port.close();
}
