import { MEASURED_KINDS, MEASURED_RANGES, type MeasuredKind } from '../reading-record.ts';
import { RANGES } from '../value-ranges.ts';
import type { CsvField, Draft } from './csv-field.ts';
import { DIMENSIONS } from './quantity-column.ts';
import { evidenceRefField, numberField, quantityField, textField, yesNoField } from './value-fields.ts';

const NULLABLE = { fallback: null };

/** A column of its own for each kind of number, so that a depth is never taken for a width: `depth_in`, `residual_width_in`. */
const MEASURED_FIELDS = MEASURED_KINDS.map((kind) => ({
  kind,
  field: quantityField(kind, kind.replaceAll('-', '_'), DIMENSIONS.thickness, MEASURED_RANGES[kind], NULLABLE),
}));
const BROKEN_FIELD = yesNoField('broken', 'broken', NULLABLE);

/** What was found at the groundline: a number under one of its columns, or broken, or nothing. */
const groundlineField: CsvField = {
  keys: ['groundlineKind', 'groundlineMm'],
  columns: [...MEASURED_FIELDS.flatMap(({ field }) => field.columns), 'broken'],
  required: false,
  column: (units) => (units === 'us' ? 'depth_in' : 'depth_mm'),
  read: (row, draft) => {
    const read: Draft = {};
    for (const { field } of MEASURED_FIELDS) field.read(row, read);
    BROKEN_FIELD.read(row, read);
    const given = MEASURED_FIELDS.filter(({ kind }) => kind in read);
    const filled = given.flatMap(({ field }) => field.columns.filter((column) => row.cell(column) !== '').slice(0, 1));
    if (read.broken === true) filled.push('broken');
    const [first, second] = filled;
    if (first === undefined) return;
    if (second !== undefined) {
      row.refuse(
        second,
        `given beside ${first}; a reading says one thing of the groundline: a depth lost, a width or girth left, sound or soft to a depth, or broken. Fill in one of them`,
      );
    }
    const kind = given[0]?.kind ?? null;
    Object.assign(
      draft,
      kind === null
        ? { groundlineKind: 'broken', groundlineMm: null }
        : { groundlineKind: kind, groundlineMm: read[kind] },
    );
  },
  settle: () => ({ groundlineKind: null, groundlineMm: null }),
  write: ({ groundlineKind: kind, groundlineMm }, units) => {
    if (kind === 'broken') return { broken: 'yes' };
    const measured = MEASURED_FIELDS.find((each) => each.kind === (kind as MeasuredKind | null));
    return measured ? measured.field.write({ [measured.kind]: groundlineMm }, units) : {};
  },
};

/** Columns of readings. */
export const READING_FIELDS: readonly CsvField[] = [
  evidenceRefField('inspectionRef', 'inspection'),
  numberField('post', 'post', RANGES.postNumber, { whole: true }),
  groundlineField,
  quantityField('cavityMm', 'cavity', DIMENSIONS.thickness, RANGES.cavityMm, NULLABLE),
  numberField('leanDegrees', 'lean_degrees', RANGES.leanDegrees, NULLABLE),
  yesNoField('collarCracked', 'collar_cracked', NULLABLE),
  numberField('railConnection', 'rail_connection', RANGES.railConnection, NULLABLE),
  quantityField('trimmerCutMm', 'trimmer_cut', DIMENSIONS.thickness, RANGES.trimmerCutMm, NULLABLE),
  yesNoField('closedOff', 'closed_off', { fallback: false }),
  yesNoField('sure', 'sure', { fallback: false }),
  textField('notes', 'notes', { fallback: '' }),
];
