import fc from 'fast-check';
import { expect, it } from 'vitest';
import { lbfFromNewtons, newtonsFromLbf } from '../../src/units/force.ts';

it('takes a pound-force as 0.45359237 kg in standard gravity', () => {
  expect(newtonsFromLbf(1)).toBeCloseTo(0.45359237 * 9.80665, 12);
});

it('comes back to the same force', () => {
  fc.assert(
    fc.property(fc.double({ min: 0, max: 1e6, noNaN: true }), (force) => {
      expect(lbfFromNewtons(newtonsFromLbf(force))).toBeCloseTo(force, 8);
    }),
  );
});
