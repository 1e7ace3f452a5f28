import { expect, it } from 'vitest';
import { importCsv } from '../../src/register/csv/import-csv.ts';
import { listHeldNotices, releaseHeldNotices } from '../../src/register/held-notices.ts';
import { writeSettings } from '../../src/register/settings-store.ts';
import { composeNotices } from '../../src/service/compose-notices.ts';
import { runSweep } from '../../src/service/run-sweep.ts';
import { fenceRegister, JANUARY, manyFences, SENDER } from './fence-register.ts';

const after = (days: number) => () => JANUARY.plus({ days });
const old = { installedEarliest: '2005-04-15', installedLatest: '2005-04-15' };
const HEADER =
  'ref,site,owner,style,height_in,run_length_ft,post_spacing_ft,named_end,end_a,end_a_return_ft,end_b,end_b_return_ft,section,species,grade,treatment_class,installed,embedment_in,footing,footing_diameter_in';

const fencesCsv = (refs: readonly string[]): string => {
  const rest =
    'HERON,ANN,solid-board,72,80,8,street,return,16,return,16,4x4,southern-pine,no-2,above-ground-stock,2005-04-15,24,concrete,9';
  return `${HEADER}\n${refs.map((ref) => `${ref},${rest}`).join('\n')}\n`;
};

const load = async (register: Awaited<ReturnType<typeof fenceRegister>>, refs: readonly string[]) => {
  const report = await importCsv(register, [{ name: 'fences.csv', text: fencesCsv(refs) }], {
    acceptValid: false,
    dryRun: false,
    today: '2027-01-15',
    now: '2027-01-15T12:00:00.000Z',
  });
  expect(report.faults).toEqual([]);
  return report.fencesHeld;
};

it('holds the first notices of the fences of a large import, and of those alone', async () => {
  const register = await fenceRegister({ fences: manyFences(1, old) });
  await writeSettings(register.db, { largeImportFences: 3 }, '2027-01-15T12:00:00.000Z');
  // before anything was swept the rule of the first sweep holds, and no other
  expect(await load(register, ['N-1', 'N-2', 'N-3'])).toBe(0);
  await runSweep(register, { now: after(0) });
  await composeNotices(register, { now: after(0), sender: SENDER });
  expect(await listHeldNotices(register)).toEqual([]);
  expect(await load(register, ['S-1', 'S-2'])).toBe(0);
  expect(await load(register, ['L-1', 'L-2', 'L-3'])).toBe(3);
  // the same rows again bring nothing new
  expect(await load(register, ['L-1', 'L-2', 'L-3'])).toBe(0);
  await runSweep(register, { now: after(1) });
  const held = await listHeldNotices(register);
  expect(new Set(held.map(({ fenceRef }) => fenceRef))).toEqual(new Set(['L-1', 'L-2', 'L-3']));
  expect(new Set(held.map((notice) => notice.held))).toEqual(new Set(['large import']));
  expect(await composeNotices(register, { now: after(1), sender: SENDER })).toMatchObject({ mails: 2, failures: [] });
  const left = await register.db.selectFrom('large_import_fences').selectAll().execute();
  expect(left).toEqual([]);
  await releaseHeldNotices(register, {}, { at: '2027-01-17T12:00:00.000Z', covering: null });
  expect(await composeNotices(register, { now: after(2), sender: SENDER })).toMatchObject({ mails: 3 });
});
