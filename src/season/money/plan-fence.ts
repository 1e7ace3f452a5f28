import { priceFactor } from './discounting.ts';
import { cents, type Money, moneyTimes, sumMoney } from './money.ts';

/** Who pays for a fence: the association, the owner of the lot, or the office that built it (its warranty). */
export type Responsible = 'association' | 'lot' | 'office';

/** A repair or care that comes round as long as the fence is there. */
export interface PlannedRepair {
  readonly what: string;
  /** Calendar year of its next turn. */
  readonly firstYear: number;
  /** Years from turn to turn [a]; null where it is done once. A new fence has its first turn so long after it was built. */
  readonly everyYears: number | null;
  /** In today's money. */
  readonly cost: Money;
}

/** When a fence is to be replaced in good time. */
export type PlannedReplacement =
  | { readonly kind: 'in year'; readonly year: number }
  /** The chance that the plan replaces it in the plan's first year, second, ...: say, that it goes short in that season [-]. They sum to 1 or less. */
  | { readonly kind: 'by chance'; readonly chanceByYear: readonly number[] }
  | { readonly kind: 'not planned' };

/** One fence of a plan, with costs in today's money. */
export interface PlanFence {
  readonly ref: string;
  readonly responsible: Responsible;
  readonly replacement: PlannedReplacement;
  readonly replacementCost: Money;
  /** What replacing it costs whoever pays for it where it snapped first. */
  readonly replacementCostAfterFailure: Money;
  /** What its snapping costs beside (the owner's stated consequence); no plan pays it, waiting counts it. */
  readonly consequence: Money;
  /** P(snap in the plan's first year, second, ...) given that it stands at its beginning [-]; beyond the last its risk holds. Empty: none. */
  readonly snapRiskByYear: readonly number[];
  /** The same of a fence that the plan replaces in that year, had it been left, where being due and snapping go together; else as above. */
  readonly snapRiskWherePlanned?: readonly number[];
  /** Years after a replacement at which its successor is replaced [a]; null where that lies beyond the plan. */
  readonly againAfterYears: number | null;
  readonly repairs: readonly PlannedRepair[];
}

/** The years of a plan. */
export interface PlanYears {
  readonly firstYear: number;
  /** 1 or more [a]. */
  readonly years: number;
  /** Rise of prices [1/a]. */
  readonly inflation: number;
}

/** One way that a fence's years may go: which payments fall in which year, and its probability [-]. */
export interface FenceCourse {
  readonly probability: number;
  /** Year of the plan, from 0, in which the fence of today is replaced; null where it outlasts the plan. */
  readonly replacedIn: number | null;
  readonly snapped: boolean;
  /** Spending by year of the plan, in the money of its year. */
  readonly spendingByYear: readonly Money[];
  /** What of it goes into repairs and care. */
  readonly repairsByYear: readonly Money[];
}

/** P(snap in a year of the plan, from 0, given that it stands at its beginning) [-]. */
export const snapRisk = ({ snapRiskByYear }: PlanFence, year: number): number =>
  snapRiskByYear[Math.min(year, snapRiskByYear.length - 1)] ?? 0;

/** The chance that a fence that stands is replaced as planned in a year of the plan, from 0 [-], taken without its snapping. */
export function plannedChance({ replacement }: PlanFence, year: number, firstYear: number): number {
  if (replacement.kind === 'by chance') return replacement.chanceByYear[year] ?? 0;
  return replacement.kind === 'in year' && replacement.year - firstYear === year ? 1 : 0;
}

/**
 * Every way that one fence's years may go. Works come before the season: in each year it is first replaced as planned, and what
 * is left may snap and is then replaced in the same year. Risks of planning and snapping are independent; its successor does not snap.
 * Their probabilities sum to 1. Source: total probability (derived).
 */
export function fenceCourses(fence: PlanFence, plan: PlanYears): readonly FenceCourse[] {
  const courses: FenceCourse[] = [];
  const add = (probability: number, replacedIn: number | null, snapped: boolean): void => {
    if (probability > 0)
      courses.push({ probability, replacedIn, snapped, ...spendingOf(fence, plan, replacedIn, snapped) });
  };
  let standing = 1;
  let unplanned = 1;
  for (let year = 0; year < plan.years; year += 1) {
    const planned = Math.min(unplanned, plannedChance(fence, year, plan.firstYear));
    add(planned * standing, year, false);
    unplanned -= planned;
    const risk = snapRisk(fence, year);
    add(unplanned * standing * risk, year, true);
    standing *= 1 - risk;
  }
  add(unplanned * standing, null, false);
  return courses;
}

function spendingOf(
  fence: PlanFence,
  { firstYear, years, inflation }: PlanYears,
  replacedIn: number | null,
  snapped: boolean,
): Pick<FenceCourse, 'spendingByYear' | 'repairsByYear'> {
  const replacements = new Array<number>(years).fill(0);
  const repairs = new Array<number>(years).fill(0);
  const pay = (into: number[], year: number, cost: Money): void => {
    into[year] = into[year]! + cost;
  };
  if (replacedIn !== null) {
    pay(replacements, replacedIn, snapped ? fence.replacementCostAfterFailure : fence.replacementCost);
    for (const year of turns(replacedIn, fence.againAfterYears, years).slice(1))
      pay(replacements, year, fence.replacementCost);
  }
  for (const { firstYear: due, everyYears, cost } of fence.repairs) {
    // Before a season in which it snaps the old fence still has its turn; one that is replaced as planned has not.
    const until = replacedIn === null ? years : replacedIn + (snapped ? 1 : 0);
    for (const year of turns(due - firstYear, everyYears, until)) pay(repairs, year, cost);
    if (replacedIn !== null && everyYears !== null)
      for (const built of turns(replacedIn, fence.againAfterYears, years)) {
        const next = fence.againAfterYears === null ? years : Math.min(years, built + fence.againAfterYears);
        for (const year of turns(built, everyYears, next).slice(1)) pay(repairs, year, cost);
      }
  }
  const ofItsYear = (todays: readonly number[]): readonly Money[] =>
    todays.map((cost, year) => moneyTimes(cents(cost), priceFactor(inflation, year)));
  const repairsByYear = ofItsYear(repairs);
  return {
    spendingByYear: ofItsYear(replacements).map((cost, year) => sumMoney([cost, repairsByYear[year]!])),
    repairsByYear,
  };
}

/** Years from `first` on in even steps, from 0 and under `until`; only the first where there is no step. */
function turns(first: number, every: number | null, until: number): readonly number[] {
  const found: number[] = [];
  for (let year = first; year < until; year += every ?? Infinity) if (year >= 0) found.push(year);
  return found;
}
