const BRAILLE_START = 0x2800;
const DOTS: readonly (readonly number[])[] = [
  [0x01, 0x08],
  [0x02, 0x10],
  [0x04, 0x20],
  [0x40, 0x80],
];

/** A grid of braille cells, two dots wide and four high each. Positions in dots, y downwards. */
export interface BrailleCanvas {
  /** Sets one dot; positions outside the grid are ignored. */
  readonly dot: (x: number, y: number) => void;
  /** The character of one cell, or null where no dot is set. */
  readonly cell: (column: number, row: number) => string | null;
}

/** An empty grid of so many columns and rows of characters. */
export function brailleCanvas(columns: number, rows: number): BrailleCanvas {
  const cells = new Uint8Array(columns * rows);
  return {
    dot: (x, y) => {
      const [column, row] = [Math.floor(x / 2), Math.floor(y / 4)];
      if (column < 0 || column >= columns || row < 0 || row >= rows) return;
      const index = row * columns + column;
      cells[index] = (cells[index] ?? 0) | (DOTS[Math.floor(y) % 4]?.[Math.floor(x) % 2] ?? 0);
    },
    cell: (column, row) => {
      const bits = cells[row * columns + column] ?? 0;
      return bits === 0 ? null : String.fromCodePoint(BRAILLE_START + bits);
    },
  };
}
