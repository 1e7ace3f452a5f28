import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  type AmountDistribution,
  distributionOf,
  independentSum,
  meanCents,
  quantileAmount,
  sumBand,
} from '../../../src/season/money/amount-distribution.ts';
import { cents } from '../../../src/season/money/money.ts';

const chances = (...pairs: readonly (readonly [number, number])[]): AmountDistribution =>
  distributionOf(pairs.map(([amount, probability]) => ({ amount: cents(amount), probability })));

/** Distributions of whole hundredths of probability over up to four amounts. */
const drawn = (highest: number): fc.Arbitrary<AmountDistribution> =>
  fc
    .array(fc.tuple(fc.nat({ max: highest }), fc.integer({ min: 1, max: 9 })), { minLength: 1, maxLength: 4 })
    .map((pairs) => {
      const whole = pairs.reduce((sum, [, weight]) => sum + weight, 0);
      return chances(...pairs.map(([amount, weight]) => [amount, weight / whole] as const));
    });

describe('a distribution of amounts', () => {
  it('puts equal amounts together, in ascending order, without the impossible', () => {
    expect(chances([300, 0.25], [0, 0.5], [300, 0.25], [9, 0])).toEqual([
      { amount: 0, probability: 0.5 },
      { amount: 300, probability: 0.5 },
    ]);
    expect(meanCents(chances([100, 0.25], [200, 0.75]))).toBe(175);
  });

  it('has the smallest amount that is not exceeded as its quantile', () => {
    const three = chances([100, 0.1], [200, 0.4], [300, 0.5]);
    expect([0.05, 0.1, 0.11, 0.5, 0.51, 0.9].map((p) => quantileAmount(three, p))).toEqual([
      100, 100, 200, 200, 300, 300,
    ]);
    // 0.1 three times is a hair over 0.3, 0.7 + 0.1 + 0.1 a hair under 0.9.
    expect(quantileAmount(chances([1, 0.7], [2, 0.1], [3, 0.1], [4, 0.1]), 0.9)).toBe(3);
    expect(() => quantileAmount([], 0.5)).toThrow(/sums to 0/);
  });
});

describe('the sum of independent amounts', () => {
  it('is what enumeration gives', () => {
    expect(independentSum([])).toEqual([{ amount: 0, probability: 1 }]);
    expect(independentSum([chances([0, 0.5], [10, 0.5]), chances([0, 0.5], [10, 0.25], [30, 0.25])])).toEqual([
      { amount: 0, probability: 0.25 },
      { amount: 10, probability: 0.375 },
      { amount: 20, probability: 0.125 },
      { amount: 30, probability: 0.125 },
      { amount: 40, probability: 0.125 },
    ]);
    fc.assert(
      fc.property(fc.array(drawn(50), { maxLength: 5 }), (parts) => {
        let every: readonly (readonly [number, number])[] = [[0, 1]];
        for (const part of parts)
          every = every.flatMap(([sum, p]) =>
            part.map(({ amount, probability }) => [sum + amount, p * probability] as const),
          );
        const expected = chances(...every);
        const found = independentSum(parts);
        expect(found.map(({ amount }) => amount)).toEqual(expected.map(({ amount }) => amount));
        for (const [index, { probability }] of found.entries())
          expect(probability).toBeCloseTo(expected[index]!.probability, 10);
      }),
    );
  });

  it('keeps its mean, its ends and nearly its spread where there are too many sums to keep apart', () => {
    fc.assert(
      fc.property(fc.array(drawn(5_000_000), { minLength: 20, maxLength: 60 }), (parts) => {
        const found = independentSum(parts);
        expect(found.length).toBeLessThan(2200);
        const mean = parts.reduce((sum, part) => sum + meanCents(part), 0);
        expect(Math.abs(meanCents(found) - mean)).toBeLessThanOrEqual(1e-6 * (1 + mean));
        const variance = (part: AmountDistribution): number => {
          const middle = meanCents(part);
          return part.reduce((sum, { amount, probability }) => sum + probability * (amount - middle) ** 2, 0);
        };
        const spread = Math.sqrt(parts.reduce((sum, part) => sum + variance(part), 0));
        const whole = parts.reduce((sum, part) => sum + part.at(-1)!.amount - part[0]!.amount, 0);
        expect(Math.abs(Math.sqrt(variance(found)) - spread)).toBeLessThan(0.005 * whole + 1);
        expect(found.reduce((sum, { probability }) => sum + probability, 0)).toBeCloseTo(1, 9);
      }),
      { numRuns: 20 },
    );
  });

  it('has the quantiles of many like fences', () => {
    // 100 fences, each 1,000.00 with 0.3: binomial with mean 30; its 10th, 50th and 90th percentile are 24, 30 and 36.
    const fence = chances([0, 0.7], [100_000, 0.3]);
    const hundred = new Array<AmountDistribution>(100).fill(fence);
    expect(sumBand(hundred, 'independent')).toEqual({ p10: 2_400_000, p50: 3_000_000, p90: 3_600_000 });
    // The same where every fence costs a little else, so that no two sums are the same.
    const unlike = hundred.map((_, index) => chances([0, 0.7], [100_000 + 7 * index * index + index, 0.3]));
    const band = sumBand(unlike, 'independent');
    const scale = meanCents(independentSum(unlike)) / 30;
    expect(band.p10 / scale).toBeGreaterThan(23);
    expect(band.p10 / scale).toBeLessThan(25);
    expect(band.p90 / scale).toBeGreaterThan(35);
    expect(band.p90 / scale).toBeLessThan(37);
  });
});

describe('a band', () => {
  it('is the sum of the fences quantiles where all go together', () => {
    const fence = chances([0, 0.6], [100, 0.3], [500, 0.1]);
    expect(sumBand([fence, fence], 'together')).toEqual({ p10: 0, p50: 0, p90: 200 });
    expect(sumBand([fence, fence], 'independent')).toEqual({ p10: 0, p50: 100, p90: 500 });
    expect(sumBand([], 'together')).toEqual({ p10: 0, p50: 0, p90: 0 });
    expect(sumBand([], 'independent')).toEqual({ p10: 0, p50: 0, p90: 0 });
  });
});
