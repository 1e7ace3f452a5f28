import fc from 'fast-check';
import { expect, it } from 'vitest';
import { openingsFactor, openSignCoefficient } from '../../src/capacity/openings.ts';

it('is one for a solid fence and falls with openings', () => {
  expect(openingsFactor(1)).toBe(1);
  fc.assert(
    fc.property(fc.double({ min: 0.7, max: 1, noNaN: true }), fc.double({ min: 0.7, max: 1, noNaN: true }), (a, b) => {
      expect(openingsFactor(Math.max(a, b))).toBeGreaterThanOrEqual(openingsFactor(Math.min(a, b)));
    }),
  );
});

it('refuses a solidity outside 0.7 to 1, with the value', () => {
  for (const solidity of [0, 0.699, 1.001, -1, Number.NaN]) {
    expect(() => openingsFactor(solidity)).toThrow(RangeError);
  }
  expect(() => openingsFactor(0.5)).toThrow(/0\.5 is outside 0\.7 to 1/);
});

it('steps down from the most open signs to the denser ones', () => {
  expect([0.05, 0.1, 0.29, 0.3, 0.69].map(openSignCoefficient)).toEqual([2, 1.8, 1.8, 1.6, 1.6]);
});

it('refuses a fence of nothing, and one that is solid enough for the other rule', () => {
  for (const solidity of [0, -0.1, 0.7, 1, Number.NaN]) expect(() => openSignCoefficient(solidity)).toThrow(RangeError);
});
