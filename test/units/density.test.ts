import fc from 'fast-check';
import { expect, it } from 'vitest';
import { kgM3FromPcf, N_M3_PER_PCF, pcfFromKgM3 } from '../../src/units/density.ts';

it('has 16.02 kg/m3 in a pound per cubic foot, and its weight in standard gravity', () => {
  expect(kgM3FromPcf(1)).toBeCloseTo(16.018463, 5);
  expect(N_M3_PER_PCF).toBeCloseTo(kgM3FromPcf(1) * 9.80665, 8);
});

it('comes back to the same density', () => {
  fc.assert(
    fc.property(fc.double({ min: 0, max: 200, noNaN: true }), (density) => {
      expect(pcfFromKgM3(kgM3FromPcf(density))).toBeCloseTo(density, 10);
    }),
  );
});
