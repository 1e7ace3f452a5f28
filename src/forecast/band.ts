import type { Band } from './fence-forecast.ts';

/** Simpson intervals over one cell of the weight function. */
const CELL_PARTS = 8;
const weightCache = new Map<string, Float64Array>();

/**
 * Weights of the ordered values in a Harrell-Davis quantile [-]: the probability that a Beta((n+1)p, (n+1)(1-p)) variable
 * falls into the cell of each value. They sum to 1.
 */
function quantileWeights(count: number, probability: number): Float64Array {
  const key = `${count}:${probability}`;
  const known = weightCache.get(key);
  if (known) return known;
  const a = (count + 1) * probability - 1;
  const b = (count + 1) * (1 - probability) - 1;
  const mode = Math.min(1, Math.max(0, a / (a + b || 1)));
  // Density over its value at the mode: the logarithms keep powers of 60 and more in range.
  const part = (power: number, x: number, at: number): number => (power === 0 ? 0 : power * Math.log(x / at));
  const density = (x: number): number =>
    x <= 0 || x >= 1 ? (count === 1 ? 1 : 0) : Math.exp(part(a, x, mode || 1) + part(b, 1 - x, 1 - mode || 1));
  const weights = Float64Array.from({ length: count }, (_, cell) => {
    let sum = 0;
    for (let i = 0; i <= CELL_PARTS; i += 1) {
      const simpson = i === 0 || i === CELL_PARTS ? 1 : i % 2 === 1 ? 4 : 2;
      sum += simpson * density((cell + i / CELL_PARTS) / count);
    }
    return sum;
  });
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  const result = weights.map((weight) => weight / total);
  weightCache.set(key, result);
  return result;
}

/**
 * Quantile of equally weighted values, in the unit of the values: a weighted mean of the ordered values around the wanted
 * one, so that the quantile moves smoothly as the values do.
 * @param ascending values in ascending order, at least one
 * @param probability 0 < p < 1
 * Source: Harrell & Davis 1982, Biometrika 69:635.
 */
export function quantile(ascending: Float64Array, probability: number): number {
  const weights = quantileWeights(ascending.length, probability);
  let sum = 0;
  for (let i = 0; i < ascending.length; i += 1) sum += weights[i]! * ascending[i]!;
  return sum;
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
