import { type CalendarDay, dayNumber } from '../units/calendar-day.ts';
import { bandOf } from './band.ts';
import type { BeliefPoints } from './belief-points.ts';
import { type DepthScatter, depthScatter } from './depth-scatter.ts';
import { designGust } from './design-gust.ts';
import { fenceBelief } from './evidence/fence-belief.ts';
import type { FenceFacts, ForecastSettings } from './fence-facts.ts';
import type { FoundPosts, HazardCurve } from './fence-forecast.ts';
import { fenceStates, stateOn } from './fence-state.ts';
import { foundPosts } from './found-posts.ts';
import { breakProbability, hazardCurve } from './hazard-curve.ts';
import { groupValue, type PostGroup, postGroups } from './post-group.ts';
import type { FenceState } from './post-state.ts';
import { postsShort } from './risk.ts';
import { openingDay } from './season-calendar.ts';
import { type SeasonDay, seasonDays } from './season-days.ts';
import { classValues, type StateModel, stateModel } from './state-model.ts';
import { STORM_LOAD_SPREAD } from './storm-load.ts';

/** One season at each belief point: speeds of the posts that are judged [m/s] and the chance that they break [-]. */
interface PointSeason extends SeasonDay {
  readonly snapMps: Float64Array;
  readonly leanMps: Float64Array;
  /** Snap speed of the ends where line posts are judged; null otherwise. */
  readonly endsSnapMps: Float64Array | null;
  /** Of breaking within the season, if it stands at its opening; null without a hazard curve. */
  readonly seasonBreak: Float64Array | null;
  /** Of breaking within the year that begins with the season; null without a hazard curve. */
  readonly yearBreak: Float64Array | null;
}

/** One post in season 1, middle values. */
interface PostInSeasonOne {
  readonly number: number;
  readonly isLinePost: boolean;
  readonly snapMps: number;
}

/** What may become of a fence at each belief point: the paired ground on which works are compared. */
export interface PointRisks {
  readonly points: BeliefPoints;
  /** Probability of each point, summing to 1 [-]. */
  readonly weights: Float64Array;
  readonly hazard: HazardCurve;
  readonly designGustMps: number;
  /** Seasons 1 to 30. */
  readonly seasons: readonly PointSeason[];
  /** Snap speed of the posts of season 1 when sound [m/s]: of those judged, and of the ends where these are judged apart. */
  readonly builtMps: Float64Array;
  readonly builtEndsMps: Float64Array | null;
  /** Rot depth of the judged posts in season 1. */
  readonly depth: DepthScatter;
  /** Every post in season 1, by number. */
  readonly posts: readonly PostInSeasonOne[];
  /** Posts expected to be short of the design gust in season 1 [-]. */
  readonly expectedPostsShort: number;
  /** What was found at posts and is not mended in season 1. */
  readonly found: FoundPosts;
}

interface Prepared {
  readonly model: StateModel;
  readonly judged: PostGroup;
  readonly apart: PostGroup | null;
}

/**
 * The seasons ahead as days on which states are taken: openings, and for season 1 where it is running the latest of its
 * opening, of what was done or found, and of the given day, so that works of that day show in it.
 * @param facts the fence without the works to be compared
 */
export function riskDays(facts: FenceFacts, seasonOneYear: number, day: CalendarDay): readonly SeasonDay[] {
  const nextOpening = openingDay(facts.site.seasonWindow, seasonOneYear + 1);
  return seasonDays(facts, seasonOneYear)
    .filter(({ season }) => season !== null && season >= 1)
    .map((at) => (at.season === 1 && day > at.day && day < nextOpening ? { ...at, day } : at));
}

/** The belief points of a fence after all that was seen of it: the same ones serve every works that is compared. */
export const pointsOf = (facts: FenceFacts): BeliefPoints => fenceBelief(facts, fenceStates(facts)).points;

/** The median over belief points, as forecasts show it, in the unit of the values. */
export const middleOf = ({ points }: Pick<PointRisks, 'points'>, values: Float64Array): number =>
  bandOf(values, 3, points.weights).p50;

/** The mean over belief points of a value given at each, in the unit of the values. */
export const meanOf = ({ weights }: Pick<PointRisks, 'weights'>, values: Float64Array): number =>
  values.reduce((sum, value, point) => sum + weights[point]! * value, 0);

/**
 * The risks of a fence point by point: what `forecastFence` takes quantiles and means of. Works that lie ahead are given in
 * `facts.works`; with the same points and days the difference of two results is the works' own effect.
 * Source: composed as `forecastFence`; fragility and hazard as in `breakProbability`.
 * @param facts the fence, with works ahead or without; these must not be older than the latest inspection or outcome
 * @param points from `pointsOf`, of the fence without works ahead
 * @param days from `riskDays`, of the fence without works ahead
 */
export function pointRisks(
  facts: FenceFacts,
  points: BeliefPoints,
  days: readonly SeasonDay[],
  settings: Pick<ForecastSettings, 'standingReturnPeriodYears'>,
): PointRisks {
  const hazard = hazardCurve(facts.site.wind);
  const { gustMps } = designGust(facts.site.wind, hazard, settings.standingReturnPeriodYears);
  const states = fenceStates(facts);
  const known = new Map<FenceState, Prepared>();
  const preparedOn = (day: CalendarDay): Prepared => {
    const state = stateOn(states, day);
    const found = known.get(state);
    if (found) return found;
    const model = stateModel(facts.site, state, points);
    const { line, ends } = postGroups(model.classes.classes);
    const prepared = { model, judged: (line ?? ends)!, apart: line ? ends : null };
    known.set(state, prepared);
    return prepared;
  };
  const breaks = (snapMps: Float64Array, share: number): Float64Array | null =>
    hazard.kind === 'gumbel'
      ? snapMps.map((speed) => breakProbability(hazard, speed, STORM_LOAD_SPREAD / 2, share))
      : null;

  const seasons = days.map((at): PointSeason => {
    const { model, judged, apart } = preparedOn(at.day);
    const values = classValues(model, at.day);
    const snapMps = groupValue(judged, values.snapMps, 'lowest');
    return {
      ...at,
      snapMps,
      leanMps: groupValue(judged, model.leanMps, 'lowest'),
      endsSnapMps: apart && groupValue(apart, values.snapMps, 'lowest'),
      seasonBreak: breaks(snapMps, facts.site.seasonWindow.share),
      yearBreak: breaks(snapMps, 1),
    };
  });

  const first = days[0]!;
  const { model, judged, apart } = preparedOn(first.day);
  const sound = classValues(model, first.day, true);
  const now = classValues(model, first.day);
  return {
    points,
    weights: points.weights ?? new Float64Array(points.count).fill(1 / points.count),
    hazard,
    designGustMps: gustMps,
    seasons,
    builtMps: groupValue(judged, sound.snapMps, 'lowest'),
    builtEndsMps: apart && groupValue(apart, sound.snapMps, 'lowest'),
    depth: depthScatter(model, judged, dayNumber(first.day)),
    posts: model.classes.classes
      .flatMap(({ numbers, isLinePost }, index) => {
        const snapMps = bandOf(now.snapMps[index]!, 3, points.weights).p50;
        return numbers.map((number) => ({ number, isLinePost, snapMps }));
      })
      .sort((a, b) => a.number - b.number),
    expectedPostsShort: postsShort(model, first.day, gustMps).expected,
    found: foundPosts(model.state),
  };
}
