import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cents, NO_MONEY } from '../../../src/season/money/money.ts';
import { fundLedger } from '../../../src/season/money/reserve-ledger.ts';
import { paidInAll, setAside } from '../../../src/season/money/set-aside.ts';
import { drawnEvenly } from '../../drawn-evenly.ts';

const TERMS = { openingBalance: NO_MONEY, interest: 0, inflation: 0 };
const need = (...spending: readonly number[]) => ({ spendingByYear: spending.map(cents), floor: NO_MONEY });

describe('what to set aside', () => {
  it('pays arrears at once, and lets only what comes later set the yearly amount', () => {
    // 900.00 is due now and 100.00 in each of the nine years after: 1,000.00 a year for ten years would be nonsense.
    const found = setAside(TERMS, 'flat', need(90_000, ...new Array<number>(9).fill(10_000)));
    expect(found).toEqual({ course: 'flat', atOnce: 80_000, firstYear: 10_000 });
  });

  it('reaches over the year-end to arrears of the second year', () => {
    const found = setAside(TERMS, 'flat', need(0, 90_000, ...new Array<number>(8).fill(10_000)));
    expect(found).toEqual({ course: 'flat', atOnce: 70_000, firstYear: 10_000 });
  });

  it('asks for nothing at once where the fund or the yearly amount is enough', () => {
    expect(setAside(TERMS, 'flat', need(0, 0, 0, 40_000))).toEqual({ course: 'flat', atOnce: 0, firstYear: 10_000 });
    const rich = { ...TERMS, openingBalance: cents(90_000) };
    expect(setAside(rich, 'flat', need(90_000, 0, 20_000))).toEqual({ course: 'flat', atOnce: 0, firstYear: 6667 });
    expect(setAside(rich, 'flat', need(10_000, 0, 20_000))).toEqual({ course: 'flat', atOnce: 0, firstYear: 0 });
  });

  it('comes to the same in all as the fund is paid, year by year', () => {
    const contribution = { course: 'flat' as const, atOnce: cents(80_000), firstYear: cents(10_000) };
    const spending = new Array<number>(10).fill(0).map(cents);
    const paid = fundLedger(TERMS, contribution, spending).reduce((sum, year) => sum + year.contribution, 0);
    expect(paidInAll(contribution, 10)).toBe(180_000);
    expect(paidInAll(contribution, 10)).toBe(paid);
  });

  it('rises with prices from its first year', () => {
    const found = setAside({ ...TERMS, inflation: 0.1 }, 'rising', need(50_000, 0, 12_100));
    // At the floor after the first year; then 1.1 and 1.21 times the first amount are 121.00.
    expect(found).toEqual({ course: 'rising', atOnce: 44_762, firstYear: 5238 });
  });

  it('keeps the floor, whatever is asked, and a cent a year less does not', () => {
    const terms = fc.record({
      openingBalance: fc.integer({ min: -500_000, max: 5_000_000 }).map(cents),
      interest: drawnEvenly(0, 0.1),
      inflation: drawnEvenly(-0.03, 0.1),
    });
    const spending = fc.array(fc.nat({ max: 2_000_000 }).map(cents), { minLength: 1, maxLength: 30 });
    const course = fc.constantFrom('flat' as const, 'rising' as const);
    fc.assert(
      fc.property(terms, course, spending, fc.nat({ max: 500_000 }).map(cents), (fund, how, spendingByYear, floor) => {
        const found = setAside(fund, how, { spendingByYear, floor });
        const lowest = (less: number): number =>
          Math.min(
            ...fundLedger(fund, { ...found, firstYear: cents(found.firstYear - less) }, spendingByYear).map(
              (year) => year.lowest,
            ),
          );
        expect(lowest(0)).toBeGreaterThanOrEqual(floor);
        if (found.firstYear > 0) expect(lowest(1)).toBeLessThan(floor);
      }),
    );
  });

  it('refuses a plan of no years', () => {
    expect(() => setAside(TERMS, 'flat', need())).toThrow(/no years; give one at least/);
  });
});
