import { expect, it } from 'vitest';
import { exportCsv } from '../../src/register/csv/export-csv.ts';
import { loadFenceFacts } from '../../src/register/fence-facts-store.ts';
import { loadStoredStates } from '../../src/register/forecast-store.ts';
import { listRecords, readRecord, upsertRecords } from '../../src/register/record-store.ts';
import { changeCount } from '../../src/register/register-changes.ts';
import { runSweep } from '../../src/service/run-sweep.ts';
import { importFiles } from '../register/made-up-register.ts';
import { fenceRegister, JANUARY, manyFences } from './fence-register.ts';

const WRITTEN = '2027-01-15T00:00:00.000Z';
const REFS = ['F-000', 'F-001', 'F-002', 'F-003'];

/** Two fences at a site with a season of its own, two at one that names the Atlantic hurricane season. */
async function register() {
  const made = await fenceRegister({ fences: manyFences(4) });
  const { db } = made;
  const heron = await readRecord(db, 'sites', 'HERON');
  if (!heron) throw new Error('the register has no site');
  const inlet = {
    ...heron,
    ref: 'INLET',
    stormSeasonRef: 'atlantic-hurricane',
    seasonOpens: '01-01',
    seasonCloses: '12-31',
    seasonShare: 1,
  };
  await upsertRecords(db, 'sites', [inlet], WRITTEN);
  const moved = (await listRecords(db, 'fences')).filter(({ ref }) => ref >= 'F-002');
  await upsertRecords(
    db,
    'fences',
    moved.map((fence) => ({ ...fence, siteRef: 'INLET' })),
    WRITTEN,
  );
  return made;
}

it('recomputes just the fences of sites that name a storm season when that is edited by CSV', async () => {
  const made = await register();
  const sweep = (days: number) => runSweep(made, { now: () => JANUARY.plus({ days }) });
  const hashes = async () =>
    new Map([...(await loadStoredStates(made, REFS))].map(([ref, { inputHash }]) => [ref, inputHash]));
  expect(await sweep(0)).toMatchObject({ sweep: { computed: 4 } });
  const first = await hashes();
  const before = await changeCount(made.db);
  const text = await exportCsv(made, 'storm-seasons');
  const edited = text.replace(
    'Atlantic hurricane season,06-01,11-30,0.9',
    'Atlantic hurricane season,06-15,11-30,0.95',
  );
  expect(edited).not.toBe(text);
  const report = await importFiles(made, [{ name: 'storm-seasons.csv', text: edited }]);
  expect(report.changes).toEqual([
    { kind: 'storm-seasons', ref: 'atlantic-hurricane', change: 'changed', columns: ['opens', 'share'] },
  ]);
  expect(await changeCount(made.db)).toBe(before + 1);
  expect(await sweep(1)).toMatchObject({ sweep: { computed: 2, unchanged: 2 } });
  const second = await hashes();
  expect(REFS.filter((ref) => first.get(ref) !== second.get(ref))).toEqual(['F-002', 'F-003']);
  const facts = await loadFenceFacts(made, REFS);
  expect(facts.get('F-000')?.site.seasonWindow).toEqual({ opens: '06-01', closes: '11-30', share: 0.8 });
  expect(facts.get('F-003')?.site.seasonWindow).toEqual({ opens: '06-15', closes: '11-30', share: 0.95 });
});

it('recomputes nothing when a storm season gets another name, or one that no site names is edited', async () => {
  const made = await register();
  await runSweep(made, { now: () => JANUARY });
  const text = await exportCsv(made, 'storm-seasons');
  const edited = text.replace('Atlantic hurricane season', 'Hurricanes').replace('10-01,04-30,0.75', '10-15,04-30,0.7');
  const report = await importFiles(made, [{ name: 'storm-seasons.csv', text: edited }]);
  expect(report.changes.map(({ ref }) => ref)).toEqual(['atlantic-hurricane', 'noreaster']);
  expect(await runSweep(made, { now: () => JANUARY.plus({ days: 1 }) })).toMatchObject({
    sweep: { computed: 0, unchanged: 4 },
  });
});

it('recomputes nothing when a site takes from a storm season the very season that it had', async () => {
  const made = await fenceRegister({ fences: manyFences(2), site: { seasonShare: 0.9 } });
  await runSweep(made, { now: () => JANUARY });
  const text = await exportCsv(made, 'sites');
  const own = ',06-01,11-30,0.9,,';
  expect(text).toContain(own);
  const named = text.replace(own, ',,,,atlantic-hurricane,');
  const report = await importFiles(made, [{ name: 'sites.csv', text: named }]);
  expect(report.applied).toBe(true);
  expect(report.changes).toMatchObject([{ kind: 'sites', ref: 'HERON', change: 'changed' }]);
  expect(await runSweep(made, { now: () => JANUARY.plus({ days: 1 }) })).toMatchObject({
    sweep: { computed: 0, unchanged: 2 },
  });
});
