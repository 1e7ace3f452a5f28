import type { Provenance } from '../units/provenance.ts';
import type { HazardCurve } from './fence-forecast.ts';
import { NORMAL_QUADRATURE } from './normal-distribution.ts';
import { threeSecondGust } from './three-second-gust.ts';
import type { WindEntry } from './wind-entry.ts';

export const HAZARD_PROVENANCE: Provenance = {
  source:
    'Peterka & Shahid 1998: V_T / V_50 = 0.36 + 0.1 ln(12 T), non-hurricane; else Gumbel through two entered points',
  tag: 'memory',
};

/** A Gumbel curve of yearly maximum gusts. */
export type GumbelCurve = Extract<HazardCurve, { kind: 'gumbel' }>;

/** Ratio of the T-year to the 50-year gust away from hurricanes [-]: 0.36 + 0.1 ln(12 T). @param years T [a], > 0. Source: Peterka & Shahid 1998 (memory). */
export const gustRatioToFiftyYears = (years: number): number => 0.36 + 0.1 * Math.log(12 * years);

/** The T-year gust on a curve [m/s]: u + a ln T. @param years T [a], > 0. Source: Gumbel, rate form (derived). */
export const speedAtReturnPeriod = (curve: GumbelCurve, years: number): number =>
  curve.locationMps + curve.scaleMps * Math.log(years);

/** Longest return period that is reported [a]; beyond it the curve says nothing. Judgement. */
const LONGEST_RETURN_PERIOD_YEARS = 10_000;

/**
 * Once in how many years the gust comes [a]: exp((v - u) / a), at most `LONGEST_RETURN_PERIOD_YEARS`; under 1 where it comes more often than yearly.
 * @param speedMps v [m/s], >= 0
 * Source: Gumbel, rate form 1/T = exp(-(v - u)/a) (derived).
 */
export const returnPeriodOf = (curve: GumbelCurve, speedMps: number): number =>
  Math.min(LONGEST_RETURN_PERIOD_YEARS, Math.exp((speedMps - curve.locationMps) / curve.scaleMps));

/** Probability that the yearly maximum stays at or under a gust [-]: exp(-exp(-(v - u)/a)). @param speedMps v [m/s]. Source: Gumbel distribution. */
export const yearlyMaximumCdf = (curve: GumbelCurve, speedMps: number): number =>
  Math.exp(-Math.exp(-(speedMps - curve.locationMps) / curve.scaleMps));

/**
 * Probability that something of median capacity breaks within a part of the year that holds a share of the hazard [-]:
 * the integral of Phi(ln(v / V_m) / beta) over the maximum, whose distribution is F_year^share.
 * @param medianMps V_m, median capacity [m/s], >= 0
 * @param beta standard deviation of ln capacity as a speed [-], 0 to 0.5
 * @param share share of the yearly hazard [-], 0 to 1
 * Source: convolution of fragility and hazard, nine-point quadrature over the fragility (derived).
 */
export function breakProbability(curve: GumbelCurve, medianMps: number, beta: number, share: number): number {
  if (medianMps <= 0) return 1;
  const { nodes, weights } = NORMAL_QUADRATURE;
  let holds = 0;
  for (let i = 0; i < nodes.length; i += 1) {
    const reduced = (medianMps * Math.exp(beta * nodes[i]!) - curve.locationMps) / curve.scaleMps;
    // F^share of a Gumbel maximum, written without a power.
    holds += weights[i]! * Math.exp(-share * Math.exp(-reduced));
  }
  return Math.min(1, Math.max(0, 1 - holds));
}

interface CurvePoint {
  readonly gustMps: number;
  readonly years: number;
}

const mapPoints = (entry: WindEntry): readonly CurvePoint[] => {
  const points: CurvePoint[] = [];
  if (entry.kind === 'map' && entry.returnPeriodYears !== null) {
    points.push({ gustMps: threeSecondGust(entry.basis, entry.speedMps), years: entry.returnPeriodYears });
  }
  if (entry.second) {
    points.push({
      gustMps: threeSecondGust(entry.basis, entry.second.speedMps),
      years: entry.second.returnPeriodYears,
    });
  }
  return points;
};

/**
 * The site's curve of yearly maximum gusts: Gumbel through two entered points; through one point by the non-hurricane
 * ratio; none for one point in a hurricane region or for a local rule alone, and then the reason and the way out.
 * @param entry design wind as entered
 * Source: Peterka & Shahid 1998 (memory) for one point; Gumbel through two points (derived).
 */
export function hazardCurve(entry: WindEntry): HazardCurve {
  const points = mapPoints(entry);
  const [first, second] = points;
  if (first && second) {
    const scaleMps = (second.gustMps - first.gustMps) / Math.log(second.years / first.years);
    if (!(scaleMps > 0))
      return { kind: 'none', reason: 'the two entered gusts do not rise with their return periods: check them' };
    return {
      kind: 'gumbel',
      scaleMps,
      locationMps: first.gustMps - scaleMps * Math.log(first.years),
      explanation: `through the entered ${first.years}-year and ${second.years}-year gusts`,
    };
  }
  if (!first) {
    return {
      kind: 'none',
      reason:
        'a local fence rule says nothing of how often a gust comes: enter a map gust with its return period as the second point',
    };
  }
  if (entry.hurricane) {
    return {
      kind: 'none',
      reason: 'one gust does not fix the curve in a hurricane region: enter a second map gust with its return period',
    };
  }
  const fiftyYears = first.gustMps / gustRatioToFiftyYears(first.years);
  return {
    kind: 'gumbel',
    scaleMps: 0.1 * fiftyYears,
    locationMps: fiftyYears * (0.36 + 0.1 * Math.log(12)),
    explanation: `from the entered ${first.years}-year gust by V_T/V_50 = 0.36 + 0.1 ln(12 T)`,
  };
}
