import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  CLIMATE_FACTOR_FLOOR,
  CLIMATE_FACTOR_PROVENANCE,
  climateFactor,
  DECAY_ZONE_FACTORS,
  rainFunction,
  temperatureFunction,
  unflooredClimateFactor,
} from '../../src/decay/climate-factor.ts';
import { drawnEvenly } from '../drawn-evenly.ts';

describe('the parts of the climate factor', () => {
  it('are nothing at 250 mm of rain, at 5 degC and beyond six dry months', () => {
    expect(rainFunction(250, 0)).toBe(0);
    expect(rainFunction(250.001, 0)).toBeGreaterThan(0);
    expect(rainFunction(1000, 6)).toBe(0);
    expect(rainFunction(1000, 7)).toBe(0);
    expect(rainFunction(1000, -1)).toBe(0);
    expect(temperatureFunction(5)).toBe(0);
    expect(temperatureFunction(-10)).toBe(0);
  });

  it('come out as worked by hand for 1,250 mm, 12 degC and three dry months', () => {
    // 10 (1 - e^-1) / 2 = 3.1606; -1 + 2.4 = 1.4; 3.1606^0.3 x 1.4^0.2 = 1.4123 x 1.0696
    expect(rainFunction(1250, 3)).toBeCloseTo(3.1606, 4);
    expect(temperatureFunction(12)).toBeCloseTo(1.4, 12);
    expect(temperatureFunction(25)).toBeCloseTo(10, 12);
    expect(unflooredClimateFactor(1250, 12, 3)).toBeCloseTo(1.5106, 3);
  });

  it('join at 20 degC', () => {
    expect(temperatureFunction(20)).toBeCloseTo(3, 12);
    expect(temperatureFunction(20 + 1e-9)).toBeCloseTo(3, 6);
  });

  it('rise with rain and warmth, fall with dry months', () => {
    const rain = drawnEvenly(0, 4000);
    const warmth = drawnEvenly(-20, 35);
    fc.assert(
      fc.property(rain, warmth, fc.integer({ min: 0, max: 11 }), drawnEvenly(0, 500), (r, t, n, more) => {
        const k = unflooredClimateFactor(r, t, n);
        expect(unflooredClimateFactor(r + more, t, n)).toBeGreaterThanOrEqual(k);
        expect(unflooredClimateFactor(r, t + more / 100, n)).toBeGreaterThanOrEqual(k);
        expect(unflooredClimateFactor(r, t, n + 1)).toBeLessThanOrEqual(k);
      }),
    );
  });
});

describe('the climate factor of a site', () => {
  it('never falls under the floor, so no post is immortal', () => {
    const desert = { kind: 'measured', rainMmPerYear: 100, meanTemperatureC: 24, dryMonths: 9 } as const;
    const arctic = { kind: 'measured', rainMmPerYear: 900, meanTemperatureC: 2, dryMonths: 0 } as const;
    expect([desert, arctic].map(climateFactor)).toEqual([CLIMATE_FACTOR_FLOOR, CLIMATE_FACTOR_FLOOR]);
  });

  it('rises from decay zone 1 to 5', () => {
    const zones = ([1, 2, 3, 4, 5] as const).map((zone) => climateFactor({ kind: 'decay-zone', zone }));
    expect(zones).toEqual(Object.values(DECAY_ZONE_FACTORS));
    expect(zones).toEqual([...zones].sort((a, b) => a - b));
    expect(new Set(zones).size).toBe(5);
  });
});

it('is said to be a formula from memory', () => {
  expect(CLIMATE_FACTOR_PROVENANCE).toMatchObject({ tag: 'memory', source: expect.stringMatching(/\S/) as string });
});
