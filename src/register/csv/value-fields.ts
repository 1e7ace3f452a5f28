import { isMonthDay } from '../../forecast/season-calendar.ts';
import { isCalendarDay } from '../../units/calendar-day.ts';
import { MONTH_DAY_REASON } from '../site-record.ts';
import type { ValueRange } from '../value-ranges.ts';
import {
  EVIDENCE_REF_REASON,
  HIDDEN_REASON,
  hidesCharacters,
  isEvidenceRef,
  isRef,
  REF_REASON,
} from '../value-schemas.ts';
import { type CsvField, type FieldOptions, isOptional, singleField } from './csv-field.ts';
import { notADate } from './installed-cell.ts';
import { parseNumber, plainDecimal } from './number-cell.ts';
import { type Dimension, exactInUnit, limitInUnit } from './quantity-column.ts';
import { guardText, unguardText } from './text-cell.ts';

/** Free text, guarded against being run as a formula. */
export const textField = (key: string, column: string, options: FieldOptions = {}): CsvField => ({
  ...singleField(
    key,
    column,
    options,
    (text, refuse) => (hidesCharacters(text) ? refuse(HIDDEN_REASON) : unguardText(text)),
    (value) => guardText(String(value)),
  ),
  isText: true,
});

/** The ref of this record or of another one. */
export const refField = (key: string, column: string, options: FieldOptions = {}): CsvField =>
  singleField(key, column, options, (text, refuse) => (isRef(text) ? text : refuse(REF_REASON)), String);

/** The ref of an inspection or a storm outcome, of this record or of another one. */
export const evidenceRefField = (key: string, column: string): CsvField =>
  singleField(key, column, {}, (text, refuse) => (isEvidenceRef(text) ? text : refuse(EVIDENCE_REF_REASON)), String);

/** One word of a list. `refusals` explains words that people write and that are none of them. */
export const choiceField = (
  key: string,
  column: string,
  choices: readonly string[],
  options: FieldOptions & { readonly refusals?: (text: string) => string | null } = {},
): CsvField => ({
  ...singleField(
    key,
    column,
    options,
    (text, refuse) =>
      choices.includes(text)
        ? text
        : refuse(options.refusals?.(text) ?? `not one of the words it can be; write one of ${choices.join(', ')}`),
    String,
  ),
  choices,
});

/** Yes or no. */
export const yesNoField = (key: string, column: string, options: FieldOptions = {}): CsvField => ({
  ...singleField(
    key,
    column,
    options,
    (text, refuse) => {
      const word = text.toLowerCase();
      return word === 'yes' || word === 'no' ? word === 'yes' : refuse('neither yes nor no; write yes or no');
    },
    (value) => (value ? 'yes' : 'no'),
  ),
  choices: ['yes', 'no'],
});

/** A number without a unit, within its range. */
export const numberField = (
  key: string,
  column: string,
  [lowest, highest]: ValueRange,
  options: FieldOptions & { readonly whole?: boolean } = {},
): CsvField =>
  singleField(
    key,
    column,
    options,
    (text, refuse) => {
      const parsed = parseNumber(text);
      if ('reason' in parsed) return refuse(parsed.reason);
      if (options.whole && !Number.isInteger(parsed.value))
        return refuse('not a whole number; write one without decimals');
      if (parsed.value < lowest || parsed.value > highest) {
        return refuse(`outside the allowed ${lowest} to ${plainDecimal(highest)}; correct it`);
      }
      return parsed.value;
    },
    (value) => plainDecimal(value as number),
  );

/** A day of every year, `MM-DD`. */
export const monthDayField = (key: string, column: string, options: FieldOptions = {}): CsvField =>
  singleField(key, column, options, (text, refuse) => (isMonthDay(text) ? text : refuse(MONTH_DAY_REASON)), String);

/** A calendar day that is not in the future; `wayOut` says what to do with one that is. */
export const dayField = (key: string, column: string, wayOut: string): CsvField =>
  singleField(
    key,
    column,
    {},
    (text, refuse, row) => {
      if (!isCalendarDay(text)) return refuse(notADate(text, 'write YYYY-MM-DD, as 2014-05-03'));
      if (text > row.today) return refuse(`in the future (today is ${row.today}); ${wayOut}`);
      return text;
    },
    String,
  );

/**
 * A quantity that may be written in one of several columns, each with its unit in its name (`height_in`, `height_m`),
 * one of them in any row. Exported in the first unit wanted that gives back exactly the same value, else in SI.
 */
export function quantityField(
  key: string,
  base: string,
  dimension: Dimension,
  range: ValueRange,
  options: FieldOptions = {},
): CsvField {
  const units = dimension.all.map((unit) => ({ unit, column: `${base}_${unit.suffix}` }));
  const siColumn = `${base}_${dimension.si.suffix}`;
  const usColumn = `${base}_${dimension.us.suffix}`;
  return {
    keys: [key],
    columns: units.map(({ column }) => column),
    required: !isOptional(options),
    column: (wanted) => (wanted === 'us' ? usColumn : siColumn),
    read: (row, draft) => {
      const filled = units.filter(({ column }) => row.cell(column) !== '');
      const [first, second] = filled;
      if (!first) return;
      draft[key] = undefined;
      if (second) {
        row.refuse(second.column, `given twice, also as ${first.column}; fill in one of them`);
        return;
      }
      const parsed = parseNumber(row.cell(first.column));
      if ('reason' in parsed) {
        row.refuse(first.column, parsed.reason);
        return;
      }
      const value = first.unit.toSi(parsed.value);
      const [lowest, highest] = range;
      if (value < lowest || value > highest) {
        const limits = `${limitInUnit(first.unit, lowest)} to ${limitInUnit(first.unit, highest)} ${first.unit.label}`;
        row.refuse(first.column, `outside the allowed ${limits}; check the number and the unit in the column's name`);
        return;
      }
      draft[key] = value === 0 ? 0 : value;
    },
    settle: (draft) => ({ [key]: options.fallbackFrom ? options.fallbackFrom(draft) : options.fallback }),
    write: (record, wanted) => {
      const value = record[key] as number | null;
      if (value === null) return {};
      const inUs = wanted === 'us' ? exactInUnit(dimension.us, value) : null;
      return inUs === null ? { [siColumn]: plainDecimal(value) } : { [usColumn]: inUs };
    },
  };
}
