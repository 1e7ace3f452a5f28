import { describe, expect, it } from 'vitest';
import { bandOf, quantile } from '../../src/forecast/band.ts';
import {
  BELIEF_DIMENSIONS,
  BELIEF_POINTS,
  beliefPoints,
  MEDIAN_POINT,
  singlePoint,
} from '../../src/forecast/belief-points.ts';
import { normalCdf } from '../../src/forecast/normal-distribution.ts';

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

describe('the lattice', () => {
  /** Generating vector, one a coordinate, in the order of the unknowns. */
  const GENERATORS = [1, 23, 89, 15, 55, 101, 99];

  it('has at point i the level frac((2 i + 1) g / 256) in the coordinate of generator g', () => {
    expect(count).toBe(128);
    for (const [index, dimension] of BELIEF_DIMENSIONS.entries()) {
      for (const i of [0, 1, 2, 63, 127]) {
        expect(levels[dimension][i]).toBeCloseTo((((2 * i + 1) * GENERATORS[index]!) / 256) % 1, 12);
        expect(normalCdf(scores[dimension][i]!)).toBeCloseTo(levels[dimension][i]!, 9);
      }
    }
  });

  it('has copies shifted by even steps, a power of the root of x^8 = x + 1 in each coordinate', () => {
    // 1.0969815577985598^8 = 2.0969815577985598
    const root = 1.0969815577985598;
    expect(root ** 8 - root).toBeCloseTo(1, 12);
    const three = beliefPoints(3);
    expect(three.count).toBe(384);
    for (const [index, dimension] of BELIEF_DIMENSIONS.entries()) {
      expect(three.levels[dimension]).toHaveLength(384);
      expect(three.scores[dimension]).toHaveLength(384);
      for (const copy of [0, 1, 2]) {
        for (const i of [0, 40, 127]) {
          const wanted = (levels[dimension][i]! + copy * root ** -(index + 1)) % 1;
          expect(three.levels[dimension][128 * copy + i]).toBeCloseTo(wanted, 9);
        }
      }
    }
    expect(new Set(three.levels.pace.map((level) => Math.round(level * 1e9))).size).toBe(384);
  });

  it('knows of nothing that was seen or learned', () => {
    expect(beliefPoints(1)).toMatchObject({ weights: null, learned: null });
    expect(beliefPoints(1).piecePaces.size).toBe(0);
  });
});

describe('one point', () => {
  it('lies at the scores given and at the medians of the rest', () => {
    const point = singlePoint({ pace: 1.5, embedment: -0.5 }, normalCdf);
    expect(point).toMatchObject({ count: 1, weights: null, learned: null });
    expect(point.piecePaces.size).toBe(0);
    for (const dimension of BELIEF_DIMENSIONS) {
      const score = dimension === 'pace' ? 1.5 : dimension === 'embedment' ? -0.5 : 0;
      expect([...point.scores[dimension]]).toEqual([score]);
      expect([...point.levels[dimension]]).toEqual([normalCdf(score)]);
    }
  });

  it('keeps what was read and learned of the belief it stands for', () => {
    const pace = { logRates: () => [], floorFromDay: 0, floorMm: () => 0 };
    const base = { piecePaces: new Map([['4', pace]]), learned: { version: 3, paces: [], footing: null } };
    const point = singlePoint({}, normalCdf, base);
    expect(point.piecePaces).toBe(base.piecePaces);
    expect(point.learned).toBe(base.learned);
  });

  it('is the median where nothing is asked', () => {
    for (const dimension of BELIEF_DIMENSIONS) {
      expect(MEDIAN_POINT.scores[dimension][0]).toBe(0);
      expect(MEDIAN_POINT.levels[dimension][0]).toBe(0.5);
    }
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
