import type { Register } from '../database.ts';
import { inSnapshot, inTransaction } from '../in-transaction.ts';
import { holdLargeImport } from '../large-import.ts';
import { RECORD_KINDS, type RecordKind, type RegisterDb, upsertRecords } from '../record-store.ts';
import { changeCount } from '../register-changes.ts';
import { type ImportFile, openImportFile } from './import-file.ts';
import type { FoundChanges, ImportRemark, ImportReport } from './import-report.ts';
import { type JudgedRows, type JudgeOptions, judgeRows } from './judge-rows.ts';
import { rejectedFiles } from './rejected-rows.ts';

/** How an import is to go about it. */
export interface ImportOptions extends JudgeOptions {
  /** True: keep the good rows and hand the bad ones back; false: one fault and nothing is written. */
  readonly acceptValid: boolean;
  /** True: only say what would be created or changed. */
  readonly dryRun: boolean;
  /** Moment of writing, ISO 8601. */
  readonly now: string;
  /** Asked before anything is written, in the same transaction; false: nothing is. */
  readonly onlyIf?: (found: FoundChanges) => boolean;
  /** Done after the rows were written, in the same transaction; what it throws undoes them. */
  readonly afterwards?: (db: RegisterDb, found: FoundChanges) => Promise<void>;
}

/** Kinds whose changes are not counted, since no forecast depends on them. */
const UNCOUNTED: readonly RecordKind[] = ['catalogue', 'materials', 'crews', 'crew-members', 'days-off'];

/** What came of the rows of the files that could be opened. */
interface Ended {
  readonly judged: JudgedRows;
  readonly applied: boolean;
  /** New fences whose first notices wait. */
  readonly held: number;
}

async function write(db: RegisterDb, judged: JudgedRows, options: ImportOptions): Promise<Ended> {
  if (!(options.onlyIf?.(judged) ?? true)) return { judged, applied: false, held: 0 };
  const ofKind = <K extends RecordKind>(kind: K) => upsertRecords(db, kind, judged.records[kind], options.now);
  for (const kind of RECORD_KINDS) await ofKind(kind);
  await options.afterwards?.(db, judged);
  const created = judged.changes.filter(({ kind, change }) => kind === 'fences' && change === 'created');
  const held = await holdLargeImport(
    db,
    created.map(({ ref }) => ref),
    options.now,
  );
  return { judged, applied: true, held };
}

/**
 * Judges the rows with no lock taken, which may take long, and writes them in a transaction that is as short as can be; where
 * a record changed in between, or may have, they are judged again within it.
 */
async function run(
  db: RegisterDb,
  files: readonly ImportFile[],
  unopened: readonly ImportRemark[],
  options: ImportOptions,
): Promise<Ended> {
  const judge = async (tx: RegisterDb) => {
    const judged = await judgeRows(tx, files, options);
    return { judged: { ...judged, faults: [...unopened, ...judged.faults] }, at: await changeCount(tx) };
  };
  const isWanted = ({ faults }: JudgedRows): boolean => !options.dryRun && (options.acceptValid || faults.length === 0);
  const { judged, at } = await inSnapshot(db, judge);
  if (!isWanted(judged)) return { judged, applied: false, held: 0 };
  return inTransaction(db, async (tx) => {
    const isSure = files.every(({ kind }) => !UNCOUNTED.includes(kind)) && (await changeCount(tx)) === at;
    const still = isSure ? judged : (await judge(tx)).judged;
    return isWanted(still) ? write(tx, still, options) : { judged: still, applied: false, held: 0 };
  });
}

const namedTwice = (file: string): ImportRemark => ({
  file,
  line: 1,
  column: '',
  value: '',
  reason: 'a file of this name is given twice; give it once, or rename one',
});

/**
 * Imports CSV files of any kinds, in any order, in one transaction (the caller's where one is open): records are created or changed by ref (posts by fence
 * and number, readings by inspection and post, the catalogue by kind, materials by kind and name). With a fault nothing is written, unless the good rows are to be kept; those that depend on a refused row
 * are refused with it. Never throws for what a file holds: see the report's faults.
 */
export async function importCsv(
  register: Register,
  files: readonly { readonly name: string; readonly text: string }[],
  options: ImportOptions,
): Promise<ImportReport> {
  const names = files.map((file) => file.name);
  const opened = files.map((file, index) =>
    names.indexOf(file.name) === index ? openImportFile(file) : namedTwice(file.name),
  );
  const inOrder = (remarks: readonly ImportRemark[]): readonly ImportRemark[] =>
    [...remarks].sort((a, b) => names.indexOf(a.file) - names.indexOf(b.file) || a.line - b.line);
  const sound = opened.filter((file): file is ImportFile => 'kind' in file);
  const unopened = opened.filter((file): file is ImportRemark => !('kind' in file));
  const { judged, applied, held } = await run(register.db, sound, unopened, options);
  return {
    applied,
    dryRun: options.dryRun,
    counts: judged.counts,
    files: sound.map(({ name, kind }) => ({ name, kind, ...judged.countsOfFile.get(name)! })),
    changes: judged.changes,
    records: judged.records,
    replaced: judged.replaced,
    fencesHeld: held,
    faults: inOrder(judged.faults),
    warnings: inOrder(judged.warnings),
    rejected: rejectedFiles(sound, judged.faults),
  };
}
