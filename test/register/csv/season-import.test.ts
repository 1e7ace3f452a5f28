import { describe, expect, test } from 'vitest';
import { exportCsv } from '../../../src/register/csv/export-csv.ts';
import type { Register } from '../../../src/register/database.ts';
import { listRecords, RECORD_KINDS, readRecord } from '../../../src/register/record-store.ts';
import { SHIPPED_CATALOGUE } from '../../../src/season/works-catalogue.ts';
import {
  faultLines,
  importFiles,
  rowCsv,
  SEASON_FILES,
  SITES,
  soundRegister,
  temporaryRegister,
} from '../made-up-register.ts';

const seasonRegister = async (): Promise<Register> => {
  const register = await soundRegister();
  expect(faultLines(await importFiles(register, SEASON_FILES))).toEqual([]);
  return register;
};

const importOne = async (register: Register, kind: string, cells: Readonly<Record<string, string>>) =>
  importFiles(register, [{ name: `${kind}.csv`, text: rowCsv(cells) }]);

describe('records of the season plan', () => {
  test.each(['us', 'metric', 'site'] as const)('come back byte for byte from an export in %s units', async (units) => {
    const source = await seasonRegister();
    const files = [];
    for (const kind of RECORD_KINDS)
      files.push({ name: `${kind}.csv`, text: await exportCsv(source, kind, { units }) });
    expect((await importFiles(source, files)).changes).toEqual([]);
    const target = await temporaryRegister();
    expect(faultLines(await importFiles(target, files))).toEqual([]);
    for (const { name, text } of files) {
      const kind = RECORD_KINDS.find((each) => `${each}.csv` === name)!;
      expect(await exportCsv(target, kind, { units })).toBe(text);
      expect(text.trimEnd().split('\n').length, kind).toBe(
        (await listRecords(target.db, kind)).length + 1 + linesMore(kind),
      );
    }
  });

  test('are told apart by their columns, whatever their files are called', async () => {
    const register = await soundRegister();
    const files = SEASON_FILES.map(({ text }, index) => ({ name: `table ${index}.csv`, text }));
    const report = await importFiles(register, files);
    expect(faultLines(report)).toEqual([]);
    const created = RECORD_KINDS.filter((kind) => report.counts[kind].created > 0);
    expect(created).toEqual(['storm-seasons', 'catalogue', 'materials', 'crews', 'crew-members', 'days-off']);
  });

  test('a line of the catalogue takes what it leaves empty from the one that comes with the program', async () => {
    const { db } = await seasonRegister();
    const [line] = await listRecords(db, 'catalogue');
    const shipped = SHIPPED_CATALOGUE['post-swap'];
    expect(line).toMatchObject({
      kind: 'post-swap',
      personHoursFixed: shipped.personHours.fixed,
      personHoursPerPost: 2.5,
      pricePerPost: 210,
      cureDays: 10,
      locateNoticeDays: shipped.rules.locateNoticeDays,
      notOnFrozenGround: true,
      permit: false,
      embedmentM: 1.0668,
      footingDiameterM: shipped.build.footingDiameterM,
      treatmentClass: shipped.build.treatmentClass,
    });
  });

  test('are named in the report: the catalogue by kind, materials by kind and name', async () => {
    const report = await importFiles(await soundRegister(), SEASON_FILES);
    const named = (kind: string) => report.changes.filter((change) => change.kind === kind).map(({ ref }) => ref);
    expect(named('catalogue')).toEqual(['post-swap']);
    expect(named('materials')).toEqual(['post-swap =heavy post', 'post-swap gravel, washed']);
  });

  test('a kind and a material are taken once a file', async () => {
    const register = await soundRegister();
    const line = 'liner,0.2,invented\n';
    const material = 'liner,liner sleeve,piece,1,14\n';
    const report = await importFiles(register, [
      { name: 'catalogue.csv', text: `kind,person_hours_per_post,source\n${line}${line}` },
      { name: 'materials.csv', text: `kind,name,unit,quantity_per_post,unit_cost\n${material}${material}` },
    ]);
    expect(faultLines(report)).toEqual([
      'catalogue.csv line 3, kind "liner": the kind is already on line 2 of catalogue.csv; keep one of the rows',
      'materials.csv line 3, name "liner sleeve": the name is already on line 2 of materials.csv; keep one of the rows',
    ]);
  });

  test('people and days off of a refused crew are left out with it', async () => {
    const register = await soundRegister();
    const files = SEASON_FILES.map(({ name, text }) => ({
      name,
      text: text.replace('salt,Salt crew,30.1', 'salt,Salt crew,'),
    }));
    expect(faultLines(await importFiles(register, files))).toEqual([
      'crews.csv line 2, base_latitude: missing; a base has a latitude and a longitude',

      'crew-members.csv line 2, crew "salt": 2 crew members of crew salt are left out because line 2 of crews.csv was refused; correct that row',

      'days-off.csv line 2, crew "salt": 2 rows of days off of crew salt are left out because line 2 of crews.csv was refused; correct that row',
    ]);
  });
});

const linesMore = (kind: string): number => (kind === 'owners' ? 1 : 0);

describe('refused with the way out', () => {
  test.each([
    [
      'a member of an unknown crew',
      'crew-members',
      { ref: 'm', crew: 'slat', name: 'Ada Finch', hours_per_week: '40' },
      'line 2, crew "slat": no crew of that ref, neither in the register nor among the rows taken; did you mean salt?',
    ],
    [
      'a skill that nobody asks for',
      'crew-members',
      { ref: 'm', crew: 'salt', name: 'Ada Finch', hours_per_week: '40', skills: 'welder' },
      'line 2, skills "welder": not a list of skills; write any of licensed-applicator, inspector, parted by blanks',
    ],
    [
      'a member who leaves before coming',
      'crew-members',
      { ref: 'm', crew: 'salt', name: 'Ada Finch', hours_per_week: '40', from_day: '2027-03-01', to_day: '2027-02-01' },
      'line 2, to_day "2027-02-01": before the first day; write the later day last',
    ],
    [
      'a member who changes crews beside days off in the old one',
      'crew-members',
      { ref: 'fox', crew: 'reed', name: 'Nell Fox', hours_per_week: '40' },
      'line 2, crew "reed": does not fit days off fox-may in the register, which have fox in crew salt; change them in the same import',
    ],
    [
      'days off of somebody of another crew',
      'days-off',
      { ref: 'd', crew: 'reed', member: 'fox', first_day: '2027-03-01', last_day: '2027-03-01' },
      'line 2, member "fox": is in crew salt, not in reed; correct the crew or the member',
    ],
    [
      'days off of an unknown member',
      'days-off',
      { ref: 'd', crew: 'reed', member: 'fix', first_day: '2027-03-01', last_day: '2027-03-01' },
      'line 2, member "fix": no crew member of that ref, neither in the register nor among the rows taken; did you mean fox?',
    ],
    [
      'days off that end before they begin',
      'days-off',
      { ref: 'd', crew: 'reed', first_day: '2027-03-02', last_day: '2027-03-01' },
      'line 2, last_day "2027-03-01": before the first day; write the later day last',
    ],
    [
      'a crew faster than any truck',
      'crews',
      { ref: 'c', name: 'Crew', speed_mph: '300' },
      'line 2, speed_mph "300": outside the allowed 2.237 to 111.8 mph; check the number and the unit in the column\'s name',
    ],
    [
      'a line of the catalogue of an unknown kind',
      'catalogue',
      { kind: 'paint', person_hours_per_post: '1', source: 'invented' },
      'line 2, kind "paint": not one of the words it can be; write one of inspect, groundline-treatment, liner, drainage, trimmer-guard, footing-reset, post-swap, steel-sleeve, added-posts, rebuild',
    ],
    [
      'a material without a cost',
      'materials',
      { kind: 'liner', name: 'sleeve', unit: 'piece', unit_cost: '' },
      'line 2, unit_cost: missing; fill it in',
    ],
    [
      'a storm season of one day',
      'storm-seasons',
      { ref: 's', name: 'Day', opens: '06-01', closes: '06-01', share: '0.5', source: 'invented' },
      'line 2, closes "06-01": a season of one day; close it after the day it opens',
    ],
  ])('%s', async (_name, kind, cells, line) => {
    const register = await seasonRegister();
    expect(faultLines(await importOne(register, kind, cells))).toEqual([`${kind}.csv ${line}`]);
  });
});

describe('a site', () => {
  const lines = SITES.trim().split('\n');
  const siteCells = (cells: Readonly<Record<string, string>>): string =>
    `${lines[0]},${Object.keys(cells).join(',')}\n${lines[1]},${Object.values(cells).join(',')}\n`;
  const imported = async (register: Register, cells: Readonly<Record<string, string>>) =>
    faultLines(await importFiles(register, [{ name: 'sites.csv', text: siteCells(cells) }]));

  test('takes its season from a storm season and leaves its own empty, also where it had one before', async () => {
    const register = await soundRegister();
    const own = { season_opens: '06-01', season_closes: '11-30', season_share: '0.85' };
    expect(await imported(register, own)).toEqual([]);
    expect(await imported(register, { storm_season: 'noreaster' })).toEqual([]);
    expect(await readRecord(register.db, 'sites', 'quill')).toMatchObject({
      stormSeasonRef: 'noreaster',
      seasonOpens: '01-01',
      seasonCloses: '12-31',
      seasonShare: 1,
    });
    expect(await exportCsv(register, 'sites')).toMatch(/,,,,noreaster,/);
    expect(await imported(register, { storm_season: '', ...own })).toEqual([]);
    expect(await readRecord(register.db, 'sites', 'quill')).toMatchObject({ stormSeasonRef: null, seasonShare: 0.85 });
  });

  test.each([
    [
      'with a season of its own beside a storm season',
      { storm_season: 'noreaster', season_share: '0.5' },
      'line 2, season_share "0.5": the site takes its season from storm season noreaster; leave its own days and share empty, or storm_season',
    ],
    [
      'of an unknown storm season',
      { storm_season: 'noreastr' },
      'line 2, storm_season "noreastr": no storm season of that ref, neither in the register nor among the rows taken; did you mean noreaster?',
    ],
    [
      'with a latitude alone',
      { latitude: '30', longitude: '' },
      'line 2, longitude: missing; a place has a latitude and a longitude',
    ],
    [
      'beyond the pole',
      { latitude: '95', longitude: '-90' },
      'line 2, latitude "95": outside the allowed -90 to 90; correct it',
    ],
    [
      'with ground that never thaws',
      { frozen_from: '12-01', frozen_to: '' },
      'line 2, frozen_to: missing; frozen ground has a first and a last day',
    ],
  ])('is refused %s', async (_name, cells, line) => {
    expect(await imported(await soundRegister(), cells)).toEqual([`sites.csv ${line}`]);
  });

  test('is refused a season of its own while the register has it in a storm season', async () => {
    const register = await soundRegister();
    await imported(register, { storm_season: 'noreaster' });
    const own = { season_opens: '06-01', season_closes: '11-30', season_share: '0.85' };
    expect(await imported(register, own)).toEqual([
      'sites.csv line 2, season_opens "06-01": the site takes its season from storm season noreaster; leave its own days and share empty, or storm_season',
    ]);
  });

  test('keeps its place and its frozen ground', async () => {
    const register = await soundRegister();
    const cells = { latitude: '44.68', longitude: '-85.91', frozen_from: '12-10', frozen_to: '03-25' };
    expect(await imported(register, cells)).toEqual([]);
    expect(await readRecord(register.db, 'sites', 'quill')).toMatchObject({
      latitude: 44.68,
      longitude: -85.91,
      frozenFrom: '12-10',
      frozenTo: '03-25',
    });
  });
});
