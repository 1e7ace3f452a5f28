import type { PointRisks } from '../forecast/point-risks.ts';
import { meanOf } from '../forecast/point-risks.ts';
import {
  EMERGENCY_FACTOR,
  type FenceConsequence,
  SNAP_CONSEQUENCES,
  YEARLY_DISCOUNT_RATE,
} from './snap-consequence.ts';

/** What a snap costs and how the future is weighed. */
export interface LossTerms {
  /** Loss when the fence snaps, in the register's currency. */
  readonly snapLoss: number;
  /** Above inflation [1/a]. */
  readonly yearlyDiscountRate: number;
}

/**
 * What a snap of a fence costs: its rebuild at the price of a bad week, and what it brings with it, in the register's
 * currency. Lean is not priced.
 * @param rebuildPrice price of a rebuild in a quiet week
 * Source: `EMERGENCY_FACTOR`, `SNAP_CONSEQUENCES` (judgement).
 */
export const lossTerms = (
  rebuildPrice: number,
  consequence: FenceConsequence,
  yearlyDiscountRate = YEARLY_DISCOUNT_RATE,
): LossTerms => ({
  snapLoss: rebuildPrice * EMERGENCY_FACTOR + SNAP_CONSEQUENCES[consequence].statedLoss,
  yearlyDiscountRate,
});

/** Worth today of one unit of money in so many years [-]. @param yearlyRate [1/a], above -1 @param years [a] */
export const discountFactor = (yearlyRate: number, years: number): number => (1 + yearlyRate) ** -years;

/** Expected loss by snapping, in the register's currency of today. */
export interface ExpectedLoss {
  /** Within season 1. */
  readonly thisSeason: number;
  /** Over the 30 years that begin with the seasons ahead, discounted. */
  readonly toHorizon: number;
  /** The same at each belief point. */
  readonly thisSeasonAt: Float64Array;
  readonly toHorizonAt: Float64Array;
}

/**
 * Expected loss of a fence that stands today: at each belief point, what its first snap costs times the chance that it comes
 * in a season or year, given that it still stood. This season counts season 1 alone; to the horizon, whole years count,
 * the first at its full worth. The first snap ends the reckoning: the fence is rebuilt then, and what the new one may cost
 * later is not counted, nor what it is worth. Null where the site has no hazard curve.
 * Source: survival and break probabilities of `pointRisks`; renewal at the first snap (model choice).
 */
export function expectedLoss(
  risks: Pick<PointRisks, 'weights' | 'seasons'>,
  { snapLoss, yearlyDiscountRate }: LossTerms,
): ExpectedLoss | null {
  const first = risks.seasons[0]!;
  if (!first.seasonBreak) return null;
  const thisSeasonAt = first.seasonBreak.map((chance) => chance * snapLoss);
  const toHorizonAt = new Float64Array(thisSeasonAt.length);
  for (let point = 0; point < toHorizonAt.length; point += 1) {
    let standing = 1;
    let loss = 0;
    for (const [year, { yearBreak }] of risks.seasons.entries()) {
      const chance = yearBreak![point]!;
      loss += standing * chance * discountFactor(yearlyDiscountRate, year);
      standing *= 1 - chance;
    }
    toHorizonAt[point] = loss * snapLoss;
  }
  return {
    thisSeason: meanOf(risks, thisSeasonAt),
    toHorizon: meanOf(risks, toHorizonAt),
    thisSeasonAt,
    toHorizonAt,
  };
}
