import { cents, minusMoney, moneyCell } from './money.ts';
import type { PlainRow } from './plain-row.ts';
import type { ReservePlan } from './reserve-plan.ts';

/** A number of whole cents from a band. */
const cell = (amount: number): string => moneyCell(cents(amount));

/** The plan by year, a row a year, in the order of the years. Every row carries what the plan is. */
export const reserveYearRows = (plan: ReservePlan): readonly PlainRow[] =>
  plan.years.map((year) => ({
    year: String(year.year),
    opening_balance: moneyCell(year.opening),
    contribution: moneyCell(year.contribution),
    repairs_expected: moneyCell(year.repairs),
    replacements_expected: moneyCell(minusMoney(year.spending, year.repairs)),
    spending_expected: moneyCell(year.spending),
    spending_p10: cell(year.spendingBand.p10),
    spending_p50: cell(year.spendingBand.p50),
    spending_p90: cell(year.spendingBand.p90),
    spent_so_far_p10: cell(year.spentSoFar.p10),
    spent_so_far_p50: cell(year.spentSoFar.p50),
    spent_so_far_p90: cell(year.spentSoFar.p90),
    lowest_balance: moneyCell(year.lowest),
    interest: moneyCell(year.interest),
    closing_balance: moneyCell(year.closing),
    closing_balance_p10: cell(year.closingBand.p10),
    closing_balance_p50: cell(year.closingBand.p50),
    closing_balance_p90: cell(year.closingBand.p90),
    association_spending: who(plan, year, 'association'),
    lot_spending: who(plan, year, 'lot'),
    office_spending: who(plan, year, 'office'),
    note: plan.label,
  }));

function who(plan: ReservePlan, year: ReservePlan['years'][number], responsible: ReservePlan['payer']): string {
  const amount = responsible === plan.payer ? year.spending : year.othersSpending[responsible];
  return amount === undefined ? '' : moneyCell(amount);
}

/** The plan by fence, in the order of the request. */
export const reserveFenceRows = (plan: ReservePlan): readonly PlainRow[] =>
  plan.fences.map((fence) => ({
    fence: fence.ref,
    responsible: fence.responsible,
    likely_replacement_year: fence.likelyYear === null ? '' : String(fence.likelyYear),
    chance_replaced: fence.pReplaced.toFixed(3),
    chance_snapped_first: fence.pSnapped.toFixed(3),
    spending_expected: moneyCell(fence.expectedSpending),
    waiting_one_year: moneyCell(fence.waiting.total),
    note: plan.label,
  }));
