import { describe, expect, it } from 'vitest';
import { gridPosterior, gridQuantile, priorGrid } from '../../../src/forecast/evidence/pace-grid.ts';
import { normalCdf } from '../../../src/forecast/normal-distribution.ts';

describe('the grid of a prior', () => {
  it('has 401 even values, from 5 standard deviations under the mean to 5 above', () => {
    const grid = priorGrid(3, 0.2);
    expect(grid).toHaveLength(401);
    expect(grid[0]).toBeCloseTo(2, 12);
    expect(grid[200]).toBeCloseTo(3, 12);
    expect(grid[400]).toBeCloseTo(4, 12);
    expect(grid[1]! - grid[0]!).toBeCloseTo(0.005, 12);
    expect(grid[300]).toBeCloseTo(3.5, 12);
  });
});

describe('a posterior on the grid', () => {
  it('is the prior where nothing was seen, and nothing seen is certain', () => {
    const { values, probabilities, mean, sd, logEvidence } = gridPosterior({ mean: -0.7, sd: 0.45 }, []);
    expect(values).toEqual(priorGrid(-0.7, 0.45));
    expect(mean).toBeCloseTo(-0.7, 10);
    // what lies beyond 5 standard deviations is cut off: variance less 1.5e-5 of itself
    expect(sd).toBeCloseTo(0.45, 4);
    expect(logEvidence).toBeCloseTo(0, 12);
    expect(probabilities.reduce((a, b) => a + b)).toBeCloseTo(1, 12);
    // cell of the mean: step / sd times the normal density 0.398942
    expect(probabilities[200]).toBeCloseTo(0.025 * 0.398942, 6);
  });

  it('is the closed form of a normal mean for three readings worked by hand', () => {
    // y = -0.2657, -0.0339, -0.1054 with variances .2802, .2690, .2719 on N(ln 0.5, 0.45):
    // P = 1/0.2025 + 1/.2802 + 1/.2690 + 1/.2719, mu = -0.30718, sd = P^-1/2 = 0.25078
    const seen = [
      [-0.2657, 0.2802],
      [-0.0339, 0.269],
      [-0.1054, 0.2719],
    ] as const;
    const found = gridPosterior(
      { mean: Math.log(0.5), sd: 0.45 },
      seen.map(
        ([y, variance]) =>
          (value: number) =>
            -((y - value) ** 2) / (2 * variance),
      ),
    );
    expect(found.mean).toBeCloseTo(-0.30718, 4);
    expect(found.sd).toBeCloseTo(0.25078, 4);
  });

  it('meets the check values of censored readings', () => {
    // y = ln r at which the bound is just reached; ten posts sound to 2 mm at 12 a, or nine of them at 15 a and one broken at 23.84 mm
    const rate = (depthMm: number, years: number): number =>
      depthMm >= 5 ? (depthMm + 5.5) / years : (10.5 / years) * Math.sqrt(depthMm / 5);
    const under = (depthMm: number, years: number) => (value: number) =>
      Math.log(normalCdf((Math.log(rate(depthMm, years)) - value) / 0.5));
    const over = (depthMm: number, years: number) => (value: number) =>
      Math.log(1 - normalCdf((Math.log(rate(depthMm, years)) - value) / 0.5));
    const prior = { mean: Math.log(0.5), sd: 0.45 };
    const ten = gridPosterior(prior, new Array(10).fill(under(2, 12)));
    expect(ten.mean).toBeCloseTo(-1.36247, 4);
    expect(ten.sd).toBeCloseTo(0.27301, 4);
    const mixed = gridPosterior(prior, [...Array.from({ length: 9 }, () => under(2, 15)), over(23.84, 15)]);
    expect(mixed.mean).toBeCloseTo(-1.07374, 4);
    expect(mixed.sd).toBeCloseTo(0.19403, 4);
  });

  it('tells how probable the evidence was: sqrt(v/(v + s^2)) exp(-y^2/(2(v + s^2)))', () => {
    const found = gridPosterior({ mean: 1, sd: 2 }, [(value) => -((4 - value) ** 2) / (2 * 0.25)]);
    expect(found.logEvidence).toBeCloseTo(Math.log(Math.sqrt(0.25 / 4.25)) - 9 / (2 * 4.25), 5);
  });

  it('says that evidence worth half everywhere was half probable, however small its numbers', () => {
    const half = gridPosterior({ mean: 0, sd: 1 }, [() => Math.log(0.5), () => -2000]);
    expect(half.logEvidence).toBeCloseTo(Math.log(0.5) - 2000, 9);
    expect(half.mean).toBeCloseTo(0, 12);
  });

  it('hands each likelihood the place of the value on the grid', () => {
    const found = gridPosterior({ mean: 0, sd: 1 }, [(_, index) => (index === 120 ? 0 : -1000)]);
    expect(found.mean).toBeCloseTo(-2, 10);
    expect(found.sd).toBeCloseTo(0, 10);
  });
});

describe('a quantile on a grid', () => {
  const values = Float64Array.of(10, 12, 14, 16);
  const belief = { values, probabilities: Float64Array.of(0.1, 0, 0.4, 0.5) };

  it('fills the cell around each value evenly', () => {
    // cells 9-11, 11-13, 13-15, 15-17
    expect(gridQuantile(belief, 0.05)).toBeCloseTo(10, 12);
    expect(gridQuantile(belief, 0.1)).toBeCloseTo(11, 12);
    expect(gridQuantile(belief, 0.2)).toBeCloseTo(13.5, 12);
    expect(gridQuantile(belief, 0.3)).toBeCloseTo(14, 12);
    expect(gridQuantile(belief, 0.5)).toBeCloseTo(15, 12);
    expect(gridQuantile(belief, 0.75)).toBeCloseTo(16, 12);
  });

  it('is the last value where rounding leaves the sum under the level', () => {
    const short = { values, probabilities: Float64Array.of(0.1, 0, 0.4, 0.4) };
    expect(gridQuantile(short, 0.95)).toBe(16);
  });

  it('inverts a normal distribution', () => {
    const normal = gridPosterior({ mean: 0, sd: 1 }, []);
    for (const z of [-2, -1, 0, 0.5, 1.5]) expect(gridQuantile(normal, normalCdf(z))).toBeCloseTo(z, 3);
  });
});
