import { NO_LOSS } from '../capacity/section-properties.ts';
import { FIBRE_SPREAD_POST } from '../capacity/wood-strength.ts';
import { type CalendarDay, dayNumber } from '../units/calendar-day.ts';
import { breakProbability, type GumbelCurve } from './hazard-curve.ts';
import { nodeMoments } from './node-moments.ts';
import { NORMAL_QUADRATURE, normalCdf } from './normal-distribution.ts';
import { snapResistance } from './snap-resistance.ts';
import type { StateModel } from './state-model.ts';
import { STORM_LOAD_SPREAD } from './storm-load.ts';

/** How many posts are expected to be short of the design gust, and the chance that any is. */
export interface PostsShort {
  readonly expected: number;
  readonly any: number;
}

/**
 * Expected number of posts whose snap speed is under the design gust, and the probability that any is [-], with the
 * post-to-post scatter of pace (0.54, by quadrature) and strength (0.32, in closed form) carried. Bending decides, and rails where reported; shear is left out.
 * @param model one state of a fence over the belief points
 * @param day the day on which the state is taken
 * @param designGustMps gust to compare with [m/s]
 * Source: total probability over belief points and post scatter (derived); spreads are judgement.
 */
export function postsShort(model: StateModel, day: CalendarDay, designGustMps: number): PostsShort {
  const { points, classes } = model;
  const at = dayNumber(day);
  const v2 = designGustMps ** 2;
  const perKind = classes.kinds.map((_, index) => {
    const members = classes.classes.filter((postClass) => postClass.kind === index);
    return {
      kind: index,
      counts: members.map((member) => member.numbers.length),
      demands: Float64Array.from(members, (member) => v2 * member.momentPerV2),
      railShort: members.map(({ sample, forcePerV2 }) => {
        const { railN } = snapResistance(sample.post, NO_LOSS, 1);
        return (load: number): boolean => railN < v2 * forcePerV2 * load;
      }),
      logDemands: Float64Array.from(members, (member) => Math.log(v2 * member.momentPerV2)),
      short: new Float64Array(members.length),
    };
  });
  const { weights } = NORMAL_QUADRATURE;
  let expected = 0;
  let any = 0;
  for (let point = 0; point < points.count; point += 1) {
    const share = points.weights ? points.weights[point]! : 1 / points.count;
    let noneShort = 1;
    let expectedHere = 0;
    const load = model.loadFactor[point]!;
    for (const { kind, counts, demands, logDemands, railShort, short } of perKind) {
      short.fill(0);
      const moments = nodeMoments(model, { kind, point, day: at });
      if (moments.kind === 'rigid') {
        for (let m = 0; m < short.length; m += 1) short[m] = moments.momentNm < load * demands[m]! ? 1 : 0;
      } else {
        for (let node = 0; node < weights.length; node += 1) {
          const logSpare = Math.log(moments.momentsNm[node]! / load);
          for (let m = 0; m < short.length; m += 1) {
            short[m]! += weights[node]! * normalCdf((logDemands[m]! - logSpare) / FIBRE_SPREAD_POST);
          }
        }
      }
      for (let m = 0; m < short.length; m += 1) {
        if (railShort[m]!(load)) short[m] = 1;
        expectedHere += short[m]! * counts[m]!;
        noneShort *= (1 - Math.min(1, short[m]!)) ** counts[m]!;
      }
    }
    expected += share * expectedHere;
    any += share * (1 - noneShort);
  }
  return { expected, any };
}

/**
 * Share of the belief under a gust [-]: the probability that the fence is short. Speeds [m/s].
 * @param weights probability of each point; null where all are alike
 */
export function shareBelow(speedsMps: Float64Array, gustMps: number, weights: Float64Array | null = null): number {
  let below = 0;
  for (let i = 0; i < speedsMps.length; i += 1) {
    if (speedsMps[i]! < gustMps) below += weights ? weights[i]! : 1 / speedsMps.length;
  }
  return Math.min(1, below);
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
 * @param points how many, and the probability of each (null: all alike)
 * Source: fragility and hazard as in `breakProbability`; survival averaged over belief (derived).
 */
export function survivalLedger(
  curve: GumbelCurve,
  share: number,
  points: { readonly count: number; readonly weights: Float64Array | null },
): SurvivalLedger {
  const pointCount = points.count;
  const alive = points.weights ? Float64Array.from(points.weights) : new Float64Array(pointCount).fill(1);
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
