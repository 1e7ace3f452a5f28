import type { Band } from '../forecast/band.ts';
import type { FenceForecast, Mark, SeasonForecast } from '../forecast/fence-forecast.ts';
import { seasonOne } from '../forecast/fence-forecast.ts';
import { dayNumber, yearOf } from '../units/calendar-day.ts';

/** One date of a fence's years, as the charts use it. Speeds [m/s]. */
export interface SeriesPoint {
  readonly label: string;
  /** Calendar year with its fraction, as 2027.42. */
  readonly year: number;
  readonly ageYears: number;
  readonly snapMps: Band;
  readonly leanMps: Band;
  /** The ends' snap speed where line posts are judged; null otherwise. */
  readonly endsSnapMps: number | null;
}

/** An event of a fence's years. */
export interface SeriesEvent {
  readonly point: SeriesPoint;
  /** True where it has been so since the present build was new, whenever that was. */
  readonly sinceNew: boolean;
}

/** A fence's years ready to draw. */
export interface FenceSeries {
  /** Whose snap and lean speed the points hold. */
  readonly judged: 'line' | 'ends';
  readonly points: readonly SeriesPoint[];
  /** The points between which lines are drawn: where works raised a speed, the value before them lasts until the next date. */
  readonly drawn: readonly SeriesPoint[];
  readonly designGustMps: number;
  /** Season 1. */
  readonly today: SeriesPoint;
  /** Where the present, or else the next, stretch under the design gust begins; null if not in range. */
  readonly short: SeriesEvent | null;
  /** Where the present, or else the next, stretch under the lean speed begins; null if not in range. */
  readonly turnover: SeriesEvent | null;
  readonly marks: readonly { readonly mark: Mark; readonly point: SeriesPoint }[];
}

function decimalYear(day: string): number {
  const year = yearOf(day);
  const start = dayNumber(`${year}-01-01`);
  return year + (dayNumber(day) - start) / (dayNumber(`${year}-12-31`) - start + 1);
}

function seriesPoint(season: SeasonForecast): SeriesPoint | null {
  const group = season.line ?? season.ends;
  if (!group) return null;
  return {
    label: season.label,
    year: decimalYear(season.day),
    ageYears: season.ageYears,
    snapMps: group.snapMps,
    leanMps: group.leanMps,
    endsSnapMps: season.line && season.ends ? season.ends.snapMps.p50 : null,
  };
}

/** The date at which to draw what has been so since the present build was new: the first one, or where the stretch up to today begins. */
function sinceNewPoint(
  points: readonly SeriesPoint[],
  today: SeriesPoint,
  isSo: (point: SeriesPoint) => boolean,
): SeriesPoint {
  const [first] = points;
  if (first && isSo(first)) return first;
  let at = points.indexOf(today);
  for (let before = points[at - 1]; before && isSo(before); before = points[at - 1]) at -= 1;
  return points[at] ?? today;
}

/** Wood only loses strength: a speed that rises by more than this share from one date to the next was raised by works [-]. */
const RISE = 0.001;

const rises = (from: SeriesPoint, to: SeriesPoint): boolean =>
  [
    [from.snapMps.p50, to.snapMps.p50],
    [from.leanMps.p50, to.leanMps.p50],
    [from.endsSnapMps ?? 0, to.endsSnapMps ?? 0],
  ].some(([before = 0, after = 0]) => after > before * (1 + RISE));

const steppedPoints = (points: readonly SeriesPoint[]): readonly SeriesPoint[] =>
  points.flatMap((point, index) => {
    const before = points[index - 1];
    return before && rises(before, point) ? [{ ...before, year: point.year }, point] : [point];
  });

/** The dates, speeds and events of a forecast that charts draw. Which season an event falls in is the forecast's own word. */
export function fenceSeries(forecast: FenceForecast): FenceSeries {
  const points = forecast.seasons.map(seriesPoint).filter((point) => point !== null);
  const byLabel = (label: string): SeriesPoint | null => points.find((point) => point.label === label) ?? null;
  const today = byLabel(seasonOne(forecast).label);
  if (!today) throw new Error(`forecast of ${forecast.fenceRef} has no posts to draw`);
  const { gustMps } = forecast.designGust;
  const event = (label: string | null, isSo: (point: SeriesPoint) => boolean): SeriesEvent | null => {
    if (label === null) return null;
    const sinceNew = label === 'new' || label === 'since new';
    const point = sinceNew ? sinceNewPoint(points, today, isSo) : byLabel(label);
    return point && { point, sinceNew };
  };
  const marks = [...forecast.marksCrossed, ...forecast.marksAhead].flatMap(({ mark, season }) => {
    const point = byLabel(season);
    return point ? [{ mark, point }] : [];
  });
  return {
    judged: seasonOne(forecast).line ? 'line' : 'ends',
    points,
    drawn: steppedPoints(points),
    designGustMps: gustMps,
    today,
    short: event(forecast.shortFrom, (point) => point.snapMps.p50 < gustMps),
    turnover: event(forecast.turnover, (point) => point.snapMps.p50 < point.leanMps.p50),
    marks,
  };
}
