import { describe, expect, it } from 'vitest';
import { NORMAL_QUADRATURE, normalCdf, normalQuantile } from '../../src/forecast/normal-distribution.ts';

/** Phi(z) at z: Abramowitz & Stegun Table 26.1, and the far tail 1.1286e-19 at -9. */
const PHI = [
  [0, 0.5],
  [0.5, 0.691462461274013],
  [1, 0.841344746068543],
  [1.96, 0.97500210485178],
  [3, 0.99865010196837],
  [-0.5, 0.308537538725987],
  [-1, 0.158655253931457],
  [-2, 0.0227501319481792],
  [-3, 0.0013498980316301],
] as const;

describe('the normal distribution', () => {
  it.each(PHI)('has below %d the probability of the tables', (z, probability) => {
    expect(normalCdf(z)).toBeCloseTo(probability, 14);
  });

  it('is mirrored about nought', () => {
    for (const z of [0.1, 0.7, 1.3, 2.9, 5, 8]) expect(normalCdf(z) + normalCdf(-z)).toBeCloseTo(1, 15);
  });

  it('keeps its far tail up to nine deviations and has none beyond', () => {
    expect(normalCdf(-8) / 6.2209605742718e-16).toBeCloseTo(1, 6);
    expect(normalCdf(-9) / 1.1285884059538e-19).toBeCloseTo(1, 6);
    expect(normalCdf(-9.001)).toBe(0);
    expect(normalCdf(9.001)).toBe(1);
    expect(normalCdf(Number.NEGATIVE_INFINITY)).toBe(0);
    expect(normalCdf(Number.POSITIVE_INFINITY)).toBe(1);
  });
});

describe('a quantile of the normal distribution', () => {
  it.each([
    [0.5, 0],
    [0.6, 0.2533471031357997],
    [0.9, 1.2815515655446004],
    [0.975, 1.959963984540054],
    [0.99, 2.3263478740408408],
    [0.05, -1.6448536269514729],
    [1e-10, -6.361340902404056],
    [1e-20, -9.26234008979841],
  ])('to %d is that of the tables', (probability, z) => {
    expect(normalQuantile(probability)).toBeCloseTo(z, 12);
  });

  it('comes back from the probability, in the middle, in the tails and where its three formulas meet', () => {
    for (const z of [-7, -5, -2.5, -1.4396, -1.4394, -1, -0.01, 0.3, 1, 1.4394, 1.4396, 2.5, 5]) {
      expect(normalQuantile(normalCdf(z))).toBeCloseTo(z, 7);
    }
  });

  it('is refused for what is not strictly between nought and one, with the value', () => {
    for (const probability of [0, 1, -0.1, 1.1, Number.NaN]) {
      expect(() => normalQuantile(probability)).toThrow(RangeError);
    }
    expect(() => normalQuantile(1.1)).toThrow('1.1 is not between 0 and 1');
  });
});

describe('the nine-point quadrature', () => {
  const moment = (power: number): number =>
    NORMAL_QUADRATURE.nodes.reduce((sum, node, i) => sum + NORMAL_QUADRATURE.weights[i]! * node ** power, 0);

  it('has nine nodes in ascending order, mirrored about nought', () => {
    const { nodes } = NORMAL_QUADRATURE;
    expect(nodes).toHaveLength(9);
    expect([...nodes].sort((a, b) => a - b)).toEqual(nodes);
    nodes.forEach((node, i) => {
      expect(node + nodes[8 - i]!).toBeCloseTo(0, 14);
    });
  });

  it('gives the moments 1, 3, 15, 105, 945, 10,395 and 135,135 of the normal distribution', () => {
    expect(moment(0)).toBeCloseTo(1, 12);
    [1, 3, 15, 105, 945, 10_395, 135_135].forEach((exact, index) => {
      expect(moment(2 * index + 2) / exact).toBeCloseTo(1, 9);
      expect(moment(2 * index + 1)).toBeCloseTo(0, 6);
    });
  });
});
