import { describe, expect, it } from 'vitest';
import { gustFromFastestMile, threeSecondGust, windLoadFactor } from '../../src/forecast/three-second-gust.ts';
import { mphFromMps, mpsFromMph } from '../../src/units/speed.ts';

describe('the gust that an entered speed stands for', () => {
  it.each([
    [71, 85],
    [76, 90],
    [85, 100],
    [95, 110],
    [104, 120],
  ])('is of %d mph fastest mile the %d mph of the printed table, to half a mile', (fastest, gust) => {
    expect(Math.abs(mphFromMps(gustFromFastestMile(mpsFromMph(fastest))) - gust)).toBeLessThan(0.5);
    expect(threeSecondGust('fastest-mile', mpsFromMph(fastest))).toBe(gustFromFastestMile(mpsFromMph(fastest)));
  });

  it('is an ultimate and a nominal speed as it stands', () => {
    expect(threeSecondGust('ultimate', 40)).toBe(40);
    expect(threeSecondGust('nominal', 40)).toBe(40);
  });

  it('is of an allowable-stress speed 1.291 times it: 115 mph of 89', () => {
    expect(threeSecondGust('asd', 89) / 114.9).toBeCloseTo(1, 3);
  });
});

it('counts wind at six tenths where the speed is ultimate or turned back into one, and in full where it is nominal', () => {
  expect([windLoadFactor('ultimate'), windLoadFactor('asd')]).toEqual([0.6, 0.6]);
  expect([windLoadFactor('nominal'), windLoadFactor('fastest-mile')]).toEqual([1, 1]);
});
