import type { CalendarDay } from '../../units/calendar-day.ts';
import { catalogueSchema } from '../catalogue-record.ts';
import { climateZoneSchema } from '../climate-zone-record.ts';
import { crewMemberSchema } from '../crew-member-record.ts';
import { crewSchema } from '../crew-record.ts';
import { dayOffSchema } from '../day-off-record.ts';
import { fenceSchema } from '../fence-record.ts';
import { inspectionSchema } from '../inspection-record.ts';
import { materialSchema } from '../material-record.ts';
import { ownerSchema } from '../owner-record.ts';
import { postSchema } from '../post-record.ts';
import { readingSchema } from '../reading-record.ts';
import type { RecordKind, RecordOf } from '../record-store.ts';
import { siteSchema } from '../site-record.ts';
import { stormOutcomeSchema } from '../storm-outcome-record.ts';
import { stormSeasonSchema } from '../storm-season-record.ts';
import { isSpreadsheetError, SPREADSHEET_ERROR_REASON } from '../value-schemas.ts';
import { worksSchema } from '../works-record.ts';
import type { CsvField, Draft } from './csv-field.ts';
import type { CsvRow } from './csv-text.ts';
import type { ImportFile } from './import-file.ts';
import type { ImportRemark } from './import-report.ts';
import { RECORD_FIELDS } from './record-columns.ts';

const SCHEMAS = {
  owners: ownerSchema,
  'climate-zones': climateZoneSchema,
  'storm-seasons': stormSeasonSchema,
  sites: siteSchema,
  fences: fenceSchema,
  posts: postSchema,
  works: worksSchema,
  inspections: inspectionSchema,
  readings: readingSchema,
  outcomes: stormOutcomeSchema,
  catalogue: catalogueSchema,
  materials: materialSchema,
  crews: crewSchema,
  'crew-members': crewMemberSchema,
  'days-off': dayOffSchema,
} as const;

/** One row on its way into the register. */
export interface ImportRow {
  readonly file: ImportFile;
  readonly row: CsvRow;
  /** Says why the row is refused, at a column. */
  refuse(column: string, reason: string): void;
  /** The same at a key of the record. */
  refuseKey(key: string, reason: string): void;
  /** Refuses it until somebody confirms it. */
  askKey(key: string, reason: string): void;
  /** Says what is doubtful, at a key of the record. */
  warnKey(key: string, reason: string): void;
  /** Leaves the row out because of a row that it follows: what that is, and where it was refused. */
  leaveOut(key: string, parent: string, refusedAt: string): void;
}

/** Rows of one file that follow the same refused row. */
interface LeftOut {
  readonly file: ImportFile;
  readonly column: string;
  readonly value: string;
  readonly parent: string;
  readonly refusedAt: string;
  readonly lines: number[];
}

/** Where an import collects its remarks. */
export interface RemarkSink {
  readonly faults: ImportRemark[];
  readonly warnings: ImportRemark[];
  /** Rows left out, by file and by what they follow. */
  readonly leftOut: Map<string, LeftOut>;
}

/** One of a kind, and several. */
const NOUNS: Readonly<Record<RecordKind, readonly [one: string, several: string]>> = {
  owners: ['owner', 'owners'],
  'climate-zones': ['climate zone', 'climate zones'],
  'storm-seasons': ['storm season', 'storm seasons'],
  sites: ['site', 'sites'],
  fences: ['fence', 'fences'],
  posts: ['post', 'posts'],
  works: ['row of works', 'rows of works'],
  inspections: ['inspection', 'inspections'],
  readings: ['reading', 'readings'],
  outcomes: ['storm outcome', 'storm outcomes'],
  catalogue: ['line of the catalogue', 'lines of the catalogue'],
  materials: ['material', 'materials'],
  crews: ['crew', 'crews'],
  'crew-members': ['crew member', 'crew members'],
  'days-off': ['row of days off', 'rows of days off'],
};

/** One remark for all rows that were left out because of the same row. */
export function leftOutRemark({ file, column, value, parent, refusedAt, lines }: LeftOut): ImportRemark {
  const [one, several] = NOUNS[file.kind];
  const those = lines.length === 1 ? `1 ${one} of ${parent} is` : `${lines.length} ${several} of ${parent} are`;
  const reason = `${those} left out because ${refusedAt} was refused; correct that row`;
  return { file: file.name, line: lines[0] ?? 1, lines, column, value, reason };
}

const cellOf = (file: ImportFile, row: CsvRow, column: string): string => {
  const position = file.positions.get(column);
  return position === undefined ? '' : (row.cells[position] ?? '');
};

/** The column to name for a key: a filled one, else one that the file has, else the plain name. */
function columnOfKey(file: ImportFile, row: CsvRow, key: string): string {
  const field = RECORD_FIELDS[file.kind].find(({ keys }) => keys.includes(key));
  if (!field) return '';
  const inFile = field.columns.filter((column) => file.positions.has(column));
  return inFile.find((column) => cellOf(file, row, column) !== '') ?? inFile[0] ?? field.column('us');
}

/** A row with its way to say what is wrong with it. */
export function importRow(file: ImportFile, row: CsvRow, sink: RemarkSink): ImportRow {
  const remark = (column: string, reason: string): ImportRemark => ({
    file: file.name,
    line: row.line,
    column,
    value: cellOf(file, row, column),
    reason,
  });
  return {
    file,
    row,
    refuse: (column, reason) => void sink.faults.push(remark(column, reason)),
    refuseKey: (key, reason) => void sink.faults.push(remark(columnOfKey(file, row, key), reason)),
    askKey: (key, reason) => void sink.faults.push({ ...remark(columnOfKey(file, row, key), reason), question: true }),
    warnKey: (key, reason) => void sink.warnings.push(remark(columnOfKey(file, row, key), reason)),
    leaveOut: (key, parent, refusedAt) => {
      const column = columnOfKey(file, row, key);
      const group = `${file.name}\n${column}\n${parent}`;
      const known = sink.leftOut.get(group);
      if (known) known.lines.push(row.line);
      else {
        const value = cellOf(file, row, column);
        sink.leftOut.set(group, { file, column, value, parent, refusedAt, lines: [row.line] });
      }
    },
  };
}

function readFields(
  fields: readonly CsvField[],
  row: ImportRow,
  today: CalendarDay,
  existing: Draft | null,
): Draft | null {
  const { file } = row;
  let sound = true;
  const refuse = (column: string, reason: string): void => {
    sound = false;
    row.refuse(column, reason);
  };
  if (row.row.cells.slice(file.header.length).some((cell) => cell !== '')) {
    refuse('', 'more cells than the header has columns; a text with a comma in it needs quotation marks around it');
    return null;
  }
  const draft: Draft = {};
  const reader = { today, cell: (column: string) => cellOf(file, row.row, column), refuse };
  for (const field of fields) {
    const broken = field.columns.find((column) => isSpreadsheetError(reader.cell(column)));
    if (broken !== undefined) refuse(broken, SPREADSHEET_ERROR_REASON);
    else field.read(reader, draft);
  }
  for (const field of fields) {
    if (field.keys.some((key) => key in draft)) continue;
    const inFile = field.columns.some((column) => file.positions.has(column));
    if (!inFile && existing) for (const key of field.keys) draft[key] = existing[key];
    else if (!field.required) Object.assign(draft, field.settle(draft));
    else if (field.columns.every((column) => reader.cell(column) === '')) {
      refuse(field.columns.find((column) => file.positions.has(column)) ?? field.columns[0]!, 'missing; fill it in');
    }
  }
  return sound ? draft : null;
}

/**
 * Reads a row as a record of its file's kind; null where it is refused (the faults are in the sink). A column that the
 * file does not have leaves an existing record's value as it is; an empty cell means unknown or the default.
 */
export function readImportRow<K extends RecordKind>(
  kind: K,
  row: ImportRow,
  today: CalendarDay,
  existing: RecordOf[K] | null,
): RecordOf[K] | null {
  const draft = readFields(RECORD_FIELDS[kind], row, today, existing);
  if (draft === null) return null;
  const parsed = SCHEMAS[kind].safeParse(draft);
  if (parsed.success) return parsed.data as RecordOf[K];
  for (const issue of parsed.error.issues) row.refuseKey(String(issue.path[0] ?? ''), issue.message);
  return null;
}
