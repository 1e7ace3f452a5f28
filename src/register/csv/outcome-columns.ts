import { STORM_RESULTS } from '../../forecast/evidence/storm-outcome.ts';
import { DEFAULT_GUST_SPREAD } from '../storm-outcome-record.ts';
import { RANGES } from '../value-ranges.ts';
import { type CsvField, singleField } from './csv-field.ts';
import { parseNumber } from './number-cell.ts';
import { POST_NUMBERS_FIELD } from './post-numbers-column.ts';
import { DIMENSIONS, exactInUnit, limitInUnit, PERCENT } from './quantity-column.ts';
import { choiceField, dayField, evidenceRefField, quantityField, refField, textField } from './value-fields.ts';

const spreadField: CsvField = singleField(
  'gustSpread',
  'gust_spread_percent',
  { fallback: DEFAULT_GUST_SPREAD },
  (text, refuse) => {
    const parsed = parseNumber(text);
    if ('reason' in parsed) return refuse(parsed.reason);
    const spread = PERCENT.toSi(parsed.value);
    const [lowest, highest] = RANGES.gustSpread;
    if (spread >= lowest && spread <= highest) return spread;
    return refuse(
      `outside the allowed ${limitInUnit(PERCENT, lowest)} to ${limitInUnit(PERCENT, highest)} percent; 10 where the gust was measured near the fence`,
    );
  },
  (value) => exactInUnit(PERCENT, value as number) ?? limitInUnit(PERCENT, value as number),
);

/** Columns of storm outcomes. */
export const OUTCOME_FIELDS: readonly CsvField[] = [
  evidenceRefField('ref', 'ref'),
  textField('storm', 'storm'),
  refField('fenceRef', 'fence'),
  dayField('day', 'day', 'enter what a storm did once it has passed'),
  quantityField('gustMps', 'gust', DIMENSIONS.speed, RANGES.stormGustMps),
  spreadField,
  POST_NUMBERS_FIELD,
  choiceField('result', 'result', STORM_RESULTS),
  textField('gustSource', 'gust_source', { fallback: '' }),
  textField('reportedBy', 'reported_by'),
  textField('notes', 'notes', { fallback: '' }),
];
