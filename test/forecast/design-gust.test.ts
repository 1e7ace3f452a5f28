import { describe, expect, it } from 'vitest';
import { designGust } from '../../src/forecast/design-gust.ts';
import type { HazardCurve } from '../../src/forecast/fence-forecast.ts';
import type { WindEntry } from '../../src/forecast/wind-entry.ts';
import { mphFromMps, mpsFromMph } from '../../src/units/speed.ts';

/** 40 m/s once in ten years, 63.026 once in a hundred. */
const CURVE: HazardCurve = {
  kind: 'gumbel',
  locationMps: 16.974149070059543,
  scaleMps: 10,
  explanation: 'through two made-up gusts',
};
const NO_CURVE: HazardCurve = { kind: 'none', reason: 'made up' };
const MAP: WindEntry = {
  kind: 'map',
  basis: 'ultimate',
  speedMps: 50,
  returnPeriodYears: 700,
  second: null,
  hurricane: true,
};
const RULE: WindEntry = {
  ...MAP,
  kind: 'local-rule',
  basis: 'fastest-mile',
  speedMps: mpsFromMph(90),
  returnPeriodYears: null,
};

describe('the design gust', () => {
  it('is read off the curve at the return period of the standing, whatever was entered', () => {
    expect(designGust(MAP, CURVE, 100).gustMps).toBeCloseTo(63.02585, 5);
    expect(designGust(MAP, CURVE, 10).gustMps).toBeCloseTo(40, 10);
    expect(designGust(MAP, CURVE, 100)).toMatchObject({
      returnPeriodYears: 100,
      explanation: expect.stringMatching(/once in 100 years.*through two made-up gusts/) as string,
    });
  });

  it('is a local rule as it stands, turned into a three-second gust, even where there is a curve', () => {
    for (const curve of [CURVE, NO_CURVE]) {
      const { gustMps, returnPeriodYears, explanation } = designGust(RULE, curve, 300);
      expect(mphFromMps(gustMps)).toBeCloseTo(105, 9);
      expect(returnPeriodYears).toBeNull();
      expect(explanation).toContain('local fence rule');
    }
  });

  it('is the entered gust itself where a hurricane site has no curve', () => {
    expect(designGust(MAP, NO_CURVE, 300)).toMatchObject({
      gustMps: 50,
      returnPeriodYears: 700,
      explanation: expect.stringContaining('700-year gust itself') as string,
    });
  });
});
