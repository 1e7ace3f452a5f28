import { describe, expect, it } from 'vitest';
import { adviceText, reserveFenceTable, type ShownFence, wholeText } from '../../src/drawing/reserve-fences.ts';
import { reserveYearTable, setAsideTable } from '../../src/drawing/reserve-years.ts';
import { cents } from '../../src/season/money/money.ts';
import type { ReplacementAhead } from '../../src/season/money/replacement-ahead.ts';
import { drawnReserve } from './made-up-reserve.ts';

const aheadOf = (advice: ReplacementAhead['advice']): ReplacementAhead => ({
  advice,
  excessBySeason: [0, 120],
  excessToFailure: 300,
  keepingCostPerYear: 90,
});

const SHOWN: ShownFence = {
  ref: 'north run',
  built: { earliest: '2009-04-20', latest: '2009-04-20' },
  ageYears: 17.6,
  price: cents(544_000),
  priceAfterFailure: cents(761_600),
  consequence: cents(50_000),
  snapRisk: 0.096,
  rule: 'cheapest',
  successor: null,
  ahead: aheadOf({ kind: 'replace now' }),
  cheapestYear: 2027,
  cheapestAgeYears: 18.1,
  waitingOneYear: cents(45_540),
  replacingNow: cents(0),
  shortSeason: '2029',
  isShortNow: false,
  isOutworn: false,
  responsible: 'association',
  share: 1,
  sharedWith: null,
};

const KEPT: ShownFence = {
  ...SHOWN,
  ahead: aheadOf({ kind: 'run to failure', latest: { seasons: 7, years: 7 } }),
  cheapestYear: 2034,
  waitingOneYear: null,
  replacingNow: cents(62_250),
};

describe('what is best for a fence', () => {
  it('is said in a few words', () => {
    expect(adviceText(SHOWN)).toBe('replace now');
    expect(adviceText({ ...SHOWN, isOutworn: true })).toBe('replace now: worn out');
    expect(
      adviceText({ ...SHOWN, ahead: aheadOf({ kind: 'in N years', seasons: 1, years: 1 }), cheapestYear: 2028 }),
    ).toBe('replace in 1 year, 2028');
    expect(
      adviceText({ ...SHOWN, ahead: aheadOf({ kind: 'in N years', seasons: 6, years: 6 }), cheapestYear: 2033 }),
    ).toBe('replace in 6 years, 2033');
    expect(adviceText(KEPT)).toBe('keep, to 2034 at most');
    expect(adviceText({ ...SHOWN, ahead: null, cheapestYear: null })).toBe('before it goes short');
  });
});

describe('the fences of a plan', () => {
  it('are short now, with no year ahead, where season 1 is short already', () => {
    const { rows } = reserveFenceTable([{ ...SHOWN, isShortNow: true }, SHOWN]);
    expect(rows.map((cells) => cells[4])).toEqual(['now', '2029']);
  });

  it('stand side by side, dashes where nothing is to be said', () => {
    const { headings, rows } = reserveFenceTable([
      SHOWN,
      { ...KEPT, built: { earliest: '2008-01-01', latest: '2012-12-31' }, share: 0.5, sharedWith: 'R. Okafor' },
      {
        ...SHOWN,
        snapRisk: null,
        ahead: null,
        cheapestYear: null,
        cheapestAgeYears: null,
        waitingOneYear: null,
        replacingNow: null,
        shortSeason: null,
      },
    ]);
    expect(rows[0]).toEqual([
      'north run',
      '2009-04',
      '18',
      '10 %',
      '2029',
      'replace now',
      '18',
      '5,440',
      '8,116',
      '455',
      '–',
      'association',
    ]);
    expect(rows[1]!.slice(1, 2)).toEqual(['2008–2012']);
    expect(rows[1]!.slice(9)).toEqual(['–', '623', 'association 50 %, with R. Okafor']);
    expect(rows[2]!.slice(3, 7)).toEqual(['–', '–', 'before it goes short', '–']);
    for (const row of rows) expect(row).toHaveLength(headings.length);
    // Where nobody shares, who pays is said once, above.
    const alone = reserveFenceTable([SHOWN]);
    expect([alone.headings.length, alone.rows[0]!.length]).toEqual([headings.length - 1, headings.length - 1]);
  });

  it('are counted in whole units', () => {
    expect([wholeText(123_450), wholeText(-4_999), wholeText(49)]).toEqual(['1,235', '-50', '0']);
  });
});

describe('the years of a plan', () => {
  const plan = drawnReserve();

  it('add up as they are shown, but for rounding', () => {
    const { headings, rows } = reserveYearTable(plan);
    expect(rows).toHaveLength(20);
    expect(headings).toEqual([
      'year',
      'repairs',
      'replacing',
      'p10',
      'p50',
      'p90',
      'opening',
      'paid in',
      'interest',
      'closing',
    ]);
    for (const row of rows) {
      const [, repairs, replacing, , , , opening, paid, interest, closing] = row.map((cell) =>
        Number(cell.replaceAll(',', '')),
      );
      expect(Math.abs(opening! + paid! - repairs! - replacing! + interest! - closing!)).toBeLessThanOrEqual(3);
    }
    expect(rows.some((row) => row[1] !== '0')).toBe(true);
  });

  it('come with what to set aside, once and every year', () => {
    const { rows, headings } = setAsideTable(plan);
    const { expected, nineInTen } = plan.setAside;
    expect(headings).toHaveLength(5);
    expect(rows.map((row) => row.slice(1))).toEqual(
      [expected, nineInTen].map(({ flat, rising }) =>
        [flat.atOnce, flat.firstYear, rising.atOnce, rising.firstYear].map(wholeText),
      ),
    );
  });
});
