import { priceFactor } from './discounting.ts';
import { cents, type Money, minusMoney, moneyTimes, NO_MONEY, sumMoney } from './money.ts';

/** How a fund is fed and what it earns. */
export interface FundTerms {
  readonly openingBalance: Money;
  /** Rate of interest, 0 or more [1/a]. */
  readonly interest: number;
  /** Rise of prices [1/a]. */
  readonly inflation: number;
}

/** What is paid in: the same every year, or rising with prices from the first year's amount. */
export interface Contribution {
  readonly firstYear: Money;
  readonly course: 'flat' | 'rising';
  /** Paid in once, in the first year beside: what falls due before it could be set aside. */
  readonly atOnce: Money;
}

/** One year of a fund. opening + contribution - spending + interest = closing, to the cent. */
export interface LedgerYear {
  readonly opening: Money;
  readonly contribution: Money;
  readonly spending: Money;
  /** What is left once the year is paid in and spent: the lowest that the fund stands in the year. */
  readonly lowest: Money;
  readonly interest: Money;
  readonly closing: Money;
}

/**
 * The years of a fund. Contribution and spending both fall at the beginning of a year, before the season; what is left earns the
 * year's interest, rounded to the cent; a fund below nothing neither earns nor pays any.
 * @param spendingByYear in the money of each year
 */
export function fundLedger(
  terms: FundTerms,
  contribution: Contribution,
  spendingByYear: readonly Money[],
): readonly LedgerYear[] {
  const years: LedgerYear[] = [];
  let opening = terms.openingBalance;
  for (const [year, spending] of spendingByYear.entries()) {
    const rise = contribution.course === 'rising' ? priceFactor(terms.inflation, year) : 1;
    const yearly = moneyTimes(contribution.firstYear, rise);
    const paid = year === 0 ? sumMoney([yearly, contribution.atOnce]) : yearly;
    const lowest = minusMoney(sumMoney([opening, paid]), spending);
    const interest = lowest > 0 ? moneyTimes(lowest, terms.interest) : NO_MONEY;
    const closing = sumMoney([lowest, interest]);
    years.push({ opening, contribution: paid, spending, lowest, interest, closing });
    opening = closing;
  }
  return years;
}

/** What a fund has to pay, and may never fall below. */
export interface FundNeed {
  /** In the money of each year. */
  readonly spendingByYear: readonly Money[];
  /** 0 or more. */
  readonly floor: Money;
}

/**
 * The least first-year contribution, to the cent, with which the fund never stands below the floor; nothing where it needs none.
 * @param atOnce paid in once in the first year beside
 * Source: bisection on the ledger itself, whose every year rises with the contribution.
 */
export function leastContribution(
  terms: FundTerms,
  { course, atOnce }: Omit<Contribution, 'firstYear'>,
  need: FundNeed,
): Money {
  const isEnough = (amount: number): boolean =>
    fundLedger(terms, { firstYear: cents(amount), course, atOnce }, need.spendingByYear).every(
      ({ lowest }) => lowest >= need.floor,
    );
  if (isEnough(0)) return NO_MONEY;
  let short = 0;
  let enough = 1;
  while (!isEnough(enough)) {
    short = enough;
    enough *= 2;
  }
  while (enough - short > 1) {
    const middle = Math.floor((short + enough) / 2);
    if (isEnough(middle)) enough = middle;
    else short = middle;
  }
  return cents(enough);
}
