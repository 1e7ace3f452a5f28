import { parentPort, workerData } from 'node:worker_threads';
import { openRegister } from '../register/database.ts';
import { systemClock } from './clock.ts';
import { makeSeasonPlan } from './make-season-plan.ts';
import type { PlanThreadMessage, PlanThreadTask } from './plan-thread.ts';
import { loadCrews } from './season-register.ts';
import { storeSeasonPlan } from './store-season-plan.ts';

const task = workerData as PlanThreadTask;
const port = parentPort;
if (!port) throw new Error('plan-worker runs as a worker thread of the service only');
const tell = (message: PlanThreadMessage): void => port.postMessage(message);
const now = () => systemClock().plus({ milliseconds: task.clockAheadMs });

const register = await openRegister(task.registerPath);
try {
  if ((await loadCrews(register.db)).length === 0) {
    tell({ kind: 'ended', end: { kind: 'no crew' } });
  } else {
    const made = await makeSeasonPlan(register, {
      now,
      weeks: task.weeks,
      onProgress: (done, total) => tell({ kind: 'progress', progress: { done, total } }),
    });
    const { number } = await storeSeasonPlan(register, made, { now, store: true });
    if (number === null) throw new Error('the plan was made and got no number');
    tell({ kind: 'ended', end: { kind: 'made', number } });
  }
} finally {
  await register.close();
  port.close();
}
