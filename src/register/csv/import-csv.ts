import type { CalendarDay } from '../../units/calendar-day.ts';
import type { Register } from '../database.ts';
import { inTransaction } from '../in-transaction.ts';
import { holdLargeImport } from '../large-import.ts';
import {
  RECORD_KINDS,
  type RecordKind,
  type RecordOf,
  type RegisterDb,
  storedRow,
  upsertRecords,
} from '../record-store.ts';
import { checkCrewMember, checkDayOff } from './crew-checks.ts';
import { type Candidates, checkInspection, checkOutcome, checkReading } from './evidence-checks.ts';
import { checkFence, checkPost, checkSite, checkWorks, checkWorksFence, type ReplacedNames } from './import-checks.ts';
import { type ImportFile, namingColumn, openImportFile, rowName, type SentFile } from './import-file.ts';
import type { ImportRemark, ImportReport, KindCounts, RecordChange, RecordsByKind } from './import-report.ts';
import { type ImportRow, importRow, leftOutRemark, type RemarkSink, readImportRow } from './import-row.ts';
import { overlay, type RegisterView, recordName, registerView } from './register-view.ts';
import { rejectedFiles } from './rejected-rows.ts';
import { warnOfShrinkingDepths } from './shrinking-depths.ts';
import { checkOutcomes, warnOfBroken } from './stood-or-broken.ts';

/** How an import is to go about it. */
export interface ImportOptions {
  /** True: keep the good rows and hand the bad ones back; false: one fault and nothing is written. */
  readonly acceptValid: boolean;
  /** True: only say what would be created or changed. */
  readonly dryRun: boolean;
  /** Nothing may have been done after it. */
  readonly today: CalendarDay;
  /** Moment of writing, ISO 8601. */
  readonly now: string;
  /** What becomes of a row that leaves a question open, as an outcome that may not be so; it is warned of unless told otherwise. */
  readonly questions?: 'warn' | 'refuse';
  /**
   * Refs of the only fences that the files bring evidence of, inspections and readings new or known of no other fence: what is
   * stored of all others is then not even read. Everything where left out.
   */
  readonly evidenceOf?: readonly string[];
  readonly onProgress?: (done: number, total: number) => void;
  /** Asked before anything is written, in the same transaction; false: nothing is. */
  readonly onlyIf?: (found: FoundChanges) => boolean;
  /** Done after the rows were written, in the same transaction; what it throws undoes them. */
  readonly afterwards?: (db: RegisterDb, found: FoundChanges) => Promise<void>;
}

/** What an import has found before it writes. */
export interface FoundChanges {
  readonly counts: ImportReport['counts'];
  readonly changes: readonly RecordChange[];
  readonly faults: readonly ImportRemark[];
  readonly records: RecordsByKind;
  readonly replaced: RecordsByKind;
}

/** Records by kind, while they are gathered. */
type RecordLists = { [K in RecordKind]: RecordOf[K][] };

const noRecords = (): RecordLists => ({
  owners: [],
  'climate-zones': [],
  'storm-seasons': [],
  sites: [],
  fences: [],
  posts: [],
  works: [],
  inspections: [],
  readings: [],
  outcomes: [],
  catalogue: [],
  materials: [],
  crews: [],
  'crew-members': [],
  'days-off': [],
});

type Counts = { -readonly [K in keyof KindCounts]: number };

/** Everything an import gathers on its way. */
interface Intake extends RemarkSink {
  readonly options: ImportOptions;
  readonly files: readonly ImportFile[];
  readonly view: RegisterView;
  readonly replaced: ReplacedNames;
  readonly changes: RecordChange[];
  readonly counts: Record<RecordKind, Counts>;
  readonly countsOfFile: ReadonlyMap<string, Counts>;
  readonly toWrite: RecordLists;
  readonly replacedRecords: RecordLists;
  readonly tick: () => void;
}

const PROGRESS_EVERY_ROWS = 200;

function ticker(files: readonly ImportFile[], onProgress: ImportOptions['onProgress']): () => void {
  const total = files.reduce((sum, file) => sum + file.rows.length, 0);
  let done = 0;
  return () => {
    done += 1;
    if (onProgress && (done % PROGRESS_EVERY_ROWS === 0 || done === total)) onProgress(done, total);
  };
}

/** Which stored records the rows of the files replace. */
function namesInFiles(files: readonly ImportFile[]): ReplacedNames {
  const names = (kind: RecordKind): ReadonlySet<string> =>
    new Set(files.filter((file) => file.kind === kind).flatMap((file) => file.rows.map((row) => rowName(file, row))));
  return {
    posts: names('posts'),
    works: names('works'),
    inspections: names('inspections'),
    readings: names('readings'),
    outcomes: names('outcomes'),
    daysOff: names('days-off'),
  };
}

type RowCheck<K extends RecordKind> = (
  row: ImportRow,
  record: RecordOf[K],
  view: RegisterView,
  replaced: ReplacedNames,
) => boolean;

/** What the rows of each kind are judged by beyond their own record. */
const CHECKS: { readonly [K in RecordKind]?: RowCheck<K> } = {
  sites: checkSite,
  fences: checkFence,
  posts: checkPost,
  works: checkWorksFence,
  inspections: checkInspection,
  readings: checkReading,
  outcomes: checkOutcome,
  'crew-members': checkCrewMember,
  'days-off': checkDayOff,
};

type GroupCheck<K extends RecordKind> = (
  candidates: Candidates<RecordOf[K]>,
  view: RegisterView,
  replaced: ReplacedNames,
  questions: 'warn' | 'refuse',
) => ReadonlySet<string>;

/** What the rows of a kind are judged by together, once each was found sound: gives the names of those refused. */
const GROUP_CHECKS: { readonly [K in RecordKind]?: GroupCheck<K> } = { works: checkWorks, outcomes: checkOutcomes };

/** Reads a row and judges it against the register; null where it is refused. */
function takeRow<K extends RecordKind>(intake: Intake, kind: K, row: ImportRow, name: string): RecordOf[K] | null {
  const { view, options, replaced } = intake;
  const existing = (view[kind] as unknown as ReadonlyMap<string, RecordOf[K]>).get(name) ?? null;
  const record = readImportRow(kind, row, options.today, existing);
  if (record === null) return null;
  const check: RowCheck<K> | undefined = CHECKS[kind];
  return !check || check(row, record, view, replaced) ? record : null;
}

function count(intake: Intake, file: ImportFile, what: keyof Counts, number: number): void {
  intake.counts[file.kind][what] += number;
  const ofFile = intake.countsOfFile.get(file.name);
  if (ofFile) ofFile[what] += number;
}

function settle<K extends RecordKind>(intake: Intake, kind: K, record: RecordOf[K], file: ImportFile): void {
  const { view, changes, toWrite } = intake;
  const name = recordName(kind, record);
  const existing = (view[kind] as unknown as ReadonlyMap<string, RecordOf[K]>).get(name);
  overlay(view, kind, record);
  const row = storedRow(kind, record);
  const before = existing ? storedRow(kind, existing) : null;
  const columns = before ? Object.keys(row).filter((column) => row[column] !== before[column]) : [];
  if (before && columns.length === 0) {
    count(intake, file, 'unchanged', 1);
    return;
  }
  const change = before ? 'changed' : 'created';
  count(intake, file, change, 1);
  changes.push({ kind, ref: name, change, columns });
  toWrite[kind].push(record);
  if (existing) intake.replacedRecords[kind].push(existing);
}

function takeKind<K extends RecordKind>(intake: Intake, kind: K): void {
  const taken = new Map<string, { readonly row: ImportRow; readonly record: RecordOf[K] }>();
  const firstLine = new Map<string, string>();
  const groupCheck: GroupCheck<K> | undefined = GROUP_CHECKS[kind];
  for (const file of intake.files.filter((each) => each.kind === kind)) {
    for (const each of file.rows) {
      intake.tick();
      const name = rowName(file, each);
      const place = `line ${each.line} of ${file.name}`;
      if (file.faults.length > 0) {
        intake.view.refusedRows.get(kind)?.set(name, place);
        continue;
      }
      const row = importRow(file, each, intake);
      const seen = firstLine.get(name);
      if (seen !== undefined && name !== '') {
        row.refuse(namingColumn(kind), `the ${namingColumn(kind)} is already on ${seen}; keep one of the rows`);
        continue;
      }
      firstLine.set(name, place);
      const record = takeRow(intake, kind, row, name);
      if (record === null) {
        intake.view.refusedRows.get(kind)?.set(name, place);
        continue;
      }
      taken.set(recordName(kind, record), { row, record });
      if (!groupCheck) settle(intake, kind, record, file);
    }
  }
  if (kind === 'readings') {
    const readings = taken as unknown as Candidates<RecordOf['readings']>;
    warnOfShrinkingDepths(readings, intake.view);
    warnOfBroken(readings, intake.view, intake.replaced);
  }
  if (!groupCheck) return;
  const refused = groupCheck(taken, intake.view, intake.replaced, intake.options.questions ?? 'warn');
  for (const [name, { record, row }] of taken) if (!refused.has(name)) settle(intake, kind, record, row.file);
}

function countRefused(intake: Intake): void {
  for (const file of intake.files) {
    const ofFile = intake.faults.filter((fault) => fault.file === file.name);
    const lines = new Set(ofFile.flatMap(({ line, lines: several }) => several ?? [line]));
    const refused = file.faults.length > 0 ? file.rows : file.rows.filter(({ line }) => lines.has(line));
    count(intake, file, 'refused', refused.length);
  }
}

async function run(
  db: RegisterDb,
  files: readonly ImportFile[],
  unopened: readonly ImportRemark[],
  options: ImportOptions,
) {
  const none = (): Counts => ({ created: 0, changed: 0, unchanged: 0, refused: 0 });
  const intake: Intake = {
    options,
    files,
    view: await registerView(db, options.evidenceOf ?? null),
    replaced: namesInFiles(files),
    faults: [...unopened, ...files.flatMap((file) => file.faults)],
    warnings: [],
    leftOut: new Map(),
    changes: [],
    counts: Object.fromEntries(RECORD_KINDS.map((kind) => [kind, none()])) as Record<RecordKind, Counts>,
    countsOfFile: new Map(files.map((file) => [file.name, none()])),
    toWrite: noRecords(),
    replacedRecords: noRecords(),
    tick: ticker(files, options.onProgress),
  };
  for (const kind of RECORD_KINDS) takeKind(intake, kind);
  intake.faults.push(...[...intake.leftOut.values()].map(leftOutRemark));
  countRefused(intake);
  const { changes, faults, toWrite: records, replacedRecords: replaced } = intake;
  const found: FoundChanges = { counts: intake.counts, changes, faults, records, replaced };
  const wanted = !options.dryRun && (options.acceptValid || intake.faults.length === 0);
  const applied = wanted && (options.onlyIf?.(found) ?? true);
  if (applied) {
    const write = <K extends RecordKind>(kind: K) => upsertRecords(db, kind, intake.toWrite[kind], options.now);
    for (const kind of RECORD_KINDS) await write(kind);
    await options.afterwards?.(db, found);
  }
  const created = intake.changes.filter(({ kind, change }) => kind === 'fences' && change === 'created');
  const held = applied
    ? await holdLargeImport(
        db,
        created.map(({ ref }) => ref),
        options.now,
      )
    : 0;
  return { intake, applied, held };
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
  files: readonly SentFile[],
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
  const { intake, applied, held } = await inTransaction(register.db, (tx) => run(tx, sound, unopened, options));
  return {
    applied,
    dryRun: options.dryRun,
    counts: intake.counts,
    files: sound.map(({ name, kind }) => ({ name, kind, ...intake.countsOfFile.get(name)! })),
    changes: intake.changes,
    records: intake.toWrite,
    replaced: intake.replacedRecords,
    fencesHeld: held,
    faults: inOrder(intake.faults),
    warnings: inOrder(intake.warnings),
    rejected: rejectedFiles(sound, intake.faults),
  };
}
