import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  CODE_HEIGHT_FLOOR_M,
  EXPOSURES,
  elevationFactor,
  exposureCoefficient,
  exposureConstants,
  pressurePerSpeedSquared,
} from '../../src/capacity/velocity-pressure.ts';

describe('the exposure coefficient', () => {
  it('is flat under the floor and rises above it', () => {
    for (const exposure of EXPOSURES) {
      const at = (metres: number): number => exposureCoefficient(metres, exposure, CODE_HEIGHT_FLOOR_M);
      expect(at(1)).toBe(at(4.5));
      expect(at(6)).toBeGreaterThan(at(4.5));
    }
  });

  it('is larger in the open, without the floor too', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.5, max: 60, noNaN: true }), (heightM) => {
        const [b, c, d] = EXPOSURES.map((exposure) => exposureCoefficient(heightM, exposure, 0));
        expect(b).toBeLessThan(c!);
        expect(c).toBeLessThan(d!);
      }),
    );
  });

  it('differs by less than half a per cent between the editions on a six-foot fence', () => {
    for (const exposure of EXPOSURES) {
      const [old, recent] = (['ASCE 7-16', 'ASCE 7-22'] as const).map((edition) =>
        exposureCoefficient(1.83, exposure, CODE_HEIGHT_FLOOR_M, edition),
      );
      expect(Math.abs(recent! / old! - 1)).toBeLessThan(0.005);
    }
  });
});

describe('the constants of an exposure category', () => {
  it('are those of the older table: power 7, 9.5 and 11.5, gradient height 1,200, 900 and 700 ft', () => {
    expect(EXPOSURES.map((exposure) => exposureConstants(exposure).alpha)).toEqual([7, 9.5, 11.5]);
    const heights = EXPOSURES.map((exposure) => exposureConstants(exposure).gradientHeightM);
    [365.76, 274.32, 213.36].forEach((metres, index) => {
      expect(heights[index]).toBeCloseTo(metres, 10);
    });
  });

  it('make the coefficient 2.01 at the gradient height', () => {
    for (const exposure of EXPOSURES) {
      expect(exposureCoefficient(exposureConstants(exposure).gradientHeightM, exposure, 0)).toBeCloseTo(2.01, 12);
    }
  });
});

describe('the pressure', () => {
  it('falls with the elevation of the ground and is one-to-one in each factor', () => {
    expect(elevationFactor(0)).toBe(1);
    expect(elevationFactor(1600)).toBeLessThan(elevationFactor(1500));
    const factors = { exposureCoefficient: 0.85, topographicFactor: 1, elevationFactor: 1 };
    const plain = pressurePerSpeedSquared(factors);
    expect(plain).toBeCloseTo(0.613 * 0.85 * 0.85, 12);
    expect(pressurePerSpeedSquared({ ...factors, topographicFactor: 1.3 })).toBeCloseTo(1.3 * plain, 12);
    expect(pressurePerSpeedSquared({ ...factors, elevationFactor: 0.9 })).toBeCloseTo(0.9 * plain, 12);
  });
});
