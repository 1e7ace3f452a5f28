import { EMERGENCY_FACTOR, type FenceConsequence, SNAP_CONSEQUENCES } from '../snap-consequence.ts';

/** What waiting through a season may cost, in the register's currency. */
export interface WaitingSeason {
  /** Chance that it snaps in the season [-]. */
  readonly chance: number;
  /** What a snap costs more than a rebuild in good time: crews and posts are short, and what the fence brings down with it. */
  readonly extra: number;
}

/**
 * What is lost where a fence is left as it is for one season and snaps in it: its rebuild in a bad week over one in a quiet week, and the
 * loss beside it. Extra = rebuild price × (emergency factor − 1) + stated loss.
 * @param chance probability that wind snaps it in the season, 0 to 1 [-]
 * @param rebuildPrice price of a rebuild in a quiet week, in the register's currency
 * Source: `EMERGENCY_FACTOR`, `SNAP_CONSEQUENCES` (judgement). `waitingCost` weighs the same against the year of service gained.
 */
export const waitingSeason = (chance: number, rebuildPrice: number, consequence: FenceConsequence): WaitingSeason => ({
  chance,
  extra: rebuildPrice * (EMERGENCY_FACTOR - 1) + SNAP_CONSEQUENCES[consequence].statedLoss,
});
