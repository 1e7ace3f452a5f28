import { bandOf, effectiveCount } from '../band.ts';
import {
  BELIEF_DIMENSIONS,
  BELIEF_POINTS,
  type BeliefDimension,
  type BeliefPoints,
  beliefPoints,
  singlePoint,
} from '../belief-points.ts';
import type { FenceFacts } from '../fence-facts.ts';
import type { fenceStates } from '../fence-state.ts';
import { normalCdf } from '../normal-distribution.ts';
import { dateLogEvidence, type PaceBelief, paceBelief, paceScore } from './pace-belief.ts';
import { stormLogLikelihood } from './storm-likelihood.ts';

/** Copies of the point set tried in turn until enough points carry the belief. */
const COPIES = [1, 8, 32];
/** Points, by their worth, that are enough [-]; model choice. */
const ENOUGH_POINTS = 48;
/** A point that carries less than this is left out [-]. */
const NEGLIGIBLE = 1e-5;

/** What is believed of a fence after all that was seen. */
export interface FenceBelief {
  readonly points: BeliefPoints;
  /** The same before the storms: readings alone. */
  readonly afterReadings: BeliefPoints;
  readonly pace: PaceBelief | null;
  /** Points by their worth [-]; under 48 the evidence leaves few that fit. */
  readonly effectivePoints: number;
}

const normalised = (logs: Float64Array): Float64Array => {
  const highest = logs.reduce((a, b) => Math.max(a, b));
  const raw = logs.map((log) => Math.exp(log - highest));
  const total = raw.reduce((a, b) => a + b);
  return raw.map((each) => each / total);
};

/** The points after the readings: pace at quantiles of its posterior, install dates weighed by how well they fit. */
function placed(shared: BeliefPoints, pace: PaceBelief | null, learned: FenceFacts['learned']): BeliefPoints {
  if (!pace) return { ...shared, learned };
  const { levels } = shared;
  const dates = levels['install date'];
  const score = levels.pace.map((level, point) => paceScore(pace, level, dates[point]!));
  const weights = pace.byDate.length === 1 ? null : normalised(dates.map((level) => dateLogEvidence(pace, level)));
  return { ...shared, scores: { ...shared.scores, pace: score }, weights, piecePaces: pace.piecePaces, learned };
}

/** The points that carry weight, their weights made to sum to 1. */
function kept(points: BeliefPoints, weights: Float64Array): BeliefPoints {
  const indices = [...weights.keys()].filter((index) => weights[index]! >= NEGLIGIBLE);
  const total = indices.reduce((sum, index) => sum + weights[index]!, 0);
  const pick = (values: Readonly<Record<BeliefDimension, Float64Array>>): Record<BeliefDimension, Float64Array> => {
    const picked = {} as Record<BeliefDimension, Float64Array>;
    for (const dimension of BELIEF_DIMENSIONS) {
      picked[dimension] = Float64Array.from(indices, (index) => values[dimension][index]!);
    }
    return picked;
  };
  return {
    ...points,
    count: indices.length,
    levels: pick(points.levels),
    scores: pick(points.scores),
    weights: Float64Array.from(indices, (index) => weights[index]! / total),
  };
}

function afterStorms(facts: FenceFacts, states: ReturnType<typeof fenceStates>, before: BeliefPoints): BeliefPoints {
  const logs = stormLogLikelihood(facts, states, before);
  if (before.weights) for (let i = 0; i < logs.length; i += 1) logs[i] = logs[i]! + Math.log(before.weights[i]!);
  return kept(before, normalised(logs));
}

/**
 * The belief about a fence after its readings and storms: pace exactly on a grid, the shared points placed at its quantiles,
 * and weighted by what storms did. Where few points are left that fit, more are added, the same for every fence.
 * Source: Bayes' rule; model as in `paceBelief` and `stormLogLikelihood`.
 */
export function fenceBelief(facts: FenceFacts, states: ReturnType<typeof fenceStates>): FenceBelief {
  const pace = paceBelief(facts, states);
  const first = placed(BELIEF_POINTS, pace, facts.learned);
  const effective = ({ count, weights }: BeliefPoints): number => (weights ? effectiveCount(weights) : count);
  if (facts.outcomes.length === 0) {
    return { points: first, afterReadings: first, pace, effectivePoints: effective(first) };
  }
  let points = first;
  for (const copies of COPIES) {
    const before = copies === 1 ? first : placed(beliefPoints(copies), pace, facts.learned);
    points = afterStorms(facts, states, before);
    if (effective(points) >= ENOUGH_POINTS) break;
  }
  return { points, afterReadings: first, pace, effectivePoints: effective(points) };
}

/** Every unknown at its median after what was seen: one point. */
export function medianOf(points: BeliefPoints): BeliefPoints {
  const at: Partial<Record<BeliefDimension, number>> = {};
  if (points.weights || points.piecePaces.size > 0) {
    for (const dimension of BELIEF_DIMENSIONS) at[dimension] = bandOf(points.scores[dimension], 9, points.weights).p50;
  }
  return singlePoint(at, normalCdf, points);
}
