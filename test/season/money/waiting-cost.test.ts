import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { NO_MONEY } from '../../../src/season/money/money.ts';
import type { PlanFence } from '../../../src/season/money/plan-fence.ts';
import { sumWaiting, waitingCost } from '../../../src/season/money/waiting-cost.ts';
import { drawnFence, PLAIN_FENCE } from './made-up-plan.ts';

const PLAN = { firstYear: 2027, years: 10, inflation: 0 };
const DUE: PlanFence = { ...PLAIN_FENCE, replacement: { kind: 'in year', year: 2027 }, snapRiskByYear: [0.1] };

describe('waiting a year', () => {
  it('costs what fails, less what the year is worth, worked out by hand', () => {
    // 0.1 x 500, 0.1 x 2000, 0.9 x 1000 x 0.05 / 1.05.
    expect(waitingCost(DUE, PLAN, 0.05)).toEqual({
      afterFailure: 5000,
      consequence: 20_000,
      yearGained: -4286,
      total: 20_714,
    });
    // A year of a fence that lasts ten is worth 123.34, its level cost.
    expect(waitingCost({ ...DUE, againAfterYears: 10 }, PLAN, 0.05)).toMatchObject({
      yearGained: -11_100,
      total: 13_900,
    });
    // A year later: weighed by standing until then, 0.9, and discounted once.
    expect(waitingCost({ ...DUE, replacement: { kind: 'in year', year: 2028 } }, PLAN, 0.05)).toEqual({
      afterFailure: 4286,
      consequence: 17_143,
      yearGained: -3673,
      total: 17_756,
    });
  });

  it('counts the risk of the fences that are due, where that is known apart', () => {
    const apart = { ...DUE, snapRiskByYear: [0], snapRiskWherePlanned: [0.1] };
    expect(waitingCost(apart, PLAN, 0.05)).toEqual(waitingCost(DUE, PLAN, 0.05));
  });

  it('counts inflation against interest', () => {
    const sound = { ...DUE, snapRiskByYear: [] };
    expect(waitingCost(sound, { ...PLAN, inflation: 0.05 }, 0.05)).toMatchObject({ yearGained: 0, total: 0 });
    expect(waitingCost(sound, { ...PLAN, inflation: 0.1 }, 0.045).yearGained).toBe(5263);
    expect(waitingCost({ ...sound, againAfterYears: 20 }, PLAN, 0).yearGained).toBe(-5000);
  });

  it('changes nothing where nothing is planned', () => {
    const nothing = { afterFailure: 0, consequence: 0, yearGained: 0, total: 0 };
    expect(waitingCost({ ...DUE, replacement: { kind: 'not planned' } }, PLAN, 0.05)).toEqual(nothing);
    expect(sumWaiting([])).toEqual(nothing);
  });

  it('is the difference of two plans, added up course by course', () => {
    // Without a successor within the plan, in today's money: the chance that it still stands, the year, and what it costs.
    fc.assert(
      fc.property(drawnFence, (drawn) => {
        const chances = drawn.replacement.kind === 'by chance' ? drawn.replacement.chanceByYear.slice(0, 10) : [0.5];
        const fence: PlanFence = {
          ...drawn,
          ref: 'a',
          againAfterYears: null,
          replacement: { kind: 'by chance', chanceByYear: chances },
        };
        const spent = (plannedIn: number): number => {
          let [standing, sum] = [1, 0];
          for (let year = 0; year < plannedIn; year += 1) {
            const risk = fence.snapRiskByYear[Math.min(year, fence.snapRiskByYear.length - 1)] ?? 0;
            const failing = fence.replacementCostAfterFailure + fence.consequence;
            sum += (standing * risk * failing) / 1.04 ** year;
            standing *= 1 - risk;
          }
          return sum + (standing * fence.replacementCost) / 1.04 ** plannedIn;
        };
        const expected = chances.reduce((sum, chance, year) => sum + chance * (spent(year + 1) - spent(year)), 0);
        expect(Math.abs(waitingCost(fence, PLAN, 0.04).total - expected)).toBeLessThan(2);
      }),
    );
  });

  it('adds up over fences, part by part', () => {
    const one = waitingCost(DUE, PLAN, 0.05);
    expect(sumWaiting([one, one])).toEqual({
      afterFailure: 10_000,
      consequence: 40_000,
      yearGained: -8572,
      total: 41_428,
    });
    expect(waitingCost({ ...DUE, consequence: NO_MONEY }, PLAN, 0.05).consequence).toBe(0);
  });
});
