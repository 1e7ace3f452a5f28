import { afterEach, describe, expect, it } from 'vitest';
import { listPlanHeads } from '../../src/register/plan-store.ts';
import { createLog } from '../../src/service/log.ts';
import { createPlanRunner } from '../../src/service/plan-runner.ts';
import { SAMPLE_NOW, sampleRegister } from '../web/sample-register.ts';
import { visitingRegister } from './visiting-register.ts';

describe('season plans in a thread of their own', { timeout: 180_000 }, () => {
  const closing: (() => Promise<void>)[] = [];
  afterEach(async () => {
    for (const close of closing.splice(0).reverse()) await close();
  });

  async function runnerOf(sample: Awaited<ReturnType<typeof sampleRegister>>) {
    const planner = createPlanRunner({ register: sample.register, clock: SAMPLE_NOW, log: createLog('silent') });
    closing.push(
      () => sample.remove(),
      () => planner.close(),
    );
    return planner;
  }

  it('are made one at a time and stored, while this thread goes on', async () => {
    const sample = await visitingRegister();
    const planner = await runnerOf(sample);
    expect(planner.state()).toEqual({ kind: 'idle' });
    expect(planner.begin({ by: 'nell', weeks: 8 })).toBe(true);
    expect(planner.begin({ by: 'tom', weeks: 8 })).toBe(false);
    expect(planner.state()).toMatchObject({ kind: 'at work', by: 'nell' });
    await planner.settled();
    expect(planner.state()).toMatchObject({ kind: 'made', number: 1 });
    expect(await listPlanHeads(sample.register.db)).toMatchObject([
      { number: 1, state: 'made', asOf: '2026-11-24', weeks: 8 },
    ]);
  });

  it('say that there is no crew, and that something went wrong, in words; another can be begun after it', async () => {
    const planner = await runnerOf(await sampleRegister({ swept: false }));
    planner.begin({ by: '', weeks: null });
    await planner.settled();
    expect(planner.state()).toMatchObject({ kind: 'failed', reason: expect.stringContaining('no crew') as string });

    const broken = await sampleRegister({ empty: true });
    const other = await runnerOf({ ...broken, register: { ...broken.register, path: broken.folder } });
    other.begin({ by: '', weeks: null });
    await other.settled();
    expect(other.state()).toMatchObject({ kind: 'failed' });
    expect(other.begin({ by: '', weeks: null })).toBe(true);
    await other.settled();
  });

  it('are ended with the service, with nothing stored', async () => {
    const sample = await visitingRegister();
    const planner = await runnerOf(sample);
    planner.begin({ by: '', weeks: 8 });
    await planner.close();
    expect(planner.state()).toMatchObject({ kind: 'failed' });
    expect(planner.begin({ by: '', weeks: 8 })).toBe(false);
    expect(await listPlanHeads(sample.register.db)).toEqual([]);
  });
});
