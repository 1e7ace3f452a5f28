import { readdirSync, readFileSync } from 'node:fs';
import { beforeAll, describe, expect, test } from 'vitest';
import { INSPECTION_METHODS } from '../../src/forecast/evidence/inspection.ts';
import { STORM_RESULTS } from '../../src/forecast/evidence/storm-outcome.ts';
import type { FenceFacts } from '../../src/forecast/fence-facts.ts';
import { type FenceForecast, judgedGroup, seasonOne } from '../../src/forecast/fence-forecast.ts';
import { DEFAULT_SETTINGS, forecastFence } from '../../src/forecast/forecast-fence.ts';
import { seasonOneYear } from '../../src/forecast/season-calendar.ts';
import { languagesOf, skillsOf } from '../../src/register/crew-member-record.ts';
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
    const windows = facts.map((fence) => fence.site.seasonWindow);
    expect(windows.some(({ opens, closes }) => closes < opens)).toBe(true);
    const years = facts.map((fence) => Number(fence.installed.earliest.slice(0, 4)));
    expect(Math.min(...years)).toBeLessThanOrEqual(2002);
    expect(Math.max(...years)).toBe(2026);
  });

  test('has crews of three and two with both languages and one licensed applicator, days off and a catalogue of its own', async () => {
    const { db } = register;
    const members = await listRecords(db, 'crew-members');
    const size = ({ ref }: { readonly ref: string }) => members.filter(({ crewRef }) => crewRef === ref).length;
    expect((await listRecords(db, 'crews')).map(size)).toEqual([3, 2, 2]);
    expect(new Set(members.flatMap(languagesOf))).toEqual(new Set(['en', 'es']));
    expect(members.flatMap(skillsOf).filter((skill) => skill === 'licensed-applicator')).toHaveLength(1);
    const daysOff = await listRecords(db, 'days-off');
    expect(new Set(daysOff.map(({ memberRef }) => memberRef === null))).toEqual(new Set([true, false]));
    expect((await listRecords(db, 'catalogue')).map(({ kind }) => kind)).toEqual(['inspect', 'post-swap']);
    expect(new Set((await listRecords(db, 'materials')).map(({ kind }) => kind))).toEqual(new Set(['post-swap']));
  });

  test('places every site, names a storm season where one fits and has frozen ground in the cold', async () => {
    const sites = await listRecords(register.db, 'sites');
    expect(sites.every(({ latitude, longitude }) => latitude !== null && longitude !== null)).toBe(true);
    expect(new Set(sites.map(({ stormSeasonRef }) => stormSeasonRef))).toEqual(
      new Set(['atlantic-hurricane', 'plains-convective', 'pacific-windstorm', null]),
    );
    expect(sites.filter(({ frozenFrom }) => frozenFrom !== null).map(({ ref }) => ref)).toEqual([
      'maple-narrows',
      'quarry-hill',
      'windrow-creek',
    ]);
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

  test('has inspections by every method, with every kind of finding, on eight to twelve fences', () => {
    const inspected = facts.filter(({ inspections }) => inspections.length > 0);
    const inspections = inspected.flatMap((fence) => fence.inspections);
    const readings = inspections.flatMap((inspection) => inspection.readings);
    expect(inspected.length).toBeGreaterThanOrEqual(8);
    expect(inspected.length).toBeLessThanOrEqual(12);
    expect(new Set(inspections.map(({ method }) => method))).toEqual(new Set(INSPECTION_METHODS));
    expect(new Set(readings.map(({ groundline }) => groundline?.kind ?? 'none'))).toEqual(
      new Set(['depth', 'residual-width', 'residual-circumference', 'sound-to', 'soft-to', 'broken', 'none']),
    );
    expect(readings.some(({ cavityMm }) => cavityMm !== null && cavityMm > 0)).toBe(true);
    expect(readings.some(({ collarCracked }) => collarCracked === true)).toBe(true);
    expect(readings.some(({ trimmerCutMm }) => trimmerCutMm !== null && trimmerCutMm > 0)).toBe(true);
    expect(readings.some(({ railConnection }) => railConnection !== null && railConnection < 1)).toBe(true);
    expect(readings.some(({ groundline, closedOff }) => groundline?.kind === 'broken' && closedOff)).toBe(true);
  });

  test('has two storms on two sites with posts that stood, leaned and snapped, repaired afterwards where they snapped', () => {
    const hit = facts.filter(({ outcomes }) => outcomes.length > 0);
    expect(hit.length).toBeGreaterThanOrEqual(8);
    const outcomes = hit.flatMap((fence) => fence.outcomes);
    expect(new Set(outcomes.map(({ storm }) => storm)).size).toBe(2);
    expect(new Set(outcomes.map(({ result }) => result))).toEqual(new Set(STORM_RESULTS));
    for (const fence of hit) {
      for (const { result, posts, day } of fence.outcomes) {
        if (result !== 'snapped') continue;
        const mended = fence.works.some(
          (works) => works.kind === 'post-swap' && works.day >= day && String(works.posts) === String(posts),
        );
        expect(mended, fence.ref).toBe(true);
      }
    }
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

test('one fence of the demo has readings that disagree with the model, and says so', () => {
  const fence = facts.find(({ ref }) => ref === 'CT-21');
  if (!fence) throw new Error('CT-21 is missing');
  const seen = (inspections: FenceFacts['inspections']): FenceForecast =>
    forecastFence({ ...fence, inspections }, seasonOneYear(fence.site.seasonWindow, FIRST_DAY), DEFAULT_SETTINGS);
  const [without, withReadings] = [seen([]), seen(fence.inspections)];
  const snapMps = (forecast: FenceForecast): number => judgedGroup(seasonOne(forecast)).snapMps.p50;
  expect(snapMps(withReadings)).toBeLessThan(0.7 * snapMps(without));
  expect(withReadings.remarks.length).toBeGreaterThan(without.remarks.length);
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
