import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { decayDepth } from '../../src/decay/decay-depth.ts';
import { impliedRate, rateToDepth } from '../../src/decay/implied-rate.ts';
import { drawnEvenly } from '../drawn-evenly.ts';

describe('the rate that one depth implies', () => {
  it('is the depth and 5.5 mm more over the exposure from 5 mm on, and goes with the root of the depth below', () => {
    expect(impliedRate(10, 20)).toBeCloseTo(0.775, 12);
    expect(impliedRate(5, 10.5)).toBeCloseTo(1, 12);
    expect(impliedRate(4.999, 10.5)).toBeCloseTo(1, 3);
    expect(impliedRate(1.25, 10)).toBeCloseTo(0.525, 12);
    expect(impliedRate(0, 10)).toBe(0);
  });

  it('lies within 6.4 % of the exact one for 1 to 28 mm after 5 to 50 years', () => {
    fc.assert(
      fc.property(drawnEvenly(1, 28), drawnEvenly(5, 50), (depthMm, years) => {
        expect(Math.abs(impliedRate(depthMm, years) / rateToDepth(depthMm, years) - 1)).toBeLessThan(0.064);
      }),
    );
  });
});

describe('the exact rate to a depth', () => {
  it('is 1 mm a year for 1.25 mm after 5.25 years, 5 mm after 10.5 and 15 mm after 20.5', () => {
    expect(rateToDepth(1.25, 5.25)).toBeCloseTo(1, 10);
    expect(rateToDepth(5, 10.5)).toBeCloseTo(1, 10);
    expect(rateToDepth(15, 20.5)).toBeCloseTo(1, 10);
  });

  it('comes back to the depth by the law', () => {
    fc.assert(
      fc.property(drawnEvenly(0.1, 60), drawnEvenly(0.5, 80), (depthMm, years) => {
        expect(decayDepth(years, rateToDepth(depthMm, years))).toBeCloseTo(depthMm, 8);
      }),
    );
  });

  it('is nothing for no depth, whatever the exposure, and endless where there was none', () => {
    expect([rateToDepth(0, 10), rateToDepth(-1, 10), rateToDepth(0, 0)]).toEqual([0, 0, 0]);
    expect([rateToDepth(1, 0), rateToDepth(1, -2)]).toEqual([Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY]);
  });
});
