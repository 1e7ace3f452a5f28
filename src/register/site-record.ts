import { z } from 'zod';
import { SOIL_CLASS_KEYS } from '../capacity/soil-class.ts';
import { EXPOSURES } from '../capacity/velocity-pressure.ts';
import { isMonthDay, YEAR_ROUND } from '../forecast/season-calendar.ts';
import { WIND_BASES, type WindEntry } from '../forecast/wind-entry.ts';
import { RANGES } from './value-ranges.ts';
import {
  keySchema,
  type Refuse,
  rangedSchema,
  refSchema,
  refuseInto,
  requiredTextSchema,
  textSchema,
} from './value-schemas.ts';

export const SITE_UNITS = ['us', 'metric'] as const;
export const WIND_KINDS = ['map', 'local-rule'] as const;
/** Return period of every nominal and fastest-mile map speed [a]. Source: ASCE 7-95 to 7-05 and earlier maps (memory). */
export const NOMINAL_RETURN_PERIOD_YEARS = 50;

const knownZones = new Map<string, boolean>();

/** True where the text names a time zone of the IANA database (an offset such as +05:00 does not). */
export function isTimeZone(name: string): boolean {
  const known = knownZones.get(name);
  if (known !== undefined) return known;
  let valid = /^[A-Za-z]/.test(name);
  try {
    new Intl.DateTimeFormat('en', { timeZone: name });
  } catch {
    valid = false;
  }
  knownZones.set(name, valid);
  return valid;
}

export const TIME_ZONE_REASON = 'not a time zone of the IANA database; write one as America/Chicago';
export const MONTH_DAY_REASON =
  'not a month and day of every year; write MM-DD, as 06-01, and format the column as text in a spreadsheet';

/** Why a site that names a storm season has none of its own. */
export const ownSeasonReason = (stormSeasonRef: string): string =>
  `the site takes its season from storm season ${stormSeasonRef}; leave its own days and share empty, or storm_season`;

/** A place where fences stand: climate, soil, exposure, design wind with its source, storm season. */
export const siteSchema = z
  .object({
    ref: refSchema,
    name: requiredTextSchema(200),
    place: requiredTextSchema(200),
    region: textSchema(100),
    timeZone: z.string().refine(isTimeZone, TIME_ZONE_REASON),
    units: z.enum(SITE_UNITS),
    climateZoneRef: refSchema,
    exposure: z.enum(EXPOSURES),
    elevationM: rangedSchema(RANGES.elevationM),
    topographicFactor: rangedSchema(RANGES.topographicFactor),
    soilClass: keySchema(SOIL_CLASS_KEYS),
    soilSaturated: z.boolean(),
    lateralBearingDoubled: z.boolean(),
    windKind: z.enum(WIND_KINDS),
    windBasis: z.enum(WIND_BASES),
    designGustMps: rangedSchema(RANGES.designGustMps),
    returnPeriodYears: rangedSchema(RANGES.returnPeriodYears).nullable(),
    secondGustMps: rangedSchema(RANGES.secondGustMps).nullable(),
    secondReturnPeriodYears: rangedSchema(RANGES.returnPeriodYears).nullable(),
    hurricane: z.boolean(),
    windSource: requiredTextSchema(1000),
    seasonOpens: z.string().refine(isMonthDay, MONTH_DAY_REASON),
    seasonCloses: z.string().refine(isMonthDay, MONTH_DAY_REASON),
    seasonShare: rangedSchema(RANGES.seasonShare, 'missing; a season has a share of the yearly wind, as 0.8'),
    /** Where set, the season is that of this storm season, and the site's own three values stand for the whole year. */
    stormSeasonRef: refSchema.nullable(),
    latitude: rangedSchema(RANGES.latitude).nullable(),
    longitude: rangedSchema(RANGES.longitude).nullable(),
    /** Days of the year, `MM-DD`, between which the ground counts as frozen; may wrap the year end. */
    frozenFrom: z.string().refine(isMonthDay, MONTH_DAY_REASON).nullable(),
    frozenTo: z.string().refine(isMonthDay, MONTH_DAY_REASON).nullable(),
  })
  .superRefine((site, context) => {
    const refuse = refuseInto(context);
    refuseReturnPeriod(site, refuse);
    refuseSecondPair(site, refuse);
    refuseSeason(site, refuse);
    refuseHalfPair(site, ['latitude', 'longitude'], 'a place has a latitude and a longitude', refuse);
    refuseHalfPair(site, ['frozenFrom', 'frozenTo'], 'frozen ground has a first and a last day', refuse);
  });

export type SiteRecord = Readonly<z.infer<typeof siteSchema>>;

type SeasonFields = Pick<SiteRecord, 'stormSeasonRef' | 'seasonOpens' | 'seasonCloses' | 'seasonShare'>;

function refuseSeason(site: SeasonFields, refuse: Refuse): void {
  const { stormSeasonRef, seasonOpens: opens, seasonCloses: closes, seasonShare } = site;
  const allYear = opens === YEAR_ROUND.opens && closes === YEAR_ROUND.closes;
  if (stormSeasonRef !== null && !allYear) {
    refuse('seasonOpens', ownSeasonReason(stormSeasonRef));
  } else if (opens === closes) {
    refuse('seasonCloses', 'a season of one day; close it after the day it opens');
  } else if (allYear && seasonShare !== YEAR_ROUND.share) {
    refuse('seasonShare', 'a season that lasts all year has all of the yearly wind; write 1');
  }
}

/** Refuses the one of two keys that is missing beside the other. */
function refuseHalfPair<K extends string>(
  record: Readonly<Record<K, unknown>>,
  [one, other]: readonly [K, K],
  reason: string,
  refuse: Refuse,
): void {
  if ((record[one] === null) === (record[other] === null)) return;
  refuse(record[one] === null ? one : other, `missing; ${reason}`);
}

type WindFields = Pick<
  SiteRecord,
  'windKind' | 'windBasis' | 'designGustMps' | 'returnPeriodYears' | 'secondGustMps' | 'secondReturnPeriodYears'
>;

function refuseReturnPeriod(site: WindFields, refuse: Refuse): void {
  const { windKind, windBasis, returnPeriodYears } = site;
  if (windKind === 'local-rule') {
    if (returnPeriodYears !== null) {
      refuse('returnPeriodYears', 'a local fence rule is used as it stands; leave the return period empty');
    }
  } else if (windBasis === 'nominal' || windBasis === 'fastest-mile') {
    if (returnPeriodYears !== NOMINAL_RETURN_PERIOD_YEARS) {
      refuse(
        'returnPeriodYears',
        `a ${windBasis} map speed has a return period of 50 years; write 50 or leave it empty`,
      );
    }
  } else if (returnPeriodYears === null) {
    const whose = windBasis === 'asd' ? 'the ultimate speed it was derived from' : 'the map it was read off';
    refuse('returnPeriodYears', `missing; give the return period of ${whose} (300, 700 or 1700 on most maps)`);
  }
}

function refuseSecondPair(site: WindFields, refuse: Refuse): void {
  const { secondGustMps: speed, secondReturnPeriodYears: years, returnPeriodYears: first } = site;
  if (speed === null && years === null) return;
  if (speed === null) {
    refuse('secondGustMps', 'missing; a second point needs its speed and its return period');
  } else if (years === null) {
    refuse('secondReturnPeriodYears', 'missing; a second point needs its speed and its return period');
  } else if (years === first) {
    refuse('secondReturnPeriodYears', 'the same as the first return period; give another point of the curve');
  } else if (first !== null && years > first !== speed > site.designGustMps) {
    refuse('secondGustMps', 'the rarer gust must be the faster one; check both speeds and both return periods');
  }
}

/** The design wind of a site as the forecast takes it. */
export const windEntry = (site: SiteRecord): WindEntry => ({
  kind: site.windKind,
  basis: site.windBasis,
  speedMps: site.designGustMps,
  returnPeriodYears: site.returnPeriodYears,
  second:
    site.secondGustMps === null || site.secondReturnPeriodYears === null
      ? null
      : { speedMps: site.secondGustMps, returnPeriodYears: site.secondReturnPeriodYears },
  hurricane: site.hurricane,
});
