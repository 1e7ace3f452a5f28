import { adviceText } from '../drawing/reserve-fences.ts';
import { amountOf, cents, type Money, moneyCell } from '../season/money/money.ts';
import type { PlainRow } from '../season/money/plain-row.ts';
import type { ReservePlan, SetAside } from '../season/money/reserve-plan.ts';
import { reserveFenceRows, reserveYearRows } from '../season/money/reserve-rows.ts';
import type { WaitingCost } from '../season/money/waiting-cost.ts';
import type { OwnerFence, OwnerMoney } from './owner-money.ts';

const figure = (value: number | null | undefined, places: number): string =>
  value === null || value === undefined ? '' : value.toFixed(places);
const moneyOrNone = (money: Money | null): string => (money === null ? '' : moneyCell(money));

/** The fences of an owner's plan for other programs: what each is and costs, then what the plan says of it. */
export const ownerFenceRows = ({ fences, plan }: OwnerMoney): readonly PlainRow[] => {
  const ofPlan = reserveFenceRows(plan);
  return fences.map((fence, index): PlainRow => {
    const { fence: ref = '', responsible = '', ...planned } = ofPlan[index] ?? {};
    return {
      fence: ref,
      site: fence.siteName,
      responsible,
      share: figure(fence.share, 4),
      shared_with: fence.sharedWith ?? '',
      built_earliest: fence.built.earliest,
      built_latest: fence.built.latest,
      age_years: figure(fence.ageYears, 2),
      chance_snaps_first_year: figure(fence.snapRisk, 4),
      advice: adviceText(fence),
      cheapest_year: figure(fence.cheapestYear, 0),
      cheapest_age_years: figure(fence.cheapestAgeYears, 2),
      successor_best_age_years: figure(fence.successor?.bestAgeYears, 0),
      successor_cost_per_year: figure(fence.successor?.costPerYear, 2),
      rebuild: moneyCell(fence.price),
      rebuild_after_snap: moneyCell(fence.priceAfterFailure),
      consequence: moneyCell(fence.consequence),
      short_season: fence.shortSeason ?? '',
      a_year_later_costs: moneyOrNone(fence.waitingOneYear),
      now_instead_costs: moneyOrNone(fence.replacingNow),
      plan_goes_by: fence.rule,
      ...planned,
    };
  });
};

/** The years of an owner's plan for other programs. */
export const ownerYearRows = ({ plan }: OwnerMoney): readonly PlainRow[] => reserveYearRows(plan);

/** Rows as cells, their column names first. */
export const rowsAsCells = (rows: readonly PlainRow[]): readonly (readonly string[])[] => [
  Object.keys(rows[0] ?? {}),
  ...rows.map((row) => Object.values(row)),
];

const amounts = <T extends object>(of: T): { readonly [K in keyof T]: number } =>
  Object.fromEntries(Object.entries(of).map(([key, money]) => [key, amountOf(cents(money as number))])) as {
    readonly [K in keyof T]: number;
  };

const fenceJson = (fence: OwnerFence, planned: ReservePlan['fences'][number]) => ({
  ref: fence.ref,
  siteName: fence.siteName,
  responsible: fence.responsible,
  share: fence.share,
  sharedWith: fence.sharedWith,
  built: fence.built,
  ageYears: fence.ageYears,
  snapRisk: fence.snapRisk,
  planGoesBy: fence.rule,
  isOutworn: fence.isOutworn,
  advice: fence.ahead?.advice ?? null,
  adviceText: adviceText(fence),
  cheapestYear: fence.cheapestYear,
  cheapestAgeYears: fence.cheapestAgeYears,
  successorBestAgeYears: fence.successor?.bestAgeYears ?? null,
  successorCostPerYear: fence.successor?.costPerYear ?? null,
  excessBySeason: fence.ahead?.excessBySeason ?? null,
  rebuild: amountOf(fence.price),
  rebuildAfterSnap: amountOf(fence.priceAfterFailure),
  consequence: amountOf(fence.consequence),
  shortSeason: fence.shortSeason,
  waitingOneYear: fence.waitingOneYear === null ? null : amountOf(fence.waitingOneYear),
  replacingNow: fence.replacingNow === null ? null : amountOf(fence.replacingNow),
  likelyYear: planned.likelyYear,
  pReplaced: planned.pReplaced,
  pSnapped: planned.pSnapped,
  expectedSpending: amountOf(planned.expectedSpending),
  waitingPlanned: amounts<WaitingCost>(planned.waiting),
});

const yearJson = (year: ReservePlan['years'][number]) => ({
  year: year.year,
  repairs: amountOf(year.repairs),
  spending: amountOf(year.spending),
  spendingBand: amounts(year.spendingBand),
  spentSoFar: amounts(year.spentSoFar),
  opening: amountOf(year.opening),
  contribution: amountOf(year.contribution),
  lowest: amountOf(year.lowest),
  interest: amountOf(year.interest),
  closing: amountOf(year.closing),
  closingBand: amounts(year.closingBand),
});

const contributionJson = ({ course, atOnce, firstYear }: ReservePlan['contribution']) => ({
  course,
  atOnce: amountOf(atOnce),
  firstYear: amountOf(firstYear),
});

const setAsideJson = ({ flat, rising }: SetAside) => ({
  flat: contributionJson(flat),
  rising: contributionJson(rising),
});

/** An owner's plan as JSON: every amount a decimal number of the currency. */
export function ownerMoneyJson({ owner, plan, fences, unseen }: OwnerMoney, currency: string) {
  const { contribution, setAside } = plan;
  return {
    label: plan.label,
    owner,
    currency,
    payer: plan.payer,
    dependence: plan.dependence,
    floor: amountOf(plan.floor),
    contribution: contributionJson(contribution),
    setAside: { expected: setAsideJson(setAside.expected), nineInTen: setAsideJson(setAside.nineInTen) },
    waiting: amounts<WaitingCost>(plan.waiting),
    years: plan.years.map(yearJson),
    fences: fences.map((fence, index) => fenceJson(fence, plan.fences[index]!)),
    unseen,
  };
}
