import { expect, it } from 'vitest';
import { SHIPPED_CATALOGUE } from '../../src/season/works-catalogue.ts';
import { loadCatalogue, loadCrews } from '../../src/service/season-register.ts';
import {
  faultLines,
  importFiles,
  SEASON_FILES,
  soundRegister,
  temporaryRegister,
} from '../register/made-up-register.ts';

it('has the catalogue that comes with the program and no crew where nothing is stored', async () => {
  const { db } = await temporaryRegister();
  expect(await loadCatalogue(db)).toEqual(SHIPPED_CATALOGUE);
  expect(await loadCrews(db)).toEqual([]);
});

it('lays stored lines and materials over the shipped catalogue, and leaves the other kinds alone', async () => {
  const register = await soundRegister();
  expect(faultLines(await importFiles(register, SEASON_FILES))).toEqual([]);
  const catalogue = await loadCatalogue(register.db);
  const { 'post-swap': swap, ...others } = catalogue;
  const { 'post-swap': shipped, ...shippedOthers } = SHIPPED_CATALOGUE;
  expect(others).toEqual(shippedOthers);
  expect(swap.personHours).toEqual({ fixed: shipped.personHours.fixed, perPost: 2.5 });
  expect(swap.rules).toEqual({ ...shipped.rules, cureDays: 10 });
  expect(swap.build.embedmentM).toBeCloseTo(1.0668, 10);
  expect(swap.source).toBe('invented');
  expect(swap.materials).toEqual([
    { name: '=heavy post', unit: 'piece', quantity: { fixed: 0, perPost: 1 }, unitCost: 31 },
    { name: 'gravel, washed', unit: 'bag', quantity: { fixed: 1, perPost: 2 }, unitCost: 6.5 },
  ]);
});

it('keeps the shipped materials of a kind of which only the line is stored, and the shipped line beside stored materials', async () => {
  const register = await soundRegister();
  await importFiles(register, [
    { name: 'catalogue.csv', text: 'kind,person_hours_per_post,source\nrebuild,4,invented\n' },
    { name: 'materials.csv', text: 'kind,name,unit,quantity_per_post,unit_cost\ninspect,chalk,piece,0.1,2\n' },
  ]);
  const catalogue = await loadCatalogue(register.db);
  expect(catalogue.rebuild.materials).toEqual(SHIPPED_CATALOGUE.rebuild.materials);
  expect(catalogue.rebuild.personHours.perPost).toBe(4);
  expect(catalogue.inspect).toEqual({
    ...SHIPPED_CATALOGUE.inspect,
    materials: [{ name: 'chalk', unit: 'piece', quantity: { fixed: 0, perPost: 0.1 }, unitCost: 2 }],
  });
});

it('gives each crew its people, days off, base and speed', async () => {
  const register = await soundRegister();
  await importFiles(register, SEASON_FILES);
  const [reed, salt] = await loadCrews(register.db);
  expect(reed).toMatchObject({ ref: 'reed', base: null, times: { members: [], daysOff: [], weatherReserve: 0 } });
  expect(salt).toMatchObject({ ref: 'salt', name: 'Salt crew', base: { latitude: 30.1, longitude: -90.9 } });
  expect(salt?.speedMps).toBeCloseTo(16.9875, 4);
  expect(salt?.times).toEqual({
    members: [
      {
        ref: 'fox',
        hoursPerWeek: 40,
        skills: ['licensed-applicator', 'inspector'],
        languages: ['en', 'es'],
        fromDay: null,
        toDay: null,
      },
      {
        ref: 'reyes',
        hoursPerWeek: 32,
        skills: [],
        languages: ['es'],
        fromDay: '2027-01-11',
        toDay: '2027-12-31',
      },
    ],
    daysOff: [
      { memberRef: 'fox', firstDay: '2027-05-03', lastDay: '2027-05-07' },
      { memberRef: null, firstDay: '2026-12-24', lastDay: '2027-01-03' },
    ],
    weatherReserve: 0.2,
  });
});
