import { scaleLinear } from 'd3-scale';
import type { Prospect, WhatIf } from '../season/what-if.ts';
import { brailleCanvas } from './braille-canvas.ts';
import { displaySpeed, speedUnit } from './speed-text.ts';
import type { TerminalChartOptions } from './terminal-chart.ts';

const LEFT = 5;
const RIGHT = 10;
/** Dots drawn and dots left out, in turn, of each line: apart from one another without colour. */
const STROKES = [
  { on: 1, off: 0, name: 'full line' },
  { on: 6, off: 3, name: 'long dashes' },
  { on: 3, off: 3, name: 'short dashes' },
  { on: 1, off: 3, name: 'dots' },
] as const;
/** Lines of which all speeds are as near as this are one [m/s]. */
const SAME_WITHIN_MPS = 0.05;

interface DrawnLine {
  readonly name: string;
  readonly prospect: Prospect;
}

const alike = (a: Prospect, b: Prospect): boolean =>
  a.seasons.every(({ snapMps }, index) => Math.abs(snapMps - b.seasons[index]!.snapMps) < SAME_WITHIN_MPS);

/**
 * The lines that are drawn: doing nothing, and of what changes the snap speed the three that add years of life most cheaply,
 * of equals the cheaper.
 */
function drawnLines({ nothing, rows }: WhatIf): readonly DrawnLine[] {
  const byCost = rows
    .map((row, index) => ({ row, name: `no. ${index + 1}` }))
    .sort(
      (a, b) =>
        (a.row.costPerYear ?? Number.POSITIVE_INFINITY) - (b.row.costPerYear ?? Number.POSITIVE_INFINITY) ||
        a.row.cost.price - b.row.cost.price,
    );
  const lines: DrawnLine[] = [{ name: 'nothing', prospect: nothing }];
  for (const { row, name } of byCost) {
    if (lines.length === STROKES.length) break;
    if (!lines.some(({ prospect }) => alike(prospect, row))) lines.push({ name, prospect: row });
  }
  return lines;
}

/**
 * Snap speed over the seasons ahead as lines of text: where nothing is done, and for the three works that add years most
 * cheaply, told apart by their dashes; the design gust as a rule. No line is wider than `columns`.
 */
export function whatIfChart(whatIf: WhatIf, { units, columns, rows }: TerminalChartOptions): readonly string[] {
  const lines = drawnLines(whatIf);
  const width = columns - LEFT - 1 - RIGHT;
  const inUnits = (speedMps: number): number => displaySpeed(speedMps, units);
  const highest = Math.max(
    whatIf.designGustMps,
    ...lines.flatMap(({ prospect }) => prospect.seasons.map((s) => s.snapMps)),
  );
  const y = scaleLinear()
    .domain([0, inUnits(highest * 1.05)])
    .range([rows * 4 - 1, 0]);
  const { seasons } = whatIf.nothing;
  const x = scaleLinear()
    .domain([0, seasons.length - 1])
    .range([0, width * 2 - 1]);
  const rowOf = (speedMps: number): number => Math.min(rows - 1, Math.max(0, Math.floor(y(inUnits(speedMps)) / 4)));

  const canvas = brailleCanvas(width, rows);
  for (const [index, { prospect }] of lines.entries()) {
    const { on, off } = STROKES[index]!;
    for (let dot = 0; dot < width * 2; dot += 1) {
      if (dot % (on + off) < on) canvas.dot(dot, Math.round(y(inUnits(speedAt(prospect, x.invert(dot))))));
    }
  }

  const gustRow = rowOf(whatIf.designGustMps);
  const ticks = new Map(
    y.ticks(Math.max(3, Math.floor(rows / 3))).map((speed) => [Math.floor(y(speed) / 4), String(speed)]),
  );
  const names = namesByRow(
    [
      { text: `gust ${Math.round(inUnits(whatIf.designGustMps))}`, row: gustRow },
      ...lines.map(({ name, prospect }) => ({ text: name, row: rowOf(prospect.seasons.at(-1)!.snapMps) })),
    ],
    rows,
  );
  const plot = Array.from({ length: rows }, (_, row) => {
    let line = `${(ticks.get(row) ?? '').padStart(LEFT - 1)} ${ticks.has(row) ? '┤' : '│'}`;
    for (let column = 0; column < width; column += 1) line += canvas.cell(column, row) ?? (row === gustRow ? '─' : ' ');
    return `${line} ${names.get(row) ?? ''}`.trimEnd();
  });
  const key = lines.map(({ name }, index) => `${STROKES[index]!.name}: ${name}`).join(' · ');
  const indent = ' '.repeat(LEFT);
  return [
    `${indent}Snap speed, ${speedUnit(units)}, seasons ahead`.slice(0, columns),
    ...plot,
    ...seasonAxis(
      seasons.map(({ label }) => label),
      x,
      width,
    ),
    `${indent}${key}`.slice(0, columns),
  ];
}

function speedAt({ seasons }: Prospect, at: number): number {
  const from = Math.min(seasons.length - 1, Math.max(0, Math.floor(at)));
  const to = Math.min(seasons.length - 1, from + 1);
  const share = Math.min(1, Math.max(0, at - from));
  return seasons[from]!.snapMps + share * (seasons[to]!.snapMps - seasons[from]!.snapMps);
}

/** Names in the right margin, each at the nearest free row. */
function namesByRow(
  wanted: readonly { readonly text: string; readonly row: number }[],
  rows: number,
): ReadonlyMap<number, string> {
  const names = new Map<number, string>();
  for (const { text, row } of wanted) {
    const free = Array.from({ length: rows }, (_, at) => at)
      .filter((at) => !names.has(at))
      .sort((a, b) => Math.abs(a - row) - Math.abs(b - row) || a - b)[0];
    if (free !== undefined) names.set(free, text);
  }
  return names;
}

function seasonAxis(
  labels: readonly string[],
  x: ReturnType<typeof scaleLinear<number, number>>,
  width: number,
): readonly string[] {
  const axis = Array.from({ length: width }, () => '─');
  const text = Array.from({ length: width + RIGHT }, () => ' ');
  let free = 0;
  for (const index of x.ticks(Math.floor(width / 12)).filter(Number.isInteger)) {
    const column = Math.floor(x(index) / 2);
    const label = labels[index] ?? '';
    const start = Math.max(0, column - Math.floor(label.length / 2));
    if (start < free || start + label.length > text.length) continue;
    axis[column] = '┴';
    for (const [offset, character] of [...label].entries()) text[start + offset] = character;
    free = start + label.length + 2;
  }
  const indent = ' '.repeat(LEFT);
  return [`${indent}└${axis.join('')}`, `${indent} ${text.join('').trimEnd()}`];
}
