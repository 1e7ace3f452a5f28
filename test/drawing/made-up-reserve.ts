import { cents } from '../../src/season/money/money.ts';
import type { PlanFence } from '../../src/season/money/plan-fence.ts';
import { type ReservePlan, reservePlan } from '../../src/season/money/reserve-plan.ts';
import type { ReservePlanRequest } from '../../src/season/money/reserve-request.ts';

const fence = (index: number): PlanFence => ({
  ref: `run ${index}`,
  responsible: index % 4 === 3 ? 'lot' : 'association',
  replacement: { kind: 'by chance', chanceByYear: [0, 0, 0.1, 0.2, 0.2, 0.2, 0.1, 0.1] },
  replacementCost: cents(400_000 + 31_000 * index),
  replacementCostAfterFailure: cents(600_000 + 31_000 * index),
  consequence: cents(250_000),
  snapRiskByYear: [0.01, 0.02, 0.03, 0.05],
  againAfterYears: 18,
  repairs: [{ what: 'groundline treatment', firstYear: 2028, everyYears: 5, cost: cents(30_000) }],
});

const REQUEST: ReservePlanRequest = {
  firstYear: 2027,
  years: 20,
  inflation: 0.03,
  interest: 0.02,
  openingBalance: cents(1_500_000),
  floor: cents(200_000),
  fences: [0, 1, 2, 3, 4].map(fence),
  payer: 'association',
  contribution: { kind: 'find', course: 'rising', cover: 'expected' },
  dependence: 'independent',
};

/** The plan of an association with five runs, one of them a lot owner's; changed in what is asked for. */
export const drawnReserve = (change: Partial<ReservePlanRequest> = {}): ReservePlan =>
  reservePlan({ ...REQUEST, ...change });
