import { normalQuantile } from './normal-distribution.ts';

/** The unknowns a fence carries, in the order of the coordinates. */
export const BELIEF_DIMENSIONS = [
  'pace',
  'fibre strength',
  'footing',
  'permanent load',
  'install date',
  'embedment',
  'footing diameter',
] as const;
export type BeliefDimension = (typeof BELIEF_DIMENSIONS)[number];

/** Number of belief points: a power of two. */
const BELIEF_POINT_COUNT = 128;
/**
 * Generating vector of the lattice, odd numbers, one a coordinate: found component by component for small correlation of
 * the scores and small error on a lognormal product.
 */
const GENERATING_VECTOR: Readonly<Record<BeliefDimension, number>> = {
  pace: 1,
  'fibre strength': 23,
  footing: 89,
  'permanent load': 15,
  'install date': 55,
  embedment: 101,
  'footing diameter': 99,
};

/** The shared belief points: for each unknown the probability level of each point and its standard normal score. */
export interface BeliefPoints {
  readonly count: number;
  /** Probability levels, centred: (k + 1/2) / count, each once in every coordinate. */
  readonly levels: Readonly<Record<BeliefDimension, Float64Array>>;
  readonly scores: Readonly<Record<BeliefDimension, Float64Array>>;
}

/**
 * The fixed point set that every fence shares: a centred rank-1 lattice. With odd generators and a power of two of
 * points, every coordinate takes each level (k + 1/2)/N once and the set is its own mirror image, so that medians of
 * monotone functions are met without bias.
 * Source: rank-1 lattice rules, Sloan & Joe 1994, Lattice Methods for Multiple Integration.
 */
export const BELIEF_POINTS: BeliefPoints = (() => {
  const levels = {} as Record<BeliefDimension, Float64Array>;
  const scores = {} as Record<BeliefDimension, Float64Array>;
  for (const dimension of BELIEF_DIMENSIONS) {
    const level = new Float64Array(BELIEF_POINT_COUNT);
    for (let i = 0; i < BELIEF_POINT_COUNT; i += 1) {
      level[i] = (((2 * i + 1) * GENERATING_VECTOR[dimension]) % (2 * BELIEF_POINT_COUNT)) / (2 * BELIEF_POINT_COUNT);
    }
    levels[dimension] = level;
    scores[dimension] = level.map(normalQuantile);
  }
  return { count: BELIEF_POINT_COUNT, levels, scores };
})();

/** One point at the given scores, all other unknowns at their medians: for one-at-a-time questions. */
export function singlePoint(
  at: Partial<Record<BeliefDimension, number>>,
  level: (score: number) => number,
): BeliefPoints {
  const levels = {} as Record<BeliefDimension, Float64Array>;
  const scores = {} as Record<BeliefDimension, Float64Array>;
  for (const dimension of BELIEF_DIMENSIONS) {
    const score = at[dimension] ?? 0;
    scores[dimension] = Float64Array.of(score);
    levels[dimension] = Float64Array.of(level(score));
  }
  return { count: 1, levels, scores };
}

/** Every unknown at its median. */
export const MEDIAN_POINT = singlePoint({}, () => 0.5);
