/**
 * Advance widths of Source Sans 3, regular and semibold, in thousandths of the font size.
 * Source: the `hmtx` tables of the two font files that ship with the program.
 */
const ADVANCES: readonly (readonly [characters: string, regular: number, semibold: number])[] = [
  [' ', 200, 200],
  ["iíIÍ',.:;·’l", 257, 276],
  ['j', 247, 263],
  ['f()!-', 297, 320],
  ['t/', 344, 355],
  ['r', 347, 373],
  ['s*', 419, 435],
  ['z?¿"', 426, 465],
  ['xc', 451, 475],
  ['vyYJ', 473, 498],
  ['–Lkeé', 494, 508],
  ['0123456789#$+<=>−F', 497, 513],
  ['agáXV', 507, 528],
  ['EÉST', 532, 543],
  ['ZoóAÁhuúü', 544, 553],
  ['nñbdpq', 552, 562],
  ['PRCKB', 575, 590],
  ['&DG→', 615, 630],
  ['UÚNÑH', 649, 657],
  ['OQÓ', 664, 674],
  ['wM', 723, 747],
  ['W—½', 800, 815],
  ['%m@', 838, 855],
  ['…', 948, 964],
];

const WIDTHS = new Map<string, readonly [number, number]>(
  ADVANCES.flatMap(([characters, regular, semibold]) =>
    [...characters].map((character) => [character, [regular, semibold]] as const),
  ),
);

/** Height of the capitals and figures over the baseline, as a fraction of the font size. Source: the font's OS/2 table. */
export const CAP_HEIGHT = 0.66;
/** Depth of the descenders under the baseline, as a fraction of the font size. Source: as above, rounded up. */
export const DESCENT = 0.24;

/**
 * Width of a text set in Source Sans 3 [px], to about 3 %; characters outside the table count as the letter n.
 * @param sizePx font size [px]
 */
export function textWidthPx(text: string, sizePx: number, weight: 400 | 600): number {
  let thousandths = 0;
  for (const character of text) {
    const [regular, semibold] = WIDTHS.get(character) ?? [552, 562];
    thousandths += weight === 600 ? semibold : regular;
  }
  return (thousandths * sizePx) / 1000;
}

/** Breaks a text into lines no wider than `widthPx` [px], at spaces; a single longer word stands alone. */
export function wrapText(text: string, sizePx: number, widthPx: number): readonly string[] {
  const lines: string[] = [];
  let line = '';
  for (const word of text.split(' ')) {
    const longer = line === '' ? word : `${line} ${word}`;
    if (line !== '' && textWidthPx(longer, sizePx, 400) > widthPx) {
      lines.push(line);
      line = word;
    } else line = longer;
  }
  return line === '' ? lines : [...lines, line];
}
