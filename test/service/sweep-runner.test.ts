import { expect, it, onTestFinished } from 'vitest';
import { countOutbox } from '../../src/register/outbox.ts';
import { loadConfig } from '../../src/service/config.ts';
import { createLog } from '../../src/service/log.ts';
import { runSweep } from '../../src/service/run-sweep.ts';
import { createSweepRunner } from '../../src/service/sweep-runner.ts';
import { fenceRegister, JANUARY, manyFences } from './fence-register.ts';

const old = { installedEarliest: '2005-04-15', installedLatest: '2005-04-15' };
const clock = () => JANUARY.plus({ minutes: 1 });

it('tries an owner again at the next tick whose message could not be written', async () => {
  const register = await fenceRegister({ fences: manyFences(1, old) });
  await runSweep(register, { now: () => JANUARY });
  const { detail } = await register.db.selectFrom('forecasts').select('detail').executeTakeFirstOrThrow();
  const lines: string[] = [];
  let written = 0;
  const runner = createSweepRunner({
    register,
    config: loadConfig({}),
    clock,
    log: createLog('error', { write: (line) => void lines.push(line) }),
    onOutcome: () => undefined,
    onMessages: () => {
      written += 1;
    },
  });
  onTestFinished(() => runner.close());
  await register.db.updateTable('forecasts').set({ detail: '{' }).execute();
  expect(await runner.ask({ onStart: false })).toBeNull();
  expect(lines.join('')).toContain('no message could be written to this owner');
  expect(await countOutbox(register)).toMatchObject({ queued: 0 });
  await register.db.updateTable('forecasts').set({ detail }).execute();
  expect(await runner.ask({ onStart: false })).toBeNull();
  expect(await countOutbox(register)).toMatchObject({ queued: 1 });
  expect(written).toBe(2);
  expect(await runner.ask({ onStart: false })).toBeNull();
  expect(written).toBe(2);
});
