import fc from 'fast-check';
import { expect, it } from 'vitest';
import { tabulatedNormalCdf } from '../../src/forecast/normal-distribution.ts';
import { drawnEvenly } from '../drawn-evenly.ts';

it.each([
  [-3, 0.0013498980316301],
  [-1.003, 0.1579304306245],
  [-0.5, 0.308537538725987],
  [0, 0.5],
  [0.001, 0.500398942],
  [1, 0.841344746068543],
  [1.96, 0.97500210485178],
  [3, 0.99865010196837],
])('the tabulated probability below %d is that of the tables within half a millionth', (z, probability) => {
  expect(Math.abs(tabulatedNormalCdf(z) - probability)).toBeLessThan(5e-7);
});

it('the tabulated probability is nought and one from eight deviations on, and not before', () => {
  expect([-8, -8.1, Number.NEGATIVE_INFINITY].map(tabulatedNormalCdf)).toEqual([0, 0, 0]);
  expect([8, 8.1, Number.POSITIVE_INFINITY].map(tabulatedNormalCdf)).toEqual([1, 1, 1]);
  expect(tabulatedNormalCdf(-7.99)).toBeGreaterThan(0);
  expect(tabulatedNormalCdf(-7.99)).toBeLessThan(1e-14);
  expect(tabulatedNormalCdf(7.999)).toBeCloseTo(1, 14);
});

it('the tabulated probability never falls', () => {
  fc.assert(
    fc.property(drawnEvenly(-9, 9), drawnEvenly(0, 0.01), (z, more) => {
      expect(tabulatedNormalCdf(z + more)).toBeGreaterThanOrEqual(tabulatedNormalCdf(z));
    }),
  );
});
