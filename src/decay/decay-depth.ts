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

/**
 * Rot depth per exposed face after an exposure, d(t) [mm]:
 * d0 (t / t_d0)^2 up to t_d0 = t_lag + d0 / r, then r (t - t_lag). Zero for t <= 0 or r <= 0.
 * @param exposureYears t, years of exposure [a]
 * @param rateMmPerYear r [mm/a per face]
 * Source: Leicester et al. 2003, IRG/WP 03-20260 (memory).
 */
export function decayDepth(exposureYears: number, rateMmPerYear: number): number {
  if (exposureYears <= 0 || rateMmPerYear <= 0) return 0;
  const lag = decayLag(rateMmPerYear);
  const startEnds = lag + START_DEPTH_MM / rateMmPerYear;
  if (exposureYears <= startEnds) return START_DEPTH_MM * (exposureYears / startEnds) ** 2;
  return rateMmPerYear * (exposureYears - lag);
}

/**
 * Exposure after which the depth is reached, the inverse of `decayDepth` [a]; Infinity where nothing rots.
 * @param depthMm d [mm], >= 0
 * @param rateMmPerYear r [mm/a per face]
 * Source: inverse of the depth law of Leicester et al. 2003 (derived).
 */
export function exposureToDepth(depthMm: number, rateMmPerYear: number): number {
  if (depthMm <= 0) return 0;
  if (rateMmPerYear <= 0) return Number.POSITIVE_INFINITY;
  const lag = decayLag(rateMmPerYear);
  if (depthMm <= START_DEPTH_MM) return (lag + START_DEPTH_MM / rateMmPerYear) * Math.sqrt(depthMm / START_DEPTH_MM);
  return lag + depthMm / rateMmPerYear;
}
