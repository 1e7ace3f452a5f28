import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { aboveGroundLaw, aboveGroundRate, aboveGroundZone } from '../../src/decay/above-ground-depth.ts';
import type { ClimateFacts } from '../../src/decay/climate-factor.ts';
import { depthByLaw } from '../../src/decay/decay-depth.ts';
import { TREATMENT_CLASS_KEYS, TREATMENT_CLASSES } from '../../src/decay/treatment-class.ts';

const zone = (number: 1 | 2 | 3 | 4 | 5): ClimateFacts => ({ kind: 'decay-zone', zone: number });
const GULF: ClimateFacts = { kind: 'measured', rainMmPerYear: 1600, meanTemperatureC: 19.5, dryMonths: 0 };
const DESERT: ClimateFacts = { kind: 'measured', rainMmPerYear: 200, meanTemperatureC: 23.9, dryMonths: 2 };
const TROPICS: ClimateFacts = { kind: 'measured', rainMmPerYear: 2000, meanTemperatureC: 25, dryMonths: 0 };
const rates = fc.double({ min: 0.05, max: 6, noNaN: true });

describe('the zone above ground', () => {
  it('is that of the nearest factor in the ground: A in the desert, C on the Gulf, D in the wet tropics', () => {
    expect(aboveGroundZone(DESERT)).toEqual({ zone: 'A', factor: 0.4 });
    expect(aboveGroundZone(GULF)).toEqual({ zone: 'C', factor: 0.65 });
    expect(aboveGroundZone(TROPICS)).toEqual({ zone: 'D', factor: 0.75 });
  });

  it('takes the drier of two that are equally near', () => {
    expect(aboveGroundZone(zone(1)).zone).toBe('A');
    expect(aboveGroundZone(zone(4)).zone).toBe('B');
  });
});

describe('rot above ground', () => {
  it('runs at k_wood k_climate: 6.52 for sapwood, 0.50 to 2.20 for heartwood, times 0.65 in zone C', () => {
    expect(aboveGroundRate('untreated-softwood', GULF)).toBeCloseTo(6.52 * 0.65, 12);
    const heartwood = ([1, 2, 3, 4] as const).map((each) => aboveGroundRate(`heartwood-class-${each}`, GULF)! / 0.65);
    expect(heartwood.map((factor) => Number(factor.toFixed(4)))).toEqual([0.5, 0.62, 1.14, 2.2]);
  });

  it('has no law for treated stock, nor for what does not rot', () => {
    for (const key of TREATMENT_CLASS_KEYS) {
      const { treatmentFactor } = TREATMENT_CLASSES[key];
      if (treatmentFactor !== 1) expect(aboveGroundRate(key, GULF), key).toBeNull();
    }
  });

  it('reaches 5 mm in sapwood in zone C after 3.67 years, in class 4 heartwood after 9.77', () => {
    // By hand: r 4.238, lag 8.5 x 4.238^-0.85 = 2.491, 5 / r = 1.180; r 1.43, lag 6.272, 5 / r = 3.497.
    expect(aboveGroundLaw(aboveGroundRate('untreated-softwood', GULF)!).startEndsYears).toBeCloseTo(3.67, 2);
    expect(aboveGroundLaw(aboveGroundRate('heartwood-class-4', GULF)!).startEndsYears).toBeCloseTo(9.77, 2);
  });

  it('joins its slow start and its straight run at 5 mm, and never goes back', () => {
    fc.assert(
      fc.property(rates, fc.double({ min: 0, max: 60, noNaN: true }), (rate, years) => {
        const law = aboveGroundLaw(rate);
        expect(depthByLaw(law, law.startEndsYears * (1 + 1e-9))).toBeCloseTo(5, 5);
        expect(depthByLaw(law, law.startEndsYears)).toBeCloseTo(5, 9);
        expect(depthByLaw(law, years + 1)).toBeGreaterThanOrEqual(depthByLaw(law, years));
      }),
    );
  });

  it('is slower in heartwood above ground than in the sapwood of the same climate, wherever that is', () => {
    for (const climate of [DESERT, GULF, TROPICS, zone(3)]) {
      const rate = (key: Parameters<typeof aboveGroundRate>[0]): number => aboveGroundRate(key, climate)!;
      expect(rate('heartwood-class-4')).toBeLessThan(rate('untreated-softwood'));
      expect(rate('redcedar-redwood-heartwood')).toBeLessThan(rate('heartwood-class-3'));
    }
  });
});
