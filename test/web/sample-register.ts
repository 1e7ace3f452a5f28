import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { DateTime } from 'luxon';
import type { Register } from '../../src/register/database.ts';
import { openRegister } from '../../src/register/database.ts';
import type { FenceRecord } from '../../src/register/fence-record.ts';
import { upsertRecords } from '../../src/register/record-store.ts';
import { writeSettings } from '../../src/register/settings-store.ts';
import type { SiteRecord } from '../../src/register/site-record.ts';
import type { Clock } from '../../src/service/clock.ts';
import { runSweep } from '../../src/service/run-sweep.ts';

const MPH = 0.44704;
const FT = 0.3048;

/** The moment at which the sample register is looked at. */
export const SAMPLE_NOW: Clock = () => DateTime.fromISO('2026-11-24T12:00:00Z', { zone: 'utc' });

const SITE: SiteRecord = {
  ref: 'PELICAN',
  name: 'Pelican Reach',
  place: 'Bayou Vista, Texas',
  region: 'gulf',
  timeZone: 'America/Chicago',
  units: 'us',
  climateZoneRef: 'GULF',
  exposure: 'B',
  elevationM: 3,
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
  windSource: 'sample map, read at the site for these tests',
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
  ref: 'PR-01',
  siteRef: 'PELICAN',
  ownerRef: 'HOA',
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
  treatmentClass: 'ground-contact',
  momentCapacityNm: null,
  retentionKgM3: null,
  installedEarliest: '2024-04-15',
  installedLatest: '2024-04-15',
  embedmentM: 2 * FT,
  footing: 'concrete',
  footingDiameterM: 0.75 * FT,
  boards: 'spliced',
  trimmerGuards: 'unknown',
  yearlyTrimmerCutMm: 0,
  consequence: 'ordinary',
  accessNote: '',
  note: '',
};

const installed = (day: string): Pick<FenceRecord, 'installedEarliest' | 'installedLatest'> => ({
  installedEarliest: day,
  installedLatest: day,
});

/** Fences of every standing: two sites (one metric, its season over the year end), three owners. */
const FENCES: readonly FenceRecord[] = [
  FENCE,
  { ...FENCE, ref: 'PR-02', ...installed('2003-05-02'), note: 'Runs behind the <pool> & the shed.' },
  { ...FENCE, ref: 'PR-03', treatmentClass: 'above-ground-stock', ...installed('2018-03-20') },
  { ...FENCE, ref: 'PR-04', treatmentClass: 'above-ground-stock', ...installed('2009-03-20'), ownerRef: 'QUINN' },
  {
    ...FENCE,
    ref: 'PR-05',
    species: 'western-redcedar',
    treatmentClass: 'redcedar-redwood-heartwood',
    ...installed('2016-06-11'),
  },
  {
    ...FENCE,
    ref: 'PR-06',
    runLengthM: 8 * FT,
    embedmentM: null,
    footing: null,
    footingDiameterM: null,
    ...installed('2011-06-11'),
  },
  {
    ...FENCE,
    ref: 'SK-01',
    siteRef: 'SKERRY',
    ownerRef: 'MASON',
    treatmentClass: 'unknown-treated',
    installedEarliest: '2008-01-01',
    installedLatest: '2012-12-31',
  },
  {
    ...FENCE,
    ref: 'SK-02',
    siteRef: 'SKERRY',
    ownerRef: 'MASON',
    secondOwnerRef: 'QUINN',
    heightM: 1.2,
    ...installed('2022-09-01'),
  },
];

/** A register in a temporary folder, swept, with its fences of every standing. Remove it when done. */
export async function sampleRegister(options: { readonly swept?: boolean; readonly empty?: boolean } = {}): Promise<{
  readonly register: Register;
  readonly folder: string;
  readonly remove: () => Promise<void>;
}> {
  const folder = mkdtempSync(join(tmpdir(), 'stormpale-web-'));
  const register = await openRegister(join(folder, 'register.sqlite'));
  if (!options.empty) await fill(register);
  if (!options.empty && options.swept !== false) await runSweep(register, { now: SAMPLE_NOW });
  return {
    register,
    folder,
    remove: async () => {
      await register.close();
      rmSync(folder, { recursive: true, force: true });
    },
  };
}

async function fill({ db }: Register): Promise<void> {
  const now = '2026-11-24T12:00:00.000Z';
  const owner = { postalAddress: null, language: 'en', enrolled: true, channel: 'mail' } as const;
  await upsertRecords(
    db,
    'owners',
    [
      {
        ...owner,
        ref: 'HOA',
        name: 'Pelican Reach Association',
        kind: 'association',
        email: 'board@pelican.example.org',
      },
      { ...owner, ref: 'QUINN', name: 'Rosa Quinn', kind: 'person', email: 'rosa@example.net', language: 'es' },
      {
        ...owner,
        ref: 'MASON',
        name: 'Mason Yards',
        kind: 'company',
        channel: 'letter',
        email: null,
        postalAddress: '7 Skerry Road\nNewhaven',
      },
    ],
    now,
  );
  await upsertRecords(
    db,
    'climate-zones',
    [
      {
        ref: 'GULF',
        name: 'Gulf coast',
        rainMmPerYear: 1600,
        meanTemperatureC: 19.5,
        dryMonths: 0,
        decayZone: null,
        irrigated: false,
        source: 'sample climate for these tests',
      },
    ],
    now,
  );
  const metric: Partial<SiteRecord> = {
    units: 'metric',
    timeZone: 'America/Halifax',
    seasonOpens: '11-01',
    seasonCloses: '03-31',
  };
  await upsertRecords(
    db,
    'sites',
    [
      SITE,
      {
        ...SITE,
        ...metric,
        ref: 'SKERRY',
        name: 'Skerry Yards',
        place: 'Newhaven',
        exposure: 'C',
        designGustMps: 48,
        seasonShare: 0.7,
      },
    ],
    now,
  );
  await upsertRecords(db, 'fences', FENCES, now);
  await writeSettings(db, { holdFirstSweep: 'no' }, now);
}
