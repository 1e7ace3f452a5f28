import { levelPayment, realRate } from './discounting.ts';
import { amountOf, type Money, moneyFromAmount, NO_MONEY, sumMoney } from './money.ts';
import { type PlanFence, type PlanYears, plannedChance, snapRisk } from './plan-fence.ts';

/** What it costs to put every planned replacement off by one year, in today's money. */
export interface WaitingCost {
  /** Expected extra spending where fences snap in the year waited: replaced after failure instead of in good time. */
  readonly afterFailure: Money;
  /** Expected consequence of those failures. */
  readonly consequence: Money;
  /** What the year of service gained saves; 0 or less where money gains on prices. */
  readonly yearGained: Money;
  /** The sum: positive where waiting costs. */
  readonly total: Money;
}

/**
 * Present value of what changes when one fence's planned replacement is put off by a year. Where it snaps in that year, it is
 * replaced then and no time is gained; where it stands, each replacement to come is a year later, which is worth the level
 * yearly cost of a fence of that life (for a successor that is not replaced within the plan: the real interest on its cost).
 * Repairs are left out. Payments fall at the beginning of years, discounted by interest less inflation.
 * @param interest rate of interest [1/a]
 * Source: the two plans coupled course by course (derived).
 */
export function waitingCost(fence: PlanFence, plan: PlanYears, interest: number): WaitingCost {
  const real = realRate(interest, plan.inflation);
  const cost = amountOf(fence.replacementCost);
  const { againAfterYears } = fence;
  const levelCost =
    againAfterYears === null
      ? (cost * real) / (1 + real)
      : levelPayment(cost, { years: againAfterYears, yearlyRate: real, timing: 'beginning-of-year' });
  let standing = 1;
  let fails = 0;
  let gains = 0;
  for (let year = 0; year < plan.years; year += 1) {
    const weight = (plannedChance(fence, year, plan.firstYear) * standing) / (1 + real) ** year;
    const risk = snapRisk(fence, year);
    const riskWaited = fence.snapRiskWherePlanned?.[year] ?? risk;
    fails += weight * riskWaited;
    gains += weight * (1 - riskWaited);
    standing *= 1 - risk;
  }
  const afterFailure = moneyFromAmount(fails * (amountOf(fence.replacementCostAfterFailure) - cost));
  const consequence = moneyFromAmount(fails * amountOf(fence.consequence));
  const yearGained = moneyFromAmount(-gains * levelCost);
  return { afterFailure, consequence, yearGained, total: sumMoney([afterFailure, consequence, yearGained]) };
}

/** The sum of waiting costs, part by part. */
export const sumWaiting = (parts: readonly WaitingCost[]): WaitingCost =>
  parts.reduce(
    (sum, part) => ({
      afterFailure: sumMoney([sum.afterFailure, part.afterFailure]),
      consequence: sumMoney([sum.consequence, part.consequence]),
      yearGained: sumMoney([sum.yearGained, part.yearGained]),
      total: sumMoney([sum.total, part.total]),
    }),
    { afterFailure: NO_MONEY, consequence: NO_MONEY, yearGained: NO_MONEY, total: NO_MONEY },
  );
