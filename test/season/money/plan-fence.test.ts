import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cents } from '../../../src/season/money/money.ts';
import { fenceCourses, type PlanFence, plannedChance, snapRisk } from '../../../src/season/money/plan-fence.ts';
import { drawnFence, PLAIN_FENCE } from './made-up-plan.ts';

const PLAN = { firstYear: 2027, years: 10, inflation: 0 };
const only = (fence: Partial<PlanFence>, plan = PLAN): readonly number[] => {
  const courses = fenceCourses({ ...PLAIN_FENCE, ...fence }, plan);
  expect(courses).toHaveLength(1);
  expect(courses[0]!.probability).toBe(1);
  return courses[0]!.spendingByYear;
};
const inYear = (year: number) => ({ kind: 'in year' as const, year });

describe('the courses of one fence', () => {
  it('spend nothing where nothing is planned and nothing snaps', () => {
    expect(only({})).toEqual([0, 0, 0, 0, 0, 0, 0, 0, 0, 0]);
    expect(fenceCourses(PLAIN_FENCE, PLAN)[0]).toMatchObject({ replacedIn: null, snapped: false });
  });

  it("replace it in the year planned, at that year's prices, and its successors after their years", () => {
    expect(only({ replacement: inYear(2029), againAfterYears: 3 }, { ...PLAN, inflation: 0.1 })).toEqual([
      0, 0, 121_000, 0, 0, 161_051, 0, 0, 214_359, 0,
    ]);
    expect(only({ replacement: inYear(2027) })[0]).toBe(100_000);
    expect(only({ replacement: inYear(2036) })[9]).toBe(100_000);
    expect(only({ replacement: inYear(2037) }).every((amount) => amount === 0)).toBe(true);
    expect(only({ replacement: inYear(2026) }).every((amount) => amount === 0)).toBe(true);
  });

  it('part by planning first and snapping second', () => {
    const fence: PlanFence = {
      ...PLAIN_FENCE,
      replacement: { kind: 'by chance', chanceByYear: [0.5, 0.25] },
      snapRiskByYear: [0.1, 0.2],
    };
    const courses = fenceCourses(fence, { ...PLAN, years: 3 });
    expect(courses.map(({ replacedIn, snapped }) => [replacedIn, snapped])).toEqual([
      [0, false],
      [0, true],
      [1, false],
      [1, true],
      [2, true],
      [null, false],
    ]);
    for (const [index, probability] of [0.5, 0.05, 0.225, 0.045, 0.036, 0.144].entries())
      expect(courses[index]!.probability).toBeCloseTo(probability, 12);
    expect(courses.map(({ spendingByYear }) => spendingByYear)).toEqual([
      [100_000, 0, 0],
      [150_000, 0, 0],
      [0, 100_000, 0],
      [0, 150_000, 0],
      [0, 0, 150_000],
      [0, 0, 0],
    ]);
  });

  it('repair the old fence until it is replaced and the new one from its own first turn', () => {
    const treated = { what: 'groundline treatment', firstYear: 2028, everyYears: 3, cost: cents(1000) };
    expect(only({ repairs: [treated] })).toEqual([0, 1000, 0, 0, 1000, 0, 0, 1000, 0, 0]);
    // Turns before the plan count the years on.
    expect(only({ repairs: [{ ...treated, firstYear: 2025 }] })).toEqual([0, 1000, 0, 0, 1000, 0, 0, 1000, 0, 0]);
    expect(only({ repairs: [{ ...treated, everyYears: null }] })).toEqual([0, 1000, 0, 0, 0, 0, 0, 0, 0, 0]);
    expect(only({ repairs: [{ ...treated, firstYear: 2025, everyYears: null }] })[0]).toBe(0);
    // Replaced in the year of a turn: that turn is saved, the next comes three years after.
    expect(only({ repairs: [treated], replacement: inYear(2031) })).toEqual([0, 1000, 0, 0, 100_000, 0, 0, 1000, 0, 0]);
    expect(only({ repairs: [{ ...treated, everyYears: null }], replacement: inYear(2030) })).toEqual([
      0, 1000, 0, 100_000, 0, 0, 0, 0, 0, 0,
    ]);
    // A successor that is replaced on a turn saves it too.
    expect(only({ repairs: [treated], replacement: inYear(2027), againAfterYears: 6 })).toEqual([
      100_000, 0, 0, 1000, 0, 0, 100_000, 0, 0, 1000,
    ]);
  });

  it('repair a fence before the season in which it snaps', () => {
    const courses = fenceCourses(
      {
        ...PLAIN_FENCE,
        snapRiskByYear: [0, 1],
        repairs: [{ what: 'guard', firstYear: 2028, everyYears: null, cost: cents(700) }],
      },
      PLAN,
    );
    expect(courses.map(({ spendingByYear }) => spendingByYear[1])).toEqual([150_700]);
    expect(courses.map(({ repairsByYear }) => repairsByYear[1])).toEqual([700]);
  });

  it('have probabilities that sum to 1', () => {
    fc.assert(
      fc.property(drawnFence, fc.integer({ min: 1, max: 30 }), (drawn, years) => {
        const courses = fenceCourses({ ...drawn, ref: 'a' }, { firstYear: 2027, years, inflation: 0.03 });
        expect(courses.reduce((sum, { probability }) => sum + probability, 0)).toBeCloseTo(1, 9);
        for (const { spendingByYear, probability } of courses) {
          expect(probability).toBeGreaterThan(0);
          expect(spendingByYear).toHaveLength(years);
          expect(spendingByYear.every((amount) => Number.isInteger(amount) && amount >= 0)).toBe(true);
        }
      }),
    );
  });
});

describe('the chances of one fence', () => {
  it('keep the last risk beyond those given, and none where none is', () => {
    const fence = { ...PLAIN_FENCE, snapRiskByYear: [0.1, 0.2] };
    expect([0, 1, 2, 20].map((year) => snapRisk(fence, year))).toEqual([0.1, 0.2, 0.2, 0.2]);
    expect(snapRisk(PLAIN_FENCE, 3)).toBe(0);
  });

  it('plan a replacement in its year or by its chances', () => {
    const planned = (replacement: PlanFence['replacement'], year: number): number =>
      plannedChance({ ...PLAIN_FENCE, replacement }, year, 2027);
    expect([1, 2, 3].map((year) => planned(inYear(2029), year))).toEqual([0, 1, 0]);
    expect([0, 1].map((year) => planned({ kind: 'by chance', chanceByYear: [0.3] }, year))).toEqual([0.3, 0]);
    expect(planned({ kind: 'not planned' }, 0)).toBe(0);
  });
});
