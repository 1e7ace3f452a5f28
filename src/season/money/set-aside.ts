import { priceFactor } from './discounting.ts';
import { cents, type Money } from './money.ts';
import { type Contribution, type FundNeed, type FundTerms, leastContribution } from './reserve-ledger.ts';

/** Needs up to one year, in money of the first: what is to be paid, and what one unit a year has brought by then. */
interface NeedByYear {
  readonly needed: number;
  readonly annuity: number;
}

function needsByYear(
  { openingBalance, interest, inflation }: FundTerms,
  course: Contribution['course'],
  { spendingByYear, floor }: FundNeed,
): readonly NeedByYear[] {
  let spent = 0;
  let annuity = 0;
  return spendingByYear.map((spending, year) => {
    const worth = (1 + interest) ** -year;
    spent += spending * worth;
    annuity += (course === 'rising' ? priceFactor(inflation, year) : 1) * worth;
    return { needed: spent + floor * worth - openingBalance, annuity };
  });
}

/** What a contribution that is the same every year pays in over so many years, at once and year by year [cents]. */
export const paidInAll = ({ atOnce, firstYear }: Contribution, years: number): Money =>
  cents(atOnce + firstYear * years);

/** Years at the beginning of a plan for which it is too late to set aside. Source: judgement. */
const EARLY_YEARS = 2;

/**
 * What to pay in at once and then every year so that the fund never falls below the floor. The yearly amount is the least with
 * which the fund, at its floor after the two early years, pays for what comes later; at once is the least that gets it
 * through the early years beside that amount. Without it a year of arrears would set the yearly amount for decades.
 * Source: one linear condition a year in two unknowns, solved exactly, then to the cent on the ledger itself (derived).
 */
export function setAside(terms: FundTerms, course: Contribution['course'], need: FundNeed): Contribution {
  const needs = needsByYear(terms, course, need);
  if (needs.length === 0) throw new RangeError('to set aside: a plan of no years; give one at least');
  const early = needs.slice(0, EARLY_YEARS);
  const yearly = Math.max(
    0,
    ...needs
      .slice(EARLY_YEARS)
      .map((later) =>
        Math.min(
          later.needed / later.annuity,
          ...early.map(({ needed, annuity }) => (later.needed - needed) / (later.annuity - annuity)),
        ),
      ),
  );
  const atOnce = cents(Math.ceil(Math.max(0, ...early.map(({ needed, annuity }) => needed - yearly * annuity))));
  return { course, atOnce, firstYear: leastContribution(terms, { course, atOnce }, need) };
}
