import fc from 'fast-check';
import { expect, it } from 'vitest';
import { interpolate } from '../../src/units/interpolation.ts';

const XS = [0, 1, 3];
const YS = [10, 20, 0];

it('meets the tabulated values and is straight between them', () => {
  expect(XS.map((x) => interpolate(x, XS, YS))).toEqual(YS);
  expect(interpolate(0.5, XS, YS)).toBe(15);
  expect(interpolate(2, XS, YS)).toBe(10);
});

it('keeps the end values outside the table', () => {
  expect(interpolate(-5, XS, YS)).toBe(10);
  expect(interpolate(99, XS, YS)).toBe(0);
  expect(interpolate(7, [1], [42])).toBe(42);
});

it('refuses an empty table and one whose columns differ in length', () => {
  expect(() => interpolate(0, [], [])).toThrow(RangeError);
  expect(() => interpolate(0, [0, 1], [0])).toThrow(RangeError);
});

it('never leaves the range of the values', () => {
  fc.assert(
    fc.property(fc.double({ min: -10, max: 10, noNaN: true }), (x) => {
      const y = interpolate(x, XS, YS);
      expect(y).toBeGreaterThanOrEqual(0);
      expect(y).toBeLessThanOrEqual(20);
    }),
  );
});
