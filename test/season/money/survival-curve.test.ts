import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { meanLifeYears, survivalFromRisks, yearsInService } from '../../../src/season/money/survival-curve.ts';
import { drawnEvenly } from '../../drawn-evenly.ts';
import { weibullCurve } from './weibull-curve.ts';

describe('a survival curve', () => {
  it('multiplies the chances to stand up', () => {
    expect(survivalFromRisks([0, 0.5, 0.5, 1])).toEqual({ standing: [1, 1, 0.5, 0.25, 0], stepYears: 1 });
    expect(survivalFromRisks([0.25], 0.5)).toEqual({ standing: [1, 0.75], stepYears: 0.5 });
  });

  it('refuses no season, no step and what is no probability', () => {
    expect(() => survivalFromRisks([])).toThrow(/no season given/);
    expect(() => survivalFromRisks([0.1], 0)).toThrow(/step of 0 years/);
    expect(() => survivalFromRisks([0.1, 1.1])).toThrow(/risk 1\.1 in season 2/);
    expect(() => survivalFromRisks([-0.1])).toThrow(/risk -0\.1 in season 1/);
    expect(() => survivalFromRisks([Number.NaN])).toThrow(RangeError);
  });

  it('lets those that snap in a season go at its middle', () => {
    const curve = survivalFromRisks([0, 0.5, 1]);
    expect([0, 1, 2, 3].map((seasons) => yearsInService(curve, seasons))).toEqual([0, 1, 1.75, 2]);
    expect(yearsInService({ ...curve, stepYears: 2 }, 2)).toBe(3.5);
  });
});

describe('the mean life', () => {
  it('ends with the curve where none is left, and goes on at its last risk where some are', () => {
    expect(meanLifeYears(survivalFromRisks([0, 0.5, 1]))).toBe(2);
    expect(meanLifeYears(survivalFromRisks([0.5]))).toBe(1.5);
    expect(meanLifeYears(survivalFromRisks([0.5], 2))).toBe(3);
    expect(meanLifeYears(survivalFromRisks([0.1, 0.5]))).toBeCloseTo(0.95 + 0.675 + 0.675, 12);
  });

  it('is without end where the last season has no risk', () => {
    expect(meanLifeYears(survivalFromRisks([0.5, 0]))).toBe(Infinity);
    expect(meanLifeYears(survivalFromRisks([1, 0]))).toBe(0.5);
  });

  it('is the same however many seasons of the last risk are written out', () => {
    fc.assert(
      fc.property(drawnEvenly(0.01, 1), fc.integer({ min: 1, max: 30 }), (risk, count) => {
        const longer = survivalFromRisks(new Array<number>(count).fill(risk));
        expect(meanLifeYears(longer)).toBeCloseTo(meanLifeYears(survivalFromRisks([risk])), 6);
      }),
    );
  });

  it('is that of the Weibull law: scale times Gamma(1 + 1/shape)', () => {
    // Gamma(1.5) = sqrt(pi) / 2.
    const curve = weibullCurve({ shape: 2, scaleYears: 10 }, 0.02, 70);
    expect(meanLifeYears(curve)).toBeCloseTo((10 * Math.sqrt(Math.PI)) / 2, 4);
  });
});
