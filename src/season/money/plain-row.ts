/** A row of a table for other programs: column name to cell, in the order of the columns. */
export type PlainRow = Readonly<Record<string, string>>;

/** Rows of amounts with the currency that they are in, as the last column. */
export const inCurrency = (rows: readonly PlainRow[], currency: string): readonly PlainRow[] =>
  rows.map((row) => ({ ...row, currency }));
