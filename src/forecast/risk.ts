import { bendingMoment } from '../capacity/post-resistance.ts';
import { NO_LOSS, sectionModulus } from '../capacity/section-properties.ts';
import { FIBRE_SPREAD_POST, medianBendingStrength } from '../capacity/wood-strength.ts';
import { type CalendarDay, dayNumber } from '../units/calendar-day.ts';
import { breakProbability, type GumbelCurve } from './hazard-curve.ts';
import { NORMAL_QUADRATURE, normalCdf } from './normal-distribution.ts';
import { fibreSpread, snapResistance } from './snap-resistance.ts';
import type { StateModel } from './state-model.ts';

/** Spread of ln force from storm to storm (direction, gust) [-]; judgement. As a speed it is half of that. */
export const STORM_LOAD_SPREAD = 0.18;

/** How many posts are expected to be short of the design gust, and the chance that any is. */
export interface PostsShort {
  readonly expected: number;
  readonly any: number;
}

/**
 * Expected number of posts whose snap speed is under the design gust, and the probability that any is [-], with the
 * post-to-post scatter of pace (0.54, by quadrature) and strength (0.32, in closed form) carried. Bending decides; shear is left out.
 * @param model one state of a fence over the belief points
 * @param day the day on which the state is taken
 * @param designGustMps gust to compare with [m/s]
 * Source: total probability over belief points and post scatter (derived); spreads are judgement.
 */
export function postsShort(model: StateModel, day: CalendarDay, designGustMps: number): PostsShort {
  const { points, classes, rots } = model;
  const at = dayNumber(day);
  const v2 = designGustMps ** 2;
  const { nodes, weights } = NORMAL_QUADRATURE;
  const perKind = classes.kinds.map(({ sample: { post } }, index) => {
    const members = classes.classes.filter((postClass) => postClass.kind === index);
    const rigid = post.wood.momentCapacityNm !== null || post.sleeveNm !== null;
    return {
      post,
      rot: rots[index]!,
      spread: fibreSpread(post.wood),
      rigid,
      strengthMpa: medianBendingStrength(post.wood.species, post.wood.grade, post.wood.section),
      counts: members.map((member) => member.numbers.length),
      demands: Float64Array.from(members, (member) => v2 * member.momentPerV2),
      logDemands: Float64Array.from(members, (member) => Math.log(v2 * member.momentPerV2)),
      short: new Float64Array(members.length),
    };
  });
  let expected = 0;
  let any = 0;
  for (let point = 0; point < points.count; point += 1) {
    let noneShort = 1;
    const load = model.loadFactor[point]!;
    for (const { post, rot, spread, rigid, strengthMpa, counts, demands, logDemands, short } of perKind) {
      const fibre = Math.exp(spread * points.scores['fibre strength'][point]!);
      short.fill(0);
      if (rigid) {
        const { momentNm } = snapResistance(post, NO_LOSS, fibre);
        for (let m = 0; m < short.length; m += 1) short[m] = momentNm < load * demands[m]! ? 1 : 0;
      } else {
        const exposure = rot.exposure(point, at);
        const oneFaceMm = rot.cutMm(point, at);
        for (let node = 0; node < nodes.length; node += 1) {
          const depthMm = rot.depthMm(point, exposure, node);
          const modulus = sectionModulus(post.wood.section, { depthMm, oneFaceMm, cavityDiameterMm: 0 });
          const logSpare = Math.log(bendingMoment(strengthMpa * fibre, modulus) / load);
          for (let m = 0; m < short.length; m += 1) {
            short[m]! += weights[node]! * normalCdf((logDemands[m]! - logSpare) / FIBRE_SPREAD_POST);
          }
        }
      }
      for (let m = 0; m < short.length; m += 1) {
        expected += short[m]! * counts[m]!;
        noneShort *= (1 - Math.min(1, short[m]!)) ** counts[m]!;
      }
    }
    any += 1 - noneShort;
  }
  return { expected: expected / points.count, any: any / points.count };
}

/** Share of the belief points at which a speed is under a gust [-]: the probability that the fence is short. Speeds [m/s]. */
export function shareBelow(speedsMps: Float64Array, gustMps: number): number {
  let below = 0;
  for (const speed of speedsMps) if (speed < gustMps) below += 1;
  return below / speedsMps.length;
}

/** Chance of breaking season by season, averaged as survival over the belief points. */
export interface SurvivalLedger {
  /**
   * Adds one season and returns the probability that the fence snaps in it, given that it still stood at its opening [-].
   * @param snapMps snap speed at each point [m/s]
   */
  addSeason(snapMps: Float64Array): number;
}

/**
 * A ledger of survival that starts with the fence standing: at each belief point the chance to survive multiplies up, and
 * averages are taken over points, so that what has stood weighs toward the stronger points.
 * @param curve the site's hazard curve
 * @param share share of the yearly hazard in the season [-]
 * Source: fragility and hazard as in `breakProbability`; survival averaged over belief (derived).
 */
export function survivalLedger(curve: GumbelCurve, share: number, pointCount: number): SurvivalLedger {
  const alive = new Float64Array(pointCount).fill(1);
  return {
    addSeason(snapMps) {
      let before = 0;
      let after = 0;
      for (let point = 0; point < pointCount; point += 1) {
        before += alive[point]!;
        alive[point] = alive[point]! * (1 - breakProbability(curve, snapMps[point]!, STORM_LOAD_SPREAD / 2, share));
        after += alive[point]!;
      }
      return before > 0 ? 1 - after / before : 1;
    },
  };
}
