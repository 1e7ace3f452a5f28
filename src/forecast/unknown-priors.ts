import type { FootingKind } from '../capacity/footing.ts';
import { mmFromInches } from '../units/length.ts';
import type { BeliefPoints } from './belief-points.ts';
import type { GroundFacts } from './fence-facts.ts';

/** What stands in for a footing that is not recorded; judgement: the usual two feet in a nine-inch collar. */
export const FOOTING_PRIOR = {
  footing: 'concrete' as FootingKind,
  /** Median embedment [m]: 24 in. */
  embedmentM: mmFromInches(24) / 1000,
  /** Spread of ln embedment [-]. */
  embedmentSpread: 0.15,
  /** Median diameter of a concrete collar [m]: 9 in. */
  diameterM: mmFromInches(9) / 1000,
  /** Spread of ln diameter [-]. */
  diameterSpread: 0.12,
} as const;

/** A footing without gaps. */
export interface KnownGround {
  readonly embedmentM: number;
  readonly footing: FootingKind;
  /** Diameter of the concrete [m]; null where there is none. */
  readonly diameterM: number | null;
}

/**
 * The footing at one belief point: what is recorded, else the prior at the point's scores. Lengths [m].
 * Source: `FOOTING_PRIOR`, judgement.
 */
export function groundAt(ground: GroundFacts, points: BeliefPoints, index: number): KnownGround {
  const footing = ground.footing ?? FOOTING_PRIOR.footing;
  const embedmentM =
    ground.embedmentM ??
    FOOTING_PRIOR.embedmentM * Math.exp(FOOTING_PRIOR.embedmentSpread * points.scores.embedment[index]!);
  const assumed =
    FOOTING_PRIOR.diameterM * Math.exp(FOOTING_PRIOR.diameterSpread * points.scores['footing diameter'][index]!);
  return { embedmentM, footing, diameterM: footing === 'concrete' ? (ground.footingDiameterM ?? assumed) : null };
}

/** True where nothing about the footing is left to a prior. */
export const groundIsKnown = (ground: GroundFacts): boolean =>
  ground.embedmentM !== null &&
  ground.footing !== null &&
  (ground.footing !== 'concrete' || ground.footingDiameterM !== null);
