import { readdirSync, readFileSync } from 'node:fs';
import { beforeAll, describe, expect, test } from 'vitest';
import type { FenceFacts } from '../../src/forecast/fence-facts.ts';
import type { FenceForecast } from '../../src/forecast/fence-forecast.ts';
import { DEFAULT_SETTINGS, forecastFence } from '../../src/forecast/forecast-fence.ts';
import { seasonOneYear } from '../../src/forecast/season-calendar.ts';
import { exportCsv } from '../../src/register/csv/export-csv.ts';
import { importCsv } from '../../src/register/csv/import-csv.ts';
import { type ImportReport, remarkText } from '../../src/register/csv/import-report.ts';
import { openRegister, type Register } from '../../src/register/database.ts';
import { listFenceRefs, loadFenceFacts } from '../../src/register/fence-facts-store.ts';
import { packagePath } from '../../src/register/package-path.ts';
import { listRecords, RECORD_KINDS } from '../../src/register/record-store.ts';

/** The first day on which the demo can be loaded: its newest record is a little older. */
const FIRST_DAY = '2026-11-25';

let register: Register;
let report: ImportReport;
let facts: readonly FenceFacts[];

beforeAll(async () => {
  const folder = packagePath('seeds-demo');
  const files = readdirSync(folder)
    .filter((name) => name.endsWith('.csv'))
    .map((name) => ({ name, text: readFileSync(`${folder}/${name}`, 'utf8') }));
  register = await openRegister(':memory:');
  const options = { acceptValid: false, dryRun: false, today: FIRST_DAY, now: `${FIRST_DAY}T00:00:00.000Z` };
  report = await importCsv(register, files, options);
  const refs = (await listFenceRefs(register, null, 1000)).map(({ ref }) => ref);
  facts = [...(await loadFenceFacts(register, refs)).values()];
  return () => register.close();
});

const forecastsOn = (day: string): readonly FenceForecast[] =>
  facts.map((fence) => forecastFence(fence, seasonOneYear(fence.site.seasonWindow, day), DEFAULT_SETTINGS));

describe('the demo', () => {
  test('is imported without a fault or a doubt', () => {
    expect(report.faults.map(remarkText)).toEqual([]);
    expect(report.warnings.map(remarkText)).toEqual([]);
    expect(report.applied).toBe(true);
  });

  test('holds about sixty fences of five owners of three kinds on eight sites', async () => {
    const owners = await listRecords(register.db, 'owners');
    expect(facts.length).toBeGreaterThanOrEqual(55);
    expect(facts.length).toBeLessThanOrEqual(65);
    expect(await listRecords(register.db, 'sites')).toHaveLength(8);
    expect(owners).toHaveLength(5);
    expect(new Set(owners.map(({ kind }) => kind))).toEqual(new Set(['person', 'association', 'company']));
    expect(new Set(owners.map(({ channel }) => channel))).toEqual(new Set(['mail', 'letter']));
    expect(new Set(owners.map(({ language }) => language))).toEqual(new Set(['en', 'es']));
  });

  test('invents its people and places: reserved mail domains, no site in Florida or Wyoming, every source says so', async () => {
    for (const { email } of await listRecords(register.db, 'owners')) {
      if (email !== null) expect(email).toMatch(/[@.]example\.(org|net|com)$/);
    }
    for (const { place, windSource } of await listRecords(register.db, 'sites')) {
      expect(place).not.toMatch(/Florida|Wyoming/);
      expect(windSource).toMatch(/invented/);
    }
    for (const { source } of await listRecords(register.db, 'climate-zones')) expect(source).toMatch(/^invented/);
  });

  test('spreads over climates, wind bases, units, a season over the year end and ages to 25 years', async () => {
    const sites = await listRecords(register.db, 'sites');
    expect(new Set(sites.map((site) => site.climateZoneRef)).size).toBeGreaterThanOrEqual(4);
    expect(new Set(sites.map((site) => site.windBasis))).toEqual(
      new Set(['ultimate', 'nominal', 'asd', 'fastest-mile']),
    );
    expect(new Set(sites.map((site) => site.windKind))).toEqual(new Set(['map', 'local-rule']));
    expect(new Set(sites.map((site) => site.units))).toEqual(new Set(['us', 'metric']));
    expect(sites.some((site) => site.seasonCloses < site.seasonOpens)).toBe(true);
    const years = facts.map((fence) => Number(fence.installed.earliest.slice(0, 4)));
    expect(Math.min(...years)).toBeLessThanOrEqual(2002);
    expect(Math.max(...years)).toBe(2026);
  });

  test('has a shared corner, posts of their own, unknowns and works of every kind', () => {
    const posts = facts.flatMap((fence) => fence.posts);
    expect(posts.some((post) => post.sharedRun !== null)).toBe(true);
    expect(posts.some((post) => post.wood !== null)).toBe(true);
    expect(facts.some((fence) => fence.ground.embedmentM === null)).toBe(true);
    expect(facts.some((fence) => fence.wood.treatmentClass === 'unknown-treated')).toBe(true);
    expect(facts.some((fence) => fence.run.ends.some((end) => end.kind === 'unknown'))).toBe(true);
    expect(new Set(facts.flatMap((fence) => fence.works.map((works) => works.kind))).size).toBe(9);
  });

  test('exports and imports again without a change', async () => {
    const files = [];
    for (const kind of RECORD_KINDS) files.push({ name: `${kind}.csv`, text: await exportCsv(register, kind) });
    const options = { acceptValid: false, dryRun: true, today: FIRST_DAY, now: `${FIRST_DAY}T00:00:00.000Z` };
    const again = await importCsv(register, files, options);
    expect(again.faults.map(remarkText)).toEqual([]);
    expect(again.changes).toEqual([]);
  });
});

describe.each([FIRST_DAY, '2027-12-01', '2028-12-01'])('swept on %s, the demo', (day) => {
  let forecasts: readonly FenceForecast[];
  beforeAll(() => {
    forecasts = forecastsOn(day);
  });

  test('shows every standing at least twice', () => {
    for (const standing of ['clear', 'closing', 'short', 'short from new'] as const) {
      expect(forecasts.filter((forecast) => forecast.standing === standing).length, standing).toBeGreaterThanOrEqual(2);
    }
  });

  test('has crossed every mark at least twice', () => {
    for (const mark of ['two thirds', 'once in 50', 'once in 25', 'once in 10'] as const) {
      const crossed = forecasts.filter((forecast) => forecast.marksCrossed.some((each) => each.mark === mark));
      expect(crossed.length, mark).toBeGreaterThanOrEqual(2);
    }
  });

  test('shows ends that are short where the line posts are not', () => {
    const endsShort = forecasts.filter(
      ({ standing, endsStanding }) => standing === 'clear' && endsStanding === 'short',
    );
    expect(endsShort.length).toBeGreaterThanOrEqual(2);
  });

  test('shows fences that snap before they lean and fences that lean first', () => {
    const turnovers = forecasts.map((forecast) => forecast.turnover);
    expect(turnovers.filter((turnover) => turnover === null).length).toBeGreaterThan(0);
    expect(turnovers.filter((turnover) => turnover !== null).length).toBeGreaterThan(0);
  });
});
