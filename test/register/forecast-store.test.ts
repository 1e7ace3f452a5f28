import { expect, it } from 'vitest';
import {
  countStandings,
  forecastOf,
  listForecasts,
  loadStoredForecasts,
  loadStoredStates,
} from '../../src/register/forecast-store.ts';
import { listNoticesOfFence } from '../../src/register/notice-store.ts';
import { lastRegisterChange } from '../../src/register/register-changes.ts';
import { listSweeps } from '../../src/register/sweep-store.ts';
import { runSweep } from '../../src/service/run-sweep.ts';
import { at } from '../service/fence-register.ts';
import { NOW, soundRegister } from './made-up-register.ts';

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

  const [sweep] = await listSweeps(register, 1);
  expect(sweep?.notices).toBe(
    (await listNoticesOfFence(register, 'F-1')).length + (await listNoticesOfFence(register, 'F-2')).length,
  );
});

it('knows when a record or a setting last changed', async () => {
  const register = await soundRegister();
  expect(await lastRegisterChange(register)).toBe(NOW);
  await register.db
    .updateTable('works')
    .set({ updated_at: '2030-01-01T00:00:00.000Z' })
    .where('ref', '=', 'W-1')
    .execute();
  expect(await lastRegisterChange(register)).toBe('2030-01-01T00:00:00.000Z');
});
