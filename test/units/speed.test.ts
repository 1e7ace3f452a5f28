import fc from 'fast-check';
import { expect, it } from 'vitest';
import { kmhFromMps, mphFromMps, mpsFromKmh, mpsFromMph } from '../../src/units/speed.ts';

it('takes a mile as 1609.344 m', () => {
  expect(kmhFromMps(mpsFromMph(100))).toBeCloseTo(160.9344, 10);
});

it('comes back to the same speed', () => {
  fc.assert(
    fc.property(fc.double({ min: 0, max: 500, noNaN: true }), (speed) => {
      expect(mphFromMps(mpsFromMph(speed))).toBeCloseTo(speed, 10);
      expect(kmhFromMps(mpsFromKmh(speed))).toBeCloseTo(speed, 10);
    }),
  );
});
