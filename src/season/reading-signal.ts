import type { DepthScatter } from '../forecast/depth-scatter.ts';
import { normalCdf } from '../forecast/normal-distribution.ts';
import type { Signal } from './value-of-inspection.ts';

/** Readings that are thought of. */
export interface ReadingPlan {
  /** Posts read, 1 or more. */
  readonly postCount: number;
  /** Standard deviation of one reading in depth [mm], > 0. */
  readonly errorMm: number;
  /** Outcomes told apart, 2 or more. */
  readonly binCount: number;
}

/** What readings may say: their mean depth in bins of equal chance. */
export interface ReadingSignal {
  readonly signal: Signal;
  /** Upper edge of each bin but the last [mm]. */
  readonly edgesMm: readonly number[];
}

/** Steps of halving when a quantile is sought. */
const HALVINGS = 60;
/** How far beyond the means an edge can lie, in standard deviations. */
const REACH = 9;

/**
 * What reading the groundline of some posts may say before it is done: the mean of their depths is, at a belief point, taken
 * as normal about the point's mean depth, scattered by the posts and by the error of a reading over the root of their number;
 * it is sorted into bins of equal chance. The mean and the bins tell less than all readings would, and what they tell of the
 * very posts that were read is left out, so that what follows of their value is on the low side.
 * Source: central limit theorem for the mean of few posts (approximation); predictive distribution over the belief (derived).
 */
export function readingSignal(depth: DepthScatter, weights: Float64Array, plan: ReadingPlan): ReadingSignal {
  const { postCount, errorMm, binCount } = plan;
  const spread = depth.spreadMm.map((scatter) => Math.hypot(scatter, errorMm) / Math.sqrt(postCount));
  const under = (edgeMm: number, point: number): number => normalCdf((edgeMm - depth.meanMm[point]!) / spread[point]!);
  const shareUnder = (edgeMm: number): number =>
    weights.reduce((sum, weight, point) => sum + weight * under(edgeMm, point), 0);
  const lowest = depth.meanMm.reduce((least, mean, point) => Math.min(least, mean - REACH * spread[point]!), 0);
  const highest = depth.meanMm.reduce((most, mean, point) => Math.max(most, mean + REACH * spread[point]!), 0);
  const quantile = (share: number): number => {
    let [from, to] = [lowest, highest];
    for (let step = 0; step < HALVINGS; step += 1) {
      const middle = (from + to) / 2;
      if (shareUnder(middle) < share) from = middle;
      else to = middle;
    }
    return (from + to) / 2;
  };
  const edgesMm = Array.from({ length: binCount - 1 }, (_, index) => quantile((index + 1) / binCount));
  const below = [
    new Float64Array(weights.length),
    ...edgesMm.map((edge) => Float64Array.from(weights, (_, point) => under(edge, point))),
    new Float64Array(weights.length).fill(1),
  ];
  const signal = below.slice(1).map((upTo, bin) => upTo.map((share, point) => share - below[bin]![point]!));
  return { signal, edgesMm };
}
