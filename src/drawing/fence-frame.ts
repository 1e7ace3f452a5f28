import { max } from 'd3-array';
import type { ScaleLinear } from 'd3-scale';
import { scaleLinear } from 'd3-scale';
import type { FenceSeries, SeriesPoint } from './fence-series.ts';
import type { Box, Spot } from './picture-box.ts';
import type { DisplayUnits } from './speed-text.ts';
import { displaySpeed } from './speed-text.ts';

/** Scales and margins of one fence's chart. */
export interface FenceFrame {
  readonly widthPx: number;
  readonly heightPx: number;
  /** The area in which lines are drawn [px]. */
  readonly plot: Box;
  readonly fontPx: number;
  /** Calendar year to x [px]. */
  readonly xOf: ScaleLinear<number, number>;
  /** Speed in display units to y [px]. */
  readonly yOf: ScaleLinear<number, number>;
  readonly spotOf: (point: SeriesPoint, speedMps: number) => Spot;
  readonly yOfMps: (speedMps: number) => number;
}

/** Lays out one fence's chart: years from installation to the last season, speeds from nothing to above all that is drawn. */
export function fenceFrame(
  series: FenceSeries,
  options: {
    readonly units: DisplayUnits;
    readonly widthPx: number;
    readonly heightPx: number;
    readonly footPx: number;
  },
): FenceFrame {
  const { units, widthPx, heightPx } = options;
  const narrow = widthPx < 520;
  const fontPx = narrow ? 12.5 : 14;
  const plot: Box = {
    left: narrow ? 34 : 44,
    right: widthPx - (narrow ? 10 : 18),
    top: 44,
    bottom: heightPx - 26 - options.footPx,
  };
  const highest =
    max(series.points, (point) => Math.max(point.snapMps.p90, point.leanMps.p90, point.endsSnapMps ?? 0)) ?? 0;
  const top = Math.max(highest * 1.04, series.designGustMps * 1.12);
  const xOf = scaleLinear()
    .domain([series.points[0]?.year ?? 0, series.points.at(-1)?.year ?? 1])
    .range([plot.left, plot.right]);
  const yOf = scaleLinear()
    .domain([0, displaySpeed(top, units)])
    .range([plot.bottom, plot.top]);
  const yOfMps = (speedMps: number): number => yOf(displaySpeed(speedMps, units));
  return {
    widthPx,
    heightPx,
    plot,
    fontPx,
    xOf,
    yOf,
    yOfMps,
    spotOf: (point, speedMps) => ({ x: xOf(point.year), y: yOfMps(speedMps) }),
  };
}

/** Whole calendar years to label on an axis of that width, about one per 80 px and four at least, never two of the same. */
export function yearTicks(frame: FenceFrame): readonly number[] {
  const count = Math.max(4, Math.floor((frame.plot.right - frame.plot.left) / 80));
  return frame.xOf.ticks(count).filter((year) => Number.isInteger(year));
}
