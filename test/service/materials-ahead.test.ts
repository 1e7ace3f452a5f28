import { expect, it } from 'vitest';
import { materialsAhead } from '../../src/service/materials-ahead.ts';
import { importFiles } from '../register/made-up-register.ts';
import { madeUpVisit, storeVisits, visitingRegister } from './visiting-register.ts';

it('adds materials up anew as soon as a visit or the catalogue is another', async () => {
  const { register, remove } = await visitingRegister();
  try {
    await storeVisits(register, [madeUpVisit({ uid: 'A' })]);
    const ahead = () => materialsAhead(register, '2026-01-01', null);
    const before = await ahead();
    expect([before.visits, before.cost > 0]).toEqual([1, true]);
    expect(await ahead()).toBe(before);
    await importFiles(register, [
      { name: 'materials.csv', text: 'kind,name,unit,quantity_per_post,unit_cost\npost-swap,stake,piece,3,2\n' },
    ]);
    // three stakes for each of two posts, at 2 each
    expect((await ahead()).cost).toBe(12);
    await storeVisits(register, [madeUpVisit({ uid: 'A', state: 'cancelled' })]);
    expect((await ahead()).visits).toBe(0);
  } finally {
    await remove();
  }
});
