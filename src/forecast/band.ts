import type { Band } from './fence-forecast.ts';

/**
 * Quantile of equally weighted values, in the unit of the values: linear between the mid-points of the ordered values.
 * @param ascending values in ascending order, at least one
 * @param probability 0 to 1
 * Source: Hazen plotting position (i - 1/2)/n, Hyndman & Fan 1996 type 5.
 */
export function quantile(ascending: Float64Array, probability: number): number {
  const place = probability * ascending.length - 0.5;
  const below = Math.floor(place);
  if (below < 0) return ascending[0]!;
  if (below >= ascending.length - 1) return ascending[ascending.length - 1]!;
  const share = place - below;
  return ascending[below]! * (1 - share) + ascending[below + 1]! * share;
}

/** 10th, 50th and 90th percentile of values over the belief points, rounded to `digits` decimals of their unit. Source: see `quantile`. */
export function bandOf(values: Float64Array, digits: number): Band {
  const ascending = Float64Array.from(values).sort();
  return {
    p10: rounded(quantile(ascending, 0.1), digits),
    p50: rounded(quantile(ascending, 0.5), digits),
    p90: rounded(quantile(ascending, 0.9), digits),
  };
}

/** A number rounded to so many decimals, never minus zero; unit as given. */
export function rounded(value: number, digits: number): number {
  const scale = 10 ** digits;
  return Math.round(value * scale) / scale + 0;
}
