import fc from 'fast-check';
import { cents, NO_MONEY } from '../../../src/season/money/money.ts';
import type { PlanFence } from '../../../src/season/money/plan-fence.ts';
import type { ReservePlanRequest } from '../../../src/season/money/reserve-request.ts';
import { drawnEvenly } from '../../drawn-evenly.ts';

/** A fence of the association that nothing is planned for, to change in what a test is about. */
export const PLAIN_FENCE: PlanFence = {
  ref: 'north run',
  responsible: 'association',
  replacement: { kind: 'not planned' },
  replacementCost: cents(100_000),
  replacementCostAfterFailure: cents(150_000),
  consequence: cents(200_000),
  snapRiskByYear: [],
  againAfterYears: null,
  repairs: [],
};

/** Ten years from 2027 without interest, inflation or fence. */
export const PLAIN_PLAN: ReservePlanRequest = {
  firstYear: 2027,
  years: 10,
  inflation: 0,
  interest: 0,
  openingBalance: NO_MONEY,
  floor: NO_MONEY,
  fences: [],
  payer: 'association',
  contribution: { kind: 'find', course: 'flat', cover: 'expected' },
  dependence: 'independent',
};

const amount = (highest: number): fc.Arbitrary<PlanFence['consequence']> => fc.nat({ max: highest }).map(cents);

const replacement: fc.Arbitrary<PlanFence['replacement']> = fc.oneof(
  fc.constant({ kind: 'not planned' as const }),
  fc.integer({ min: 2025, max: 2060 }).map((year) => ({ kind: 'in year' as const, year })),
  fc.array(fc.nat({ max: 5 }), { maxLength: 20 }).map((weights) => ({
    kind: 'by chance' as const,
    chanceByYear: weights.map((weight) => weight / Math.max(1, 1 + weights.reduce((sum, one) => sum + one, 0))),
  })),
);

export const drawnFence: fc.Arbitrary<Omit<PlanFence, 'ref'>> = fc.record({
  responsible: fc.constantFrom('association' as const, 'lot' as const, 'office' as const),
  replacement,
  replacementCost: amount(2_000_000),
  replacementCostAfterFailure: amount(3_000_000),
  consequence: amount(5_000_000),
  snapRiskByYear: fc.array(drawnEvenly(0, 0.5), { maxLength: 12 }),
  againAfterYears: fc.option(fc.integer({ min: 1, max: 25 }), { nil: null }),
  repairs: fc.array(
    fc.record({
      what: fc.constant('groundline treatment'),
      firstYear: fc.integer({ min: 2015, max: 2050 }),
      everyYears: fc.option(fc.integer({ min: 1, max: 8 }), { nil: null }),
      cost: amount(50_000),
    }),
    { maxLength: 2 },
  ),
});

/** Requests of every kind, with up to six fences. */
export const drawnPlan: fc.Arbitrary<ReservePlanRequest> = fc.record({
  firstYear: fc.constant(2027),
  years: fc.integer({ min: 10, max: 30 }),
  inflation: drawnEvenly(-0.02, 0.08),
  interest: drawnEvenly(0, 0.07),
  openingBalance: fc.integer({ min: -1_000_000, max: 5_000_000 }).map(cents),
  floor: amount(1_000_000),
  fences: fc
    .array(drawnFence, { maxLength: 6 })
    .map((fences) => fences.map((fence, index) => ({ ...fence, ref: `run ${index}` }))),
  payer: fc.constantFrom('association' as const, 'lot' as const, 'office' as const),
  contribution: fc.oneof(
    fc.record({
      kind: fc.constant('given' as const),
      firstYear: amount(500_000),
      course: fc.constantFrom('flat' as const, 'rising' as const),
      atOnce: amount(100_000),
    }),
    fc.record({
      kind: fc.constant('find' as const),
      course: fc.constantFrom('flat' as const, 'rising' as const),
      cover: fc.constantFrom('expected' as const, 'nine in ten' as const),
    }),
  ),
  dependence: fc.constantFrom('independent' as const, 'together' as const),
});
