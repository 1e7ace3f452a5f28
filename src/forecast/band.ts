/** Weighted quantiles over the belief points: 10th, 50th and 90th percentile. */
export interface Band {
  readonly p10: number;
  readonly p50: number;
  readonly p90: number;
}

/** Simpson intervals over one cell of the weight function. */
const CELL_PARTS = 8;
/** Cells of the tabulated distribution for values of unlike weight. */
const TABLE_CELLS = 1024;
const weightCache = new Map<string, Float64Array>();

/** Shares of a Beta((size+1)p, (size+1)(1-p)) variable that fall into equal cells of 0 to 1 [-]; they sum to 1. */
function betaShares(size: number, probability: number, cells: number): Float64Array {
  if (cells === 1) return Float64Array.of(1);
  const a = (size + 1) * probability - 1;
  const b = (size + 1) * (1 - probability) - 1;
  const mode = Math.min(1, Math.max(0, a / (a + b)));
  // Density over its value at the mode: the logarithms keep powers of 60 and more in range.
  const part = (power: number, x: number, at: number): number => (power === 0 ? 0 : power * Math.log(x / at));
  const density = (x: number): number =>
    x <= 0 || x >= 1 ? 0 : Math.exp(part(a, x, mode || 1) + part(b, 1 - x, 1 - mode || 1));
  const shares = Float64Array.from({ length: cells }, (_, cell) => {
    let sum = 0;
    for (let i = 0; i <= CELL_PARTS; i += 1) {
      const simpson = i === 0 || i === CELL_PARTS ? 1 : i % 2 === 1 ? 4 : 2;
      sum += simpson * density((cell + i / CELL_PARTS) / cells);
    }
    return sum;
  });
  const total = shares.reduce((sum, share) => sum + share, 0);
  return shares.map((share) => share / total);
}

/** Weights of the ordered values in a Harrell-Davis quantile [-]: the share of each value's cell. They sum to 1. */
function quantileWeights(count: number, probability: number): Float64Array {
  const key = `${count}:${probability}`;
  const known = weightCache.get(key);
  if (known) return known;
  const weights = betaShares(count, probability, count);
  weightCache.set(key, weights);
  return weights;
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

/** As many equally weighted values as weighted ones are worth [-]: 1 / sum of squares. @param weights probabilities, summing to 1. Source: Kish 1965. */
export const effectiveCount = (weights: Float64Array): number =>
  1 / weights.reduce((sum, weight) => sum + weight * weight, 0);

/** Distribution functions of the Harrell-Davis weight for a set of weights, tabulated once a set. */
const tables = new WeakMap<Float64Array, Map<number, Float64Array>>();

function tableOf(weights: Float64Array, probability: number): Float64Array {
  let known = tables.get(weights);
  if (!known) {
    known = new Map();
    tables.set(weights, known);
  }
  const found = known.get(probability);
  if (found) return found;
  const shares = betaShares(Math.max(2, effectiveCount(weights)), probability, TABLE_CELLS);
  const table = new Float64Array(TABLE_CELLS + 1);
  for (let cell = 0; cell < TABLE_CELLS; cell += 1) table[cell + 1] = table[cell]! + shares[cell]!;
  known.set(probability, table);
  return table;
}

function atTable(table: Float64Array, level: number): number {
  const at = Math.min(TABLE_CELLS, Math.max(0, level * TABLE_CELLS));
  const cell = Math.min(TABLE_CELLS - 1, Math.floor(at));
  return table[cell]! + (at - cell) * (table[cell + 1]! - table[cell]!);
}

/** Order of values from the smallest [index]. */
const orderOf = (values: Float64Array): Uint32Array =>
  Uint32Array.from(values, (_, index) => index).sort((a, b) => values[a]! - values[b]!);

/**
 * Quantile of values of unlike weight, in the unit of the values: as `quantile`, each value's cell as wide as its weight and
 * the smoothing as for as many values as the weights are worth.
 * @param order indices of the values in ascending order
 * @param weights probability of each value, summing to 1
 * Source: Harrell & Davis 1982 with the effective count of Kish 1965 (derived).
 */
function weightedQuantile(
  values: Float64Array,
  order: Uint32Array,
  weights: Float64Array,
  probability: number,
): number {
  const table = tableOf(weights, probability);
  let below = 0;
  let reached = 0;
  let sum = 0;
  for (const index of order) {
    below += weights[index]!;
    const next = atTable(table, below);
    sum += (next - reached) * values[index]!;
    reached = next;
  }
  return sum / reached;
}

/**
 * 10th, 50th and 90th percentile of values over the belief points, in their unit, rounded to `digits` decimals.
 * @param weights probability of each value; null where all are alike
 * Source: see `quantile`.
 */
export function bandOf(values: Float64Array, digits: number, weights: Float64Array | null = null): Band {
  if (weights) {
    const order = orderOf(values);
    const at = (probability: number): number => rounded(weightedQuantile(values, order, weights, probability), digits);
    return { p10: at(0.1), p50: at(0.5), p90: at(0.9) };
  }
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
