import { max } from 'd3-array';
import { scaleLinear } from 'd3-scale';
import type { FenceForecast } from '../forecast/fence-forecast.ts';
import { brailleCanvas } from './braille-canvas.ts';
import type { FenceSeries, SeriesEvent, SeriesPoint } from './fence-series.ts';
import { fenceSeries } from './fence-series.ts';
import type { DisplayUnits } from './speed-text.ts';
import { displaySpeed, speedText, speedUnit } from './speed-text.ts';

/** Size and units of a chart for a terminal. */
export interface TerminalChartOptions {
  readonly units: DisplayUnits;
  /** Width in characters, 40 or more. */
  readonly columns: number;
  /** Height of the plot in lines, 8 or more. */
  readonly rows: number;
}

const LEFT = 5;
const RIGHT = 10;

/**
 * A fence's years as lines of text: snap speed as a full line of dots, lean speed as a broken one, the design gust as a rule, season 1 as
 * an upright, with speeds at the left, names at the right and years below. No line is wider than `columns`.
 */
export function terminalChart(forecast: FenceForecast, options: TerminalChartOptions): readonly string[] {
  const { units, columns, rows } = options;
  const series = fenceSeries(forecast);
  const width = columns - LEFT - 1 - RIGHT;
  const inUnits = (speedMps: number): number => displaySpeed(speedMps, units);
  const highest = max(series.points, (point) => Math.max(point.snapMps.p50, point.leanMps.p50)) ?? 1;
  const y = scaleLinear()
    .domain([0, inUnits(Math.max(highest * 1.05, series.designGustMps * 1.08))])
    .range([rows * 4 - 1, 0]);
  const x = scaleLinear()
    .domain([series.points[0]?.year ?? 0, series.points.at(-1)?.year ?? 1])
    .range([0, width * 2 - 1]);
  const rowOf = (speedMps: number): number => Math.min(rows - 1, Math.max(0, Math.floor(y(inUnits(speedMps)) / 4)));

  const canvas = brailleCanvas(width, rows);
  const trace = (speed: (point: SeriesPoint) => number, broken: boolean): void => {
    for (let dot = 0; dot < width * 2; dot += 1) {
      if (broken && dot % 6 >= 3) continue;
      const height = y(inUnits(speedAt(series.drawn, x.invert(dot), speed)));
      const next = y(inUnits(speedAt(series.drawn, x.invert(Math.min(dot + 1, width * 2 - 1)), speed)));
      const [from, to] = [Math.round(Math.min(height, next)), Math.round(Math.max(height, next))];
      canvas.dot(dot, Math.round(height));
      if (!broken) for (let step = from + 1; step < to; step += 1) canvas.dot(dot, step);
    }
  };
  trace((point) => point.leanMps.p50, true);
  trace((point) => point.snapMps.p50, false);

  const gustRow = rowOf(series.designGustMps);
  const todayColumn = Math.floor(x(series.today.year) / 2);
  const labelled = new Map(
    y.ticks(Math.max(3, Math.floor(rows / 3))).map((speed) => [Math.floor(y(speed) / 4), String(speed)] as const),
  );
  const names = rightNames(
    [
      { text: `gust ${Math.round(inUnits(series.designGustMps))}`, row: gustRow },
      { text: 'snap', row: rowOf(series.points.at(-1)?.snapMps.p50 ?? 0) },
      { text: 'lean', row: rowOf(series.points.at(-1)?.leanMps.p50 ?? 0) },
    ],
    rows,
  );
  const lines: string[] = [];
  for (let row = 0; row < rows; row += 1) {
    let line = `${(labelled.get(row) ?? '').padStart(LEFT - 1)} ${labelled.has(row) ? '┤' : '│'}`;
    for (let column = 0; column < width; column += 1) {
      line += canvas.cell(column, row) ?? (column === todayColumn ? '│' : row === gustRow ? '─' : ' ');
    }
    lines.push(`${line} ${names.get(row) ?? ''}`.trimEnd());
  }
  const head = `${' '.repeat(LEFT)}3-second gust, ${speedUnit(units)} · full line: snap speed · broken line: lean speed`;
  return [head.slice(0, columns), ...lines, ...yearAxis(x, width), eventLine(series, units)].flatMap((line) =>
    fold(line, columns),
  );
}

function speedAt(points: readonly SeriesPoint[], year: number, speed: (point: SeriesPoint) => number): number {
  for (let index = 1; index < points.length; index += 1) {
    const [from, to] = [points[index - 1] as SeriesPoint, points[index] as SeriesPoint];
    if (year > to.year) continue;
    const part = to.year === from.year ? 1 : (year - from.year) / (to.year - from.year);
    return speed(from) + (speed(to) - speed(from)) * Math.max(0, part);
  }
  const last = points.at(-1);
  return last ? speed(last) : 0;
}

/** Names in the right margin, moved to the nearest free row where two ask for the same. */
function rightNames(
  wanted: readonly { readonly text: string; readonly row: number }[],
  rows: number,
): Map<number, string> {
  const names = new Map<number, string>();
  for (const { text, row } of wanted) {
    const free = Array.from({ length: rows }, (_, at) => at)
      .filter((at) => !names.has(at))
      .sort((a, b) => Math.abs(a - row) - Math.abs(b - row) || a - b)[0];
    if (free !== undefined) names.set(free, text);
  }
  return names;
}

function yearAxis(x: ReturnType<typeof scaleLinear<number, number>>, width: number): readonly string[] {
  const axis = Array.from({ length: width }, () => '─');
  const labels = Array.from({ length: width + RIGHT }, () => ' ');
  let free = 0;
  for (const year of x.ticks(Math.floor(width / 9)).filter((tick) => Number.isInteger(tick))) {
    const column = Math.floor(x(year) / 2);
    const start = Math.max(0, column - 2);
    if (start < free) continue;
    axis[column] = '┴';
    for (const [offset, character] of [...String(year)].entries()) labels[start + offset] = character;
    free = start + 6;
  }
  const indent = ' '.repeat(LEFT);
  return [`${indent}└${axis.join('')}`, `${indent} ${labels.join('').trimEnd()}`];
}

function eventLine(series: FenceSeries, units: DisplayUnits): string {
  const since = ({ point, sinceNew }: SeriesEvent): string =>
    sinceNew ? 'since new' : `${point.year < series.today.year ? 'since' : 'from'} ${point.label}`;
  const parts = [
    `upright: season ${series.today.label}`,
    `rule: design gust ${speedText(series.designGustMps, units)}`,
    series.short && `short ${since(series.short)}`,
    series.turnover && `snaps before it leans ${since(series.turnover)}`,
  ];
  return `${' '.repeat(LEFT)}${parts.filter((part) => part !== null).join(' · ')}`;
}

function fold(line: string, columns: number): readonly string[] {
  if (line.length <= columns) return [line];
  const cut = line.lastIndexOf(' · ', columns);
  if (cut <= LEFT) return [line.slice(0, columns)];
  return [line.slice(0, cut), ...fold(`${' '.repeat(LEFT)}${line.slice(cut + 3)}`, columns)];
}
