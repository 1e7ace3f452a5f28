const TAKEN_FOR_FORMULA = /^'*[=+\-@\t]/;
const GUARDED = /^'+[=+\-@\t]/;

/**
 * A text as a cell that no spreadsheet runs as a formula: an apostrophe is put before a text that begins with `=`, `+`,
 * `-`, `@` or a tab (apostrophes before them included, so that `unguardText` gives back exactly what was there).
 */
export const guardText = (text: string): string => (TAKEN_FOR_FORMULA.test(text) ? `'${text}` : text);

/** The text of a guarded cell: one leading apostrophe goes where a formula character follows. */
export const unguardText = (cell: string): string => (GUARDED.test(cell) ? cell.slice(1) : cell);
