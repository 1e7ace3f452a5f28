import { INSPECTION_METHODS } from '../../forecast/evidence/inspection.ts';
import type { CsvField } from './csv-field.ts';
import { choiceField, dayField, evidenceRefField, refField, textField } from './value-fields.ts';

/** Columns of inspections. */
export const INSPECTION_FIELDS: readonly CsvField[] = [
  evidenceRefField('ref', 'ref'),
  refField('fenceRef', 'fence'),
  dayField('day', 'day', 'enter an inspection once it is made'),
  textField('inspector', 'inspector'),
  textField('qualification', 'qualification', { fallback: '' }),
  choiceField('method', 'method', INSPECTION_METHODS),
  textField('instrument', 'instrument', { fallback: '' }),
  textField('notes', 'notes', { fallback: '' }),
];
