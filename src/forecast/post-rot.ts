import { shortestSideMm } from '../capacity/post-section.ts';
import type { ClimateFacts } from '../decay/climate-factor.ts';
import { type DecayLaw, decayLaw, depthByLaw } from '../decay/decay-depth.ts';
import { POST_PACE_SPREAD } from '../decay/decay-rate.ts';
import { DAYS_PER_YEAR } from '../units/calendar-day.ts';
import type { BeliefPoints } from './belief-points.ts';
import { NORMAL_QUADRATURE, normalCdf } from './normal-distribution.ts';
import { pacePrior } from './pace-prior.ts';
import type { PostKind } from './post-classes.ts';
import { exposureYears } from './rot-clock.ts';

/** The rot of one kind of post over the belief points. */
export interface KindRot {
  /** Rot depth per face on a day at a point, for a post at the given node of the post-to-post scatter (null: its median) [mm]. */
  depthMm(point: number, at: RotMoment, node: number | null): number;
  /** A day and the exposure that counts for rot until then, at a point. */
  moment(point: number, day: number): RotMoment;
  /** Rate of a post of median scatter at a point [mm/a]. */
  medianRate(point: number): number;
  /** Depth trimmers have cut into one face by a day [mm]. */
  cutMm(point: number, day: number): number;
}

/** A day [d] with the exposure that counts for rot until then [a]. */
interface RotMoment {
  readonly day: number;
  readonly exposureYears: number;
}

/** Levels of the post scatter at which a read post's own pace is taken: its median, and the nodes of the quadrature. */
const NODE_LEVELS = NORMAL_QUADRATURE.nodes.map(normalCdf);
const MEDIAN_NODE = NORMAL_QUADRATURE.nodes.indexOf(0);

/** Laws of the posts that were read, kept for as long as their points: every state of a fence asks for the same. */
const keptLaws = new WeakMap<BeliefPoints, Map<string, (readonly DecayLaw[])[]>>();

function pieceLaws(points: BeliefPoints, piece: string): (readonly DecayLaw[])[] {
  const ofPoints = keptLaws.get(points) ?? new Map<string, (readonly DecayLaw[])[]>();
  keptLaws.set(points, ofPoints);
  const laws = ofPoints.get(piece) ?? [];
  ofPoints.set(piece, laws);
  return laws;
}

/** Laws of one kind of post at one point: at each node of the scatter, the middle one being the median. */
function lawsAt(kind: PostKind, climate: ClimateFacts, points: BeliefPoints, point: number): readonly DecayLaw[] {
  const { post } = kind.sample;
  const score = points.scores.pace[point]!;
  const own = points.piecePaces.get(post.piece);
  if (own) {
    const kept = pieceLaws(points, post.piece);
    kept[point] ??= own
      .logRates(score, points.levels['install date'][point]!, NODE_LEVELS)
      .map((logRate) => decayLaw(Math.exp(logRate)));
    return kept[point];
  }
  const { medianRate, spread } = pacePrior(post.wood.treatmentClass, climate, points.learned);
  const rate = medianRate * Math.exp(spread * score);
  return NORMAL_QUADRATURE.nodes.map((node) => decayLaw(rate * Math.exp(POST_PACE_SPREAD * node)));
}

/**
 * Rot of one kind of post: ln r = ln r_hat + tau z_pace (+ 0.54 e for one post of the fence), or, where the post has been
 * read, by its own posterior and never under the depth at which it was read [mm, a].
 * Source: depth law and spreads as in decay/ (see `decayDepth`, `TREATMENT_CLASSES`, `POST_PACE_SPREAD`).
 */
export function kindRot(kind: PostKind, climate: ClimateFacts, points: BeliefPoints): KindRot {
  const { post } = kind.sample;
  const { wood, clock, cuts } = post;
  const deepest = shortestSideMm(wood.section) / 2;
  const own = points.piecePaces.get(post.piece);
  const laws = Array.from({ length: points.count }, (_, point) => lawsAt(kind, climate, points, point));
  const installed = (point: number): number =>
    kind.earliestDay + (kind.latestDay - kind.earliestDay) * points.levels['install date'][point]!;
  const floorMm = Float64Array.from({ length: own ? points.count : 0 }, (_, point) =>
    own!.floorMm(points.levels['install date'][point]!),
  );
  const dateKnown = kind.earliestDay === kind.latestDay;
  let last: RotMoment = { day: Number.NaN, exposureYears: 0 };
  return {
    depthMm: (point, at, node) => {
      const depth = depthByLaw(laws[point]![node ?? MEDIAN_NODE]!, at.exposureYears);
      const least = own && at.day >= own.floorFromDay ? floorMm[point]! : 0;
      return Math.min(deepest, Math.max(least, depth));
    },
    moment: (point, day) => {
      if (!dateKnown) return { day, exposureYears: exposureYears(clock, installed(point), day) };
      if (day !== last.day) last = { day, exposureYears: exposureYears(clock, kind.earliestDay, day) };
      return last;
    },
    medianRate: (point) => laws[point]![MEDIAN_NODE]!.rateMmPerYear,
    cutMm: (point, day) => {
      const { measured, yearlyCutMm, untilDay } = cuts;
      const until = untilDay === null ? day : Math.min(day, untilDay);
      const years = Math.max(0, until - (measured?.day ?? installed(point))) / DAYS_PER_YEAR;
      return (measured?.depthMm ?? 0) + years * yearlyCutMm;
    },
  };
}
