import { describe, expect, it } from 'vitest';
import { reserveTerminal } from '../../src/drawing/reserve-terminal.ts';
import { cents, NO_MONEY } from '../../src/season/money/money.ts';
import { drawnReserve } from './made-up-reserve.ts';

const plan = drawnReserve();

describe('a reserve plan in a terminal', () => {
  it.each([60, 80, 120])('is no wider than %s characters', (columns) => {
    const lines = reserveTerminal(plan, { currency: 'USD', columns });
    expect(lines.filter((line) => line.length > columns)).toEqual([]);
    expect(lines.join(' ')).toContain('a planning aid, not a statutory reserve study');
  });

  it('has a line a year, bars in proportion and the fund beside', () => {
    const lines = reserveTerminal(plan, { currency: 'USD', columns: 100 });
    const rows = plan.years.map(({ year }) => lines.find((line) => line.startsWith(String(year)))!);
    const highest = Math.max(...plan.years.map(({ spending, spendingBand }) => Math.max(spending, spendingBand.p90)));
    const longest = Math.max(...rows.map((row) => (row.match(/[█·]/g) ?? []).length));
    for (const [index, row] of rows.entries()) {
      const { spending, closing, spendingBand } = plan.years[index]!;
      const blocks = (row.match(/█/g) ?? []).length;
      const dots = (row.match(/·/g) ?? []).length;
      expect(Math.abs(blocks - (spending / highest) * longest)).toBeLessThanOrEqual(0.5);
      expect(blocks + dots).toBe(Math.max(blocks, Math.round((spendingBand.p90 / highest) * longest)));
      const whole = (amount: number): string => Math.round(amount / 100).toLocaleString('en-US');
      expect(
        row
          .trimEnd()
          .split(/\s{2,}/)
          .slice(-2),
      ).toEqual([whole(spending), whole(closing)]);
    }
    expect(longest).toBeGreaterThan(60);
    expect(lines.join('\n')).not.toContain('below the floor');
  });

  it('marks the years below the floor', () => {
    const poor = drawnReserve({
      openingBalance: cents(600_000),
      contribution: { kind: 'given', course: 'flat', firstYear: cents(150_000), atOnce: NO_MONEY },
    });
    const lines = reserveTerminal(poor, { currency: 'USD', columns: 80 });
    const marked = lines.filter((line) => /^20\d\d .*\*$/.test(line)).map((line) => Number(line.slice(0, 4)));
    expect(marked).toEqual(poor.years.filter(({ lowest }) => lowest < poor.floor).map(({ year }) => year));
    expect(marked.length).toBeGreaterThan(0);
    expect(marked.length).toBeLessThan(20);
    expect(lines).toContain('* below the floor of 2,000 in the year');
  });
});
