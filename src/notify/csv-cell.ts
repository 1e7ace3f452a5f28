/** A cell of a CSV file (RFC 4180); text that a spreadsheet would take for a formula is led by an apostrophe. */
function csvCell(value: string | number | null): string {
  if (value === null) return '';
  if (typeof value === 'number') return String(value);
  const safe = /^[=+\-@\t\r]/.test(value) ? `'${value}` : value;
  return /[",\r\n]/.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe;
}

/** Rows as CSV, each ended as the standard says. */
export const csvText = (rows: readonly (readonly (string | number | null)[])[]): string =>
  rows.map((row) => `${row.map(csvCell).join(',')}\r\n`).join('');
