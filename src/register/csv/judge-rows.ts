import type { CalendarDay } from '../../units/calendar-day.ts';
import { RECORD_KINDS, type RecordKind, type RecordOf, type RegisterDb, storedRow } from '../record-store.ts';
import { checkCrewMember, checkDayOff } from './crew-checks.ts';
import { type Candidates, checkInspection, checkOutcome, checkReading } from './evidence-checks.ts';
import { checkFence, checkPost, checkSite, checkWorks, checkWorksFence, type ReplacedNames } from './import-checks.ts';
import { type ImportFile, namingColumn, rowName } from './import-file.ts';
import type { FoundChanges, ImportRemark, KindCounts, RecordChange } from './import-report.ts';
import { type ImportRow, importRow, leftOutRemark, type RemarkSink, readImportRow } from './import-row.ts';
import { overlay, type RegisterView, recordName, registerView } from './register-view.ts';
import { warnOfShrinkingDepths } from './shrinking-depths.ts';
import { checkOutcomes, warnOfBroken } from './stood-or-broken.ts';

/** How the rows of an import are judged. */
export interface JudgeOptions {
  /** Nothing may have been done after it. */
  readonly today: CalendarDay;
  /** What becomes of a row that leaves a question open, as an outcome that may not be so; it is warned of unless told otherwise. */
  readonly questions?: 'warn' | 'refuse';
  /**
   * Refs of the only fences that the files bring evidence of, inspections and readings new or known of no other fence: what is
   * stored of all others is then not even read. Everything where left out.
   */
  readonly evidenceOf?: readonly string[];
  readonly onProgress?: (done: number, total: number) => void;
}

/** What the rows of an import came to, before anything is written. */
export interface JudgedRows extends FoundChanges {
  readonly countsOfFile: ReadonlyMap<string, KindCounts>;
  readonly warnings: readonly ImportRemark[];
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
  readonly options: JudgeOptions;
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

function ticker(files: readonly ImportFile[], onProgress: JudgeOptions['onProgress']): () => void {
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

/** Judges the rows of all files against the register, kind by kind, in the order in which kinds refer to each other. Nothing is written. */
export async function judgeRows(
  db: RegisterDb,
  files: readonly ImportFile[],
  options: JudgeOptions,
): Promise<JudgedRows> {
  const none = (): Counts => ({ created: 0, changed: 0, unchanged: 0, refused: 0 });
  const intake: Intake = {
    options,
    files,
    view: await registerView(db, options.evidenceOf ?? null),
    replaced: namesInFiles(files),
    faults: files.flatMap((file) => file.faults),
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
  const { counts, countsOfFile, changes, faults, warnings, toWrite: records, replacedRecords: replaced } = intake;
  return { counts, countsOfFile, changes, faults, warnings, records, replaced };
}
