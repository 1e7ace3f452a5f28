import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  amountOf,
  cents,
  minusMoney,
  moneyCell,
  moneyFromAmount,
  moneyText,
  moneyTimes,
  NO_MONEY,
  percentOf,
  sumMoney,
} from '../../../src/season/money/money.ts';
import { drawnEvenly } from '../../drawn-evenly.ts';

describe('money', () => {
  it('is whole cents, and refuses anything else with the way out', () => {
    expect(cents(-5)).toBe(-5);
    expect(Object.is(cents(-0), 0)).toBe(true);
    expect(() => cents(1.5)).toThrow(/1\.5 cents.*round it first/);
    expect(() => cents(Number.NaN)).toThrow(RangeError);
    expect(() => cents(2 ** 53)).toThrow(RangeError);
  });

  it('comes from an amount by its decimal digits, halves away from zero', () => {
    expect([1.005, 0.285, 1.004, -1.005, 12, 0, 1e-7, 1.5e9].map(moneyFromAmount)).toEqual([
      101, 29, 100, -101, 1200, 0, 0, 150_000_000_000,
    ]);
    expect(moneyFromAmount(1e21 / 1e8)).toBe(1e15);
    expect(() => moneyFromAmount(Number.POSITIVE_INFINITY)).toThrow(/Infinity is not a number to reckon with/);
    expect(() => moneyFromAmount(1e21)).toThrow(/cents/);
  });

  it('is multiplied by a decimal factor without a cent of drift', () => {
    expect(moneyTimes(cents(1000), 0.1)).toBe(100);
    expect(moneyTimes(cents(335), 0.1)).toBe(34);
    expect(moneyTimes(cents(-335), 0.1)).toBe(-34);
    expect(moneyTimes(cents(333), 0.1)).toBe(33);
    // 1.1 x 15 is 16.5 by its digits and a hair under or over it in binary.
    expect(moneyTimes(cents(15), 1.1)).toBe(17);
    expect(moneyTimes(cents(7), 2.5e-1)).toBe(2);
    expect(moneyTimes(cents(1), 1e3)).toBe(1000);
  });

  it('gives a per cent of itself, rounded once', () => {
    expect(percentOf(cents(10_000), 8.25)).toBe(825);
    expect(percentOf(cents(10_006), 8.25)).toBe(825);
    expect(percentOf(cents(10_007), 8.25)).toBe(826);
    expect(percentOf(cents(200), 0.25)).toBe(1);
  });

  it('adds up to the cent whatever the order', () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: -1e9, max: 1e9 })), (amounts) => {
        const exact = Number(amounts.reduce((sum, amount) => sum + BigInt(amount), 0n));
        expect(sumMoney(amounts.map(cents))).toBe(exact);
        expect(sumMoney(amounts.map(cents).reverse())).toBe(exact);
      }),
    );
    expect(sumMoney([])).toBe(NO_MONEY);
    expect(minusMoney(cents(100), cents(130))).toBe(-30);
  });

  it('is written for machines and for readers', () => {
    expect([0, 5, -5, 99, 100, -123_456, 123_456_789].map((n) => moneyCell(cents(n)))).toEqual([
      '0.00',
      '0.05',
      '-0.05',
      '0.99',
      '1.00',
      '-1234.56',
      '1234567.89',
    ]);
    expect([-123_456, 123_456_789, 99_999].map((n) => moneyText(cents(n)))).toEqual([
      '-1,234.56',
      '1,234,567.89',
      '999.99',
    ]);
    expect(amountOf(cents(12_345))).toBe(123.45);
  });

  it('comes back from what it is written as', () => {
    fc.assert(
      fc.property(fc.integer({ min: -1e12, max: 1e12 }), (n) => {
        expect(moneyFromAmount(Number(moneyCell(cents(n))))).toBe(n);
        expect(moneyFromAmount(amountOf(cents(n)))).toBe(n);
      }),
    );
  });

  it('never rounds by more than half a cent', () => {
    fc.assert(
      fc.property(fc.integer({ min: -1e7, max: 1e7 }), drawnEvenly(-50, 50), (n, factor) => {
        expect(Math.abs(moneyTimes(cents(n), factor) - n * factor)).toBeLessThanOrEqual(0.5 + 1e-6);
      }),
    );
  });
});
