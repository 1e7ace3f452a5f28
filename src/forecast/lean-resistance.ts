import { COLLAR_TENSION_MPA, collarForce } from '../capacity/collar.ts';
import { bromsClayForce, bromsSandForce, presumptiveForce, SAND_MODEL_FACTOR } from '../capacity/footing.ts';
import { type PostSection, postBreadthMm, postDiagonalMm } from '../capacity/post-section.ts';
import { SOIL_CLASSES, WATER_UNIT_WEIGHT_N_PER_M3 } from '../capacity/soil-class.ts';
import type { SiteFacts } from './fence-facts.ts';
import type { PostCondition } from './post-state.ts';
import type { KnownGround } from './unknown-priors.ts';

/**
 * The footing as it works after what was found: a cracked collar bursts no more, and bears on the soil no wider than the
 * post within it [m].
 * Source: judgement, on the safe side (the pieces are held by the soil alone).
 */
export const groundAfter = (condition: PostCondition, ground: KnownGround): KnownGround =>
  condition.collarCracked ? { ...ground, diameterM: null } : ground;

/** Width that bears on the soil [m]: the concrete's diameter where there is concrete, else the post's diagonal. Source: IBC 1807.3.2.1 (read). */
export const bearingWidth = (ground: KnownGround, section: PostSection): number =>
  ground.diameterM ?? postDiagonalMm(section) / 1000;

/**
 * Median horizontal force that turns a footing over, basis `expected` [N]. Sand: 0.8 Broms, submerged unit weight where
 * saturated; clay: Broms cohesive.
 * @param armM height of the force [m]
 * Source: Broms 1964 (see capacity/footing.ts); the 0.8 and the soil medians are judgement.
 */
export function footingForce(
  site: Pick<SiteFacts, 'soilClass'>,
  soilSaturated: boolean,
  ground: KnownGround,
  post: { readonly section: PostSection; readonly armM: number },
): number {
  const rigid = { embedmentM: ground.embedmentM, widthM: bearingWidth(ground, post.section), armM: post.armM };
  const { strength } = SOIL_CLASSES[site.soilClass];
  if (strength.kind === 'clay') return bromsClayForce(rigid, strength.undrainedShearPa);
  const unitWeightNPerM3 = strength.unitWeightNPerM3 - (soilSaturated ? WATER_UNIT_WEIGHT_N_PER_M3 : 0);
  return SAND_MODEL_FACTOR * bromsSandForce(rigid, { frictionAngleDeg: strength.frictionAngleDeg, unitWeightNPerM3 });
}

/**
 * Median horizontal force that bursts the concrete collar [N]; Infinity where the post is not set in concrete.
 * Source: see capacity/collar.ts.
 */
export const collarBurstForce = (
  ground: KnownGround,
  post: { readonly section: PostSection; readonly armM: number },
): number =>
  ground.diameterM === null
    ? Number.POSITIVE_INFINITY
    : collarForce(
        {
          diameterM: ground.diameterM,
          postBreadthM: postBreadthMm(post.section) / 1000,
          depthM: ground.embedmentM,
          armM: post.armM,
        },
        COLLAR_TENSION_MPA,
      );

/**
 * Allowable horizontal force on a footing, basis `code` [N], tabulated bearing doubled only where the site allows.
 * Source: IBC 1807.3.2.1, 1806.3.4 and Table 1806.2 (read).
 */
export const allowableFootingForce = (
  site: Pick<SiteFacts, 'soilClass' | 'lateralBearingDoubled'>,
  ground: KnownGround,
  post: { readonly section: PostSection; readonly armM: number },
): number =>
  presumptiveForce(
    { embedmentM: ground.embedmentM, widthM: bearingWidth(ground, post.section), armM: post.armM },
    SOIL_CLASSES[site.soilClass].lateralBearingPsfPerFt * (site.lateralBearingDoubled ? 2 : 1),
  );
