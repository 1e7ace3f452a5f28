import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cents, NO_MONEY } from '../../../src/season/money/money.ts';
import { fundLedger, leastContribution } from '../../../src/season/money/reserve-ledger.ts';
import { drawnEvenly } from '../../drawn-evenly.ts';

const TERMS = { openingBalance: NO_MONEY, interest: 0.1, inflation: 0 };
const spending = fc.array(fc.nat({ max: 2_000_000 }).map(cents), { minLength: 1, maxLength: 30 });
const terms = fc.record({
  openingBalance: fc.integer({ min: -500_000, max: 5_000_000 }).map(cents),
  interest: drawnEvenly(0, 0.1),
  inflation: drawnEvenly(-0.03, 0.1),
});
const FLAT = { course: 'flat', atOnce: NO_MONEY } as const;
const course = fc.constantFrom('flat' as const, 'rising' as const);
const floor = fc.nat({ max: 500_000 }).map(cents);

describe('the years of a fund', () => {
  it('pay in, spend, then earn interest on what is left', () => {
    const ledger = fundLedger(
      { openingBalance: cents(10_000), interest: 0.1, inflation: 0.5 },
      { firstYear: cents(1001), course: 'rising', atOnce: NO_MONEY },
      [cents(1000), cents(20_000)],
    );
    expect(ledger).toEqual([
      { opening: 10_000, contribution: 1001, spending: 1000, lowest: 10_001, interest: 1000, closing: 11_001 },
      { opening: 11_001, contribution: 1502, spending: 20_000, lowest: -7497, interest: 0, closing: -7497 },
    ]);
  });

  it('take in once, in the first year, what is paid at once', () => {
    const ledger = fundLedger(
      { openingBalance: NO_MONEY, interest: 0, inflation: 0.5 },
      { firstYear: cents(1000), course: 'rising', atOnce: cents(300) },
      [NO_MONEY, NO_MONEY],
    );
    expect(ledger.map(({ contribution, closing }) => [contribution, closing])).toEqual([
      [1300, 1300],
      [1500, 2800],
    ]);
  });

  it('add up to the cent', () => {
    fc.assert(
      fc.property(terms, course, fc.nat({ max: 500_000 }).map(cents), spending, (fund, how, firstYear, spent) => {
        const years = fundLedger(fund, { firstYear, course: how, atOnce: NO_MONEY }, spent);
        expect(years.map((year) => year.spending)).toEqual(spent);
        for (const [index, year] of years.entries()) {
          expect(year.opening).toBe(index === 0 ? fund.openingBalance : years[index - 1]!.closing);
          expect(year.opening + year.contribution - year.spending + year.interest).toBe(year.closing);
          expect(year.opening + year.contribution - year.spending).toBe(year.lowest);
          expect(year.interest).toBeGreaterThanOrEqual(0);
          if (how === 'flat') expect(year.contribution).toBe(firstYear);
        }
      }),
    );
  });
});

describe('the amount to set aside', () => {
  it('is worked out by hand', () => {
    const need = { spendingByYear: [0, 0, 100_000].map(cents), floor: NO_MONEY };
    expect(leastContribution(TERMS, FLAT, need)).toBe(30_212);
    expect(
      leastContribution(
        { openingBalance: cents(10_000), interest: 0, inflation: 0.1 },
        { course: 'rising', atOnce: NO_MONEY },
        {
          spendingByYear: [0, 0, 121_000].map(cents),
          floor: NO_MONEY,
        },
      ),
    ).toBe(33_535);
    expect(leastContribution(TERMS, FLAT, { spendingByYear: [cents(500)], floor: cents(70) })).toBe(570);
    expect(leastContribution(TERMS, FLAT, { spendingByYear: [cents(1)], floor: NO_MONEY })).toBe(1);
    expect(leastContribution(TERMS, FLAT, { spendingByYear: [NO_MONEY], floor: NO_MONEY })).toBe(0);
  });

  it('keeps the floor, and a cent less does not', () => {
    fc.assert(
      fc.property(terms, course, spending, floor, (fund, how, spendingByYear, least) => {
        const found = leastContribution(fund, { course: how, atOnce: NO_MONEY }, { spendingByYear, floor: least });
        const lowest = (firstYear: number): number =>
          Math.min(
            ...fundLedger(fund, { firstYear: cents(firstYear), course: how, atOnce: NO_MONEY }, spendingByYear).map(
              (year) => year.lowest,
            ),
          );
        expect(lowest(found)).toBeGreaterThanOrEqual(least);
        if (found > 0) expect(lowest(found - 1)).toBeLessThan(least);
      }),
    );
  });

  it('never needs more with more interest, a fuller fund or a lower floor', () => {
    fc.assert(
      fc.property(terms, course, spending, floor, drawnEvenly(0, 0.1), (fund, how, spendingByYear, least, more) => {
        const found = leastContribution(fund, { course: how, atOnce: NO_MONEY }, { spendingByYear, floor: least });
        const richer = { ...fund, interest: fund.interest + more };
        expect(
          leastContribution(richer, { course: how, atOnce: NO_MONEY }, { spendingByYear, floor: least }),
        ).toBeLessThanOrEqual(found);
        const fuller = { ...fund, openingBalance: cents(fund.openingBalance + 1000) };
        expect(
          leastContribution(fuller, { course: how, atOnce: NO_MONEY }, { spendingByYear, floor: least }),
        ).toBeLessThanOrEqual(found);
        expect(
          leastContribution(fund, { course: how, atOnce: NO_MONEY }, { spendingByYear, floor: NO_MONEY }),
        ).toBeLessThanOrEqual(found);
      }),
    );
  });
});
