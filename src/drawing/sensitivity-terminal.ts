import { scaleLinear } from 'd3-scale';
import type { Sensitivity } from '../forecast/sensitivity.ts';
import { type SensitivityRow, type SensitivityRows, sensitivityRows } from './sensitivity-rows.ts';
import type { DisplayUnits } from './speed-text.ts';

/** Size and units of the bars of a sensitivity on a terminal. */
export interface SensitivityTerminalOptions {
  readonly units: DisplayUnits;
  /** Width in characters, 60 or more. */
  readonly columns: number;
}

/** Fewest characters for the bars with their labels beside them; with fewer, the labels stand on a line of their own. */
const LEAST_BAR = 20;
const BLOCKS = { unknown: '█', recorded: '▒' } as const;

const longest = (texts: readonly string[]): number => Math.max(0, ...texts.map((text) => text.length));

/**
 * What moves the short season as lines of text: a bar of blocks for each input, with its two values and the years they lead
 * to, the longest first. No line is wider than `columns`.
 */
export function sensitivityLines(sensitivity: Sensitivity, options: SensitivityTerminalOptions): readonly string[] {
  const drawn = sensitivityRows(sensitivity, options.units);
  const { rows, words } = drawn;
  const { columns } = options;
  const foldAll = (lines: readonly string[]): readonly string[] =>
    lines.flatMap((line) => (line === '' ? [] : fold(line, columns)));
  if (rows.length === 0) return foldAll([words.none, words.without]);
  const nameColumns = longest(rows.map(({ input }) => input)) + 2;
  const swingColumns = longest(rows.map(({ swing }) => swing)) + 2;
  const besideScale = fittedScale(drawn, columns - nameColumns - swingColumns);
  const isBeside = besideScale.barCells >= LEAST_BAR;
  const scale = isBeside ? besideScale : plainScale(drawn, columns - 2, [0, 0]);
  const indent = ' '.repeat(isBeside ? nameColumns : 2);
  return foldAll([
    `${words.title}: the year it goes short, and by how much`,
    ...rows.flatMap((row) =>
      isBeside
        ? [`${row.input.padEnd(nameColumns)}${rowText(row, drawn, scale, true)}${row.swing.padStart(swingColumns)}`]
        : [`${row.input}, ${row.swing}: ${briefs(row)}`, `${indent}${rowText(row, drawn, scale, false).trimEnd()}`],
    ),
    ...axisLines(scale).map((line) => `${indent}${line}`),
    `│ ${words.middle} · ┊ ${words.seasonOne}`,
    `${BLOCKS.unknown} ${words.unknown}`,
    `${BLOCKS.recorded} ${words.recorded}`,
    words.without,
  ]);
}

const briefs = ({ sooner, later }: SensitivityRow): string =>
  [sooner.brief, later.brief].filter((brief) => brief !== '').join(', ');

/** Years to cells of a line. */
interface CellScale {
  readonly cells: number;
  /** Cells that bars may cover. */
  readonly barCells: number;
  readonly ticks: readonly number[];
  /** The cell in which a year falls; past the last year for one beyond those looked at. */
  readonly cellOf: (year: number | null) => number;
}

function plainScale(drawn: SensitivityRows, cells: number, pads: readonly [number, number]): CellScale {
  const ends = [
    drawn.seasonOneYear,
    drawn.middleYear,
    ...drawn.rows.flatMap((row) => [row.sooner.year, row.later.year]),
  ];
  const years = ends.filter((year) => year !== null);
  const from = Math.min(...years);
  const last = cells - 1 - pads[1];
  const scale = scaleLinear()
    .domain([from, Math.max(...years, from + 1)])
    .range([pads[0], last - (ends.includes(null) ? 2 : 0)]);
  const barCells = cells - pads[0] - pads[1];
  return {
    cells,
    barCells,
    ticks: scale.ticks(Math.max(2, Math.floor(barCells / 9))).filter((year) => Number.isInteger(year)),
    cellOf: (year) => (year === null ? last : Math.round(scale(year))),
  };
}

/** A scale so narrow that every row's labels fit beside its bar. */
function fittedScale(drawn: SensitivityRows, cells: number): CellScale {
  let pads: readonly [number, number] = [0, 0];
  for (;;) {
    const scale = plainScale(drawn, cells, pads);
    const missing = (side: (row: SensitivityRow) => number): number => Math.max(0, ...drawn.rows.map(side));
    const left = missing(({ sooner }) => labelCells(sooner.brief) - scale.cellOf(sooner.year));
    const right = missing(({ later }) => scale.cellOf(later.year) + labelCells(later.brief) - (cells - 1));
    if ((left === 0 && right === 0) || scale.barCells < LEAST_BAR) return scale;
    pads = [pads[0] + left, pads[1] + right];
  }
}

/** Cells of a label and the space that parts it from its bar. */
const labelCells = (brief: string): number => (brief === '' ? 0 : brief.length + 1);

function rowText(row: SensitivityRow, drawn: SensitivityRows, scale: CellScale, labelled: boolean): string {
  const { cells, cellOf } = scale;
  const [from, to] = [cellOf(row.sooner.year), cellOf(row.later.year)];
  const [middle, today] = [cellOf(drawn.middleYear), cellOf(drawn.seasonOneYear)];
  const line = Array.from({ length: cells }, (_, cell): string => {
    const inside = cell >= from && cell <= to;
    if (inside && row.later.year === null && cell === to) return '▶';
    // The upright runs through a bar, but never eats its end.
    if (cell === middle && (!inside || (cell > from && cell < to))) return '│';
    if (inside) return BLOCKS[row.kind];
    return cell === today ? '┊' : ' ';
  });
  const write = (text: string, start: number): void => {
    for (const [offset, character] of [...text].entries()) line[start + offset] = character;
  };
  if (labelled && row.sooner.brief !== '') write(`${row.sooner.brief} `, from - labelCells(row.sooner.brief));
  if (labelled && row.later.brief !== '') write(` ${row.later.brief}`, to + 1);
  return line.join('');
}

function axisLines({ cells, cellOf, ticks }: CellScale): readonly string[] {
  const rule = Array.from({ length: cells }, () => '─');
  const labels = Array.from({ length: cells }, () => ' ');
  let free = 0;
  for (const year of ticks) {
    const cell = cellOf(year);
    const start = Math.min(Math.max(0, cell - 2), cells - 4);
    if (start < free) continue;
    rule[cell] = '┴';
    for (const [offset, character] of [...String(year)].entries()) labels[start + offset] = character;
    free = start + 6;
  }
  return [rule.join(''), labels.join('').trimEnd()];
}

/** A line broken at spaces into lines that fit. */
function fold(line: string, columns: number): readonly string[] {
  if (line.length <= columns) return [line];
  const cut = line.lastIndexOf(' ', columns);
  return cut <= 0 ? [line.slice(0, columns)] : [line.slice(0, cut), ...fold(line.slice(cut + 1), columns)];
}
