import { allowableStress } from '../capacity/allowable-stress.ts';
import { bendingMoment, shearForce } from '../capacity/post-resistance.ts';
import { allowableRailConnectionForce, railConnectionForce, usualRailConnection } from '../capacity/rail-connection.ts';
import { NO_LOSS, type SectionLoss, sectionArea, sectionModulus } from '../capacity/section-properties.ts';
import {
  FIBRE_SPREAD_FENCE,
  FIBRE_SPREAD_UNKNOWN_SPECIES,
  medianBendingStrength,
  medianShearStrength,
} from '../capacity/wood-strength.ts';
import { type PostState, soundPost } from './post-state.ts';
import type { PostWood } from './post-wood.ts';

/** Safety factor of allowable strength design on a steel section in bending [-]: 1.67. Source: AISC 360 F1 (memory). */
const STEEL_SAFETY_FACTOR = 1.67;

/** Fence-level spread of ln fibre strength of a post's wood [-]; 0 for what does not rot. Source: judgement (wood-strength). */
export function fibreSpread(wood: PostWood): number {
  if (wood.momentCapacityNm !== null) return 0;
  return wood.species === 'unknown' ? Math.hypot(FIBRE_SPREAD_FENCE, FIBRE_SPREAD_UNKNOWN_SPECIES) : FIBRE_SPREAD_FENCE;
}

/** What a post resists at the groundline. */
export interface SnapResistance {
  /** Bending moment [N m]. */
  readonly momentNm: number;
  /** Horizontal force by shear [N]; Infinity for what is not wood. */
  readonly shearN: number;
  /** Horizontal force on the post at which its rails pull out [N]; Infinity where nobody reported their connection. */
  readonly railN: number;
}

/** A post that is broken holds nothing. */
const NOTHING: SnapResistance = { momentNm: 0, shearN: 0, railN: 0 };

/** Force on a post at which its rails pull out, where an inspection reported their connection [N]. */
const railForce = (post: PostState, forceOf: typeof railConnectionForce): number =>
  post.condition.railConnection === null
    ? Number.POSITIVE_INFINITY
    : forceOf(usualRailConnection(post.wood.species), post.condition.railConnection, post.bays);

/**
 * Median resistance of a post with a given loss, basis `expected`, times a strength factor [N m, N]. A steel sleeve acts
 * in series with the sound wood above it: the weaker counts. A broken post resists nothing; rails count where reported.
 * @param fibreFactor e.g. exp(0.15 z) of the fence [-]
 * Source: statics on the residual section; strengths by judgement (wood-strength).
 */
export function snapResistance(post: PostState, loss: SectionLoss, fibreFactor: number): SnapResistance {
  const { wood } = post;
  if (post.condition.broken) return NOTHING;
  const railN = railForce(post, railConnectionForce);
  if (wood.momentCapacityNm !== null) {
    return { momentNm: wood.momentCapacityNm, shearN: Number.POSITIVE_INFINITY, railN };
  }
  const strength = medianBendingStrength(wood.species, wood.grade, wood.section) * fibreFactor;
  if (post.sleeveNm !== null) {
    const above = bendingMoment(strength, sectionModulus(wood.section, NO_LOSS));
    return { momentNm: Math.min(post.sleeveNm, above), shearN: Number.POSITIVE_INFINITY, railN };
  }
  const shear = medianShearStrength(wood.species, wood.grade, wood.section) * fibreFactor;
  return {
    momentNm: bendingMoment(strength, sectionModulus(wood.section, loss)),
    shearN: shearForce(shear, sectionArea(wood.section, loss), wood.section.kind),
    railN,
  };
}

/**
 * Allowable resistance of a post with a given loss, basis `code` (ASD) [N m, N].
 * Source: NDS 2018 (memory), see `allowableStress`; AISC 360 for steel (memory).
 */
export function allowableSnapResistance(post: PostState, loss: SectionLoss): SnapResistance {
  const { wood } = post;
  if (post.condition.broken) return NOTHING;
  const railN = railForce(post, (connection, state, bays) =>
    allowableRailConnectionForce(connection, state, { bays: bays ?? 2 }),
  );
  if (wood.momentCapacityNm !== null) {
    return { momentNm: wood.momentCapacityNm / STEEL_SAFETY_FACTOR, shearN: Number.POSITIVE_INFINITY, railN };
  }
  const { bendingMpa, shearMpa } = allowableStress(wood);
  if (post.sleeveNm !== null) {
    const above = bendingMoment(bendingMpa, sectionModulus(wood.section, NO_LOSS));
    return { momentNm: Math.min(post.sleeveNm / STEEL_SAFETY_FACTOR, above), shearN: Number.POSITIVE_INFINITY, railN };
  }
  return {
    momentNm: bendingMoment(bendingMpa, sectionModulus(wood.section, loss)),
    shearN: shearForce(shearMpa, sectionArea(wood.section, loss), wood.section.kind),
    railN,
  };
}

/** Median moment of a post's sound section, without any sleeve [N m]: what it was built with. Source: statics (see `snapResistance`). */
export const builtMoment = (post: PostState): number =>
  snapResistance({ ...soundPost(post), sleeveNm: null }, NO_LOSS, 1).momentNm;
