import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cents } from '../../../src/season/money/money.ts';
import type { PlanFence } from '../../../src/season/money/plan-fence.ts';
import { RESERVE_PLAN_LABEL, reservePlan } from '../../../src/season/money/reserve-plan.ts';
import { drawnPlan, PLAIN_FENCE, PLAIN_PLAN } from './made-up-plan.ts';

const due = (ref: string, year: number, fence: Partial<PlanFence> = {}): PlanFence => ({
  ...PLAIN_FENCE,
  ref,
  replacement: { kind: 'in year', year },
  ...fence,
});

describe('a reserve plan', () => {
  it('says that it is a planning aid', () => {
    expect(RESERVE_PLAN_LABEL).toBe('a planning aid, not a statutory reserve study');
    expect(reservePlan(PLAIN_PLAN)).toMatchObject({ label: RESERVE_PLAN_LABEL, fences: [], payer: 'association' });
  });

  it('counts rare breakages in the mean and in the range alike: the mean stands above it only by their chance', () => {
    const snapping = (risk: number) =>
      reservePlan({ ...PLAIN_PLAN, fences: [{ ...PLAIN_FENCE, snapRiskByYear: [risk] }] });
    const [rare, frequent] = [snapping(0.05), snapping(0.15)].map(({ years }) => years[0]!);
    // 5 % of 1,500.00; one year in ten at most reaches it, so eight in ten spend nothing
    expect(rare).toMatchObject({ spending: 7500, spendingBand: { p10: 0, p90: 0 } });
    expect(frequent).toMatchObject({ spending: 22_500, spendingBand: { p10: 0, p90: 150_000 } });
  });

  it('finds what to set aside for one fence, by hand', () => {
    const request = {
      ...PLAIN_PLAN,
      inflation: 0.1,
      openingBalance: cents(10_000),
      fences: [due('a', 2029)],
    };
    const plan = reservePlan(request);
    // 1,000.00 at 1.21 is due in the third year, 100.00 is there: three times 370.00, or 335.35 rising.
    const amounts = {
      flat: { course: 'flat', atOnce: 0, firstYear: 37_000 },
      rising: { course: 'rising', atOnce: 0, firstYear: 33_535 },
    };
    expect(plan.setAside).toEqual({ expected: amounts, nineInTen: amounts });
    expect(plan.contribution).toEqual({ firstYear: 37_000, course: 'flat', atOnce: 0 });
    expect(plan.years.slice(0, 4).map(({ year, spending, closing }) => [year, spending, closing])).toEqual([
      [2027, 0, 47_000],
      [2028, 0, 84_000],
      [2029, 121_000, 0],
      [2030, 0, 37_000],
    ]);
    expect(plan.years[2]).toMatchObject({
      spendingBand: { p10: 121_000, p50: 121_000, p90: 121_000 },
      spentSoFar: { p10: 121_000, p50: 121_000, p90: 121_000 },
      closingBand: { p10: 0, p50: 0, p90: 0 },
      othersSpending: {},
    });
    const rising = reservePlan({ ...request, contribution: { kind: 'find', course: 'rising', cover: 'nine in ten' } });
    expect(rising.contribution).toEqual({ firstYear: 33_535, course: 'rising', atOnce: 0 });
    const given = { kind: 'given' as const, course: 'rising' as const, firstYear: cents(100), atOnce: cents(7) };
    expect(reservePlan({ ...request, contribution: given }).contribution).toEqual({
      firstYear: 100,
      course: 'rising',
      atOnce: 7,
    });
  });

  it('spends for the payer alone and shows the others beside', () => {
    const plan = reservePlan({
      ...PLAIN_PLAN,
      fences: [due('a', 2027), due('b', 2027, { responsible: 'lot', replacementCost: cents(70_000) })],
    });
    expect(plan.years[0]).toMatchObject({ spending: 100_000, othersSpending: { lot: 70_000 } });
    expect(plan.years[1]!.othersSpending).toEqual({ lot: 0 });
    expect(plan.fences.map(({ ref, responsible }) => [ref, responsible])).toEqual([
      ['a', 'association'],
      ['b', 'lot'],
    ]);
    const owners = reservePlan({ ...PLAIN_PLAN, payer: 'lot', fences: [due('a', 2027), due('c', 2028)] });
    expect(owners.years[0]).toMatchObject({ spending: 0, othersSpending: { association: 100_000 } });
  });

  it('carries the chance of each fence into mean, band and lines', () => {
    const chancy = (ref: string): PlanFence =>
      due(ref, 2027, { replacement: { kind: 'by chance', chanceByYear: [0.3, 0.3, 0.2] } });
    const request = { ...PLAIN_PLAN, fences: [chancy('a'), chancy('b')] };
    const plan = reservePlan(request);
    expect(plan.years.slice(0, 4).map(({ spending }) => spending)).toEqual([60_000, 60_000, 40_000, 0]);
    // Two of 0.3: none 0.49, one 0.42, both 0.09.
    expect(plan.years[0]!.spendingBand).toEqual({ p10: 0, p50: 100_000, p90: 100_000 });
    expect(plan.years.slice(0, 4).map(({ spentSoFar }) => spentSoFar)).toEqual([
      { p10: 0, p50: 100_000, p90: 100_000 },
      { p10: 0, p50: 100_000, p90: 200_000 },
      { p10: 100_000, p50: 200_000, p90: 200_000 },
      { p10: 100_000, p50: 200_000, p90: 200_000 },
    ]);
    const together = reservePlan({ ...request, dependence: 'together' });
    expect(together.years[0]!.spendingBand).toEqual({ p10: 0, p50: 0, p90: 200_000 });
    expect(together.years.map(({ spending }) => spending)).toEqual(plan.years.map(({ spending }) => spending));
    expect(plan.fences[0]).toMatchObject({ pSnapped: 0, likelyYear: 2028, expectedSpending: 80_000 });
    expect(plan.fences[0]!.pReplaced).toBeCloseTo(0.8, 12);
    // What is spent goes by its 90th percentile 1,000 in the first and second year: cover takes 1,000 a year.
    // 1,600.00 in all: 400.00 in the third year are set aside in time, in the first two 400.00 a year are not enough.
    expect(plan.setAside).toMatchObject({
      expected: { flat: { atOnce: 40_000, firstYear: 40_000 } },
      nineInTen: { flat: { atOnce: 200_000, firstYear: 0 } },
    });
    expect(plan.years[1]!.closingBand).toEqual({ p10: -80_000, p50: 20_000, p90: 120_000 });
  });

  it('tells the likely year only where there is one, and how likely it snaps first', () => {
    const plan = reservePlan({
      ...PLAIN_PLAN,
      fences: [
        due('half', 2027, { replacement: { kind: 'by chance', chanceByYear: [0.25, 0.25] } }),
        due('less', 2027, { replacement: { kind: 'by chance', chanceByYear: [0.25, 0.2] } }),
        due('late', 2029, { snapRiskByYear: [0.1] }),
        { ...PLAIN_FENCE, ref: 'none' },
      ],
    });
    expect(plan.fences.map(({ likelyYear }) => likelyYear)).toEqual([2028, null, 2029, null]);
    expect(plan.fences[2]!.pReplaced).toBe(1);
    expect(plan.fences[2]!.pSnapped).toBeCloseTo(0.19, 12);
    // 0.19 at 1,500 and 0.81 at 1,000.
    expect(plan.fences[2]!.expectedSpending).toBe(109_500);
  });

  it('adds up what waiting costs over the fences of the payer', () => {
    const risky = { snapRiskByYear: [0.1] };
    const plan = reservePlan({
      ...PLAIN_PLAN,
      interest: 0.05,
      fences: [due('a', 2027, risky), due('b', 2027, risky), due('c', 2027, { ...risky, responsible: 'lot' })],
    });
    expect(plan.fences.map(({ waiting }) => waiting.total)).toEqual([20_714, 20_714, 20_714]);
    expect(plan.waiting.total).toBe(41_428);
  });

  it('balances to the cent, keeps its floor and orders its bands, whatever is asked', () => {
    fc.assert(
      fc.property(drawnPlan, (request) => {
        const plan = reservePlan(request);
        expect(plan.years.map(({ year }) => year)).toEqual(plan.years.map((_, index) => request.firstYear + index));
        expect(plan.years).toHaveLength(request.years);
        let opening: number = request.openingBalance;
        let before = { p10: 0, p50: 0, p90: 0 };
        for (const year of plan.years) {
          expect(year.opening).toBe(opening);
          expect(year.opening + year.contribution - year.spending + year.interest).toBe(year.closing);
          opening = year.closing;
          for (const band of [year.spendingBand, year.spentSoFar, year.closingBand])
            expect([band.p10, band.p50, band.p90]).toEqual([band.p10, band.p50, band.p90].toSorted((a, b) => a - b));
          for (const percentile of ['p10', 'p50', 'p90'] as const)
            expect(year.spentSoFar[percentile]).toBeGreaterThanOrEqual(before[percentile]);
          before = year.spentSoFar;
        }
        if (request.contribution.kind === 'find' && request.contribution.cover === 'expected')
          expect(Math.min(...plan.years.map(({ lowest }) => lowest))).toBeGreaterThanOrEqual(request.floor);
        const spent = plan.years.reduce((sum, { spending }) => sum + spending, 0);
        const byFence = plan.fences
          .filter(({ responsible }) => responsible === request.payer)
          .reduce((sum, { expectedSpending }) => sum + expectedSpending, 0);
        expect(Math.abs(spent - byFence)).toBeLessThanOrEqual((request.years + request.fences.length) / 2 + 1);
      }),
      { numRuns: 60 },
    );
  });

  it('never shows less spent in a later year, where the steps of a sum of very unlike fences would', () => {
    const fence = { ...PLAIN_FENCE, responsible: 'association', consequence: cents(0) } as const;
    const { years } = reservePlan({
      ...PLAIN_PLAN,
      years: 12,
      inflation: -0.02,
      fences: [
        {
          ...fence,
          ref: 'small repair every year',
          replacement: { kind: 'by chance', chanceByYear: [] },
          replacementCost: cents(0),
          replacementCostAfterFailure: cents(0),
          snapRiskByYear: [5e-7],
          againAfterYears: 1,
          repairs: [{ what: 'groundline treatment', firstYear: 2015, everyYears: 1, cost: cents(7) }],
        },
        {
          ...fence,
          ref: 'cheap',
          replacement: { kind: 'by chance', chanceByYear: [0.5] },
          replacementCost: cents(0),
          replacementCostAfterFailure: cents(151),
          snapRiskByYear: [5e-7],
          againAfterYears: 2,
          repairs: [{ what: 'groundline treatment', firstYear: 2034, everyYears: 1, cost: cents(169) }],
        },
        {
          ...fence,
          ref: 'dear',
          replacement: { kind: 'in year', year: 2025 },
          replacementCost: cents(0),
          replacementCostAfterFailure: cents(407_888),
          snapRiskByYear: [0.3819665],
          againAfterYears: null,
        },
      ],
    });
    for (const percentile of ['p10', 'p50', 'p90'] as const) {
      const soFar = years.map(({ spentSoFar }) => spentSoFar[percentile]);
      expect(soFar).toEqual(soFar.toSorted((a, b) => a - b));
    }
  });

  it('keeps the floor with what it finds, for what is expected', () => {
    fc.assert(
      fc.property(drawnPlan, (request) => {
        const contribution = { kind: 'find', course: 'flat', cover: 'expected' } as const;
        const plan = reservePlan({ ...request, contribution });
        expect(plan.contribution).toEqual(plan.setAside.expected.flat);
        expect(Math.min(...plan.years.map(({ lowest }) => lowest))).toBeGreaterThanOrEqual(request.floor);
      }),
      { numRuns: 40 },
    );
  });

  it('plans two hundred fences over thirty years', () => {
    const fences = Array.from({ length: 200 }, (_, index) =>
      due(`run ${index}`, 2027, {
        replacement: { kind: 'not planned' },
        replacementCost: cents(150_000 + 977 * index),
        replacementCostAfterFailure: cents(220_000 + 1201 * index),
        snapRiskByYear: Array.from({ length: 30 }, (_, year) => Math.min(0.3, 0.002 * year + 0.0001 * index)),
        againAfterYears: 18,
        repairs: [{ what: 'groundline treatment', firstYear: 2028 + (index % 5), everyYears: 5, cost: cents(20_000) }],
      }),
    );
    const plan = reservePlan({ ...PLAIN_PLAN, years: 30, inflation: 0.03, interest: 0.02, fences });
    const last = plan.years.at(-1)!.spentSoFar;
    const spent = plan.years.reduce((sum, { spending }) => sum + spending, 0);
    expect(last.p10).toBeLessThan(spent);
    expect(last.p90).toBeGreaterThan(spent);
    expect((last.p90 - last.p10) / spent).toBeLessThan(0.2);
  });
});
