import { describe, expect, it } from 'vitest';
import { cents } from '../../../src/season/money/money.ts';
import type { PlanFence } from '../../../src/season/money/plan-fence.ts';
import { checkReservePlan, type ReservePlanRequest } from '../../../src/season/money/reserve-request.ts';
import { PLAIN_FENCE, PLAIN_PLAN } from './made-up-plan.ts';

const refusal = (request: Partial<ReservePlanRequest>): string => {
  try {
    checkReservePlan({ ...PLAIN_PLAN, ...request });
    return 'taken';
  } catch (error) {
    expect(error).toBeInstanceOf(RangeError);
    return error instanceof Error ? error.message : '';
  }
};
const fenceRefusal = (fence: Partial<PlanFence>): string => refusal({ fences: [{ ...PLAIN_FENCE, ...fence }] });
const repair = { what: 'groundline treatment', firstYear: 2030, everyYears: 5, cost: cents(1) };

describe('what is asked of a plan', () => {
  it('is taken at its limits', () => {
    expect(refusal({ years: 10 })).toBe('taken');
    expect(refusal({ years: 30, interest: 0.3, inflation: -0.3, floor: cents(5) })).toBe('taken');
    expect(refusal({ contribution: { kind: 'given', course: 'flat', firstYear: cents(0), atOnce: cents(0) } })).toBe(
      'taken',
    );
    expect(
      fenceRefusal({
        snapRiskByYear: [0, 1],
        replacement: { kind: 'by chance', chanceByYear: [0.2, 0.4, 0.3, 0.1] },
        againAfterYears: 1,
        repairs: [repair, { ...repair, everyYears: null }],
      }),
    ).toBe('taken');
  });

  it('is refused with the place, the value and the way out', () => {
    expect(refusal({ years: 9 })).toBe('plan, years: 9; give a whole number from 10 to 30');
    expect(refusal({ years: 31 })).toMatch(/years: 31/);
    expect(refusal({ years: 12.5 })).toMatch(/years: 12\.5/);
    expect(refusal({ firstYear: 27 })).toBe('plan, first year: 27; give a calendar year');
    expect(refusal({ interest: 2 })).toMatch(/^plan, interest: 2; .*0\.02 for two per cent$/);
    expect(refusal({ interest: -0.01 })).toMatch(/interest: -0\.01/);
    expect(refusal({ inflation: 3 })).toMatch(/^plan, inflation: 3; .*0\.03 for three per cent$/);
    expect(refusal({ inflation: Number.NaN })).toMatch(/inflation: NaN/);
    expect(refusal({ floor: cents(-1) })).toBe('plan, floor: -0.01; give an amount from 0');
    expect(
      refusal({ contribution: { kind: 'given', course: 'flat', firstYear: cents(-1), atOnce: cents(0) } }),
    ).toMatch(/^plan, contribution: -0\.01/);
    expect(refusal({ fences: [PLAIN_FENCE, PLAIN_FENCE] })).toBe(
      'plan, fence: north run; each fence is planned once; leave one out',
    );
  });

  it('is refused where a fence does not hold together', () => {
    expect(fenceRefusal({ replacementCost: cents(-1) })).toBe(
      'fence north run, replacement cost: -0.01; give an amount from 0',
    );
    expect(fenceRefusal({ replacementCostAfterFailure: cents(-1) })).toMatch(/replacement cost after failure: -0\.01/);
    expect(fenceRefusal({ consequence: cents(-1) })).toMatch(/consequence: -0\.01/);
    expect(fenceRefusal({ snapRiskByYear: [0, 1.2] })).toMatch(/risk of snapping in year 2: 1\.2/);
    expect(fenceRefusal({ replacement: { kind: 'by chance', chanceByYear: [-0.1] } })).toMatch(/in year 1: -0\.1/);
    expect(fenceRefusal({ replacement: { kind: 'by chance', chanceByYear: [0.6, 0.6] } })).toMatch(
      /chances of replacement: 1\.2 in all; they may sum to 1 at most/,
    );
    expect(fenceRefusal({ replacement: { kind: 'in year', year: 3 } })).toMatch(/year of replacement: 3/);
    expect(fenceRefusal({ againAfterYears: 0 })).toMatch(/years to the next replacement: 0/);
    expect(fenceRefusal({ repairs: [{ ...repair, firstYear: 1.5 }] })).toMatch(
      /first year of groundline treatment: 1\.5/,
    );
    expect(fenceRefusal({ repairs: [{ ...repair, everyYears: 0 }] })).toMatch(
      /years from one groundline treatment to the next: 0/,
    );
    expect(fenceRefusal({ repairs: [{ ...repair, cost: cents(-2) }] })).toMatch(/cost of groundline treatment: -0\.02/);
  });
});
