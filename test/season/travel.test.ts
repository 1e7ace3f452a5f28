import { describe, expect, it } from 'vitest';
import { greatCircleM, roundTripHours } from '../../src/season/travel.ts';

const at = (latitude: number, longitude: number) => ({ latitude, longitude });

describe('distance along the great circle', () => {
  it('is a degree of the circumference along the equator and along a meridian', () => {
    // 2 pi 6,371,008.8 m / 360
    expect(greatCircleM(at(0, 10), at(0, 11))).toBeCloseTo(111_195.08, 1);
    expect(greatCircleM(at(40, -90), at(41, -90))).toBeCloseTo(111_195.08, 1);
  });

  it('shrinks with the cosine of the latitude for a small step east', () => {
    expect(greatCircleM(at(60, 0), at(60, 0.01)) / greatCircleM(at(0, 0), at(0, 0.01))).toBeCloseTo(0.5, 4);
  });

  it('is half the circumference between opposite points, over the pole and across the date line', () => {
    expect(greatCircleM(at(0, 0), at(0, 180))).toBeCloseTo(Math.PI * 6_371_008.8, 0);
    expect(greatCircleM(at(90, 0), at(-90, 0))).toBeCloseTo(Math.PI * 6_371_008.8, 0);
    expect(greatCircleM(at(10, 179.5), at(10, -179.5))).toBeCloseTo(greatCircleM(at(10, 0), at(10, 1)), 3);
  });

  it('is the same both ways and nothing from a place to itself', () => {
    expect(greatCircleM(at(30, -91), at(47, -122))).toBe(greatCircleM(at(47, -122), at(30, -91)));
    expect(greatCircleM(at(30, -91), at(30, -91))).toBe(0);
  });
});

describe('travel there and back', () => {
  it('takes twice the distance at the speed', () => {
    // one degree of a meridian, 111,195 m, at 20 m/s: 2 x 111,195 / 20 / 3,600 h
    expect(roundTripHours(at(40, -90), at(41, -90), 20)).toBeCloseTo(3.0888, 3);
  });

  it('takes nothing where a place is not known', () => {
    expect(roundTripHours(null, at(41, -90), 20)).toBe(0);
    expect(roundTripHours(at(41, -90), null, 20)).toBe(0);
  });
});
