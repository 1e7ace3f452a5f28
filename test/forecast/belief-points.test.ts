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
  it('lie between the ordered values, at mid-points', () => {
    const values = Float64Array.of(1, 2, 3, 4, 5);
    expect(quantile(values, 0.5)).toBe(3);
    expect(quantile(values, 0.1)).toBe(1);
    expect(quantile(values, 0.3)).toBe(2);
    expect(quantile(values, 0.4)).toBe(2.5);
    expect(quantile(values, 0.99)).toBe(5);
  });
  it('do not depend on the order in which values come', () => {
    expect(bandOf(Float64Array.of(5, 1, 4, 2, 3), 3)).toEqual(bandOf(Float64Array.of(1, 2, 3, 4, 5), 3));
  });
});
