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
import { normalCdf, normalQuantile } from '../normal-distribution.ts';
import { dateLogEvidence, type PaceBelief, paceBelief, paceScore } from './pace-belief.ts';
import { stormEvidence } from './storm-likelihood.ts';

/** Points, by their worth, that are enough [-]; model choice. */
const ENOUGH_POINTS = 48;
/** Copies of the point set that are moved to where the belief lies where too few points carry it, and how often they are moved. */
const MOVED_COPIES = 4;
const MOVES = 2;
/** Moved points spread wider than the belief they cover by this factor, and never narrower than this [-]. */
const MOVED_WIDER = 1.3;
const LEAST_MOVED_SPREAD = 0.3;
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
  /** ln likelihood of the storm reports at the point that fits them best, a post reported [-]; 0 without reports. */
  readonly stormFit: number;
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

/** Points on their way: with the ln of what each carries before it is normalised. */
interface Weighed {
  readonly points: BeliefPoints;
  readonly logWeights: Float64Array;
}

/** Probability levels as normal scores, one an unknown: the space in which the points are moved [-]. */
const scoresOfLevels = ({ levels }: BeliefPoints, dimension: BeliefDimension): Float64Array =>
  levels[dimension].map(normalQuantile);

/**
 * The shared points moved to where a belief lies: each unknown's normal score is shifted and stretched to the belief's mean
 * and spread, and each point carries the ratio of the densities, so that nothing but the accuracy changes.
 * Source: importance sampling with a moved low-discrepancy set (derived).
 */
function moved(shared: BeliefPoints, towards: BeliefPoints): Weighed {
  const logWeights = new Float64Array(shared.count);
  const levels = {} as Record<BeliefDimension, Float64Array>;
  const scores = {} as Record<BeliefDimension, Float64Array>;
  const weights = towards.weights ?? new Float64Array(towards.count).fill(1 / towards.count);
  for (const dimension of BELIEF_DIMENSIONS) {
    const seen = scoresOfLevels(towards, dimension);
    const mean = seen.reduce((sum, score, i) => sum + weights[i]! * score, 0);
    const variance = seen.reduce((sum, score, i) => sum + weights[i]! * (score - mean) ** 2, 0);
    const spread = Math.max(LEAST_MOVED_SPREAD, MOVED_WIDER * Math.sqrt(variance));
    scores[dimension] = shared.scores[dimension].map((score, i) => {
      const to = Math.min(MOST_SCORE, Math.max(-MOST_SCORE, mean + spread * score));
      logWeights[i] = logWeights[i]! + (score * score - to * to) / 2;
      return to;
    });
    levels[dimension] = scores[dimension].map(normalCdf);
  }
  return { points: { ...shared, levels, scores }, logWeights };
}

/** Beyond this score a level is no longer a number between 0 and 1 [-]. */
const MOST_SCORE = 8;

/** The points that carry weight, their weights made to sum to 1. */
function kept({ points, logWeights }: Weighed): BeliefPoints {
  const weights = normalised(logWeights);
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

/**
 * The belief about a fence after its readings and storms: pace exactly on a grid, the shared points placed at its quantiles,
 * and weighted by what storms did. Where few points are left that fit, more are added, moved to where the belief lies.
 * Source: Bayes' rule; model as in `paceBelief` and `stormEvidence`.
 */
export function fenceBelief(facts: FenceFacts, states: ReturnType<typeof fenceStates>): FenceBelief {
  const pace = paceBelief(facts, states);
  const effective = ({ count, weights }: BeliefPoints): number => (weights ? effectiveCount(weights) : count);
  const place = (shared: BeliefPoints): BeliefPoints => placed(shared, pace, facts.learned);
  const afterReadings = place(BELIEF_POINTS);
  if (facts.outcomes.length === 0) {
    return { points: afterReadings, afterReadings, pace, effectivePoints: effective(afterReadings), stormFit: 0 };
  }
  let stormFit = Number.NEGATIVE_INFINITY;
  const afterStorms = ({ points: shared, logWeights }: Weighed): BeliefPoints => {
    const before = place(shared);
    const { logs, posts } = stormEvidence(facts, states, before);
    stormFit = Math.max(stormFit, logs.reduce((a, b) => Math.max(a, b)) / Math.max(1, posts));
    const all = logs.map((log, i) => log + logWeights[i]! + (before.weights ? Math.log(before.weights[i]!) : 0));
    return kept({ points: before, logWeights: all });
  };
  let points = afterStorms({ points: BELIEF_POINTS, logWeights: new Float64Array(BELIEF_POINTS.count) });
  for (let move = 0; move < MOVES && effective(points) < ENOUGH_POINTS; move += 1) {
    const next = afterStorms(moved(beliefPoints(MOVED_COPIES), points));
    if (effective(next) > effective(points)) points = next;
  }
  return { points, afterReadings, pace, effectivePoints: effective(points), stormFit };
}

/** Every unknown at its median after what was seen: one point. */
export function medianOf(points: BeliefPoints): BeliefPoints {
  const at: Partial<Record<BeliefDimension, number>> = {};
  if (points.weights || points.piecePaces.size > 0) {
    for (const dimension of BELIEF_DIMENSIONS) at[dimension] = bandOf(points.scores[dimension], 9, points.weights).p50;
  }
  return singlePoint(at, normalCdf, points);
}
