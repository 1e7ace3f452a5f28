import { RECORD_KINDS, type RecordKind } from '../record-store.ts';
import { type CsvRow, parseCsv } from './csv-text.ts';
import type { ImportRemark } from './import-report.ts';
import { nearestName } from './nearest-name.ts';
import { RECORD_FIELDS, TELLING_COLUMNS } from './record-columns.ts';
import { unguardText } from './text-cell.ts';

/** Column that refused rows come back with; passed over when they are imported again. */
export const REASONS_COLUMN = 'reasons';
/** A header with more faults than this is another file; the first ones say so. */
const MOST_HEADER_FAULTS = 20;

/** A file whose kind and columns are known. */
export interface ImportFile {
  readonly name: string;
  readonly kind: RecordKind;
  readonly header: readonly string[];
  /** Where each column stands in a row. */
  readonly positions: ReadonlyMap<string, number>;
  readonly rows: readonly CsvRow[];
  /** Faults of the file as a whole: none of its rows is taken. */
  readonly faults: readonly ImportRemark[];
}

const columnsOf = (kind: RecordKind): ReadonlySet<string> =>
  new Set(RECORD_FIELDS[kind].flatMap((field) => field.columns));

function kindOf(name: string, header: readonly string[]): RecordKind | null {
  const named = RECORD_KINDS.find((kind) => name.toLowerCase().replaceAll('_', '-').includes(kind)) ?? null;
  const present = new Set(header);
  const candidates = RECORD_KINDS.filter((kind) => TELLING_COLUMNS[kind].every((column) => present.has(column)));
  const known = (kind: RecordKind): number => {
    const columns = columnsOf(kind);
    return header.filter((column) => columns.has(column)).length;
  };
  const most = Math.max(...candidates.map(known));
  const best = candidates.filter((kind) => known(kind) === most);
  return best.find((kind) => kind === named) ?? best[0] ?? named;
}

function headerFaults(kind: RecordKind, header: readonly string[]): readonly Omit<ImportRemark, 'file' | 'line'>[] {
  const known = columnsOf(kind);
  const faults: Omit<ImportRemark, 'file' | 'line'>[] = [];
  const seen = new Set<string>();
  for (const column of header) {
    if (faults.length >= MOST_HEADER_FAULTS) break;
    if (column === REASONS_COLUMN) continue;
    if (column === '') faults.push({ column: '', value: '', reason: 'a column without a name; name it or remove it' });
    else if (seen.has(column)) faults.push({ column, value: '', reason: 'the column is there twice; keep one' });
    else if (!known.has(column)) {
      const near = nearestName(column, known);
      const wayOut = near ? `; did you mean ${near}?` : '; remove it';
      faults.push({ column, value: '', reason: `${kind} have no such column${wayOut}` });
    }
    seen.add(column);
  }
  for (const field of RECORD_FIELDS[kind]) {
    if (!field.required || field.columns.some((column) => seen.has(column))) continue;
    const names = field.columns.length === 1 ? field.columns[0]! : `one of ${field.columns.join(', ')}`;
    faults.push({ column: field.column('us'), value: '', reason: `${kind} need the column; add ${names}` });
  }
  return faults;
}

/** Kinds whose records have no ref of their own but a post of something, with the column that names that. */
const WITH_POST: Partial<Record<RecordKind, string>> = { posts: 'fence', readings: 'inspection' };

/** The column by which a record is known within its kind, for messages. */
export function namingColumn(kind: RecordKind): 'post' | 'kind' | 'name' | 'ref' {
  if (kind === 'catalogue') return 'kind';
  if (kind === 'materials') return 'name';
  return WITH_POST[kind] === undefined ? 'ref' : 'post';
}

/** The columns that together name a record within its kind. */
export function namingColumns(kind: RecordKind): readonly string[] {
  if (kind === 'materials') return ['kind', 'name'];
  const of = WITH_POST[kind];
  return of === undefined ? [namingColumn(kind)] : [of, 'post'];
}

/**
 * The name of the record on a row: its ref, or that of its fence or inspection and its post, or its kind (and
 * name); empty where the cells do not tell.
 */
export function rowName({ kind, positions }: ImportFile, { cells }: CsvRow): string {
  const cell = (column: string): string => cells[positions.get(column) ?? -1] ?? '';
  if (kind === 'catalogue') return cell('kind');
  if (kind === 'materials') return cell('name') === '' ? '' : `${cell('kind')} ${unguardText(cell('name'))}`;
  const of = WITH_POST[kind];
  if (of === undefined) return cell('ref');
  const number = Number(cell('post'));
  return number > 0 ? `${cell(of)} post ${number}` : '';
}

/** A file as it is sent. */
export interface SentFile {
  readonly name: string;
  readonly text: string;
  /** What it holds, where that is known; found by its columns and its name otherwise. */
  readonly kind?: RecordKind;
}

/** Takes a file apart and finds what it holds; on a fault that leaves no kind, only the fault is returned. */
export function openImportFile(file: SentFile): ImportFile | ImportRemark {
  if (file.text.includes('\0')) {
    const reason = 'it holds NUL characters, so it is no UTF-8 text; save it as CSV with the encoding UTF-8';
    return { file: file.name, line: 1, column: '', value: '', reason };
  }
  const table = parseCsv(file.text);
  if ('reason' in table) return { file: file.name, line: table.line, column: '', value: '', reason: table.reason };
  const header = table.header.cells.map((column) => column.toLowerCase());
  const { line } = table.header;
  const kind = file.kind ?? kindOf(file.name, header);
  if (kind === null) {
    const reason = `neither its columns nor its name tell what it holds; name the file after one of ${RECORD_KINDS.join(', ')}`;
    return { file: file.name, line, column: '', value: '', reason };
  }
  return {
    name: file.name,
    kind,
    header,
    positions: new Map(header.map((column, index) => [column, index])),
    rows: table.rows,
    faults: headerFaults(kind, header).map((fault) => ({ file: file.name, line, ...fault })),
  };
}
