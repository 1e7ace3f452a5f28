import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { daySheetHtml } from '../../src/drawing/day-sheet-html.ts';
import { crewSheets } from '../../src/service/crew-sheets.ts';
import { englishLeft, ownWords } from '../web/spanish/english-left.ts';
import { madeUpVisit, storeVisits, visitingRegister } from './visiting-register.ts';

let sample: Awaited<ReturnType<typeof visitingRegister>>;
beforeAll(async () => {
  sample = await visitingRegister();
  await storeVisits(sample.register, [madeUpVisit({ uid: 'V-1' })]);
});
afterAll(() => sample.remove());

/** The sheets of the crew of Orla Finch and Tomas Reed, where they note these languages. */
async function sheetsWhere(orla: string, tomas: string) {
  const { db } = sample.register;
  for (const [ref, languages] of [
    ['m1', orla],
    ['m2', tomas],
  ] as const)
    await db.updateTable('crew_members').set({ languages }).where('ref', '=', ref).execute();
  const found = await crewSheets(sample.register, 'north', ['2027-01-11']);
  if (found.kind !== 'sheets') throw new Error(found.kind);
  return found;
}

describe('the language of a crew’s sheets', () => {
  it.each([
    ['es', 'es', 'es'],
    ['es', 'es en', 'es'],
    ['es', '', 'es'],
    ['es en', 'en es', 'en'],
    ['en', 'es', 'en'],
    ['en', 'es en', 'en'],
    ['', '', 'en'],
  ] as const)('where one reads %j and the other %j is %s', async (orla, tomas, language) => {
    expect((await sheetsWhere(orla, tomas)).language).toBe(language);
  });
});

it('is a sheet without English in Spanish, and another in English', async () => {
  const { sheets } = await sheetsWhere('es', 'es');
  const spanish = daySheetHtml(sheets, 'es');
  expect(spanish).toContain('<html lang="es">');
  expect(spanish).toContain('lunes 11 de enero de 2027');
  expect(spanish).toContain('cambio de postes, postes 2, 5');
  expect(englishLeft(spanish, await ownWords(sample.register))).toEqual([]);
  expect(englishLeft(daySheetHtml(sheets, 'en'), []).length).toBeGreaterThan(20);
});
