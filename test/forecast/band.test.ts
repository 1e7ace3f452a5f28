import { describe, expect, it } from 'vitest';
import { bandOf, effectiveCount, quantile, rounded } from '../../src/forecast/band.ts';

/** Distribution function of Beta(2, 18), from its polynomial. */
const beta2and18 = (x: number): number => 1 - (1 - x) ** 19 - 19 * x * (1 - x) ** 18;

describe('the quantile of a few values of equal weight', () => {
  // The k-th of n values weighs what a Beta((n + 1) p, (n + 1)(1 - p)) variable puts between (k - 1)/n and k/n.
  it('is the value itself where there is one', () => {
    for (const probability of [0.1, 0.5, 0.9]) expect(quantile(Float64Array.of(-7.25), probability)).toBe(-7.25);
  });

  it('weighs three values by 7, 13 and 7 parts of 27 for the median', () => {
    // Beta(2, 2): 3 x^2 - 2 x^3 at 1/3 and 2/3 is 7/27 and 20/27
    expect(quantile(Float64Array.of(1, 0, 0), 0.5)).toBeCloseTo(7 / 27, 12);
    expect(quantile(Float64Array.of(0, 1, 0), 0.5)).toBeCloseTo(13 / 27, 12);
    expect(quantile(Float64Array.of(0, 0, 1), 0.5)).toBeCloseTo(7 / 27, 12);
  });

  it('weighs four values by a Beta(2, 3) for the level 0.4, and by its mirror image for 0.6', () => {
    // 6 x^2 - 8 x^3 + 3 x^4 at 1/4, 1/2, 3/4: 67/256, 176/256, 243/256
    const parts = [67, 109, 67, 13];
    for (const [index, part] of parts.entries()) {
      const one = Float64Array.from({ length: 4 }, (_, i) => (i === index ? 1 : 0));
      expect(quantile(one, 0.4)).toBeCloseTo(part / 256, 12);
      expect(quantile(Float64Array.from(one).reverse(), 0.6)).toBeCloseTo(part / 256, 12);
    }
  });

  it('meets the closed form of Beta(2, 18) for the tenth percentile of nineteen values', () => {
    const values = Float64Array.from({ length: 19 }, (_, i) => i + 1);
    let wanted = 0;
    for (let k = 1; k <= 19; k += 1) wanted += k * (beta2and18(k / 19) - beta2and18((k - 1) / 19));
    expect(quantile(values, 0.1)).toBeCloseTo(wanted, 5);
    expect(quantile(values, 0.9)).toBeCloseTo(20 - wanted, 5);
  });

  it('of two values lies half-way for the median', () => {
    expect(quantile(Float64Array.of(2, 5), 0.5)).toBeCloseTo(3.5, 12);
  });

  it('stays between the ends, and keeps the share that a level gives, where a tail level asks for the first value', () => {
    // Beta(0.4, 3.6) and its mirror image: most of the tenth percentile of three values is the lowest of them
    const low = quantile(Float64Array.of(1, 0, 0), 0.1);
    expect(low).toBeGreaterThan(0.8);
    expect(low).toBeLessThan(1);
    expect(quantile(Float64Array.of(0, 0, 1), 0.9)).toBeCloseTo(low, 12);
  });
});

describe('the worth of weighted values', () => {
  it('is their number where they are alike, and 1 over the sum of squares where not', () => {
    expect(effectiveCount(Float64Array.of(0.25, 0.25, 0.25, 0.25))).toBeCloseTo(4, 12);
    expect(effectiveCount(Float64Array.of(1 / 2, 1 / 6, 1 / 6, 1 / 6))).toBeCloseTo(3, 12);
    expect(effectiveCount(Float64Array.of(1, 0))).toBe(1);
  });
});

describe('a band', () => {
  it('is the tenth, fiftieth and ninetieth percentile, rounded, whatever the order of the values', () => {
    const values = Float64Array.from({ length: 19 }, (_, i) => ((i * 7) % 19) + 1);
    let p10 = 0;
    for (let k = 1; k <= 19; k += 1) p10 += k * (beta2and18(k / 19) - beta2and18((k - 1) / 19));
    const round = (value: number): number => Math.round(value * 1000) / 1000;
    expect(bandOf(values, 3)).toEqual({ p10: round(p10), p50: 10, p90: round(20 - p10) });
    expect(bandOf(values, 0)).toEqual({ p10: Math.round(p10), p50: 10, p90: Math.round(20 - p10) });
  });

  it('leaves the values as they were given', () => {
    const values = Float64Array.of(3, 1, 2);
    bandOf(values, 2);
    bandOf(values, 2, Float64Array.of(0.2, 0.5, 0.3));
    expect([...values]).toEqual([3, 1, 2]);
  });
});

describe('a band of values of unlike weight', () => {
  it('is nearly that of values alike where the weights are', () => {
    const values = Float64Array.from({ length: 64 }, (_, i) => Math.sqrt((i * 37) % 64));
    const alike = bandOf(values, 6);
    const weighted = bandOf(values, 6, new Float64Array(64).fill(1 / 64));
    for (const level of ['p10', 'p50', 'p90'] as const) expect(weighted[level]).toBeCloseTo(alike[level], 3);
  });

  it('gives a value the share of the distribution that its weight covers', () => {
    // worth of the weights 3: Beta(2, 2), 3 x^2 - 2 x^3 at 1/2, 2/3, 5/6 is 1/2, 20/27, 25/27
    const weights = Float64Array.of(1 / 6, 1 / 2, 1 / 6, 1 / 6);
    expect(bandOf(Float64Array.of(2, 0, 3, 1), 5, weights).p50).toBeCloseTo(
      20 / 27 - 1 / 2 + 2 * (5 / 27) + 3 * (2 / 27),
      4,
    );
    expect(bandOf(Float64Array.of(1, 3, 0, 2), 5, weights).p50).toBeCloseTo(
      3 * (1 / 2) + 2 * (20 / 27 - 1 / 2) + 5 / 27,
      4,
    );
  });

  it('smooths as for as many values as the weights are worth', () => {
    // one value of weight a and 24 of weight b, worth 19: 24 b^2 + (1 - 24 b)^2 = 1/19
    const b = (48 - Math.sqrt(2304 - (2400 * 18) / 19)) / 1200;
    const weights = Float64Array.from({ length: 25 }, (_, i) => (i === 0 ? 1 - 24 * b : b));
    expect(effectiveCount(weights)).toBeCloseTo(19, 9);
    const values = Float64Array.from({ length: 25 }, (_, i) => i);
    let wanted = 0;
    for (let k = 1; k <= 24; k += 1) {
      const from = 1 - 24 * b + (k - 1) * b;
      wanted += k * (beta2and18(from + b) - beta2and18(from));
    }
    expect(bandOf(values, 9, weights).p10).toBeCloseTo(wanted, 3);
  });

  it('asks each level and each set of weights anew', () => {
    const values = Float64Array.from({ length: 20 }, (_, i) => i);
    const low = Float64Array.from({ length: 20 }, (_, i) => (i < 10 ? 0.09 : 0.01));
    const high = Float64Array.from({ length: 20 }, (_, i) => (i < 10 ? 0.01 : 0.09));
    const [first, mirrored] = [bandOf(values, 6, low), bandOf(values, 6, high)];
    expect(first.p10).toBeLessThan(first.p50);
    expect(first.p50).toBeLessThan(first.p90);
    expect(mirrored.p10 + first.p90).toBeCloseTo(19, 5);
    expect(mirrored.p50 + first.p50).toBeCloseTo(19, 5);
    expect(bandOf(values, 6, low)).toEqual(first);
  });

  it('is one value where all weight lies on it, and a mean where its weights fall short of 1', () => {
    expect(bandOf(Float64Array.of(4, 9), 3, Float64Array.of(0, 1))).toEqual({ p10: 9, p50: 9, p90: 9 });
    const short = bandOf(new Float64Array(30).fill(5), 6, new Float64Array(30).fill(0.99 / 30));
    expect(short).toEqual({ p10: 5, p50: 5, p90: 5 });
  });
});

describe('a rounded number', () => {
  it('has so many decimals and is never minus zero', () => {
    expect(rounded(1.23456, 2)).toBe(1.23);
    expect(rounded(2.5, 0)).toBe(3);
    expect(rounded(-0.0004, 3)).toBe(0);
    expect(Object.is(rounded(-0.0004, 3), 0)).toBe(true);
  });
});
