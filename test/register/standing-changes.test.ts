import { DateTime } from 'luxon';
import { afterEach, describe, expect, it } from 'vitest';
import type { Register } from '../../src/register/database.ts';
import { readRecord, upsertRecords } from '../../src/register/record-store.ts';
import { writeSettings } from '../../src/register/settings-store.ts';
import { countStandingChanges, listStandingChanges } from '../../src/register/standing-changes.ts';
import { finishedBefore } from '../../src/register/sweep-store.ts';
import type { Clock } from '../../src/service/clock.ts';
import { runSweep } from '../../src/service/run-sweep.ts';
import { sampleRegister } from '../web/sample-register.ts';
import { importFiles } from './made-up-register.ts';

const at =
  (text: string): Clock =>
  () =>
    DateTime.fromISO(text, { zone: 'utc' });

describe('changes of standing that a sweep notes', { timeout: 60_000 }, () => {
  let remove = async (): Promise<void> => undefined;
  afterEach(() => remove());

  async function swept(): Promise<Register> {
    const sample = await sampleRegister();
    remove = sample.remove;
    return sample.register;
  }
  async function sweepAgain(register: Register, when: string): Promise<number> {
    const report = await runSweep(register, { now: at(when) });
    if (report.kind !== 'finished') throw new Error(report.kind);
    return report.sweep.id;
  }

  it('are none in a first sweep, nor where nothing came of a change', async () => {
    const register = await swept();
    expect(await listStandingChanges(register, 1, 10)).toEqual([]);
    expect(await finishedBefore(register, 1)).toBe(false);
    const second = await sweepAgain(register, '2026-11-25T12:00:00Z');
    expect(await countStandingChanges(register, second)).toEqual([]);
    expect(await finishedBefore(register, second)).toBe(true);
    // a sweep of a register without fences is nothing to compare with
    await register.db.updateTable('sweeps').set({ computed: 0 }).where('id', '=', 1).execute();
    expect(await finishedBefore(register, second)).toBe(false);
  });

  it('say what the standing was and is, and that a record was changed in between', async () => {
    const register = await swept();
    const fence = await readRecord(register.db, 'fences', 'PR-01');
    await upsertRecords(
      register.db,
      'fences',
      [
        {
          ...fence!,
          heightM: 3.4,
          treatmentClass: 'above-ground-stock',
          installedEarliest: '2009-03-20',
          installedLatest: '2009-03-20',
        },
      ],
      '2026-11-24T18:00:00.000Z',
    );
    const sweep = await sweepAgain(register, '2026-11-25T12:00:00Z');
    const [change, ...others] = await listStandingChanges(register, sweep, 10);
    expect(others).toEqual([]);
    expect(change).toMatchObject({ fenceRef: 'PR-01', siteName: 'Pelican Reach', causes: ['record'] });
    expect(change?.after).toMatch(/short/);
    expect(change?.before).not.toBe(change?.after);
    expect(await countStandingChanges(register, sweep)).toEqual([
      { before: change?.before, after: change?.after, fences: 1 },
    ]);
  });

  it('name readings that were entered, and settings where nothing of the fence’s own changed', async () => {
    const register = await swept();
    const inspection = [
      { name: 'inspections.csv', text: 'ref,fence,day,inspector,method\nA,PR-01,2026-11-20,Nell Fox,caliper\n' },
      { name: 'readings.csv', text: 'inspection,post,residual_width_in\nA,2,1.1\nA,3,1.0\nA,4,1.2\nA,5,1.1\n' },
    ];
    expect(
      (await importFiles(register, inspection, { now: '2026-11-24T20:00:00.000Z', today: '2026-11-24' })).faults,
    ).toEqual([]);
    const sweep = await sweepAgain(register, '2026-11-25T12:00:00Z');
    expect(await listStandingChanges(register, sweep, 10)).toMatchObject([
      { fenceRef: 'PR-01', causes: ['inspection'] },
    ]);
    await writeSettings(register.db, { lookAheadSeasons: 20 }, '2026-11-25T14:00:00.000Z');
    const third = await sweepAgain(register, '2026-11-26T12:00:00Z');
    const named = await listStandingChanges(register, third, 10);
    expect(named.length).toBeGreaterThan(0);
    for (const { causes } of named) expect(causes).toEqual(['other']);
  });
});
