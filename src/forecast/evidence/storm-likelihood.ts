import { NO_LOSS } from '../../capacity/section-properties.ts';
import { FIBRE_SPREAD_POST } from '../../capacity/wood-strength.ts';
import { dayNumber } from '../../units/calendar-day.ts';
import type { BeliefPoints } from '../belief-points.ts';
import type { FenceFacts } from '../fence-facts.ts';
import { type fenceStates, stateBefore } from '../fence-state.ts';
import { nodeMoments } from '../node-moments.ts';
import { NORMAL_QUADRATURE, normalQuantile, tabulatedNormalCdf } from '../normal-distribution.ts';
import type { FenceState } from '../post-state.ts';

import { snapResistance } from '../snap-resistance.ts';
import { type StateModel, stateModel } from '../state-model.ts';
import { STORM_LOAD_SPREAD, WORST_DIRECTION } from '../storm-load.ts';
import { postsOfOutcome, type StormOutcome, type StormResult } from './storm-outcome.ts';

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

/** One storm over one fence: its gust against the speeds of the forecast, and how well that is known. */
interface Storm {
  readonly logGust: number;
  readonly spread: number;
}

/** What one storm did to posts that are alike, with their speeds at each point. */
interface Trial {
  readonly storm: number;
  readonly result: StormResult;
  /** False where the post leaned already: it can no longer show that its footing holds. */
  readonly footingTried: boolean;
  /** ln snap speed at each point and node [ln m/s], point by point. */
  readonly logSnap: Float64Array;
  /** ln lean speed at each point [ln m/s]. */
  readonly logLean: Float64Array;
  /** Spread of ln snap speed from post to post [-]. */
  readonly snapSpread: number;
}

/** Posts that went through the same storms alike. */
interface Trace {
  readonly trials: readonly Trial[];
  count: number;
}

const NODES = NORMAL_QUADRATURE.nodes.length;
const NODE_WEIGHTS = Float64Array.from(NORMAL_QUADRATURE.weights);
/** What does not scatter still needs a width. */
const RIGID_SPREAD = 1e-6;

function snapSpeeds(model: StateModel, classIndex: number, day: number): Pick<Trial, 'logSnap' | 'snapSpread'> {
  const { kind, momentPerV2, forcePerV2, sample } = model.classes.classes[classIndex]!;
  const railForce = Math.log(snapResistance(sample.post, NO_LOSS, 1).railN);
  const logSnap = new Float64Array(model.points.count * NODES);
  let snapSpread = FIBRE_SPREAD_POST / 2;
  for (let point = 0; point < model.points.count; point += 1) {
    const moments = nodeMoments(model, { kind, point, day });
    const logDemand = Math.log(momentPerV2 * model.loadFactor[point]!);
    if (moments.kind === 'rigid') snapSpread = RIGID_SPREAD;
    for (let node = 0; node < NODES; node += 1) {
      const moment = moments.kind === 'rigid' ? moments.momentNm : moments.momentsNm[node]!;
      const byRails = railForce - Math.log(forcePerV2 * model.loadFactor[point]!);
      logSnap[point * NODES + node] = Math.min(Math.log(moment) - logDemand, byRails) / 2;
    }
  }
  return { logSnap, snapSpread };
}

/** Outcomes by storm, in the order of the days. */
function byStorm(outcomes: readonly StormOutcome[]): readonly (readonly StormOutcome[])[] {
  const storms = new Map<string, StormOutcome[]>();
  for (const outcome of outcomes) {
    const known = storms.get(outcome.storm);
    if (known) known.push(outcome);
    else storms.set(outcome.storm, [outcome]);
  }
  const order = (a: StormOutcome, b: StormOutcome): number =>
    a.day < b.day ? -1 : a.day > b.day ? 1 : a.storm < b.storm ? -1 : 1;
  return [...storms.values()].sort((a, b) => order(a[0]!, b[0]!));
}

/** A trial of one post, and what makes it alike to others. */
interface KeyedTrial {
  readonly key: string;
  readonly trial: Trial;
}

function tracesOf(
  facts: FenceFacts,
  states: ReturnType<typeof fenceStates>,
  points: BeliefPoints,
): { readonly storms: readonly Storm[]; readonly traces: readonly Trace[] } {
  const models = new Map<FenceState, StateModel>();
  const pieces = new Map<string, KeyedTrial[]>();
  const storms = byStorm(facts.outcomes).map((outcomes, index): Storm => {
    const { day, gustMps, gustSpread } = outcomes[0]!;
    const state = stateBefore(states, day);
    const model = models.get(state) ?? stateModel(facts.site, state, points);
    models.set(state, model);
    const results = new Map<number, StormResult>();
    for (const outcome of outcomes) {
      for (const number of postsOfOutcome(outcome, facts.outcomes, state)) results.set(number, outcome.result);
    }
    const speeds = new Map<number, Pick<Trial, 'logSnap' | 'snapSpread' | 'logLean'>>();
    for (const post of state.posts) {
      const result = results.get(post.number);
      if (result === undefined || post.condition.broken) continue;
      const classIndex = model.classes.classes.findIndex(({ numbers }) => numbers.includes(post.number));
      const speed = speeds.get(classIndex) ?? {
        ...snapSpeeds(model, classIndex, dayNumber(day)),
        logLean: model.leanMps[classIndex]!.map(Math.log),
      };
      speeds.set(classIndex, speed);
      const footingTried = !post.condition.leaning;
      const records = pieces.get(post.piece) ?? [];
      // Of two storms on one day the second finds a post that the first snapped no longer there.
      if (records.some(({ trial }) => trial.result === 'snapped')) continue;
      pieces.set(post.piece, records);
      records.push({
        key: `${index}:${classIndex}:${result}:${footingTried}`,
        trial: { storm: index, result, footingTried, ...speed },
      });
    }
    return {
      logGust: Math.log(gustMps / WORST_DIRECTION),
      spread: Math.hypot(gustSpread, STORM_LOAD_SPREAD / 2),
    };
  });
  const traces = new Map<string, Trace>();
  for (const records of pieces.values()) {
    const key = records.map((record) => record.key).join(' ');
    const known = traces.get(key);
    if (known) known.count += 1;
    else traces.set(key, { trials: records.map((record) => record.trial), count: 1 });
  }
  return { storms, traces: [...traces.values()] };
}

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
  return sum / FOOTINGS.length;
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
 * reported. At gust v a post
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
  const { storms, traces } = tracesOf(facts, states, points);
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
