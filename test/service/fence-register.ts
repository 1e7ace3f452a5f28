import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { DateTime } from 'luxon';
import { onTestFinished } from 'vitest';
import type { FenceFacts, ForecastSettings } from '../../src/forecast/fence-facts.ts';
import type { FenceForecast } from '../../src/forecast/fence-forecast.ts';
import { forecastFence } from '../../src/forecast/forecast-fence.ts';
import type { Register } from '../../src/register/database.ts';
import { openRegister } from '../../src/register/database.ts';
import type { FenceRecord } from '../../src/register/fence-record.ts';
import type { OwnerRecord } from '../../src/register/owner-record.ts';
import { upsertRecords } from '../../src/register/record-store.ts';
import { writeSettings } from '../../src/register/settings-store.ts';
import type { SiteRecord } from '../../src/register/site-record.ts';

const MPH = 0.44704;
const FT = 0.3048;

export { JANUARY } from './fence-register-moment.ts';
export { SENDER } from './sender.ts';

const WRITTEN = '2020-01-01T00:00:00.000Z';

/** A fixed instant in UTC. */
export function at(iso: string): DateTime {
  return DateTime.fromISO(iso, { zone: 'utc' });
}

/** A folder that goes when the test is over. */
export function temporaryFolder(): string {
  const folder = mkdtempSync(join(tmpdir(), 'stormpale-'));
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
  return folder;
}

const OWNER: OwnerRecord = {
  ref: 'ANN',
  name: 'Ann Tidewell',
  kind: 'person',
  channel: 'mail',
  email: 'ann@example.net',
  postalAddress: null,
  language: 'en',
  enrolled: true,
};

const SITE: SiteRecord = {
  ref: 'HERON',
  name: 'Heron Landing',
  place: 'Marshfield, Georgia',
  region: 'coast',
  timeZone: 'America/New_York',
  units: 'us',
  climateZoneRef: 'WARM',
  exposure: 'B',
  elevationM: 5,
  topographicFactor: 1,
  soilClass: 'medium-sand',
  soilSaturated: false,
  lateralBearingDoubled: false,
  windKind: 'map',
  windBasis: 'ultimate',
  designGustMps: 105 * MPH,
  returnPeriodYears: 300,
  secondGustMps: null,
  secondReturnPeriodYears: null,
  hurricane: false,
  windSource: 'invented for these tests',
  seasonOpens: '06-01',
  seasonCloses: '11-30',
  seasonShare: 0.8,
  stormSeasonRef: null,
  latitude: null,
  longitude: null,
  frozenFrom: null,
  frozenTo: null,
};

const FENCE: FenceRecord = {
  ref: 'F-000',
  siteRef: 'HERON',
  ownerRef: 'ANN',
  secondOwnerRef: null,
  style: 'solid-board',
  solidity: 1,
  heightM: 6 * FT,
  runLengthM: 80 * FT,
  bottomGapM: 0,
  postSpacingM: 8 * FT,
  namedEnd: 'street end',
  endAKind: 'return',
  endAReturnM: 16 * FT,
  endBKind: 'return',
  endBReturnM: 16 * FT,
  sectionKind: 'rectangular',
  sectionWidthMm: 88.9,
  sectionDepthMm: 88.9,
  species: 'southern-pine',
  grade: 'no-2',
  incised: false,
  treatmentClass: 'above-ground-stock',
  momentCapacityNm: null,
  retentionKgM3: null,
  installedEarliest: '2010-04-15',
  installedLatest: '2010-04-15',
  embedmentM: 2 * FT,
  footing: 'concrete',
  footingDiameterM: 0.75 * FT,
  boards: 'spliced',
  trimmerGuards: 'yes',
  yearlyTrimmerCutMm: 0,
  consequence: 'ordinary',
  accessNote: '',
  note: '',
};

/** What a test's register holds beside the defaults. */
export interface RegisterPlan {
  readonly owners?: readonly Partial<OwnerRecord>[];
  readonly fences: readonly Partial<FenceRecord>[];
  readonly site?: Partial<SiteRecord>;
  readonly holdFirstSweep?: 'yes' | 'no';
}

/** Fences F-000, F-001, … installed from 2000 on, one a year and round again. */
export const manyFences = (count: number, changes: Partial<FenceRecord> = {}): readonly Partial<FenceRecord>[] =>
  Array.from({ length: count }, (_, index) => {
    const day = `${2000 + (index % 24)}-04-15`;
    return {
      ref: `F-${String(index).padStart(3, '0')}`,
      installedEarliest: day,
      installedLatest: day,
      ...changes,
    };
  });

/** Writes the plan's records. */
export async function fillRegister({ db }: Register, plan: RegisterPlan): Promise<void> {
  const owners = (plan.owners ?? [{}]).map((owner) => ({ ...OWNER, ...owner }));
  await upsertRecords(db, 'owners', owners, WRITTEN);
  const zone = { ref: 'WARM', name: 'Warm coast', rainMmPerYear: 1300, meanTemperatureC: 18, dryMonths: 0 };
  const climate = { ...zone, decayZone: null, irrigated: false, source: 'invented for these tests' };
  await upsertRecords(db, 'climate-zones', [climate], WRITTEN);
  await upsertRecords(db, 'sites', [{ ...SITE, ...plan.site }], WRITTEN);
  await changeFences({ db }, plan.fences);
  // most tests are about what is sent; what waits for the office has tests of its own
  await writeSettings(db, { holdFirstSweep: plan.holdFirstSweep ?? 'no' }, WRITTEN);
}

/** Writes fences as they are to be from now on. */
export async function changeFences(
  { db }: Pick<Register, 'db'>,
  fences: readonly Partial<FenceRecord>[],
): Promise<void> {
  await upsertRecords(
    db,
    'fences',
    fences.map((fence) => ({ ...FENCE, ...fence })),
    WRITTEN,
  );
}

/** Writes an owner as it is to be from now on. */
export async function changeOwner({ db }: Register, owner: Partial<OwnerRecord>): Promise<void> {
  await upsertRecords(db, 'owners', [{ ...OWNER, ...owner }], WRITTEN);
}

/** A register in a file of its own, closed and removed when the test is over. */
export async function fenceRegister(plan: RegisterPlan, folder = temporaryFolder()): Promise<Register> {
  const register = await openRegister(join(folder, 'register.sqlite'));
  onTestFinished(() => register.close());
  await fillRegister(register, plan);
  return register;
}

/** The real forecast with some of its verdicts put by hand: what a later season, works or a correction would bring. */
export const forecastWith =
  (changes: Partial<FenceForecast>) =>
  (facts: FenceFacts, seasonOneYear: number, settings: ForecastSettings): FenceForecast => ({
    ...forecastFence(facts, seasonOneYear, settings),
    endsStanding: null,
    endsStandingWithMargin: null,
    ...changes,
  });

/** Everything a sweep stores that must not depend on when or how often it ran. */
export async function sweptBytes({ db }: Register): Promise<string> {
  const forecasts = await db
    .selectFrom('forecasts')
    .select(['fence_ref', 'input_hash', 'standing', 'ends_standing', 'generation', 'told_marks', 'detail'])
    .orderBy('fence_ref')
    .execute();
  const notices = await db
    .selectFrom('notices')
    .select(['fence_ref', 'owner_ref', 'matter', 'occasion', 'facts'])
    .orderBy('fence_ref')
    .orderBy('owner_ref')
    .orderBy('matter')
    .execute();
  return JSON.stringify({ forecasts, notices });
}

/** The notices of a register as `fence: matter`, in the order in which they were decided. */
export async function noticeLines({ db }: Register): Promise<readonly string[]> {
  const rows = await db.selectFrom('notices').select(['fence_ref', 'matter']).orderBy('id').execute();
  return rows.map((row) => `${row.fence_ref}: ${row.matter}`);
}
