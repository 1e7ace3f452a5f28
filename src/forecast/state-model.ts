import { speedAtResistance } from '../capacity/post-resistance.ts';
import { NO_LOSS, type SectionLoss } from '../capacity/section-properties.ts';
import { type CalendarDay, dayNumber } from '../units/calendar-day.ts';
import type { BeliefPoints } from './belief-points.ts';
import type { SiteFacts } from './fence-facts.ts';
import { footingPrior } from './footing-prior.ts';
import { collarBurstForce, footingForce, groundAfter } from './lean-resistance.ts';
import { type PostClass, type PostClasses, postClasses } from './post-classes.ts';
import { loadedPosts } from './post-demand.ts';
import { type KindRot, kindRot } from './post-rot.ts';
import { type FenceState, soundPost } from './post-state.ts';
import { builtMoment, fibreSpread, snapResistance } from './snap-resistance.ts';
import { groundAt, groundIsKnown } from './unknown-priors.ts';

/** Fence-permanent spread of ln force (shelter, force coefficient) [-]; judgement. */
export const PERMANENT_LOAD_SPREAD = 0.17;

/** One state of a fence over the belief points: what does not change from season to season, worked out once. */
export interface StateModel {
  readonly site: SiteFacts;
  readonly state: FenceState;
  readonly points: BeliefPoints;
  readonly classes: PostClasses;
  readonly rots: readonly KindRot[];
  /** Lean speed of each class at each point [m/s]. */
  readonly leanMps: readonly Float64Array[];
  /** exp(0.17 z) of each point: the permanent load over its median [-]. */
  readonly loadFactor: Float64Array;
}

/** Speeds and rot of every class of posts on one day, at each belief point. */
export interface ClassValues {
  /** Snap speed of a post of median scatter [m/s]. */
  readonly snapMps: readonly Float64Array[];
  /** Rot depth per face [mm]. */
  readonly depthMm: readonly Float64Array[];
  /** Bending strength left over as built [-]. */
  readonly strengthLeft: readonly Float64Array[];
}

function leanSpeeds(site: SiteFacts, state: FenceState, points: BeliefPoints, postClass: PostClass): Float64Array {
  const { post, demands } = postClass.sample;
  const known = groundIsKnown(post.ground);
  const medianAt = (point: number): number => {
    const ground = groundAfter(post.condition, groundAt(post.ground, points, point));
    return Math.min(
      ...demands.map((demand) => {
        const at = { section: post.wood.section, armM: demand.armM };
        const force = Math.min(footingForce(site, state.soilSaturated, ground, at), collarBurstForce(ground, at));
        return speedAtResistance(force, demand.forcePerV2);
      }),
    );
  };
  const shared = known ? medianAt(0) : Number.NaN;
  const footing = footingPrior(points.learned);
  return Float64Array.from({ length: points.count }, (_, point) => {
    const median = known ? shared : medianAt(point);
    const spread =
      footing.logShift +
      footing.spread * points.scores.footing[point]! -
      PERMANENT_LOAD_SPREAD * points.scores['permanent load'][point]!;
    return median * Math.exp(spread / 2);
  });
}

/** Builds the model of one state of a fence. Source of each part: the functions it is made of. */
export function stateModel(site: SiteFacts, state: FenceState, points: BeliefPoints): StateModel {
  const classes = postClasses(loadedPosts(site, state), (piece) => points.piecePaces.has(piece));
  return {
    site,
    state,
    points,
    classes,
    rots: classes.kinds.map((kind) => kindRot(kind, site.climate, points)),
    leanMps: classes.classes.map((postClass) => leanSpeeds(site, state, points, postClass)),
    loadFactor: points.scores['permanent load'].map((score) => Math.exp(PERMANENT_LOAD_SPREAD * score)),
  };
}

/**
 * What a post of one kind has lost by a day at a belief point, at median post scatter [mm]; nothing where taken as built.
 * Source: depth law of decay/ on the post's rot clock; cuts as recorded.
 */
export function sectionLossOn(
  model: StateModel,
  at: { readonly kind: number; readonly point: number; readonly dayNumber: number; readonly sound: boolean },
): SectionLoss {
  if (at.sound) return NO_LOSS;
  const rot = model.rots[at.kind]!;
  const { condition } = model.classes.kinds[at.kind]!.sample.post;
  return {
    depthMm: rot.depthMm(at.point, rot.moment(at.point, at.dayNumber), null),
    oneFaceMm: rot.cutMm(at.point, at.dayNumber),
    cavityDiameterMm: condition.cavityDiameterMm,
  };
}

/**
 * Snap speed, depth and strength left of every class of posts on a day, at each belief point, for posts of median scatter
 * [m/s, mm, -]. `sound` leaves rot, cuts and what was found out: the state as built.
 */
export function classValues(model: StateModel, day: CalendarDay, sound = false): ClassValues {
  const { points, classes } = model;
  const today = dayNumber(day);
  const kinds = classes.kinds.map(({ sample }, kind) => {
    const post = sound ? soundPost(sample.post) : sample.post;
    const spread = fibreSpread(post.wood);
    const built = builtMoment(post);
    const depthMm = new Float64Array(points.count);
    const left = new Float64Array(points.count);
    const momentNm = new Float64Array(points.count);
    const forceN = new Float64Array(points.count);
    for (let point = 0; point < points.count; point += 1) {
      const loss = sectionLossOn(model, { kind, point, dayNumber: today, sound });
      const fibre = Math.exp(spread * points.scores['fibre strength'][point]!);
      const resistance = snapResistance(post, loss, fibre);
      depthMm[point] = loss.depthMm;
      // A sleeve is not wood: its share of the built strength does not scale with the fibre.
      left[point] = snapResistance(post, loss, 1).momentNm / built;
      momentNm[point] = resistance.momentNm;
      forceN[point] = Math.min(resistance.shearN, resistance.railN);
    }
    return { depthMm, left, momentNm, forceN };
  });
  return {
    snapMps: classes.classes.map(({ kind, momentPerV2, forcePerV2 }) => {
      const { momentNm, forceN } = kinds[kind]!;
      return model.loadFactor.map((load, point) =>
        Math.min(
          speedAtResistance(momentNm[point]!, momentPerV2 * load),
          speedAtResistance(forceN[point]!, forcePerV2 * load),
        ),
      );
    }),
    depthMm: classes.classes.map(({ kind }) => kinds[kind]!.depthMm),
    strengthLeft: classes.classes.map(({ kind }) => kinds[kind]!.left),
  };
}
