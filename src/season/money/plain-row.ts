/** A row of a table for other programs: column name to cell, in the order of the columns. */
export type PlainRow = Readonly<Record<string, string>>;
