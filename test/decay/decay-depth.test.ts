import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { decayDepth, decayLag, exposureToDepth, START_DEPTH_MM } from '../../src/decay/decay-depth.ts';

const rates = fc.double({ min: 0.01, max: 20, noNaN: true });
const years = fc.double({ min: 0, max: 100, noNaN: true });

describe('the depth of rot', () => {
  it('is nothing before installation and in what does not rot', () => {
    expect([decayDepth(0, 1), decayDepth(-3, 1), decayDepth(10, 0), decayDepth(10, -1)]).toEqual([0, 0, 0, 0]);
  });

  it('joins its parabolic start and its straight run at 5 mm', () => {
    fc.assert(
      fc.property(rates, (rate) => {
        const ends = decayLag(rate) + START_DEPTH_MM / rate;
        expect(decayDepth(ends, rate)).toBeCloseTo(START_DEPTH_MM, 9);
        expect(decayDepth(ends * (1 + 1e-9), rate)).toBeCloseTo(START_DEPTH_MM, 5);
      }),
    );
  });

  it('never falls with time, nor with the rate', () => {
    fc.assert(
      fc.property(rates, years, fc.double({ min: 0, max: 10, noNaN: true }), (rate, time, more) => {
        expect(decayDepth(time + more, rate)).toBeGreaterThanOrEqual(decayDepth(time, rate));
        expect(decayDepth(time, rate + more)).toBeGreaterThanOrEqual(decayDepth(time, rate) - 1e-9);
      }),
    );
  });

  it('comes back from its inverse', () => {
    fc.assert(
      fc.property(rates, fc.double({ min: 0.01, max: 60, noNaN: true }), (rate, depth) => {
        expect(decayDepth(exposureToDepth(depth, rate), rate)).toBeCloseTo(depth, 8);
      }),
    );
  });
});

describe('the exposure to a depth', () => {
  it('is nothing for no depth, and endless where nothing rots', () => {
    expect(exposureToDepth(0, 1)).toBe(0);
    expect(exposureToDepth(-1, 1)).toBe(0);
    expect(exposureToDepth(5, 0)).toBe(Number.POSITIVE_INFINITY);
  });
});
