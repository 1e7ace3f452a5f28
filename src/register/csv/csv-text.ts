import { type CsvError, parse } from 'csv-parse/sync';

/** One row and the line of the file on which it begins (the header is on line 1). */
export interface CsvRow {
  readonly line: number;
  readonly cells: readonly string[];
}

/** A file taken apart, or the one reason why it cannot be. */
export type CsvTable =
  | { readonly header: CsvRow; readonly rows: readonly CsvRow[] }
  | { readonly line: number; readonly reason: string };

const NOT_UTF8 = 'holds bytes that are not UTF-8; save the file again as CSV UTF-8';

function delimiterOf(text: string): ',' | ';' {
  const header = text.slice(0, text.search(/\n|$/));
  return !header.includes(',') && header.includes(';') ? ';' : ',';
}

const QUOTE_REASONS: Readonly<Record<string, string>> = {
  CSV_QUOTE_NOT_CLOSED: 'a quotation mark that is never closed; close it, or double it where it belongs to the text',
  INVALID_OPENING_QUOTE:
    'a quotation mark inside a cell; put the whole cell in quotation marks and double those inside',
  CSV_INVALID_CLOSING_QUOTE: 'text after a closing quotation mark; double the quotation marks that belong to the text',
};

/** Takes a CSV text apart: comma or semicolon, any line ends, quoted cells over several lines; blank lines are left out. */
export function parseCsv(source: string): CsvTable {
  const text = source.replace(/^\uFEFF/, '').replace(/\r\n?/g, '\n');
  const lost = text.indexOf('\uFFFD');
  if (lost >= 0) return { line: text.slice(0, lost).split('\n').length, reason: NOT_UTF8 };
  let lastSoundLine = 0;
  let records: readonly { record: string[]; info: { lines: number } }[];
  try {
    records = parse(text, {
      delimiter: delimiterOf(text),
      record_delimiter: '\n',
      relax_column_count: true,
      info: true,
      on_record: (record, { lines }) => {
        lastSoundLine = lines;
        return record;
      },
    }) as unknown as typeof records;
  } catch (error) {
    const { code, message } = error as CsvError;
    return { line: lastSoundLine + 1, reason: QUOTE_REASONS[code] ?? `not a CSV file: ${message}` };
  }
  let line = 1;
  const rows: CsvRow[] = [];
  for (const { record, info } of records) {
    const cells = record.map((cell) => cell.trim());
    if (cells.some((cell) => cell !== '')) rows.push({ line, cells });
    line = info.lines + 1;
  }
  const [header, ...rest] = rows;
  return header ? { header, rows: rest } : { line: 1, reason: 'the file is empty; begin with a line of column names' };
}

const NEEDS_QUOTES = /[",;\n\r]/;
const quoted = (cell: string): string => (NEEDS_QUOTES.test(cell) ? `"${cell.replaceAll('"', '""')}"` : cell);

/** Rows as CSV text: commas, `\n` at every end of line, quotation marks only where needed. */
export const writeCsv = (rows: readonly (readonly string[])[]): string =>
  rows.map((cells) => `${cells.map(quoted).join(',')}\n`).join('');
