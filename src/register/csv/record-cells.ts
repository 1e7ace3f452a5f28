import type { RecordKind, RecordOf } from '../record-store.ts';
import type { Draft, ExportUnits } from './csv-field.ts';
import { writeCsv } from './csv-text.ts';
import { RECORD_FIELDS } from './record-columns.ts';
import { guardText, unguardText } from './text-cell.ts';

/** What a row of a file says, by column. */
export type RowCells = Readonly<Record<string, string>>;

/** A record as the filled cells of its row; texts are guarded against being run as formulas. */
export const recordCells = <K extends RecordKind>(kind: K, record: RecordOf[K], units: ExportUnits): RowCells =>
  Object.assign({}, ...RECORD_FIELDS[kind].map((field) => field.write(record as unknown as Draft, units))) as RowCells;

const textColumns = (kind: RecordKind): ReadonlySet<string> =>
  new Set(RECORD_FIELDS[kind].flatMap((field) => (field.isText ? field.columns : [])));

/** The cells as a person reads and writes them: texts without their guard. */
export function plainCells(kind: RecordKind, cells: RowCells): RowCells {
  const texts = textColumns(kind);
  return Object.fromEntries(
    Object.entries(cells).map(([column, cell]) => [column, texts.has(column) ? unguardText(cell) : cell]),
  );
}

/** Rows that a person filled in as the text of a file of that kind, as an import reads it. */
export function csvOfCells(kind: RecordKind, rows: readonly RowCells[]): string {
  const texts = textColumns(kind);
  const columns = [...new Set(rows.flatMap((row) => Object.keys(row)))];
  const cellOf = (row: RowCells, column: string): string => {
    const cell = row[column]?.trim() ?? '';
    return texts.has(column) ? guardText(cell) : cell;
  };
  return writeCsv([columns, ...rows.map((row) => columns.map((column) => cellOf(row, column)))]);
}
