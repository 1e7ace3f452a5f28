import { meanLifeYears, type SurvivalCurve, yearsInService } from './survival-curve.ts';

/** What a replacement costs, in one currency and today's money. */
export interface ReplacementCosts {
  /** Planned, before the fence snaps; over 0. */
  readonly plannedCost: number;
  /** After it snapped, what the owner states as consequence included. */
  readonly failureCost: number;
}

/** The age at which replacing a fence again and again costs least a year. */
export interface AgeReplacement {
  /** Seasons after installation at whose opening it is replaced; null where it is cheapest to wait until it snaps, however long. */
  readonly bestSeasons: number | null;
  /** The same [a]. */
  readonly bestAgeYears: number | null;
  /** Long-run cost at that age [currency/a]; 0 only where a fence may last for ever. */
  readonly costPerYear: number;
  /** Long-run cost of replacing at the opening of season 1, 2, ... of the curve [currency/a]. */
  readonly costPerYearBySeason: readonly number[];
  /** Long-run cost of never replacing before it snaps [currency/a]. */
  readonly costPerYearToFailure: number;
  /** Mean years that one is in service before it is replaced, in good time or after it snapped [a]; Infinity where it may last for ever. */
  readonly meanServiceYears: number;
}

export function checkCosts({ plannedCost, failureCost }: ReplacementCosts): void {
  if (!(plannedCost > 0 && Number.isFinite(plannedCost)))
    throw new RangeError(`replacement: a planned cost of ${plannedCost}; give one over 0`);
  if (!(failureCost >= 0 && Number.isFinite(failureCost)))
    throw new RangeError(`replacement: a cost after failure of ${failureCost}; give one from 0`);
}

/**
 * The replacement age T of least long-run cost a year, C(T) = (c_p R(T) + c_f F(T)) / integral of R from 0 to T, over the
 * openings of seasons and over waiting for failure. Of ages that cost the same the latest is taken. Beyond the curve the risk
 * of its last season holds, under which no later age can be cheaper than both the curve's end and waiting for failure. That is a
 * guess far out: where posts hardly rot it lets a fence last for centuries, so give its longest service.
 * @param curve survival of a new fence from installation
 * @param longestSeasons seasons after which it is replaced at the latest, snapped or not: 1 or more, those beyond the curve left
 * out; null where it may wait until it snaps, however long
 * Source: Barlow & Hunter 1960, Operations Research 8(1):90, age replacement (policy I).
 */
export function ageReplacement(
  curve: SurvivalCurve,
  costs: ReplacementCosts,
  longestSeasons: number | null = null,
): AgeReplacement {
  checkCosts(costs);
  if (longestSeasons !== null && !(longestSeasons >= 1))
    throw new RangeError(`replacement: a longest service of ${longestSeasons} seasons; give 1 or more`);
  const { plannedCost, failureCost } = costs;
  const costPerYearBySeason = curve.standing.slice(1, 1 + (longestSeasons ?? Infinity)).map((standing, index) => {
    const cost = plannedCost * standing + failureCost * (1 - standing);
    return cost / yearsInService(curve, index + 1);
  });
  const costPerYearToFailure = failureCost / meanLifeYears(curve);
  let best: { readonly seasons: number | null; readonly cost: number } = { seasons: 1, cost: costPerYearBySeason[0]! };
  for (const [index, cost] of costPerYearBySeason.entries()) if (cost <= best.cost) best = { seasons: index + 1, cost };
  if (longestSeasons === null && costPerYearToFailure <= best.cost)
    best = { seasons: null, cost: costPerYearToFailure };
  return {
    bestSeasons: best.seasons,
    bestAgeYears: best.seasons === null ? null : best.seasons * curve.stepYears,
    costPerYear: best.cost,
    costPerYearBySeason,
    costPerYearToFailure,
    meanServiceYears: best.seasons === null ? meanLifeYears(curve) : yearsInService(curve, best.seasons),
  };
}
