import type { ExportUnits } from '../../register/csv/csv-field.ts';
import type { RecordsByKind } from '../../register/csv/import-report.ts';
import { plainCells, recordCells } from '../../register/csv/record-cells.ts';
import { recordName } from '../../register/csv/register-view.ts';
import { RECORD_KINDS, type RecordKind, type RecordOf } from '../../register/record-store.ts';
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

/** The changed records of an import, with their fields, and the names of the new ones. */
export function changesOf(
  found: { readonly records: RecordsByKind; readonly replaced: RecordsByKind },
  unitsOf: <K extends RecordKind>(kind: K, record: RecordOf[K]) => ExportUnits,
): { readonly changed: readonly ChangedRecord[]; readonly created: ReadonlyMap<RecordKind, readonly string[]> } {
  const changed: ChangedRecord[] = [];
  const created = new Map<RecordKind, string[]>();
  const take = <K extends RecordKind>(kind: K): void => {
    const before = new Map(found.replaced[kind].map((record) => [recordName(kind, record), record]));
    for (const after of found.records[kind]) {
      const name = recordName(kind, after);
      const was = before.get(name);
      if (was) changed.push({ kind, name, fields: changedFields(kind, was, after, unitsOf(kind, after)) });
      else (created.get(kind) ?? created.set(kind, []).get(kind))?.push(name);
    }
  };
  for (const kind of RECORD_KINDS) take(kind);
  return { changed, created };
}
