import { expect, it } from 'vitest';
import {
  countStandings,
  forecastOf,
  listForecasts,
  loadStoredForecasts,
  loadStoredStates,
} from '../../src/register/forecast-store.ts';
import { listNoticesOfFence } from '../../src/register/notice-store.ts';
import { changedSinceSweep } from '../../src/register/register-changes.ts';
import { writeSettings } from '../../src/register/settings-store.ts';
import { newestSweep } from '../../src/register/sweep-store.ts';
import { runSweep } from '../../src/service/run-sweep.ts';
import { at } from '../service/fence-register.ts';
import { soundRegister } from './made-up-register.ts';

it('lists, counts and gives back what a sweep stored', async () => {
  const register = await soundRegister();
  await runSweep(register, { now: () => at('2027-01-15T12:00:00Z') });
  const all = await listForecasts(register, { limit: 10 });
  expect(all.map((each) => [each.fenceRef, each.siteName, each.units])).toEqual([
    ['F-1', 'Quillback Commons', 'us'],
    ['F-2', 'Quillback Commons', 'us'],
  ]);
  expect((await listForecasts(register, { limit: 1, afterRef: 'F-1' })).map((each) => each.fenceRef)).toEqual(['F-2']);
  const [first] = all;
  const alike = await listForecasts(register, {
    limit: 10,
    siteRef: 'quill',
    ...(first && { standing: first.standing }),
  });
  expect(alike.every((each) => each.standing === first?.standing)).toBe(true);
  expect(Object.values(await countStandings(register)).reduce((sum, count) => sum + count, 0)).toBe(2);

  const stored = (await loadStoredForecasts(register, ['F-1', 'F-9'])).get('F-1');
  expect(stored && forecastOf(stored).fenceRef).toBe('F-1');
  const state = (await loadStoredStates(register, ['F-1'])).get('F-1');
  expect({ ...state, detail: stored?.detail }).toEqual(stored);
  // its posts were swapped and sleeved: the last of these works names its build
  expect(stored?.generation).toBe('steel-sleeve W-4 of 2024-06-07');

  const sweep = await newestSweep(register);
  expect(sweep?.notices).toBe(
    (await listNoticesOfFence(register, 'F-1')).length + (await listNoticesOfFence(register, 'F-2')).length,
  );
});

it('knows that a record or a setting changed since a sweep, deletions too, whatever the clock says', async () => {
  const register = await soundRegister();
  const sweep = async (day: string) => {
    await runSweep(register, { now: () => at(day) });
    return (await newestSweep(register))?.id ?? 0;
  };
  const first = await sweep('2027-01-15T12:00:00Z');
  expect(await changedSinceSweep(register, first)).toBe(false);
  await register.db.deleteFrom('works').where('ref', '=', 'W-1').execute();
  expect(await changedSinceSweep(register, first)).toBe(true);
  const second = await sweep('2027-01-16T12:00:00Z');
  expect(await changedSinceSweep(register, second)).toBe(false);
  // written under a clock that was set back a year
  await writeSettings(register.db, { lookAheadSeasons: 3 }, '2026-01-16T12:00:00.000Z');
  expect(await changedSinceSweep(register, second)).toBe(true);
});
