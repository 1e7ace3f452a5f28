import type { PostSection } from '../capacity/post-section.ts';
import type { ClimateFacts } from '../decay/climate-factor.ts';
import { type DecayLaw, decayLaw, depthByLaw } from '../decay/decay-depth.ts';
import { medianDecayRate, POST_PACE_SPREAD } from '../decay/decay-rate.ts';
import { TREATMENT_CLASSES } from '../decay/treatment-class.ts';
import { DAYS_PER_YEAR } from '../units/calendar-day.ts';
import type { BeliefPoints } from './belief-points.ts';
import { NORMAL_QUADRATURE } from './normal-distribution.ts';
import type { PostKind } from './post-classes.ts';
import { exposureYears } from './rot-clock.ts';

/** The rot of one kind of post over the belief points. */
export interface KindRot {
  /** Rot depth per face at a point, for a post at the given node of the post-to-post scatter (null: no scatter) [mm]. */
  depthMm(point: number, exposure: number, node: number | null): number;
  /** Exposure that counts for rot at a point on a day [a]. */
  exposure(point: number, day: number): number;
  /** Depth trimmers have cut into one face by a day [mm]. */
  cutMm(point: number, day: number): number;
}

/** Depth at which nothing sound is left [mm]: half the narrower side. */
const deepestRot = (section: PostSection): number =>
  section.kind === 'round' ? section.diameterMm / 2 : Math.min(section.widthMm, section.depthMm) / 2;

/**
 * Rot of one kind of post: ln r = ln r_hat + tau z_pace (+ 0.54 e for one post of the fence) [mm, a].
 * Source: depth law and spreads as in decay/ (see `decayDepth`, `TREATMENT_CLASSES`, `POST_PACE_SPREAD`).
 */
export function kindRot(kind: PostKind, climate: ClimateFacts, points: BeliefPoints): KindRot {
  const { wood, clock, cuts } = kind.sample.post;
  const median = medianDecayRate(wood.treatmentClass, climate);
  const { paceSpread } = TREATMENT_CLASSES[wood.treatmentClass];
  const { nodes } = NORMAL_QUADRATURE;
  const deepest = deepestRot(wood.section);
  const laws: DecayLaw[] = [];
  const scattered: DecayLaw[][] = [];
  for (let point = 0; point < points.count; point += 1) {
    const rate = median * Math.exp(paceSpread * points.scores.pace[point]!);
    laws.push(decayLaw(rate));
    scattered.push(nodes.map((node) => decayLaw(rate * Math.exp(POST_PACE_SPREAD * node))));
  }
  const installed = (point: number): number =>
    kind.earliestDay + (kind.latestDay - kind.earliestDay) * points.levels['install date'][point]!;
  const dateKnown = kind.earliestDay === kind.latestDay;
  let lastDay = Number.NaN;
  let lastExposure = 0;
  return {
    depthMm: (point, exposure, node) =>
      Math.min(deepest, depthByLaw(node === null ? laws[point]! : scattered[point]![node]!, exposure)),
    exposure: (point, day) => {
      if (!dateKnown) return exposureYears(clock, installed(point), day);
      if (day !== lastDay) {
        lastDay = day;
        lastExposure = exposureYears(clock, kind.earliestDay, day);
      }
      return lastExposure;
    },
    cutMm: (point, day) => {
      if (cuts.yearlyCutMm === 0) return 0;
      const until = cuts.untilDay === null ? day : Math.min(day, cuts.untilDay);
      return (Math.max(0, until - installed(point)) / DAYS_PER_YEAR) * cuts.yearlyCutMm;
    },
  };
}
