import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { budgetRange, sumRanges } from '../../../src/season/money/budget-range.ts';

describe('a budget range', () => {
  it('is wider where the shipped order of magnitude stands than where the office set the price', () => {
    expect(budgetRange(1000, 'office')).toEqual({ low: 900, high: 1300 });
    expect(budgetRange(1000, 'shipped')).toEqual({ low: 750, high: 1400 });
    expect(budgetRange(0, 'shipped')).toEqual({ low: 0, high: 0 });
  });

  it('holds the price between its ends, and is told to two figures', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.5, max: 1e6, noNaN: true }),
        fc.constantFrom('office', 'shipped'),
        (price, source) => {
          const { low, high } = budgetRange(price, source);
          expect(low).toBeLessThanOrEqual(price);
          expect(high).toBeGreaterThanOrEqual(price);
          for (const end of [low, high]) expect(Number(end.toPrecision(2))).toBeCloseTo(end, 6);
        },
      ),
    );
  });

  it('adds up', () => {
    expect(
      sumRanges([
        { low: 900, high: 1400 },
        { low: 120, high: 210 },
      ]),
    ).toEqual({ low: 1000, high: 1700 });
    expect(sumRanges([])).toEqual({ low: 0, high: 0 });
  });
});
