import { expect, test } from 'vitest';
import { DEFAULT_SETTINGS, readSettings, writeSettings } from '../../src/register/settings-store.ts';
import { NOW, temporaryRegister } from './made-up-register.ts';

test('an empty register has the default settings', async () => {
  const { db } = await temporaryRegister();
  expect(await readSettings(db)).toEqual(DEFAULT_SETTINGS);
  expect(DEFAULT_SETTINGS).toMatchObject({ standingReturnPeriodYears: 300, lookAheadSeasons: 2, timeZone: 'UTC' });
});

test('what is set stays, what is not keeps its value', async () => {
  const { db } = await temporaryRegister();
  await writeSettings(db, { lookAheadSeasons: 3, timeZone: 'America/Denver' }, NOW);
  await writeSettings(db, { lookAheadSeasons: 4 }, NOW);
  expect(await readSettings(db)).toEqual({ ...DEFAULT_SETTINGS, lookAheadSeasons: 4, timeZone: 'America/Denver' });
  await writeSettings(db, {}, NOW);
  expect((await readSettings(db)).lookAheadSeasons).toBe(4);
});

test('a setting out of its range is refused and nothing is set', async () => {
  const { db } = await temporaryRegister();
  await expect(writeSettings(db, { lookAheadSeasons: 1, timeZone: '+05:00' }, NOW)).rejects.toThrow('IANA');
  await expect(writeSettings(db, { standingReturnPeriodYears: 5 }, NOW)).rejects.toThrow(
    'outside the allowed 10 to 3000',
  );
  expect(await readSettings(db)).toEqual(DEFAULT_SETTINGS);
});
