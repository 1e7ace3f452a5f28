import { writeCsv } from '../../register/csv/csv-text.ts';
import { guardText } from '../../register/csv/text-cell.ts';
import type { RecordKind } from '../../register/record-store.ts';

/** What a program may write into one field of a row. */
type FieldValue = string | number | boolean | null;
/** A row as a program sends it, by the columns of the CSV file of its kind. */
type SentRow = Readonly<Record<string, FieldValue>>;

const LOOKS_LIKE_A_NUMBER = /^-?\d+([.,]\d+)?$/;

function cellOf(value: FieldValue | undefined): string {
  if (value === undefined || value === null) return '';
  if (typeof value === 'boolean') return value ? 'yes' : 'no';
  if (typeof value === 'number') return String(value);
  return LOOKS_LIKE_A_NUMBER.test(value) ? value : guardText(value);
}

/** Rows of a kind as a file that an import reads, and which row stands on a line of it. */
export interface KindFile {
  readonly kind: RecordKind;
  readonly name: string;
  readonly text: string;
  /** Index of the row, among those that were sent, that begins on a line, from 0; null for the header. */
  readonly rowOn: (line: number) => number | null;
}

interface PlacedRow {
  readonly row: SentRow;
  readonly index: number;
}

function fileOf(kind: RecordKind, name: string, columns: readonly string[], placed: readonly PlacedRow[]): KindFile {
  const cells = placed.map(({ row }) => columns.map((column) => cellOf(row[column])));
  const firstLines = new Map<number, number>();
  let line = 2;
  for (const [at, row] of cells.entries()) {
    firstLines.set(line, placed[at]!.index);
    // a text may hold line breaks, and then its row takes several lines
    line += 1 + row.join('').split('\n').length - 1;
  }
  return { kind, name, text: writeCsv([columns, ...cells]), rowOn: (on) => firstLines.get(on) ?? null };
}

/**
 * Writes rows as CSV files of their kind, so that whatever is entered goes through the checks of an import. Rows with the same
 * fields share a file: to an import an empty cell is a value, and a field that is left out must stay as it is.
 */
export function rowsAsFiles(kind: RecordKind, rows: readonly SentRow[]): readonly KindFile[] {
  const byFields = new Map<string, PlacedRow[]>();
  for (const [index, row] of rows.entries()) {
    const fields = JSON.stringify(Object.keys(row).sort());
    byFields.set(fields, [...(byFields.get(fields) ?? []), { row, index }]);
  }
  return [...byFields].map(([fields, placed], at) =>
    fileOf(kind, at === 0 ? `${kind}.csv` : `${kind}-${at + 1}.csv`, JSON.parse(fields) as string[], placed),
  );
}
