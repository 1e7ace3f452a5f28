import { middleOf, type PointRisks } from '../forecast/point-risks.ts';
import { yearsBetween } from '../units/calendar-day.ts';

/** Share of the built strength at which a fence short from new counts as worn out [-]. Source: two-thirds rule for wood poles, NESC 261 (memory). */
const WORN_OUT_SHARE = 2 / 3;

/** The gust whose reach ends the life of a fence, the same for everything that may be done to it. */
export interface LifeGust {
  readonly gustMps: number;
  readonly means: 'short' | 'two thirds';
}

/** Years until the end of a life. */
export interface FenceLife {
  readonly years: number;
  /** True where the end lies beyond the seasons that are forecast: then it is at least so many. */
  readonly atLeast: boolean;
}

/**
 * The gust that ends a fence's life [m/s]: the design gust, so that life ends in its short season; where its posts did not
 * hold that even when sound (short from new), the gust they hold at two thirds of their built strength, as bending strength
 * goes with the square of the speed.
 * @param risks the fence where nothing is done
 * Source: model choice.
 */
export function lifeGust(risks: PointRisks): LifeGust {
  const builtMps = middleOf(risks, risks.builtMps);
  return builtMps >= risks.designGustMps
    ? { gustMps: risks.designGustMps, means: 'short' }
    : { gustMps: builtMps * Math.sqrt(WORN_OUT_SHARE), means: 'two thirds' };
}

/**
 * Years from season 1 until the middle snap speed of the judged posts is under a gust [a], by straight lines between the
 * openings; 0 where it is so in season 1.
 * @param gustMps from `lifeGust` [m/s]
 */
export function fenceLife(risks: PointRisks, gustMps: number): FenceLife {
  const speeds = risks.seasons.map(({ snapMps }) => middleOf(risks, snapMps));
  const first = risks.seasons[0]!.day;
  const yearsAt = (index: number): number => yearsBetween(first, risks.seasons[index]!.day);
  const under = speeds.findIndex((speed) => speed < gustMps);
  if (under === 0) return { years: 0, atLeast: false };
  if (under === -1) return { years: yearsAt(speeds.length - 1), atLeast: true };
  const [before, after] = [speeds[under - 1]!, speeds[under]!];
  const share = (before - gustMps) / (before - after);
  return { years: yearsAt(under - 1) + share * (yearsAt(under) - yearsAt(under - 1)), atLeast: false };
}

/** Life gained by works [a], and what a year of it costs; null where the works gain none or the fence outlasts the forecast as it is. */
export function costOfLife(
  before: FenceLife,
  after: FenceLife,
  price: number,
): { readonly yearsGained: number; readonly costPerYear: number } | null {
  const yearsGained = after.years - before.years;
  return before.atLeast || yearsGained <= 0 ? null : { yearsGained, costPerYear: price / yearsGained };
}
