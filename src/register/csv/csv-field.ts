import type { CalendarDay } from '../../units/calendar-day.ts';

/** Units a row is exported in. */
export type ExportUnits = 'us' | 'metric';

/** The filled cells of one row, and where to say that one of them cannot be taken. */
export interface RowReader {
  readonly today: CalendarDay;
  /** The cell under a column; empty where the file has no such column. */
  cell(column: string): string;
  refuse(column: string, reason: string): void;
}

/** A record while its fields are being read. */
export type Draft = Record<string, unknown>;

/**
 * One thing that a row says: one or more keys of the record, written in one column, or in one of several that differ
 * in unit.
 */
export interface CsvField {
  readonly keys: readonly string[];
  readonly columns: readonly string[];
  /** True where every file must have the column (one of them) and every row must fill it. */
  readonly required: boolean;
  /** Column named in messages, and exported where no row fills any. */
  column(units: ExportUnits): string;
  /** Sets the keys from filled cells; leaves alone what is empty, which `settle` then decides. */
  read(row: RowReader, draft: Draft): void;
  /** What an empty cell means. */
  settle(draft: Draft): Draft;
  write(record: Readonly<Draft>, units: ExportUnits): Readonly<Record<string, string>>;
  /** The words it can be, where it is one of a few. */
  readonly choices?: readonly string[];
  /** True where it is free text, guarded against being run as a formula. */
  readonly isText?: true;
}

/** How a field is told apart from the plain required one. */
export interface FieldOptions {
  /** The value that stands for an empty cell; without it the field is required. */
  readonly fallback?: unknown;
  /** The same where it follows from fields further left. */
  readonly fallbackFrom?: (draft: Readonly<Draft>) => unknown;
}

const settleKey =
  (key: string, options: FieldOptions) =>
  (draft: Draft): Draft => ({ [key]: options.fallbackFrom ? options.fallbackFrom(draft) : options.fallback });

/** True where a file may leave the field out. */
export const isOptional = (options: FieldOptions): boolean =>
  'fallback' in options || options.fallbackFrom !== undefined;

/** A field of one key in one column. `parse` returns the value or refuses and returns undefined. */
export function singleField(
  key: string,
  column: string,
  options: FieldOptions,
  parse: (text: string, refuse: (reason: string) => void, row: RowReader) => unknown,
  write: (value: unknown) => string,
): CsvField {
  return {
    keys: [key],
    columns: [column],
    required: !isOptional(options),
    column: () => column,
    read: (row, draft) => {
      const text = row.cell(column);
      if (text !== '') draft[key] = parse(text, (reason) => row.refuse(column, reason), row);
    },
    settle: settleKey(key, options),
    write: (record) => ({ [column]: record[key] === null ? '' : write(record[key]) }),
  };
}
