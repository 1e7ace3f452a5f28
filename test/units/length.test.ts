import fc from 'fast-check';
import { expect, it } from 'vitest';
import { feetFromMetres, inchesFromMm, metresFromFeet, mmFromInches } from '../../src/units/length.ts';

it('takes feet and inches to metres and millimetres by the exact definitions', () => {
  expect(metresFromFeet(1)).toBe(0.3048);
  expect(mmFromInches(1)).toBe(25.4);
  expect(metresFromFeet(1) * 1000).toBeCloseTo(mmFromInches(12), 12);
});

it('comes back to the same length', () => {
  fc.assert(
    fc.property(fc.double({ min: 0, max: 1e6, noNaN: true }), (length) => {
      expect(feetFromMetres(metresFromFeet(length))).toBeCloseTo(length, 8);
      expect(inchesFromMm(mmFromInches(length))).toBeCloseTo(length, 8);
    }),
  );
});
