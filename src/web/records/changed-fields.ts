import type { ExportUnits } from '../../register/csv/csv-field.ts';
import { plainCells, recordCells } from '../../register/csv/record-cells.ts';
import { recordName } from '../../register/csv/register-view.ts';
import type { RecordKind, RecordOf } from '../../register/record-store.ts';
import type { ChangedPair } from '../../service/import-look.ts';
import { columnLabel } from './column-words.ts';

/** One field of a record that becomes another. */
export interface ChangedField {
  readonly label: string;
  readonly before: string;
  readonly after: string;
}

/** One record with what becomes of its fields. */
export interface ChangedRecord {
  readonly kind: RecordKind;
  readonly name: string;
  readonly fields: readonly ChangedField[];
}

/** What differs between a record before and after, field by field, as its file would say it. */
export function changedFields<K extends RecordKind>(
  kind: K,
  before: RecordOf[K],
  after: RecordOf[K],
  units: ExportUnits,
): readonly ChangedField[] {
  const [was, is] = [before, after].map((record) => plainCells(kind, recordCells(kind, record, units)));
  if (!was || !is) return [];
  const columns = [...new Set([...Object.keys(was), ...Object.keys(is)])];
  return columns
    .filter((column) => (was[column] ?? '') !== (is[column] ?? ''))
    .map((column) => ({ label: columnLabel(kind, column), before: was[column] ?? '', after: is[column] ?? '' }));
}

/** A record that an import changes, with its fields. */
export function changedRecord(pair: ChangedPair): ChangedRecord {
  const { kind, after, units } = pair;
  const fieldsOf = <K extends RecordKind>(of: K): readonly ChangedField[] =>
    changedFields(of, pair.before as RecordOf[K], after as RecordOf[K], units);
  return { kind, name: recordName(kind, after), fields: fieldsOf(kind) };
}
