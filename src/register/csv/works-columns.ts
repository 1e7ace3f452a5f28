import { FOOTING_KINDS } from '../../capacity/footing.ts';
import { RANGES } from '../value-ranges.ts';
import { WORKS_KINDS, worksDefaults } from '../works-record.ts';
import type { CsvField, Draft } from './csv-field.ts';
import { parseNumber, plainDecimal } from './number-cell.ts';
import { woodFields } from './post-columns.ts';
import { POST_NUMBERS_FIELD } from './post-numbers-column.ts';
import { DIMENSIONS, exactInUnit } from './quantity-column.ts';
import { choiceField, dayField, numberField, quantityField, refField } from './value-fields.ts';

const NULLABLE = { fallback: null };

/** An empty cell stands for what works of this kind take when nothing is said. */
const byKind = (field: CsvField): CsvField => ({
  ...field,
  settle: (draft: Draft) => {
    const defaults = worksDefaults(String(draft.kind)) as Draft;
    return {
      ...field.settle(draft),
      ...Object.fromEntries(field.keys.flatMap((key) => (key in defaults ? [[key, defaults[key]]] : []))),
    };
  },
});

/** Positions of added posts: numbers parted by blanks, all in the unit of the column's name. */
const positionsField: CsvField = {
  keys: ['positionsM'],
  columns: DIMENSIONS.length.all.map((unit) => `positions_${unit.suffix}`),
  required: false,
  column: (units) => (units === 'us' ? 'positions_ft' : 'positions_m'),
  read: (row, draft) => {
    const filled = DIMENSIONS.length.all.filter((unit) => row.cell(`positions_${unit.suffix}`) !== '');
    const [unit, other] = filled;
    if (!unit) return;
    const column = `positions_${unit.suffix}`;
    if (other) {
      row.refuse(`positions_${other.suffix}`, `given twice, also as ${column}; fill in one of them`);
      return;
    }
    const parsed = row.cell(column).split(/\s+/).map(parseNumber);
    if (parsed.some((each) => 'reason' in each)) {
      row.refuse(column, 'not a list of positions; write numbers parted by blanks, as 4 12 20');
      return;
    }
    draft.positionsM = parsed.map((each) => ('value' in each ? unit.toSi(each.value) : Number.NaN));
  },
  settle: () => ({ positionsM: null }),
  write: ({ positionsM }, units) => {
    if (positionsM === null) return {};
    const metres = positionsM as readonly number[];
    const inFeet = metres.map((each) => exactInUnit(DIMENSIONS.length.us, each));
    return units === 'us' && inFeet.every((each) => each !== null)
      ? { positions_ft: inFeet.join(' ') }
      : { positions_m: metres.map(plainDecimal).join(' ') };
  },
};

/** Columns of works done. */
export const WORKS_FIELDS: readonly CsvField[] = [
  refField('ref', 'ref'),
  refField('fenceRef', 'fence'),
  dayField('day', 'day', 'enter works once they are done'),
  choiceField('kind', 'kind', WORKS_KINDS),
  POST_NUMBERS_FIELD,
  byKind(numberField('yearsEffective', 'years_effective', RANGES.yearsEffective, NULLABLE)),
  quantityField('embedmentM', 'embedment', DIMENSIONS.shortLength, RANGES.embedmentM, NULLABLE),
  choiceField('footing', 'footing', FOOTING_KINDS, NULLABLE),
  quantityField('footingDiameterM', 'footing_diameter', DIMENSIONS.shortLength, RANGES.footingDiameterM, NULLABLE),
  ...woodFields('other').map(byKind),
  positionsField,
  quantityField('postSpacingM', 'post_spacing', DIMENSIONS.length, RANGES.postSpacingM, NULLABLE),
];
