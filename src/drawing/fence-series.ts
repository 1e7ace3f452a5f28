import type { Band, FenceForecast, Mark, SeasonForecast } from '../forecast/fence-forecast.ts';
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

/** A fence's years ready to draw. */
export interface FenceSeries {
  /** Whose snap and lean speed the points hold. */
  readonly judged: 'line' | 'ends';
  readonly points: readonly SeriesPoint[];
  readonly designGustMps: number;
  /** Season 1. */
  readonly today: SeriesPoint;
  /** First date at which the snap speed is under the design gust; null if not in range. */
  readonly short: SeriesPoint | null;
  /** First date at which the snap speed is under the lean speed; null if not in range. */
  readonly turnover: SeriesPoint | null;
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

/**
 * The dates, speeds and events of a forecast that charts draw. Turnover and marks are the forecast's own; the season in which the
 * fence went short is looked up from the speeds where it lies in the past, which the forecast does not name.
 */
export function fenceSeries(forecast: FenceForecast): FenceSeries {
  const points = forecast.seasons.map(seriesPoint).filter((point) => point !== null);
  const byLabel = (label: string | null): SeriesPoint | null => {
    if (label === null) return null;
    if (label === 'since new') return points[0] ?? null;
    return points.find((point) => point.label === label) ?? null;
  };
  const today = byLabel(seasonOne(forecast).label);
  if (!today) throw new Error(`forecast of ${forecast.fenceRef} has no posts to draw`);
  const { gustMps } = forecast.designGust;
  const marks = [...forecast.marksCrossed, ...forecast.marksAhead].flatMap(({ mark, season }) => {
    const point = byLabel(season);
    return point ? [{ mark, point }] : [];
  });
  return {
    judged: seasonOne(forecast).line ? 'line' : 'ends',
    points,
    designGustMps: gustMps,
    today,
    short: points.find((point) => point.snapMps.p50 < gustMps) ?? null,
    turnover: byLabel(forecast.turnover),
    marks,
  };
}
