import { FOOTING_KINDS } from '../../capacity/footing.ts';
import type { CatalogueEntry } from '../../season/catalogue-entry.ts';
import { SHIPPED_CATALOGUE } from '../../season/works-catalogue.ts';
import { isCalendarDay } from '../../units/calendar-day.ts';
import { CATALOGUE_KINDS, NEW_POST_CLASSES } from '../catalogue-record.ts';
import { RANGES } from '../value-ranges.ts';
import { type CsvField, type FieldOptions, singleField } from './csv-field.ts';
import { notADate } from './installed-cell.ts';
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

/** A calendar day, which may be in the future. */
const anyDayField = (key: string, column: string, options: { readonly fallback?: null } = {}): CsvField =>
  singleField(
    key,
    column,
    options,
    (text, refuse) => (isCalendarDay(text) ? text : refuse(notADate(text, 'write one as 2027-06-01'))),
    String,
  );

/** Columns of storm seasons. */
export const STORM_SEASON_FIELDS: readonly CsvField[] = [
  refField('ref', 'ref'),
  textField('name', 'name'),
  monthDayField('opens', 'opens'),
  monthDayField('closes', 'closes'),
  numberField('share', 'share', RANGES.seasonShare),
  textField('source', 'source'),
];

/** An empty cell means what the line that comes with the program says. */
const asShipped = (part: (entry: CatalogueEntry) => unknown): FieldOptions => ({
  fallbackFrom: ({ kind }) => {
    const shipped = new Map<unknown, CatalogueEntry>(Object.entries(SHIPPED_CATALOGUE)).get(kind);
    return shipped && part(shipped);
  },
});

/** Columns of the works catalogue. */
export const CATALOGUE_FIELDS: readonly CsvField[] = [
  choiceField('kind', 'kind', CATALOGUE_KINDS),
  numberField(
    'personHoursFixed',
    'person_hours_fixed',
    RANGES.personHours,
    asShipped(({ personHours }) => personHours.fixed),
  ),
  numberField(
    'personHoursPerPost',
    'person_hours_per_post',
    RANGES.personHoursPerPost,
    asShipped(({ personHours }) => personHours.perPost),
  ),
  numberField(
    'priceFixed',
    'price_fixed',
    RANGES.price,
    asShipped(({ price }) => price.fixed),
  ),
  numberField(
    'pricePerPost',
    'price_per_post',
    RANGES.pricePerPost,
    asShipped(({ price }) => price.perPost),
  ),
  numberField('cureDays', 'cure_days', RANGES.cureDays, { whole: true, ...asShipped(({ rules }) => rules.cureDays) }),
  numberField('locateNoticeDays', 'locate_notice_days', RANGES.locateNoticeDays, {
    whole: true,
    ...asShipped(({ rules }) => rules.locateNoticeDays),
  }),
  yesNoField(
    'notOnFrozenGround',
    'not_on_frozen_ground',
    asShipped(({ rules }) => rules.notOnFrozenGround),
  ),
  yesNoField(
    'licensedApplicator',
    'licensed_applicator',
    asShipped(({ rules }) => rules.licensedApplicator),
  ),
  yesNoField(
    'permit',
    'permit',
    asShipped(({ rules }) => rules.permit),
  ),
  quantityField(
    'embedmentM',
    'embedment',
    DIMENSIONS.shortLength,
    RANGES.embedmentM,
    asShipped(({ build }) => build.embedmentM),
  ),
  choiceField(
    'footing',
    'footing',
    FOOTING_KINDS,
    asShipped(({ build }) => build.footing),
  ),
  quantityField(
    'footingDiameterM',
    'footing_diameter',
    DIMENSIONS.shortLength,
    RANGES.footingDiameterM,
    asShipped(({ build }) => build.footingDiameterM),
  ),
  quantityField(
    'sleeveMomentNm',
    'sleeve_moment',
    DIMENSIONS.moment,
    RANGES.momentCapacityNm,
    asShipped(({ build }) => build.sleeveMomentNm),
  ),
  numberField(
    'yearsEffective',
    'years_effective',
    RANGES.yearsEffective,
    asShipped(({ build }) => build.yearsEffective),
  ),
  choiceField(
    'treatmentClass',
    'treatment_class',
    NEW_POST_CLASSES,
    asShipped(({ build }) => build.treatmentClass),
  ),
  textField('source', 'source'),
];

/** Columns of materials. */
export const MATERIAL_FIELDS: readonly CsvField[] = [
  choiceField('kind', 'kind', CATALOGUE_KINDS),
  textField('name', 'name'),
  textField('unit', 'unit'),
  numberField('quantityFixed', 'quantity_fixed', RANGES.materialQuantity, { fallback: 0 }),
  numberField('quantityPerPost', 'quantity_per_post', RANGES.materialQuantity, { fallback: 0 }),
  numberField('unitCost', 'unit_cost', RANGES.pricePerPost),
];

/** Columns of crews. */
export const CREW_FIELDS: readonly CsvField[] = [
  refField('ref', 'ref'),
  textField('name', 'name'),
  numberField('baseLatitude', 'base_latitude', RANGES.latitude, NULLABLE),
  numberField('baseLongitude', 'base_longitude', RANGES.longitude, NULLABLE),
  quantityField('speedMps', 'speed', DIMENSIONS.speed, RANGES.travelMps),
  numberField('weatherReserve', 'weather_reserve', RANGES.weatherReserve, { fallback: 0 }),
];

/** Columns of crew members. */
export const CREW_MEMBER_FIELDS: readonly CsvField[] = [
  refField('ref', 'ref'),
  refField('crewRef', 'crew'),
  textField('name', 'name'),
  numberField('hoursPerWeek', 'hours_per_week', RANGES.hoursPerWeek),
  textField('languages', 'languages', { fallback: '' }),
  textField('skills', 'skills', { fallback: '' }),
  anyDayField('fromDay', 'from_day', NULLABLE),
  anyDayField('toDay', 'to_day', NULLABLE),
];

/** Columns of days off. */
export const DAY_OFF_FIELDS: readonly CsvField[] = [
  refField('ref', 'ref'),
  refField('crewRef', 'crew'),
  refField('memberRef', 'member', NULLABLE),
  anyDayField('firstDay', 'first_day'),
  anyDayField('lastDay', 'last_day'),
  textField('reason', 'reason', { fallback: '' }),
];
