import type { ExportUnits } from '../register/csv/csv-field.ts';
import { unitsOfRow } from '../register/csv/export-csv.ts';
import type { FileCounts, ImportRemark, ImportReport } from '../register/csv/import-report.ts';
import { recordName } from '../register/csv/register-view.ts';
import type { Register } from '../register/database.ts';
import type { DraftFile } from '../register/import-draft-store.ts';
import { RECORD_KINDS, type RecordKind, type RecordOf } from '../register/record-store.ts';
import { previewImport } from './import-files.ts';
import type { TaskContext } from './task-context.ts';

/** Of a long list so many are shown: records that change, refused or doubtful rows, new records of a kind. */
const MOST_CHANGED = 400;
const MOST_REMARKS = 500;
const MOST_NAMES = 60;

/** The first of a list that may be long, and how long it is. */
export interface FirstOf<T> {
  readonly first: readonly T[];
  readonly total: number;
}

/** A record that an import changes, before and after, and the units in which it is shown. */
export type ChangedPair = {
  readonly [K in RecordKind]: {
    readonly kind: K;
    readonly before: RecordOf[K];
    readonly after: RecordOf[K];
    readonly units: ExportUnits;
  };
}[RecordKind];

/** What files would do to the register, as much of it as a page shows. */
export interface ImportLook {
  /** Print of it, for the import that is to do just this. */
  readonly print: string;
  readonly files: readonly FileCounts[];
  readonly faults: FirstOf<ImportRemark>;
  readonly warnings: FirstOf<ImportRemark>;
  /** Names of the files of which rows are refused. */
  readonly rejected: readonly string[];
  readonly changed: FirstOf<ChangedPair>;
  /** The names of new records, by kind. */
  readonly created: ReadonlyMap<RecordKind, FirstOf<string>>;
}

const firstOf = <T>(all: readonly T[], most: number): FirstOf<T> => ({ first: all.slice(0, most), total: all.length });

/** The changed records, in the order of the kinds, with the units of their sites. */
async function changedPairs({ db }: Register, { records, replaced }: ImportReport): Promise<FirstOf<ChangedPair>> {
  const pairs: ChangedPair[] = [];
  const take = async <K extends RecordKind>(kind: K): Promise<void> => {
    const after = new Map(records[kind].map((record) => [recordName(kind, record), record]));
    const wanted = replaced[kind].slice(0, MOST_CHANGED - pairs.length);
    if (wanted.length === 0) return;
    const unitsOf = await unitsOfRow(db, kind);
    for (const before of wanted) {
      const is = after.get(recordName(kind, before));
      if (!is) continue;
      const units = unitsOf(is);
      pairs.push({ kind, before, after: is, units } as unknown as ChangedPair);
    }
  };
  for (const kind of RECORD_KINDS) await take(kind);
  return { first: pairs, total: RECORD_KINDS.reduce((sum, kind) => sum + replaced[kind].length, 0) };
}

function createdNames({ changes }: ImportReport): ImportLook['created'] {
  const names = new Map<RecordKind, string[]>();
  for (const { kind, ref, change } of changes) {
    if (change !== 'created') continue;
    const known = names.get(kind);
    if (known) known.push(ref);
    else names.set(kind, [ref]);
  }
  return new Map([...names].map(([kind, all]) => [kind, firstOf(all, MOST_NAMES)]));
}

/** Looks what files would do; nothing is written. */
export async function lookAtImport(context: TaskContext, files: readonly DraftFile[]): Promise<ImportLook> {
  const { report, print } = await previewImport(context, files);
  return {
    print,
    files: report.files,
    faults: firstOf(report.faults, MOST_REMARKS),
    warnings: firstOf(report.warnings, MOST_REMARKS),
    rejected: report.rejected.map(({ name }) => name),
    changed: await changedPairs(context.register, report),
    created: createdNames(report),
  };
}

/** The refused rows of the file that stands at the index in `ImportLook.rejected`, as CSV with reasons; null where none does. */
export async function refusedRowsOf(
  context: TaskContext,
  files: readonly DraftFile[],
  index: number,
): Promise<ImportReport['rejected'][number] | null> {
  const { report } = await previewImport(context, files);
  return report.rejected[index] ?? null;
}
