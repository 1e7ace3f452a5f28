import Table from 'cli-table3';

const NO_LINES = {
  top: '',
  'top-mid': '',
  'top-left': '',
  'top-right': '',
  bottom: '',
  'bottom-mid': '',
  'bottom-left': '',
  'bottom-right': '',
  left: '',
  'left-mid': '',
  mid: '',
  'mid-mid': '',
  right: '',
  'right-mid': '',
  middle: '  ',
};

/** Rows under headings as aligned text without rules or colours; columns in `right` are aligned to the right. */
export function plainTable(
  headings: readonly string[],
  rows: readonly (readonly string[])[],
  right: readonly number[] = [],
): string {
  const table = new Table({
    head: [...headings],
    chars: NO_LINES,
    colAligns: headings.map((_, index) => (right.includes(index) ? 'right' : 'left')),
    style: { head: [], border: [], 'padding-left': 0, 'padding-right': 0, compact: true },
  });
  for (const row of rows) table.push([...row]);
  return `${table
    .toString()
    .split('\n')
    .map((line) => line.trimEnd())
    .join('\n')}\n`;
}
