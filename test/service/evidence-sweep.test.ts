import { expect, it } from 'vitest';
import { loadStoredStates } from '../../src/register/forecast-store.ts';
import { upsertRecords } from '../../src/register/record-store.ts';
import { runSweep } from '../../src/service/run-sweep.ts';
import { fenceRegister, JANUARY, manyFences } from './fence-register.ts';

const WRITTEN = '2027-01-15T00:00:00.000Z';
const INSPECTION = {
  ref: 'I-1',
  fenceRef: 'F-001',
  day: '2026-10-02',
  inspector: 'Nell Fox',
  qualification: '',
  method: 'awl-or-probe',
  instrument: '',
  notes: '',
} as const;
const READING = {
  inspectionRef: 'I-1',
  post: 3,
  groundlineKind: 'depth',
  groundlineMm: 6,
  cavityMm: null,
  leanDegrees: null,
  collarCracked: null,
  railConnection: null,
  trimmerCutMm: null,
  closedOff: false,
  sure: false,
  notes: '',
} as const;
const OUTCOME = {
  ref: 'O-1',
  storm: 'Gale',
  fenceRef: 'F-002',
  day: '2026-10-02',
  gustMps: 25,
  gustSpread: 0.1,
  posts: 'all',
  result: 'stood',
  gustSource: '',
  reportedBy: 'Nell Fox',
  notes: '',
} as const;

it('recomputes only the fence that was inspected, read anew or hit by a storm', async () => {
  const register = await fenceRegister({ fences: manyFences(4) });
  const { db } = register;
  const sweep = (days: number) => runSweep(register, { now: () => JANUARY.plus({ days }) });
  const hashes = async () =>
    new Map(
      [...(await loadStoredStates(register, ['F-000', 'F-001', 'F-002', 'F-003']))].map(([ref, each]) => [
        ref,
        each.inputHash,
      ]),
    );
  const changed = (a: ReadonlyMap<string, string>, b: ReadonlyMap<string, string>) =>
    [...b].filter(([ref, hash]) => a.get(ref) !== hash).map(([ref]) => ref);
  await sweep(0);
  const first = await hashes();
  await upsertRecords(db, 'inspections', [INSPECTION], WRITTEN);
  await upsertRecords(db, 'readings', [READING], WRITTEN);
  expect(await sweep(1)).toMatchObject({ sweep: { computed: 1, unchanged: 3 } });
  const second = await hashes();
  expect(changed(first, second)).toEqual(['F-001']);
  await upsertRecords(db, 'readings', [{ ...READING, groundlineMm: 7 }], WRITTEN);
  await upsertRecords(db, 'outcomes', [OUTCOME], WRITTEN);
  expect(await sweep(2)).toMatchObject({ sweep: { computed: 2, unchanged: 2 } });
  const third = await hashes();
  expect(changed(second, third)).toEqual(['F-001', 'F-002']);
  await upsertRecords(db, 'inspections', [{ ...INSPECTION, inspector: 'Tom Reed' }], WRITTEN);
  expect(await sweep(3)).toMatchObject({ sweep: { computed: 0, unchanged: 4 } });
});

it('counts every change of evidence, so that a restart knows that the register changed', async () => {
  const { db } = await fenceRegister({ fences: manyFences(3) });
  const count = async () => (await db.selectFrom('register_changes').select('count').executeTakeFirstOrThrow()).count;
  const before = await count();
  await upsertRecords(db, 'inspections', [INSPECTION], WRITTEN);
  await upsertRecords(db, 'readings', [READING], WRITTEN);
  await upsertRecords(db, 'outcomes', [OUTCOME], WRITTEN);
  await db.deleteFrom('storm_outcomes').execute();
  expect(await count()).toBe(before + 4);
});
