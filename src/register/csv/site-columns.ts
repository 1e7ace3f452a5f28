import { SOIL_CLASS_KEYS } from '../../capacity/soil-class.ts';
import { EXPOSURES } from '../../capacity/velocity-pressure.ts';
import { YEAR_ROUND } from '../../forecast/season-calendar.ts';
import { WIND_BASES } from '../../forecast/wind-entry.ts';
import {
  isTimeZone,
  NOMINAL_RETURN_PERIOD_YEARS,
  ownSeasonReason,
  SITE_UNITS,
  TIME_ZONE_REASON,
  WIND_KINDS,
} from '../site-record.ts';
import { RANGES } from '../value-ranges.ts';
import { type CsvField, type Draft, singleField } from './csv-field.ts';
import { DIMENSIONS } from './quantity-column.ts';
import {
  choiceField,
  monthDayField,
  numberField,
  quantityField,
  refField,
  textField,
  yesNoField,
} from './value-fields.ts';

const NULLABLE = { fallback: null };

const MEAN_SPEED = /mean|avg|average|hour|sustained|minute|10[ -]?min|1[ -]?min/i;

/** Why a speed that is no gust cannot stand beside one. */
const basisRefusal = (text: string): string | null =>
  MEAN_SPEED.test(text)
    ? `a mean speed is no gust and no wind standard that uses one is built in; take the 3-second gust from the map and write one of ${WIND_BASES.join(', ')}`
    : null;

const isNominal = (draft: Readonly<Draft>): boolean =>
  draft.windKind === 'map' && (draft.windBasis === 'nominal' || draft.windBasis === 'fastest-mile');

/** The site's own season is left empty where it names a storm season; its values then stand for the whole year. */
const ownSeason = (field: CsvField, allYear: Draft): CsvField => ({
  ...field,
  read: (row, draft) => {
    const named = row.cell('storm_season');
    if (named === '') field.read(row, draft);
    else if (field.columns.every((column) => row.cell(column) === '')) Object.assign(draft, allYear);
    else row.refuse(field.column('us'), ownSeasonReason(named));
  },
  write: (record, units) => (record.stormSeasonRef === null ? field.write(record, units) : {}),
});

const closesField = monthDayField('seasonCloses', 'season_closes', { fallback: YEAR_ROUND.closes });

/** The season's two days and share: all empty for a site without a storm season, else all filled. */
const seasonFields: readonly CsvField[] = [
  ownSeason(monthDayField('seasonOpens', 'season_opens', { fallback: YEAR_ROUND.opens }), {
    seasonOpens: YEAR_ROUND.opens,
  }),
  ownSeason(
    {
      ...closesField,
      read: (row, draft) => {
        const [opens, closes] = [row.cell('season_opens'), row.cell('season_closes')];
        if (opens !== '' && closes === '') row.refuse('season_closes', 'missing; a season has a first and a last day');
        if (opens === '' && closes !== '') row.refuse('season_opens', 'missing; a season has a first and a last day');
        closesField.read(row, draft);
      },
    },
    { seasonCloses: YEAR_ROUND.closes },
  ),
  ownSeason(
    numberField('seasonShare', 'season_share', RANGES.seasonShare, {
      fallbackFrom: (draft) =>
        draft.seasonOpens === YEAR_ROUND.opens && draft.seasonCloses === YEAR_ROUND.closes ? YEAR_ROUND.share : null,
    }),
    { seasonShare: YEAR_ROUND.share },
  ),
  refField('stormSeasonRef', 'storm_season', NULLABLE),
];

/** Columns of sites. */
export const SITE_FIELDS: readonly CsvField[] = [
  refField('ref', 'ref'),
  textField('name', 'name'),
  textField('place', 'place'),
  textField('region', 'region', { fallback: '' }),
  singleField(
    'timeZone',
    'time_zone',
    {},
    (text, refuse) => (isTimeZone(text) ? text : refuse(TIME_ZONE_REASON)),
    String,
  ),
  choiceField('units', 'units', SITE_UNITS, { fallback: 'us' }),
  refField('climateZoneRef', 'climate_zone'),
  choiceField('exposure', 'exposure', EXPOSURES),
  quantityField('elevationM', 'elevation', DIMENSIONS.length, RANGES.elevationM, { fallback: 0 }),
  numberField('topographicFactor', 'topographic_factor', RANGES.topographicFactor, { fallback: 1 }),
  choiceField('soilClass', 'soil_class', SOIL_CLASS_KEYS),
  yesNoField('soilSaturated', 'soil_saturated', { fallback: false }),
  yesNoField('lateralBearingDoubled', 'lateral_bearing_doubled', { fallback: false }),
  choiceField('windKind', 'wind_kind', WIND_KINDS),
  choiceField('windBasis', 'wind_basis', WIND_BASES, { refusals: basisRefusal }),
  quantityField('designGustMps', 'design_gust', DIMENSIONS.speed, RANGES.designGustMps),
  numberField('returnPeriodYears', 'return_period_years', RANGES.returnPeriodYears, {
    fallbackFrom: (draft) => (isNominal(draft) ? NOMINAL_RETURN_PERIOD_YEARS : null),
  }),
  quantityField('secondGustMps', 'second_gust', DIMENSIONS.speed, RANGES.secondGustMps, { fallback: null }),
  numberField('secondReturnPeriodYears', 'second_return_period_years', RANGES.returnPeriodYears, { fallback: null }),
  yesNoField('hurricane', 'hurricane', { fallback: false }),
  textField('windSource', 'wind_source'),
  ...seasonFields,
  numberField('latitude', 'latitude', RANGES.latitude, NULLABLE),
  numberField('longitude', 'longitude', RANGES.longitude, NULLABLE),
  monthDayField('frozenFrom', 'frozen_from', NULLABLE),
  monthDayField('frozenTo', 'frozen_to', NULLABLE),
];
