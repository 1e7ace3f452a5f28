import type { BeliefPoints } from '../belief-points.ts';
import type { FenceFacts } from '../fence-facts.ts';
import type { fenceStates } from '../fence-state.ts';
import { NORMAL_QUADRATURE, normalQuantile, tabulatedNormalCdf } from '../normal-distribution.ts';
import { NODES, stormTrials, type Trace, type Trial } from './storm-trials.ts';

/**
 * Spread of ln footing resistance from post to post of one fence [-]; judgement. Used for storm outcomes alone: without it
 * a fence of which some posts leaned and some stood could not be.
 */
export const FOOTING_SPREAD_POST = 0.2;
/** Least probability of a report [-]: some are wrong. Judgement. */
const MISREPORT_FLOOR = 1e-9;

/** Winds at which storm loads are tried, as a lattice over all storms of a fence, and its generators, one a storm. */
const WINDS = 32;
const WIND_GENERATORS = [1, 19, 41, 11, 17, 3, 57, 59, 33, 51, 9, 43, 49, 35, 25, 27];
const WIND_SCORES = WIND_GENERATORS.map((generator) =>
  Float64Array.from({ length: WINDS }, (_, i) =>
    normalQuantile((((2 * i + 1) * generator) % (2 * WINDS)) / (2 * WINDS)),
  ),
);
/** Footings tried of one post, by even levels. */
const FOOTING_COUNT = 12;
const FOOTINGS = Float64Array.from({ length: FOOTING_COUNT }, (_, i) => normalQuantile((i + 0.5) / FOOTING_COUNT));

const NODE_WEIGHTS = Float64Array.from(NORMAL_QUADRATURE.weights);

/** Probability over the strength scatter that a post of one footing goes through its trials as reported [-]. */
function snapShare(
  trials: readonly Trial[],
  point: number,
  logGusts: readonly number[],
  footing: number | null,
): number {
  let share = 0;
  for (let node = 0; node < NODES; node += 1) {
    let low = Number.NEGATIVE_INFINITY;
    let high = Number.POSITIVE_INFINITY;
    for (const { storm, result, footingTried, logSnap, logLean, snapSpread } of trials) {
      const snap = logSnap[point * NODES + node]!;
      const gust = logGusts[storm]!;
      const lean = logLean[point]! + (FOOTING_SPREAD_POST / 2) * (footing ?? 0);
      const tried = footingTried && footing !== null;
      if (result === 'snapped') high = Math.min(high, ((tried ? Math.min(gust, lean) : gust) - snap) / snapSpread);
      else low = Math.max(low, ((tried && result === 'leaned' ? lean : gust) - snap) / snapSpread);
    }
    if (high > low) share += NODE_WEIGHTS[node]! * (tabulatedNormalCdf(high) - tabulatedNormalCdf(low));
  }
  return share;
}

/** True where footings of a score hold and give as the reports of lean say. */
const footingFits = (trials: readonly Trial[], point: number, logGusts: readonly number[], footing: number): boolean =>
  trials.every(({ storm, result, footingTried, logLean }) => {
    if (!footingTried || result === 'snapped') return true;
    const gives = logLean[point]! + (FOOTING_SPREAD_POST / 2) * footing <= logGusts[storm]!;
    return gives === (result === 'leaned');
  });

/** Probability that one post goes through its trials as reported, at one point and one set of winds [-]. */
function traceProbability({ trials }: Trace, point: number, logGusts: readonly number[]): number {
  if (trials.every(({ result }) => result === 'stood')) {
    let weakest = Number.NEGATIVE_INFINITY;
    for (const { storm, footingTried, logLean } of trials) {
      if (footingTried) weakest = Math.max(weakest, (logGusts[storm]! - logLean[point]!) / (FOOTING_SPREAD_POST / 2));
    }
    return tabulatedNormalCdf(-weakest) * snapShare(trials, point, logGusts, null);
  }
  let sum = 0;
  for (const footing of FOOTINGS) {
    if (footingFits(trials, point, logGusts, footing)) sum += snapShare(trials, point, logGusts, footing);
  }
  return sum / FOOTING_COUNT;
}

/** Share of posts whose snap speed is at or under a speed, at one point [-]. */
function snapCdf({ logSnap, snapSpread }: Trial, point: number, logSpeed: number): number {
  let share = 0;
  for (let node = 0; node < NODES; node += 1) {
    share += NODE_WEIGHTS[node]! * tabulatedNormalCdf((logSpeed - logSnap[point * NODES + node]!) / snapSpread);
  }
  return share;
}

/** As `traceProbability` at every wind, for a post that went through one storm: its scatter need not be gone over anew for each wind. */
function oneTrialProbabilities(trial: Trial, point: number, logGusts: Float64Array): Float64Array {
  const { result, footingTried, logLean } = trial;
  const lean = logLean[point]!;
  const snapsBy = logGusts.map((gust) => snapCdf(trial, point, gust));
  if (result === 'stood' || (result === 'leaned' && !footingTried)) {
    return snapsBy.map((snaps, wind) =>
      footingTried ? (1 - snaps) * tabulatedNormalCdf((lean - logGusts[wind]!) / (FOOTING_SPREAD_POST / 2)) : 1 - snaps,
    );
  }
  if (!footingTried) return snapsBy;
  const leans = FOOTINGS.map((footing) => lean + (FOOTING_SPREAD_POST / 2) * footing);
  const snapsByLean = leans.map((speed) => snapCdf(trial, point, speed));
  return snapsBy.map((snaps, wind) => {
    let sum = 0;
    for (let f = 0; f < FOOTING_COUNT; f += 1) {
      const gives = leans[f]! <= logGusts[wind]!;
      if (result === 'leaned') sum += gives ? 1 - snapsByLean[f]! : 0;
      else sum += gives ? snapsByLean[f]! : snaps;
    }
    return sum / FOOTING_COUNT;
  });
}

/** ln probability of a trace at every wind, at one point [-]. */
function logProbabilities(trace: Trace, point: number, logGusts: readonly Float64Array[]): Float64Array {
  const [only, ...more] = trace.trials;
  const shares =
    more.length === 0
      ? oneTrialProbabilities(only!, point, logGusts[only!.storm]!)
      : Float64Array.from({ length: WINDS }, (_, wind) =>
          traceProbability(
            trace,
            point,
            logGusts.map((gusts) => gusts[wind]!),
          ),
        );
  return shares.map((share) => trace.count * Math.log(Math.max(MISREPORT_FLOOR, share)));
}

/**
 * ln likelihood of everything storms were reported to have done to a fence, at each belief point [-], and the number of posts
 * reported (a post whose footing was made anew counts again). At gust v a post
 * snapped if V_snap <= v and V_snap <= V_lean; it leaned if V_lean <= v and V_lean < V_snap; else it stood. Integrated
 * out: the load of each storm (one for all posts), and for each post its pace, its strength (one for all storms) and its
 * footing. Speeds are against one storm from its worst direction.
 * Source: Bayes' rule with the limit states of the forecast; spreads are judgement.
 */
export function stormEvidence(
  facts: FenceFacts,
  states: ReturnType<typeof fenceStates>,
  points: BeliefPoints,
): { readonly logs: Float64Array; readonly posts: number } {
  const { storms, traces } = stormTrials(facts, states, points);
  const logGusts = storms.map(({ logGust, spread }, index) =>
    WIND_SCORES[index % WIND_SCORES.length]!.map((score) => logGust + spread * score),
  );
  const logs = new Float64Array(WINDS);
  const byPoint = Float64Array.from({ length: points.count }, (_, point) => {
    logs.fill(0);
    for (const trace of traces) {
      const each = logProbabilities(trace, point, logGusts);
      for (let wind = 0; wind < WINDS; wind += 1) logs[wind] = logs[wind]! + each[wind]!;
    }
    const highest = logs.reduce((a, b) => Math.max(a, b));
    return highest + Math.log(logs.reduce((sum, log) => sum + Math.exp(log - highest), 0) / WINDS);
  });
  return { logs: byPoint, posts: traces.reduce((sum, { count }) => sum + count, 0) };
}

/** The ln likelihoods of `stormEvidence` alone [-]. */
export const stormLogLikelihood = (...given: Parameters<typeof stormEvidence>): Float64Array =>
  stormEvidence(...given).logs;
