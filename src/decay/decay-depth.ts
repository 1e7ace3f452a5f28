import type { Provenance } from '../units/provenance.ts';

export const DECAY_DEPTH_PROVENANCE: Provenance = {
  source: 'Leicester et al. 2003, IRG/WP 03-20260; Wang, Leicester, Nguyen 2008, Manual No. 3: lag-plus-rate depth law',
  tag: 'memory',
};

/** Depth at which the parabolic start ends [mm]. Source: Manual No. 3 (memory). */
export const START_DEPTH_MM = 5;
const LAG_COEFFICIENT = 5.5;
const LAG_EXPONENT = -0.95;

/**
 * Lag before the linear law, t_lag = 5.5 r^-0.95 [a].
 * @param rateMmPerYear r [mm/a per face], > 0
 * Source: Wang, Leicester, Nguyen 2008, Manual No. 3 (memory).
 */
export const decayLag = (rateMmPerYear: number): number => LAG_COEFFICIENT * rateMmPerYear ** LAG_EXPONENT;

/** The depth law of one rate, with its constants worked out once. */
export interface DecayLaw {
  /** r [mm/a per face]; 0 for what does not rot. */
  readonly rateMmPerYear: number;
  /** t_lag [a]. */
  readonly lagYears: number;
  /** t_d0, end of the parabolic start [a]. */
  readonly startEndsYears: number;
}

/**
 * The depth law of a rate [mm, a].
 * @param rateMmPerYear r [mm/a per face], >= 0
 * Source: Leicester et al. 2003, IRG/WP 03-20260 (memory).
 */
export function decayLaw(rateMmPerYear: number): DecayLaw {
  const lagYears = rateMmPerYear > 0 ? decayLag(rateMmPerYear) : Number.POSITIVE_INFINITY;
  const startEndsYears = rateMmPerYear > 0 ? lagYears + START_DEPTH_MM / rateMmPerYear : Number.POSITIVE_INFINITY;
  return { rateMmPerYear, lagYears, startEndsYears };
}

/**
 * Rot depth per exposed face after an exposure by a law, d(t) [mm]: d0 (t / t_d0)^2 up to t_d0, then r (t - t_lag). Zero for t <= 0.
 * @param law from `decayLaw`
 * @param exposureYears t, years of exposure [a]
 * Source: Leicester et al. 2003, IRG/WP 03-20260 (memory).
 */
export function depthByLaw(law: DecayLaw, exposureYears: number): number {
  if (exposureYears <= 0 || law.rateMmPerYear <= 0) return 0;
  const share = exposureYears / law.startEndsYears;
  return share <= 1 ? START_DEPTH_MM * share * share : law.rateMmPerYear * (exposureYears - law.lagYears);
}

/**
 * Rot depth per exposed face after an exposure, d(t) [mm]:
 * d0 (t / t_d0)^2 up to t_d0 = t_lag + d0 / r, then r (t - t_lag). Zero for t <= 0 or r <= 0.
 * @param exposureYears t, years of exposure [a]
 * @param rateMmPerYear r [mm/a per face]
 * Source: Leicester et al. 2003, IRG/WP 03-20260 (memory).
 */
export const decayDepth = (exposureYears: number, rateMmPerYear: number): number =>
  depthByLaw(decayLaw(rateMmPerYear), exposureYears);

/**
 * Exposure after which the depth is reached, the inverse of `decayDepth` [a]; Infinity where nothing rots.
 * @param depthMm d [mm], >= 0
 * @param rateMmPerYear r [mm/a per face]
 * Source: inverse of the depth law of Leicester et al. 2003 (derived).
 */
export function exposureToDepth(depthMm: number, rateMmPerYear: number): number {
  if (depthMm <= 0) return 0;
  if (rateMmPerYear <= 0) return Number.POSITIVE_INFINITY;
  const { lagYears, startEndsYears } = decayLaw(rateMmPerYear);
  if (depthMm <= START_DEPTH_MM) return startEndsYears * Math.sqrt(depthMm / START_DEPTH_MM);
  return lagYears + depthMm / rateMmPerYear;
}
