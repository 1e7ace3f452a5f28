import { parentPort, workerData } from 'node:worker_threads';
import { openRegister } from '../register/database.ts';
import { systemClock } from './clock.ts';
import { sweepRegister } from './sweep-register.ts';
import type { SweepThreadMessage, SweepThreadTask } from './sweep-thread.ts';

const task = workerData as SweepThreadTask;
const port = parentPort;
if (!port) throw new Error('sweep-worker runs as a worker thread of the service only');
const tell = (message: SweepThreadMessage): void => port.postMessage(message);

const stop = new AbortController();
port.on('message', () => stop.abort());

const register = await openRegister(task.registerPath);
try {
  const outcome = await sweepRegister(register, {
    now: () => systemClock().plus({ milliseconds: task.clockAheadMs }),
    token: task.token,
    sender: task.sender,
    signal: stop.signal,
    onProgress: (progress) => tell({ kind: 'progress', progress }),
  });
  tell({ kind: 'outcome', outcome });
} finally {
  await register.close();
  port.close();
}
