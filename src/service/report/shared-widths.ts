/** What a column asks for: its part of the width [-], and the least that it needs [pt]. */
interface ColumnWish {
  readonly weight: number;
  readonly least: number;
}

/**
 * Widths of columns that together fill a room [pt]: by their weights, but none under what it needs at least; where even that is
 * more than there is, all give way in proportion.
 */
export function sharedWidths(room: number, columns: readonly ColumnWish[]): readonly number[] {
  const needed = columns.reduce((sum, { least }) => sum + least, 0);
  if (needed >= room) return columns.map(({ least }) => (least * room) / needed);
  const atLeast = new Set<number>();
  for (;;) {
    const kept = columns.reduce((sum, { least }, index) => sum + (atLeast.has(index) ? least : 0), 0);
    const weights = columns.reduce((sum, { weight }, index) => sum + (atLeast.has(index) ? 0 : weight), 0);
    const widths = columns.map(({ weight, least }, index) =>
      atLeast.has(index) ? least : ((room - kept) * weight) / weights,
    );
    const narrow = widths.findIndex((width, index) => !atLeast.has(index) && width < columns[index]!.least);
    if (narrow === -1) return widths;
    atLeast.add(narrow);
  }
}
