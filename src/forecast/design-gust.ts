import type { DesignGust, HazardCurve } from './fence-forecast.ts';
import { speedAtReturnPeriod } from './hazard-curve.ts';
import { threeSecondGust } from './three-second-gust.ts';
import type { WindEntry } from './wind-entry.ts';

/**
 * The gust a site's fences are judged against: a map speed read off the site's curve at the standing return period, a
 * local fence rule as it stands, or the entered point itself where a hurricane site has no curve.
 * @param entry design wind as entered
 * @param curve hazard curve from `hazardCurve(entry)`
 * @param standingReturnPeriodYears return period of the standing [a], 10 to 3,000
 * Source: risk category of fences and its 300-year map, ASCE 7-16 (memory); the rest model choice.
 */
export function designGust(entry: WindEntry, curve: HazardCurve, standingReturnPeriodYears: number): DesignGust {
  const gustMps = threeSecondGust(entry.basis, entry.speedMps);
  if (entry.kind === 'local-rule') {
    return { gustMps, returnPeriodYears: null, explanation: 'local fence rule, used as it stands, as a 3-second gust' };
  }
  if (curve.kind === 'gumbel') {
    return {
      gustMps: speedAtReturnPeriod(curve, standingReturnPeriodYears),
      returnPeriodYears: standingReturnPeriodYears,
      explanation: `the gust that comes about once in ${standingReturnPeriodYears} years on the site's curve (${curve.explanation})`,
    };
  }
  return {
    gustMps,
    returnPeriodYears: entry.returnPeriodYears,
    explanation: `the entered ${entry.returnPeriodYears ?? '?'}-year gust itself, for want of a curve`,
  };
}
