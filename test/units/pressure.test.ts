import fc from 'fast-check';
import { expect, it } from 'vitest';
import { mpaFromPsi, paFromPsf, psfFromPa, psiFromMpa } from '../../src/units/pressure.ts';

it('has 144 pounds per square foot in one pound per square inch', () => {
  expect(paFromPsf(144)).toBeCloseTo(mpaFromPsi(1) * 1e6, 6);
});

it('comes back to the same pressure', () => {
  fc.assert(
    fc.property(fc.double({ min: 0, max: 1e5, noNaN: true }), (pressure) => {
      expect(psfFromPa(paFromPsf(pressure))).toBeCloseTo(pressure, 8);
      expect(psiFromMpa(mpaFromPsi(pressure))).toBeCloseTo(pressure, 8);
    }),
  );
});
