import { describe, expect, it } from 'vitest';
import {
  breakProbability,
  type GumbelCurve,
  gustRatioToFiftyYears,
  HAZARD_PROVENANCE,
  hazardCurve,
  returnPeriodOf,
  speedAtReturnPeriod,
  yearlyMaximumCdf,
} from '../../src/forecast/hazard-curve.ts';
import type { WindEntry } from '../../src/forecast/wind-entry.ts';
import { mphFromMps, mpsFromMph } from '../../src/units/speed.ts';

/** 40 m/s once in ten years, ten more for every e-fold of years. */
const PLAIN: GumbelCurve = {
  kind: 'gumbel',
  locationMps: 16.974149070059543,
  scaleMps: 10,
  explanation: 'made up',
};
const MAP: WindEntry = {
  kind: 'map',
  basis: 'ultimate',
  speedMps: mpsFromMph(105),
  returnPeriodYears: 300,
  second: null,
  hurricane: false,
};
const curveOf = (entry: WindEntry): GumbelCurve => {
  const curve = hazardCurve(entry);
  if (curve.kind !== 'gumbel') throw new Error(curve.reason);
  return curve;
};
const reasonOf = (entry: WindEntry): string => {
  const curve = hazardCurve(entry);
  return curve.kind === 'none' ? curve.reason : `unexpected: ${curve.explanation}`;
};

describe('a curve of yearly maximum gusts', () => {
  it('gives the gust of a return period and the return period of a gust', () => {
    expect(speedAtReturnPeriod(PLAIN, 10)).toBeCloseTo(40, 10);
    expect(speedAtReturnPeriod(PLAIN, 100)).toBeCloseTo(63.02585, 5);
    expect(speedAtReturnPeriod(PLAIN, 1)).toBeCloseTo(16.97415, 5);
    expect(returnPeriodOf(PLAIN, 40)).toBeCloseTo(10, 10);
    expect(returnPeriodOf(PLAIN, 63.02585092994046)).toBeCloseTo(100, 8);
    expect(returnPeriodOf(PLAIN, 10)).toBeCloseTo(0.49787, 5);
  });

  it('says nothing beyond once in ten thousand years', () => {
    expect(returnPeriodOf(PLAIN, 109.0775)).toBeCloseTo(10_000, -1);
    expect(returnPeriodOf(PLAIN, 110)).toBe(10_000);
    expect(returnPeriodOf(PLAIN, Number.POSITIVE_INFINITY)).toBe(10_000);
  });

  it('is not exceeded in a year with 1/e at its location, and with e^-0.1 at the ten-year gust', () => {
    expect(yearlyMaximumCdf(PLAIN, PLAIN.locationMps)).toBeCloseTo(0.367879, 6);
    expect(yearlyMaximumCdf(PLAIN, 40)).toBeCloseTo(0.904837, 6);
    expect(yearlyMaximumCdf(PLAIN, 30)).toBeLessThan(yearlyMaximumCdf(PLAIN, 31));
  });
});

describe('the chance to break in a season', () => {
  it('is, without spread, that of a gust over the capacity: 1 - e^-0.1 a year at the ten-year gust, half the exponent in half the hazard', () => {
    expect(breakProbability(PLAIN, 40, 0, 1)).toBeCloseTo(0.0951626, 7);
    expect(breakProbability(PLAIN, 40, 0, 0.5)).toBeCloseTo(0.0487706, 7);
    expect(breakProbability(PLAIN, 40, 0, 0)).toBeCloseTo(0, 12);
  });

  it('is between nought and one whatever the capacity, and certain without any', () => {
    expect(breakProbability(PLAIN, 0, 0.1, 0.2)).toBe(1);
    expect(breakProbability(PLAIN, -3, 0.1, 0)).toBe(1);
    expect(breakProbability(PLAIN, 1e-9, 0.1, 1)).toBeGreaterThan(0.99);
    expect(breakProbability(PLAIN, 1e-9, 0.1, 1)).toBeLessThanOrEqual(1);
    expect(breakProbability(PLAIN, 1000, 0.1, 1)).toBeGreaterThanOrEqual(0);
    expect(breakProbability(PLAIN, 1000, 0.1, 1)).toBeLessThan(1e-6);
  });

  it('grows with the spread where breaking is rare', () => {
    expect(breakProbability(PLAIN, 60, 0.2, 1)).toBeGreaterThan(breakProbability(PLAIN, 60, 0, 1) * 1.2);
  });
});

describe('the curve of a site with one map gust', () => {
  it('has the published ratios to the 50-year gust: 0.36 + 0.1 ln 12 T', () => {
    expect(gustRatioToFiftyYears(50)).toBeCloseTo(1, 3);
    expect(gustRatioToFiftyYears(10)).toBeCloseTo(0.8387, 4);
    expect(gustRatioToFiftyYears(300)).toBeCloseTo(1.1789, 4);
  });

  it('has of 105 mph once in 300 years 74.7, 82.9, 89.1 and 95.2 mph once in 10, 25, 50 and 100', () => {
    const curve = curveOf(MAP);
    const gusts = [10, 25, 50, 100, 300].map((years) => mphFromMps(speedAtReturnPeriod(curve, years)));
    [74.7, 82.9, 89.1, 95.2, 105].forEach((mph, index) => {
      expect(Math.abs(gusts[index]! - mph)).toBeLessThan(0.1);
    });
    expect(returnPeriodOf(curve, mpsFromMph(85))).toBeCloseTo(32, -0.5);
    expect(curve.explanation).toContain('300-year gust');
  });

  it('is drawn through the gust that the entered speed stands for', () => {
    // 90 mph fastest mile is a gust of 1.05 x 90 + 10.5 = 105 mph.
    const fastest = curveOf({ ...MAP, basis: 'fastest-mile', speedMps: mpsFromMph(90) });
    expect(mphFromMps(speedAtReturnPeriod(fastest, 300))).toBeCloseTo(105, 9);
  });

  it('is not drawn from a map gust of which nobody knows how often it comes', () => {
    expect(hazardCurve({ ...MAP, returnPeriodYears: null }).kind).toBe('none');
  });

  it('is not drawn in a hurricane region, and the way out is named', () => {
    expect(reasonOf({ ...MAP, hurricane: true })).toMatch(/hurricane region: enter a second map gust/);
  });
});

describe('the curve of a site with two gusts', () => {
  const TWO: WindEntry = {
    ...MAP,
    speedMps: 40,
    returnPeriodYears: 10,
    second: { speedMps: 63.02585092994046, returnPeriodYears: 100 },
  };

  it('goes through both, in a hurricane region too', () => {
    for (const entry of [TWO, { ...TWO, hurricane: true }]) {
      const curve = curveOf(entry);
      expect(curve.scaleMps).toBeCloseTo(10, 10);
      expect(curve.locationMps).toBeCloseTo(16.97415, 5);
      expect(curve.explanation).toContain('10-year and 100-year');
    }
  });

  it('is the same in whichever order they are entered', () => {
    const swapped = {
      ...TWO,
      speedMps: 63.02585092994046,
      returnPeriodYears: 100,
      second: { speedMps: 40, returnPeriodYears: 10 },
    };
    expect(curveOf(swapped).scaleMps).toBeCloseTo(10, 10);
  });

  it('takes the second gust on the basis of the first', () => {
    const asd = curveOf({
      ...TWO,
      basis: 'asd',
      speedMps: 40 * Math.sqrt(0.6),
      second: { speedMps: 63.02585092994046 * Math.sqrt(0.6), returnPeriodYears: 100 },
    });
    expect(speedAtReturnPeriod(asd, 10)).toBeCloseTo(40, 9);
    expect(speedAtReturnPeriod(asd, 100)).toBeCloseTo(63.02585, 5);
  });

  it('is not drawn where the gusts do not rise with their return periods, nor through the same point twice', () => {
    for (const second of [
      { speedMps: 39, returnPeriodYears: 100 },
      { speedMps: 40, returnPeriodYears: 100 },
      { speedMps: 40, returnPeriodYears: 10 },
    ]) {
      expect(reasonOf({ ...TWO, second })).toContain('do not rise with their return periods');
    }
  });
});

describe('the curve of a site with a local fence rule', () => {
  const RULE: WindEntry = { ...MAP, kind: 'local-rule', returnPeriodYears: null };

  it('is not drawn from the rule, even where it came with a return period', () => {
    expect(reasonOf(RULE)).toMatch(/local fence rule says nothing/);
    expect(reasonOf({ ...RULE, returnPeriodYears: 50 })).toMatch(/local fence rule says nothing/);
  });

  it('is drawn from the map gust beside it', () => {
    const curve = curveOf({ ...RULE, speedMps: 30, second: { speedMps: mpsFromMph(105), returnPeriodYears: 300 } });
    expect(mphFromMps(speedAtReturnPeriod(curve, 300))).toBeCloseTo(105, 9);
  });
});

it('rests on a published ratio from memory', () => {
  expect(HAZARD_PROVENANCE.tag).toBe('memory');
  expect(HAZARD_PROVENANCE.source).toContain('Peterka & Shahid 1998');
});
