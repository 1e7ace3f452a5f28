import { NO_LOSS } from '../../capacity/section-properties.ts';
import { FIBRE_SPREAD_POST } from '../../capacity/wood-strength.ts';
import { type CalendarDay, dayNumber } from '../../units/calendar-day.ts';
import type { BeliefPoints } from '../belief-points.ts';
import type { FenceFacts, GroundFacts } from '../fence-facts.ts';
import { type fenceStates, stateBefore } from '../fence-state.ts';
import { nodeMoments } from '../node-moments.ts';
import { NORMAL_QUADRATURE } from '../normal-distribution.ts';
import type { FenceState } from '../post-state.ts';
import { snapResistance } from '../snap-resistance.ts';
import { type StateModel, stateModel } from '../state-model.ts';
import { STORM_LOAD_SPREAD, WORST_DIRECTION } from '../storm-load.ts';
import { postsOfOutcome, type StormOutcome, type StormResult } from './storm-outcome.ts';

/** One storm over one fence: its gust against the speeds of the forecast, and how well that is known. */
export interface Storm {
  readonly logGust: number;
  readonly spread: number;
}

/** What one storm did to posts that are alike, with their speeds at each point. */
export interface Trial {
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

/** Posts that went through the same storms alike, each on one footing. */
export interface Trace {
  readonly trials: readonly Trial[];
  readonly count: number;
}

/** Nodes of the scatter of pace from post to post, over which snap speeds are laid out. */
export const NODES = NORMAL_QUADRATURE.nodes.length;
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

/** A trial of one post, its day, and what makes it alike to others. */
interface KeyedTrial {
  readonly day: CalendarDay;
  readonly key: string;
  readonly trial: Trial;
}

/** What one piece of wood went through on one footing. */
interface Spell {
  readonly ground: GroundFacts;
  readonly records: KeyedTrial[];
}

/** Spells that are alike, counted. */
function tracesOf(spells: readonly Spell[]): readonly Trace[] {
  const traces = new Map<string, Trace>();
  for (const { records } of spells) {
    const key = records.map((record) => record.key).join(' ');
    traces.set(key, { trials: records.map(({ trial }) => trial), count: (traces.get(key)?.count ?? 0) + 1 });
  }
  return [...traces.values()];
}

/**
 * What storms were reported to have done to a fence, with the speeds of its posts at each belief point. Left out are posts
 * that were broken before. A footing made anew starts anew: what the old one did says nothing of its scatter.
 * Source: speeds as in the forecast, against one storm from its worst direction.
 */
export function stormTrials(
  facts: FenceFacts,
  states: ReturnType<typeof fenceStates>,
  points: BeliefPoints,
): { readonly storms: readonly Storm[]; readonly traces: readonly Trace[] } {
  const models = new Map<FenceState, StateModel>();
  const spells: Spell[] = [];
  const latest = new Map<string, Spell>();
  const spellOf = (piece: string, ground: GroundFacts): Spell => {
    const known = latest.get(piece);
    if (known?.ground === ground) return known;
    const spell: Spell = { ground, records: [] };
    latest.set(piece, spell);
    spells.push(spell);
    return spell;
  };
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
      const { records } = spellOf(post.piece, post.ground);
      // Of two storms on one day the second finds a post as the first left it.
      const sameDay = records.filter((record) => record.day === day).map(({ trial }) => trial.result);
      if (sameDay.includes('snapped')) continue;
      const footingTried = !post.condition.leaning && !sameDay.includes('leaned');
      const classIndex = model.classes.classes.findIndex(({ numbers }) => numbers.includes(post.number));
      const speed = speeds.get(classIndex) ?? {
        ...snapSpeeds(model, classIndex, dayNumber(day)),
        logLean: model.leanMps[classIndex]!.map(Math.log),
      };
      speeds.set(classIndex, speed);
      records.push({
        day,
        key: `${index}:${classIndex}:${result}:${footingTried}`,
        trial: { storm: index, result, footingTried, ...speed },
      });
    }
    return {
      logGust: Math.log(gustMps / WORST_DIRECTION),
      spread: Math.hypot(gustSpread, STORM_LOAD_SPREAD / 2),
    };
  });
  return { storms, traces: tracesOf(spells) };
}
