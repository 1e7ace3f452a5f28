import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  DECAY_DEPTH_PROVENANCE,
  decayDepth,
  decayLag,
  decayLaw,
  depthByLaw,
  exposureToDepth,
  START_DEPTH_MM,
} from '../../src/decay/decay-depth.ts';
import { drawnEvenly } from '../drawn-evenly.ts';

const rates = drawnEvenly(0.01, 20);
const years = drawnEvenly(0, 100);

describe('the depth of rot', () => {
  it('is nothing before installation and in what does not rot', () => {
    expect([decayDepth(0, 1), decayDepth(-3, 1), decayDepth(10, 0), decayDepth(10, -1)]).toEqual([0, 0, 0, 0]);
  });

  it('stays nothing for ever in what does not rot', () => {
    const never = { lagYears: Number.POSITIVE_INFINITY, startEndsYears: Number.POSITIVE_INFINITY };
    expect(decayLaw(0)).toEqual({ rateMmPerYear: 0, ...never });
    expect(decayLaw(-1)).toEqual({ rateMmPerYear: -1, ...never });
    expect(depthByLaw(decayLaw(0), Number.POSITIVE_INFINITY)).toBe(0);
  });

  it('comes out as worked by hand at 1 mm a year: 5.5 years of lag, 5 mm after 10.5 years', () => {
    expect(decayLag(1)).toBe(5.5);
    expect(decayDepth(10.5, 1)).toBeCloseTo(5, 12);
    expect(decayDepth(5.25, 1)).toBeCloseTo(1.25, 12);
    expect(decayDepth(20.5, 1)).toBeCloseTo(15, 12);
    expect(exposureToDepth(1.25, 1)).toBeCloseTo(5.25, 12);
    expect(exposureToDepth(15, 1)).toBeCloseTo(20.5, 12);
  });

  it('has a lag that falls nearly with the rate: 10^-0.95 of 5.5 years at 10 mm a year', () => {
    expect(decayLag(10)).toBeCloseTo(5.5 * 0.11220185, 7);
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
      fc.property(rates, years, drawnEvenly(0, 10), (rate, time, more) => {
        expect(decayDepth(time + more, rate)).toBeGreaterThanOrEqual(decayDepth(time, rate));
        expect(decayDepth(time, rate + more)).toBeGreaterThanOrEqual(decayDepth(time, rate) - 1e-9);
      }),
    );
  });

  it('comes back from its inverse', () => {
    fc.assert(
      fc.property(rates, drawnEvenly(0.01, 60), (rate, depth) => {
        expect(decayDepth(exposureToDepth(depth, rate), rate)).toBeCloseTo(depth, 8);
      }),
    );
  });
});

describe('the exposure to a depth', () => {
  it('is nothing for no depth, and endless where nothing rots', () => {
    expect(exposureToDepth(0, 1)).toBe(0);
    expect(exposureToDepth(-1, 1)).toBe(0);
    expect(exposureToDepth(0, 0)).toBe(0);
    expect(exposureToDepth(6, 0)).toBe(Number.POSITIVE_INFINITY);
    expect(exposureToDepth(5, 0)).toBe(Number.POSITIVE_INFINITY);
  });
});

it('is said to be a law from memory', () => {
  expect(DECAY_DEPTH_PROVENANCE).toMatchObject({ tag: 'memory', source: expect.stringMatching(/\S/) as string });
});
