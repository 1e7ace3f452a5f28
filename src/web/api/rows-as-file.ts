import { writeCsv } from '../../register/csv/csv-text.ts';
import { guardText } from '../../register/csv/text-cell.ts';

/** What a program may write into one field of a row. */
type FieldValue = string | number | boolean | null;
/** A row as a program sends it, by the columns of the CSV file of its kind. */
export type SentRow = Readonly<Record<string, FieldValue>>;

const LOOKS_LIKE_A_NUMBER = /^-?\d+([.,]\d+)?$/;

function cellOf(value: FieldValue | undefined): string {
  if (value === undefined || value === null) return '';
  if (typeof value === 'boolean') return value ? 'yes' : 'no';
  if (typeof value === 'number') return String(value);
  return LOOKS_LIKE_A_NUMBER.test(value) ? value : guardText(value);
}

/** Rows as the file that an import would read, and which row stands on a line of it. */
export interface RowsAsFile {
  readonly name: string;
  readonly text: string;
  /** Index of the row that begins on a line, from 0; null for the header. */
  readonly rowOn: (line: number) => number | null;
}

/** Writes rows as a CSV file of their kind, so that whatever is entered goes through the checks of an import. */
export function rowsAsFile(kind: string, rows: readonly SentRow[]): RowsAsFile {
  const columns = [...new Set(rows.flatMap((row) => Object.keys(row)))];
  const cells = rows.map((row) => columns.map((column) => cellOf(row[column])));
  const firstLines = new Map<number, number>();
  let line = 2;
  for (const [index, row] of cells.entries()) {
    firstLines.set(line, index);
    // a text may hold line breaks, and then its row takes several lines
    line += 1 + row.join('').split('\n').length - 1;
  }
  return { name: `${kind}.csv`, text: writeCsv([columns, ...cells]), rowOn: (at) => firstLines.get(at) ?? null };
}
