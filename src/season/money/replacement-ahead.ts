import { checkCosts, type ReplacementCosts } from './age-replacement.ts';
import { meanLifeYears, type SurvivalCurve, yearsInService } from './survival-curve.ts';

/** What is cheapest for one standing fence. */
type ReplacementAdvice =
  | { readonly kind: 'replace now' }
  | { readonly kind: 'in N years'; readonly seasons: number; readonly years: number }
  /** Keep it until it snaps, or until its longest service is over, where that is given. */
  | { readonly kind: 'run to failure'; readonly latest: { readonly seasons: number; readonly years: number } | null };

/** When to replace one fence that stands today, and what other times cost. */
export interface ReplacementAhead {
  readonly advice: ReplacementAdvice;
  /**
   * Cost of replacing at the opening of season 1 (index 0), 2, ... over that of the best time [currency], the years that the
   * old fence serves longer credited at the long-run cost; 0 at the best.
   */
  readonly excessBySeason: readonly number[];
  /** The same of waiting until it snaps, however long [currency]; below 0 where that were cheaper still, but lies beyond its longest service. */
  readonly excessToFailure: number;
  /** What keeping it through season 1 costs a year of service [currency/a], to hold against the long-run cost. */
  readonly keepingCostPerYear: number;
}

/**
 * The best time ahead to replace a fence of some age that stands, with renewal at the long-run cost g ever after: of all times T
 * the one of least c_p R(T) + c_f F(T) - g integral of R from 0 to T. Where the risk only rises this is the first season whose
 * keeping cost, (c_f - c_p) P(snap) over the years served in it, exceeds g. Of times that cost the same the latest is taken.
 * @param ahead survival from today given that the fence stands today, seasons from season 1; beyond it the last risk holds
 * @param longRunCostPerYear g of the fence that will follow [currency/a], 0 or more
 * @param longestSeasons seasons ahead after which it is replaced at the latest, 0 or more, those beyond the curve left out; null
 * where it may wait until it snaps, however long
 * Source: Barlow & Hunter 1960 for the cycles to follow, renewal-reward relative cost for the one that runs (derived).
 */
export function replacementAhead(
  ahead: SurvivalCurve,
  costs: ReplacementCosts,
  longRunCostPerYear: number,
  longestSeasons: number | null = null,
): ReplacementAhead {
  checkCosts(costs);
  if (!(longRunCostPerYear >= 0 && Number.isFinite(longRunCostPerYear)))
    throw new RangeError(`replacement: a long-run cost of ${longRunCostPerYear} a year; give one from 0`);
  if (longestSeasons !== null && !(longestSeasons >= 0))
    throw new RangeError(`replacement: a longest service of ${longestSeasons} seasons ahead; give 0 or more`);
  const { plannedCost, failureCost } = costs;
  const { standing, stepYears } = ahead;
  const latest = longestSeasons === null ? null : Math.min(longestSeasons, standing.length - 1);
  const relative = standing.map(
    (stands, seasons) =>
      plannedCost * stands + failureCost * (1 - stands) - longRunCostPerYear * yearsInService(ahead, seasons),
  );
  const toFailure = failureRelative(ahead, costs, longRunCostPerYear);
  let best: { readonly seasons: number | null; readonly cost: number } = { seasons: 0, cost: relative[0]! };
  for (const [seasons, cost] of relative.slice(0, 1 + (latest ?? Infinity)).entries())
    if (cost <= best.cost) best = { seasons, cost };
  if (latest === null && toFailure <= best.cost) best = { seasons: null, cost: toFailure };
  const excess = (cost: number): number => (cost === best.cost ? 0 : cost - best.cost);
  return {
    advice: adviceOf(best.seasons, latest, stepYears),
    excessBySeason: relative.map(excess),
    excessToFailure: excess(toFailure),
    keepingCostPerYear: ((failureCost - plannedCost) * (1 - standing[1]!)) / yearsInService(ahead, 1),
  };
}

/** Relative cost of waiting until the fence snaps; one that may stand for ever saves without end where the next costs anything. */
function failureRelative(ahead: SurvivalCurve, { plannedCost, failureCost }: ReplacementCosts, g: number): number {
  const life = meanLifeYears(ahead);
  if (life < Infinity) return failureCost - g * life;
  if (g > 0) return -Infinity;
  const forEver = ahead.standing.at(-1)!;
  return plannedCost * forEver + failureCost * (1 - forEver);
}

function adviceOf(seasons: number | null, latest: number | null, stepYears: number): ReplacementAdvice {
  if (seasons === 0) return { kind: 'replace now' };
  if (seasons === null) return { kind: 'run to failure', latest: null };
  const when = { seasons, years: seasons * stepYears };
  return seasons === latest ? { kind: 'run to failure', latest: when } : { kind: 'in N years', ...when };
}

/**
 * Survival from some age on, given that the fence stood at it: what a fence of the same making has ahead.
 * @param seasons whole seasons since the curve's beginning, before its last; throws RangeError where none is left or none stands
 */
export function survivalGivenAge({ standing, stepYears }: SurvivalCurve, seasons: number): SurvivalCurve {
  const now = Number.isInteger(seasons) && seasons >= 0 && seasons < standing.length - 1 ? standing[seasons]! : 0;
  if (now === 0)
    throw new RangeError(
      `survival: age of ${seasons} seasons on a curve of ${standing.length - 1}; give a whole one before its end, at which some still stand`,
    );
  return { standing: standing.slice(seasons).map((stands) => stands / now), stepYears };
}
