import { OWNER_CHANNELS, OWNER_KINDS, OWNER_LANGUAGES } from '../owner-record.ts';
import type { RecordKind } from '../record-store.ts';
import { RANGES } from '../value-ranges.ts';
import type { CsvField } from './csv-field.ts';
import { FENCE_FIELDS } from './fence-columns.ts';
import { INSPECTION_FIELDS } from './inspection-columns.ts';
import { OUTCOME_FIELDS } from './outcome-columns.ts';
import { POST_FIELDS } from './post-columns.ts';
import { DIMENSIONS } from './quantity-column.ts';
import { READING_FIELDS } from './reading-columns.ts';
import {
  CATALOGUE_FIELDS,
  CREW_FIELDS,
  CREW_MEMBER_FIELDS,
  DAY_OFF_FIELDS,
  MATERIAL_FIELDS,
  STORM_SEASON_FIELDS,
} from './season-columns.ts';
import { SITE_FIELDS } from './site-columns.ts';
import { choiceField, numberField, quantityField, refField, textField, yesNoField } from './value-fields.ts';
import { WORKS_FIELDS } from './works-columns.ts';

const NULLABLE = { fallback: null };

const OWNER_FIELDS: readonly CsvField[] = [
  refField('ref', 'ref'),
  textField('name', 'name'),
  choiceField('kind', 'kind', OWNER_KINDS),
  choiceField('channel', 'channel', OWNER_CHANNELS),
  textField('email', 'email', NULLABLE),
  textField('postalAddress', 'postal_address', NULLABLE),
  choiceField('language', 'language', OWNER_LANGUAGES, { fallback: 'en' }),
  yesNoField('enrolled', 'enrolled', { fallback: true }),
];

const CLIMATE_ZONE_FIELDS: readonly CsvField[] = [
  refField('ref', 'ref'),
  textField('name', 'name'),
  quantityField('rainMmPerYear', 'rain', DIMENSIONS.rain, RANGES.rainMmPerYear, NULLABLE),
  quantityField('meanTemperatureC', 'mean_temperature', DIMENSIONS.temperature, RANGES.meanTemperatureC, NULLABLE),
  numberField('dryMonths', 'dry_months', RANGES.dryMonths, { ...NULLABLE, whole: true }),
  numberField('decayZone', 'decay_zone', RANGES.decayZone, { ...NULLABLE, whole: true }),
  yesNoField('irrigated', 'irrigated', { fallback: false }),
  textField('source', 'source'),
];

/** The columns of each kind of file, in the order in which they are read and exported. */
export const RECORD_FIELDS: Readonly<Record<RecordKind, readonly CsvField[]>> = {
  owners: OWNER_FIELDS,
  'climate-zones': CLIMATE_ZONE_FIELDS,
  'storm-seasons': STORM_SEASON_FIELDS,
  sites: SITE_FIELDS,
  fences: FENCE_FIELDS,
  posts: POST_FIELDS,
  works: WORKS_FIELDS,
  inspections: INSPECTION_FIELDS,
  readings: READING_FIELDS,
  outcomes: OUTCOME_FIELDS,
  catalogue: CATALOGUE_FIELDS,
  materials: MATERIAL_FIELDS,
  crews: CREW_FIELDS,
  'crew-members': CREW_MEMBER_FIELDS,
  'days-off': DAY_OFF_FIELDS,
};

/** Columns by which a kind of file is told from the others. */
export const TELLING_COLUMNS: Readonly<Record<RecordKind, readonly string[]>> = {
  owners: ['ref', 'kind', 'channel'],
  'climate-zones': ['ref', 'source'],
  'storm-seasons': ['ref', 'opens', 'closes'],
  sites: ['ref', 'climate_zone', 'wind_kind'],
  fences: ['ref', 'site', 'owner', 'style'],
  posts: ['fence', 'post'],
  works: ['ref', 'fence', 'day', 'kind'],
  inspections: ['ref', 'fence', 'inspector', 'method'],
  readings: ['inspection', 'post'],
  outcomes: ['ref', 'fence', 'storm', 'result'],
  catalogue: ['kind', 'person_hours_per_post'],
  materials: ['kind', 'name', 'unit'],
  crews: ['ref', 'name', 'weather_reserve'],
  'crew-members': ['ref', 'crew', 'hours_per_week'],
  'days-off': ['ref', 'crew', 'first_day'],
};
