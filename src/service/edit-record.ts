import { type ImportOptions, importCsv } from '../register/csv/import-csv.ts';
import type { ImportRemark, ImportReport } from '../register/csv/import-report.ts';
import { csvOfCells, type RowCells } from '../register/csv/record-cells.ts';
import { recordName } from '../register/csv/register-view.ts';
import type { Register } from '../register/database.ts';
import { noteEdit } from '../register/record-edit-store.ts';
import { recordKeyOf } from '../register/record-key.ts';
import { type RecordKind, type RecordOf, type RegisterDb, recordOfKey, storedRow } from '../register/record-store.ts';
import { readSettings } from '../register/settings-store.ts';
import { canonicalJson, sha256 } from './canonical-json.ts';
import { type Clock, dayInZone, isoUtc } from './clock.ts';

/** Rows of one kind as a person filled them in. */
export interface FilledRows {
  readonly kind: RecordKind;
  readonly rows: readonly RowCells[];
}

/** Who changes records, and when. */
export interface Editing {
  readonly clock: Clock;
  /** Name of the account. */
  readonly by: string;
  /** True where what is to be confirmed is taken as it is. */
  readonly sure: boolean;
}

/** What a record says, in short: another one where anything of it changed. */
export const recordPrint = <K extends RecordKind>(kind: K, record: RecordOf[K]): string =>
  sha256(canonicalJson(storedRow(kind, record)));

/** The record of a name within its kind; null where there is none. */
export async function recordNamed<K extends RecordKind>(
  register: Register,
  kind: K,
  name: string,
): Promise<RecordOf[K] | null> {
  const key = recordKeyOf(kind, name);
  return key && recordOfKey(register.db, kind, key);
}

/** Notes, within the transaction of an import, who changed the records of some kinds and how they were before. */
export const notingEdits =
  (kinds: readonly RecordKind[], { at, by }: { readonly at: string; readonly by: string }) =>
  async (db: RegisterDb, { records, replaced }: Pick<ImportReport, 'records' | 'replaced'>): Promise<void> => {
    const note = async <K extends RecordKind>(kind: K): Promise<void> => {
      const before = new Map(replaced[kind].map((record) => [recordName(kind, record), record]));
      for (const after of records[kind]) {
        const ref = recordName(kind, after);
        await noteEdit(db, { at, by, kind, ref, before: before.get(ref) ?? null, after });
      }
    };
    for (const kind of new Set(kinds)) await note(kind);
  };

/**
 * Enters rows that a person filled in, by the records and checks of an import, all or none, and notes who did it. File names in the
 * report are the kinds, with the first row on line 2.
 */
export async function enterRows(
  register: Register,
  filled: readonly FilledRows[],
  editing: Editing,
  options: Pick<ImportOptions, 'onlyIf'> = {},
): Promise<ImportReport> {
  const { timeZone } = await readSettings(register.db);
  const now = editing.clock();
  const files = filled
    .filter(({ rows }) => rows.length > 0)
    .map(({ kind, rows }) => ({ name: `${kind}.csv`, text: csvOfCells(kind, rows) }));
  return importCsv(register, files, {
    acceptValid: false,
    dryRun: false,
    today: dayInZone(now, timeZone),
    now: isoUtc(now),
    questions: editing.sure ? 'warn' : 'refuse',
    ...options,
    afterwards: notingEdits(
      filled.map(({ kind }) => kind),
      { at: isoUtc(now), by: editing.by },
    ),
  });
}

/** One record as a form sent it. */
export interface EditedRecord<K extends RecordKind> {
  readonly kind: K;
  readonly cells: RowCells;
  /** Print of the record that the form was filled with; null where the form was for a new one. */
  readonly opened: string | null;
}

/** What came of an edit. */
export type EditOutcome<K extends RecordKind> =
  | {
      readonly kind: 'saved';
      readonly name: string;
      readonly before: RecordOf[K] | null;
      /** Null where nothing was different. */
      readonly after: RecordOf[K] | null;
      readonly warnings: readonly ImportRemark[];
    }
  | { readonly kind: 'refused'; readonly faults: readonly ImportRemark[]; readonly warnings: readonly ImportRemark[] }
  /** Somebody changed the record since the form was opened, or made one of that name: nothing was written. */
  | { readonly kind: 'changed meanwhile'; readonly now: RecordOf[K] };

/**
 * Makes or changes one record by the checks of an import. Where the record is no longer what the form was filled with, nothing is
 * written and the record as it is now comes back.
 */
export async function editRecord<K extends RecordKind>(
  register: Register,
  edited: EditedRecord<K>,
  editing: Editing,
): Promise<EditOutcome<K>> {
  const { kind, cells, opened } = edited;
  let met: RecordOf[K] | null = null;
  const report = await enterRows(register, [{ kind, rows: [cells] }], editing, {
    onlyIf: ({ replaced }) => {
      const [before] = replaced[kind];
      if (before === undefined || (opened !== null && recordPrint(kind, before) === opened)) return true;
      met = before;
      return false;
    },
  });
  if (met !== null) return { kind: 'changed meanwhile', now: met };
  const { faults, warnings } = report;
  if (faults.length > 0) return { kind: 'refused', faults, warnings };
  const [after] = report.records[kind];
  return {
    kind: 'saved',
    name: after === undefined ? '' : recordName(kind, after),
    before: report.replaced[kind][0] ?? null,
    after: after ?? null,
    warnings,
  };
}
