import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  annuityFactor,
  levelPayment,
  levelSaving,
  presentValue,
  priceFactor,
  realRate,
} from '../../../src/season/money/discounting.ts';
import { drawnEvenly } from '../../drawn-evenly.ts';

const rate = drawnEvenly(-0.5, 1);
const years = fc.integer({ min: 1, max: 40 });
const timing = fc.constantFrom('end-of-year' as const, 'beginning-of-year' as const);

describe('a present value', () => {
  it('takes the first payment a year ahead or today, as it is told', () => {
    expect(presentValue([110, 121], 0.1, 'end-of-year')).toBeCloseTo(200, 10);
    expect(presentValue([100, 110], 0.1, 'beginning-of-year')).toBeCloseTo(200, 10);
    expect(presentValue([], 0.1, 'end-of-year')).toBe(0);
    expect(presentValue([1, -2, 3], 0, 'end-of-year')).toBe(2);
  });

  it('refuses a rate that makes no sense', () => {
    expect(() => presentValue([1], -1, 'end-of-year')).toThrow(/rate of discount -1 a year.*0\.03 for three per cent/);
    expect(() => presentValue([1], Number.NaN, 'end-of-year')).toThrow(RangeError);
    expect(() => presentValue([1], Number.POSITIVE_INFINITY, 'end-of-year')).toThrow(RangeError);
    expect(() => annuityFactor(3, -1.5, 'end-of-year')).toThrow(/rate of interest/);
    expect(() => priceFactor(-2, 3)).toThrow(/inflation/);
  });
});

describe('an annuity', () => {
  it('is worth what its payments are worth', () => {
    fc.assert(
      fc.property(years, rate, timing, (count, r, when) => {
        const byHand = presentValue(new Array<number>(count).fill(1), r, when);
        expect(annuityFactor(count, r, when) / byHand).toBeCloseTo(1, 9);
      }),
    );
  });

  it('is its number of years without interest, and keeps its figures near none', () => {
    expect(annuityFactor(20, 0, 'end-of-year')).toBe(20);
    expect(annuityFactor(20, 1e-12, 'end-of-year')).toBeCloseTo(20, 9);
    expect(annuityFactor(2, 0.5, 'end-of-year')).toBeCloseTo(1 / 1.5 + 1 / 2.25, 12);
    expect(annuityFactor(2, 0.5, 'beginning-of-year')).toBeCloseTo(1 + 1 / 1.5, 12);
  });

  it('is refused over no year or part of one', () => {
    expect(() => annuityFactor(0, 0.1, 'end-of-year')).toThrow(/0 years: give a whole number from 1/);
    expect(() => annuityFactor(1.5, 0.1, 'end-of-year')).toThrow(RangeError);
  });

  it('pays an amount off, and saves one up', () => {
    expect(levelPayment(200, { years: 2, yearlyRate: 0, timing: 'end-of-year' })).toBe(100);
    expect(levelPayment(210, { years: 2, yearlyRate: 0.1, timing: 'end-of-year' })).toBeCloseTo(121, 10);
    expect(levelSaving(231, { years: 2, yearlyRate: 0.1, timing: 'beginning-of-year' })).toBeCloseTo(100, 10);
    fc.assert(
      fc.property(years, rate, timing, (count, yearlyRate, when) => {
        const saved = levelSaving(1000, { years: count, yearlyRate, timing: when });
        let fund = 0;
        for (let year = 0; year < count; year += 1)
          fund = when === 'end-of-year' ? fund * (1 + yearlyRate) + saved : (fund + saved) * (1 + yearlyRate);
        expect(fund).toBeCloseTo(1000, 5);
      }),
    );
  });
});

describe('real and nominal', () => {
  it('differ by what prices rise', () => {
    expect(realRate(0.155, 0.1)).toBeCloseTo(0.05, 12);
    expect(realRate(0.03, 0.03)).toBe(0);
    expect(priceFactor(0.1, 2)).toBeCloseTo(1.21, 12);
    expect(priceFactor(0.1, 0)).toBe(1);
  });

  it('give the same present value', () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 0, max: 1e5 }), { maxLength: 30 }), rate, rate, (today, r, i) => {
        const nominal = today.map((cost, year) => cost * priceFactor(i, year));
        const one = presentValue(nominal, r, 'beginning-of-year');
        const other = presentValue(today, realRate(r, i), 'beginning-of-year');
        expect(Math.abs(one - other)).toBeLessThanOrEqual(1e-9 * (1 + Math.abs(one)));
      }),
    );
  });
});
