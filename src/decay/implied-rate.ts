import { decayDepth, START_DEPTH_MM } from './decay-depth.ts';

/** r t_lag, nearly the same for every rate [mm]: depth given up to the lag. Source: 5.5 r^0.05 mm (derived from the law). */
const LOST_DEPTH_MM = 5.5;

/**
 * Rate that one measured depth implies, in closed form, r = (d + 5.5) / t from 5 mm on, (10.5 / t) sqrt(d / 5) below [mm/a].
 * Within 6.4 % of the exact inversion for exposures of 5 to 50 a and depths of 1 to 28 mm.
 * @param depthMm d, depth per face [mm], >= 0
 * @param exposureYears t, exposure that counts for rot [a], > 0
 * Source: lag-plus-rate law of Leicester et al. 2003, lost depth taken as fixed (derived).
 */
export const impliedRate = (depthMm: number, exposureYears: number): number =>
  depthMm >= START_DEPTH_MM
    ? (depthMm + LOST_DEPTH_MM) / exposureYears
    : ((START_DEPTH_MM + LOST_DEPTH_MM) / exposureYears) * Math.sqrt(depthMm / START_DEPTH_MM);

/** Lowest and highest rate looked for [mm/a]. */
const LOWEST_RATE = 1e-9;
const HIGHEST_RATE = 1e5;
const HALVINGS = 80;

/**
 * Rate at which the law reaches a depth after an exposure, the inverse of `decayDepth` in the rate [mm/a]; by bisection
 * on ln r. 0 for no depth, Infinity where no exposure could have made it.
 * @param depthMm d, depth per face [mm], >= 0
 * @param exposureYears t, exposure that counts for rot [a]
 * Source: inverse of the depth law of Leicester et al. 2003 (derived).
 */
export function rateToDepth(depthMm: number, exposureYears: number): number {
  if (depthMm <= 0) return 0;
  if (exposureYears <= 0) return Number.POSITIVE_INFINITY;
  let low = Math.log(LOWEST_RATE);
  let high = Math.log(HIGHEST_RATE);
  for (let i = 0; i < HALVINGS; i += 1) {
    const middle = (low + high) / 2;
    if (decayDepth(exposureYears, Math.exp(middle)) < depthMm) low = middle;
    else high = middle;
  }
  return Math.exp((low + high) / 2);
}
