import { describe, expect, it } from 'vitest';
import { bandOf, quantile } from '../../src/forecast/band.ts';
import { BELIEF_DIMENSIONS, BELIEF_POINTS } from '../../src/forecast/belief-points.ts';

const { count, levels, scores } = BELIEF_POINTS;
const mean = (values: Float64Array): number => values.reduce((sum, value) => sum + value, 0) / values.length;

describe('the shared belief points', () => {
  it('take every level once in every coordinate', () => {
    for (const dimension of BELIEF_DIMENSIONS) {
      const sorted = Float64Array.from(levels[dimension]).sort();
      sorted.forEach((level, index) => {
        expect(level).toBeCloseTo((index + 0.5) / count, 12);
      });
    }
  });

  it('are their own mirror image, so that medians of symmetric unknowns are met without bias', () => {
    const key = (point: number, sign: 1 | -1): string =>
      BELIEF_DIMENSIONS.map((dimension) => (sign * scores[dimension][point]!).toFixed(9))
        .join(' ')
        .replaceAll('-0.000000000', '0.000000000');
    const points = new Set(Array.from({ length: count }, (_, point) => key(point, 1)));
    for (let point = 0; point < count; point += 1) expect(points.has(key(point, -1))).toBe(true);
    expect(points.size).toBe(count);
  });

  it('have mean 0, standard deviation 1 within 0.02 and little correlation', () => {
    for (const a of BELIEF_DIMENSIONS) {
      expect(Math.abs(mean(scores[a]))).toBeLessThan(1e-12);
      expect(Math.sqrt(mean(scores[a].map((score) => score * score)))).toBeCloseTo(1, 1.5);
      for (const b of BELIEF_DIMENSIONS) {
        if (a === b) continue;
        expect(Math.abs(mean(scores[a].map((score, point) => score * scores[b][point]!)))).toBeLessThan(0.12);
      }
    }
  });

  it('integrate a lognormal product to within half a per cent of the exact mean', () => {
    const estimate = mean(
      scores.pace.map((pace, point) =>
        Math.exp(0.3 * pace + 0.15 * scores['fibre strength'][point]! - 0.17 * scores['permanent load'][point]!),
      ),
    );
    expect(estimate / Math.exp((0.3 ** 2 + 0.15 ** 2 + 0.17 ** 2) / 2)).toBeCloseTo(1, 2);
  });
});

describe('quantiles', () => {
  const ofFive = (probability: number): number => quantile(Float64Array.of(1, 2, 3, 4, 5), probability);
  it('meet the middle of what is symmetric, and are mirror images of each other', () => {
    expect(ofFive(0.5)).toBeCloseTo(3, 12);
    expect(ofFive(0.1) + ofFive(0.9)).toBeCloseTo(6, 12);
    expect(quantile(Float64Array.of(7), 0.1)).toBe(7);
  });
  it('agree with the normal distribution on its own scores to a hundredth', () => {
    const ascending = Float64Array.from(scores.pace).sort();
    expect(quantile(ascending, 0.9)).toBeCloseTo(1.2816, 1.5);
    expect(quantile(ascending, 0.1)).toBeCloseTo(-1.2816, 1.5);
  });
  it('move smoothly: one value crossing the middle shifts the median by no more than its weight', () => {
    const values = Float64Array.from({ length: 128 }, (_, index) => index);
    const before = quantile(values, 0.5);
    values[63] = 64.5;
    expect(Math.abs(quantile(values.sort(), 0.5) - before)).toBeLessThan(0.12);
  });
  it('do not depend on the order in which values come', () => {
    expect(bandOf(Float64Array.of(5, 1, 4, 2, 3), 3)).toEqual(bandOf(Float64Array.of(1, 2, 3, 4, 5), 3));
  });
});
