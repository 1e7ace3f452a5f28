import { FIBRE_SPREAD_FENCE } from '../../capacity/wood-strength.ts';
import { decayDepth } from '../../decay/decay-depth.ts';
import { impliedRate } from '../../decay/implied-rate.ts';
import type { CalendarDay } from '../../units/calendar-day.ts';
import type { Band } from '../band.ts';
import { bandOf, rounded } from '../band.ts';
import { BELIEF_POINTS, type BeliefDimension, type BeliefPoints } from '../belief-points.ts';
import type { FenceFacts } from '../fence-facts.ts';
import { footingPrior } from '../footing-prior.ts';
import { pacePrior } from '../pace-prior.ts';
import { fibreSpread } from '../snap-resistance.ts';
import { PERMANENT_LOAD_SPREAD } from '../state-model.ts';
import type { FenceBelief } from './fence-belief.ts';
import type { InspectionMethod } from './inspection.ts';

/** What is believed of one unknown before anything was seen, after the readings, and after the storms as well. */
export interface UnknownBelief {
  readonly unknown: BeliefDimension;
  /** `mm/a` for pace; `of the median` for the rest: a factor on strength, on footing resistance, on wind force. */
  readonly unit: 'mm/a' | 'of the median';
  readonly prior: Band;
  readonly afterReadings: Band;
  readonly posterior: Band;
  /** What moved it most: by more than a twentieth of the prior's width. */
  readonly movedBy: 'readings' | 'storms' | 'readings and storms' | 'nothing';
}

/** A post that was read, its last reading, and what is believed of its rot on that day. */
export interface ReadPost {
  readonly post: number;
  readonly day: CalendarDay;
  readonly inspectionRef: string;
  readonly method: InspectionMethod;
  readonly readings: number;
  readonly seen: 'measured' | 'at most' | 'at least';
  /** Depth per face that the reading says [mm]. */
  readonly seenMm: number;
  /** Rate that this depth alone implies [mm/a]; a bound where the reading is one. */
  readonly impliedRate: number;
  /** Depth per face believed on that day, readings of all posts taken together [mm]. */
  readonly depthMm: Band;
}

/** What was seen of a fence, and what it changed. */
export interface EvidenceSummary {
  readonly readPosts: readonly ReadPost[];
  readonly readings: number;
  readonly storms: number;
  readonly unknowns: readonly UnknownBelief[];
  /** Probability of the readings before they were taken [-]; null without readings. */
  readonly surprise: number | null;
  /** True where the readings disagree with the model: the spread of pace is doubled. */
  readonly disagrees: boolean;
  /** Belief points by their worth [-]. */
  readonly effectivePoints: number;
  /** ln likelihood of the storm reports where they fit best, a post reported [-]. */
  readonly stormFit: number;
}

const LEVELS = [0.1, 0.5, 0.9] as const;
/** A median that moves by less than this share of the prior's width from p10 to p90 has not moved [-]. */
const MOVED_SHARE = 0.05;

const SEEN = { measured: 'measured', below: 'at most', above: 'at least' } as const;

function readPosts({ pace }: FenceBelief): readonly ReadPost[] {
  if (!pace) return [];
  const middle = pace.byDate[Math.floor(pace.byDate.length / 2)]!;
  return pace.pieces.map(({ piece, post, readings }): ReadPost => {
    const last = readings.at(-1)!;
    const exposure = last.exposureAt(0.5);
    const depthAt = (level: number): number => {
      const own = pace.piecePaces.get(piece)!;
      const [logRate] = own.logRates(middle.mean, 0.5, [level]);
      return rounded(decayDepth(exposure, Math.exp(logRate!)), 2);
    };
    const [p10, p50, p90] = LEVELS.map(depthAt) as [number, number, number];
    return {
      post,
      day: last.day,
      inspectionRef: last.inspectionRef,
      method: last.method,
      readings: readings.length,
      seen: SEEN[last.seen.kind],
      seenMm: rounded(last.seen.depthMm, 2),
      impliedRate: exposure > 0 ? rounded(impliedRate(Math.max(0, last.seen.depthMm), exposure), 4) : 0,
      depthMm: { p10, p50, p90 },
    };
  });
}

interface Scale {
  readonly unknown: BeliefDimension;
  readonly unit: UnknownBelief['unit'];
  readonly valueAt: (score: number) => number;
}

function scalesOf(facts: FenceFacts): readonly Scale[] {
  const factor = (unknown: BeliefDimension, spread: number, logShift = 0): Scale => ({
    unknown,
    unit: 'of the median',
    valueAt: (score) => Math.exp(logShift + spread * score),
  });
  const { medianRate, spread } = pacePrior(facts.wood.treatmentClass, facts.site.climate, facts.learned);
  const footing = footingPrior(facts.learned);
  return [
    ...(medianRate > 0
      ? [{ unknown: 'pace', unit: 'mm/a', valueAt: (score: number) => medianRate * Math.exp(spread * score) } as const]
      : []),
    factor('fibre strength', facts.wood.momentCapacityNm === null ? fibreSpread(facts.wood) : FIBRE_SPREAD_FENCE),
    factor('footing', footing.spread, footing.logShift),
    factor('permanent load', PERMANENT_LOAD_SPREAD),
  ];
}

function bandIn({ unknown, valueAt }: Scale, { scores, weights }: BeliefPoints): Band {
  return bandOf(scores[unknown].map(valueAt), 4, weights);
}

function movedBy(prior: Band, afterReadings: Band, posterior: Band): UnknownBelief['movedBy'] {
  const least = MOVED_SHARE * (prior.p90 - prior.p10);
  const moved = (from: Band, to: Band): boolean =>
    Math.abs(to.p50 - from.p50) > least || Math.abs(to.p90 - to.p10 - (from.p90 - from.p10)) > least;
  const readings = moved(prior, afterReadings);
  const storms = moved(afterReadings, posterior);
  if (readings && storms) return 'readings and storms';
  return readings ? 'readings' : storms ? 'storms' : 'nothing';
}

/**
 * What was seen of a fence and what it changed: each unknown before and after, in units people can use; null where nothing
 * was seen.
 * Source: quantiles of the belief (see `fenceBelief`).
 */
export function evidenceSummary(facts: FenceFacts, belief: FenceBelief): EvidenceSummary | null {
  const { pace, points, afterReadings } = belief;
  if (!pace && facts.outcomes.length === 0) return null;
  return {
    readPosts: readPosts(belief),
    readings: pace ? pace.pieces.reduce((sum, { readings }) => sum + readings.length, 0) : 0,
    storms: new Set(facts.outcomes.map(({ storm }) => storm)).size,
    unknowns: scalesOf(facts).map((scale) => {
      const [prior, after, posterior] = [BELIEF_POINTS, afterReadings, points].map((each) => bandIn(scale, each)) as [
        Band,
        Band,
        Band,
      ];
      return {
        unknown: scale.unknown,
        unit: scale.unit,
        prior,
        afterReadings: after,
        posterior,
        movedBy: movedBy(prior, after, posterior),
      };
    }),
    surprise: pace ? rounded(pace.surprise, 5) : null,
    disagrees: pace?.disagrees ?? false,
    effectivePoints: rounded(belief.effectivePoints, 1),
    stormFit: rounded(belief.stormFit, 2),
  };
}
