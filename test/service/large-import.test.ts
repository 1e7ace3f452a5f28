import { expect, it } from 'vitest';
import { importCsv } from '../../src/register/csv/import-csv.ts';
import { listHeldNotices, releaseHeldNotices } from '../../src/register/held-notices.ts';
import { listOutbox } from '../../src/register/outbox.ts';
import { writeSettings } from '../../src/register/settings-store.ts';
import { composeNotices } from '../../src/service/compose-notices.ts';
import { runSweep } from '../../src/service/run-sweep.ts';
import { changeFences, fenceRegister, JANUARY, manyFences, SENDER } from './fence-register.ts';

const after = (days: number) => () => JANUARY.plus({ days });
const old = { installedEarliest: '2005-04-15', installedLatest: '2005-04-15' };
const young = { installedEarliest: '2026-04-15', installedLatest: '2026-04-15' };
const HEADER =
  'ref,site,owner,style,height_in,run_length_ft,post_spacing_ft,named_end,end_a,end_a_return_ft,end_b,end_b_return_ft,section,species,grade,treatment_class,installed,embedment_in,footing,footing_diameter_in';

const fencesCsv = (refs: readonly string[], owner: string): string => {
  const rest =
    'solid-board,72,80,8,street,return,16,return,16,4x4,southern-pine,no-2,above-ground-stock,2005-04-15,24,concrete,9';
  return `${HEADER}\n${refs.map((ref) => `${ref},HERON,${owner},${rest}`).join('\n')}\n`;
};

const load = async (register: Awaited<ReturnType<typeof fenceRegister>>, refs: readonly string[], owner = 'ANN') => {
  const report = await importCsv(register, [{ name: 'fences.csv', text: fencesCsv(refs, owner) }], {
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

const PEOPLE = [{}, { ref: 'BEA', name: 'Bea Stone', email: 'bea@example.net' }];
const numbered = (letter: string, count: number) =>
  Array.from({ length: count }, (_, index) => `${letter}-${index + 1}`);
type Swept = Awaited<ReturnType<typeof fenceRegister>>;
const sweepAndWrite = async (register: Swept, days: number) => {
  await runSweep(register, { now: after(days) });
  return composeNotices(register, { now: after(days), sender: SENDER });
};
const heldOf = async (register: Swept, letter: string) => {
  const held = (await listHeldNotices(register)).filter(({ fenceRef }) => fenceRef.startsWith(letter));
  return [new Set(held.map(({ fenceRef }) => fenceRef)).size, [...new Set(held.map((notice) => notice.held))]];
};
const releaseAll = (register: Swept) =>
  releaseHeldNotices(register, {}, { at: '2027-01-17T12:00:00.000Z', covering: null });

it('takes the sweep that first finds fences for the first, not one of an empty register', async () => {
  const register = await fenceRegister({ owners: PEOPLE, fences: [], holdFirstSweep: 'yes' });
  expect(await sweepAndWrite(register, 0)).toMatchObject({ mails: 0 });
  expect(await load(register, numbered('N', 20))).toBe(0);
  expect(await sweepAndWrite(register, 1)).toEqual({ mails: 0, letters: 0, failures: [] });
  expect(await heldOf(register, 'N')).toEqual([20, ['first sweep']]);
  expect(await listOutbox(register, { limit: 9 })).toEqual([]);
  // corrected rows of another owner, brought in while the first notices wait
  expect(await load(register, numbered('C', 2), 'BEA')).toBe(0);
  expect(await sweepAndWrite(register, 2)).toMatchObject({ mails: 0 });
  expect(await heldOf(register, 'C')).toEqual([2, ['first sweep']]);
  await releaseAll(register);
  await load(register, numbered('D', 2), 'BEA');
  await sweepAndWrite(register, 3);
  expect(await listHeldNotices(register)).toEqual([]);
});

it('holds new fences while first notices of a large import wait, and those alone', async () => {
  const register = await fenceRegister({ owners: PEOPLE, fences: manyFences(1, young) });
  await writeSettings(register.db, { largeImportFences: 3 }, '2027-01-15T12:00:00.000Z');
  await sweepAndWrite(register, 0);
  expect(await load(register, numbered('L', 3))).toBe(3);
  // corrected rows before the sweep
  expect(await load(register, ['B-1'], 'BEA')).toBe(1);
  await sweepAndWrite(register, 1);
  expect(await load(register, ['C-1'], 'BEA')).toBe(0);
  await changeFences(register, [{ ref: 'F-000', ...old }]);
  // what it holds does not depend on the chunk
  await runSweep(register, { now: after(2), chunkSize: 1 });
  expect(await composeNotices(register, { now: after(2), sender: SENDER })).toMatchObject({ mails: 1 });
  expect(await heldOf(register, 'B')).toEqual([1, ['large import']]);
  expect(await heldOf(register, 'C')).toEqual([1, ['large import']]);
  expect(await heldOf(register, 'F')).toEqual([0, []]);
  await releaseAll(register);
  await load(register, ['D-1'], 'BEA');
  await sweepAndWrite(register, 3);
  expect(await listHeldNotices(register)).toEqual([]);
});
