import type { LearnedFacts } from './evidence/learned-facts.ts';
import type { PiecePace } from './evidence/piece-pace.ts';
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

/** Number of belief points of one lattice: a power of two. */
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

/** The belief points of a fence: for each unknown the probability level of each point and its standard normal score. */
export interface BeliefPoints {
  readonly count: number;
  /** Probability levels under the prior, 0 to 1 [-]. */
  readonly levels: Readonly<Record<BeliefDimension, Float64Array>>;
  /** Scores: of the posterior for pace, of the prior for the rest [-]. */
  readonly scores: Readonly<Record<BeliefDimension, Float64Array>>;
  /** Probability of each point, summing to 1 [-]; null where all are alike. */
  readonly weights: Float64Array | null;
  /** Paces of the posts that have been read, by piece. */
  readonly piecePaces: ReadonlyMap<string, PiecePace>;
  /** What the register has learned and the office accepted. */
  readonly learned: LearnedFacts | null;
}

const NO_EVIDENCE = { weights: null, piecePaces: new Map<string, PiecePace>(), learned: null } as const;

/**
 * Steps between the shifted copies of the lattice, one a coordinate: powers of the inverse of the root of x^8 = x + 1, so
 * that copies never fall on one another.
 * Source: additive recurrence of the generalised golden ratio in seven dimensions (Roberts 2018, memory).
 */
const SHIFT_ROOT = (() => {
  let root = 1.1;
  for (let i = 0; i < 60; i += 1) root = (1 + root) ** (1 / (BELIEF_DIMENSIONS.length + 1));
  return root;
})();

/**
 * The fixed point set that every fence shares, `copies` times 128 points: a centred rank-1 lattice, and shifted copies of it.
 * With odd generators and a power of two of points, every coordinate of the first copy takes each level (k + 1/2)/N once
 * and the set is its own mirror image, so that medians of monotone functions are met without bias.
 * @param copies whole number, 1 or more
 * Source: rank-1 lattice rules, Sloan & Joe 1994, Lattice Methods for Multiple Integration.
 */
export function beliefPoints(copies: number): BeliefPoints {
  const levels = {} as Record<BeliefDimension, Float64Array>;
  const scores = {} as Record<BeliefDimension, Float64Array>;
  for (const [index, dimension] of BELIEF_DIMENSIONS.entries()) {
    const level = new Float64Array(copies * BELIEF_POINT_COUNT);
    for (let i = 0; i < level.length; i += 1) {
      const shift = Math.floor(i / BELIEF_POINT_COUNT) * SHIFT_ROOT ** -(index + 1);
      const first =
        (((2 * (i % BELIEF_POINT_COUNT) + 1) * GENERATING_VECTOR[dimension]) % (2 * BELIEF_POINT_COUNT)) /
        (2 * BELIEF_POINT_COUNT);
      level[i] = (first + shift) % 1;
    }
    levels[dimension] = level;
    scores[dimension] = level.map(normalQuantile);
  }
  return { count: copies * BELIEF_POINT_COUNT, levels, scores, ...NO_EVIDENCE };
}

/** The belief of a fence of which nothing has been seen. */
export const BELIEF_POINTS: BeliefPoints = beliefPoints(1);

/**
 * One point at the given scores, all other unknowns at their medians: for one-at-a-time questions.
 * @param base whose read posts and learned values hold; none where left out
 */
export function singlePoint(
  at: Partial<Record<BeliefDimension, number>>,
  level: (score: number) => number,
  base: Pick<BeliefPoints, 'piecePaces' | 'learned'> = NO_EVIDENCE,
): BeliefPoints {
  const levels = {} as Record<BeliefDimension, Float64Array>;
  const scores = {} as Record<BeliefDimension, Float64Array>;
  for (const dimension of BELIEF_DIMENSIONS) {
    const score = at[dimension] ?? 0;
    scores[dimension] = Float64Array.of(score);
    levels[dimension] = Float64Array.of(level(score));
  }
  return { count: 1, levels, scores, weights: null, piecePaces: base.piecePaces, learned: base.learned };
}

/** Every unknown at its median. */
export const MEDIAN_POINT = singlePoint({}, () => 0.5);
