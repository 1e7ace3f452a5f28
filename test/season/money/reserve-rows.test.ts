import { describe, expect, it } from 'vitest';
import { cents, NO_MONEY } from '../../../src/season/money/money.ts';
import { reservePlan } from '../../../src/season/money/reserve-plan.ts';
import { reserveFenceRows, reserveYearRows } from '../../../src/season/money/reserve-rows.ts';
import { PLAIN_FENCE, PLAIN_PLAN } from './made-up-plan.ts';

const plan = reservePlan({
  ...PLAIN_PLAN,
  openingBalance: cents(250_000),
  interest: 0.02,
  contribution: { kind: 'given', course: 'flat', firstYear: cents(5050), atOnce: NO_MONEY },
  fences: [
    {
      ...PLAIN_FENCE,
      ref: 'a',
      replacement: { kind: 'by chance', chanceByYear: [0, 0.4, 0.2] },
    },
    {
      ...PLAIN_FENCE,
      ref: 'b',
      responsible: 'lot',
      replacement: { kind: 'in year', year: 2027 },
      snapRiskByYear: [0.2],
    },
    { ...PLAIN_FENCE, ref: 'c' },
  ],
});

describe('the rows of a reserve plan', () => {
  it('have a year each, to the cent', () => {
    const rows = reserveYearRows(plan);
    expect(rows).toHaveLength(10);
    expect(rows[1]).toEqual({
      year: '2028',
      opening_balance: '2601.51',
      contribution: '50.50',
      repairs_expected: '0.00',
      replacements_expected: '400.00',
      spending_expected: '400.00',
      spending_p10: '0.00',
      spending_p50: '0.00',
      spending_p90: '1000.00',
      spent_so_far_p10: '0.00',
      spent_so_far_p50: '0.00',
      spent_so_far_p90: '1000.00',
      lowest_balance: '2252.01',
      interest: '45.04',
      closing_balance: '2297.05',
      closing_balance_p10: '1685.05',
      closing_balance_p50: '2705.05',
      closing_balance_p90: '2705.05',
      association_spending: '400.00',
      lot_spending: '0.00',
      office_spending: '',
      note: 'a planning aid, not a statutory reserve study',
    });
    expect(rows[0]!.lot_spending).toBe('1000.00');
    for (const row of rows) expect(Object.keys(row)).toEqual(Object.keys(rows[0]!));
  });

  it('have a fence each', () => {
    const rows = reserveFenceRows(plan);
    expect(rows.map((row) => row.fence)).toEqual(['a', 'b', 'c']);
    expect(rows[0]).toEqual({
      fence: 'a',
      responsible: 'association',
      likely_replacement_year: '2029',
      chance_replaced: '0.600',
      chance_snapped_first: '0.000',
      spending_expected: '600.00',
      waiting_one_year: '-11.46',
      note: 'a planning aid, not a statutory reserve study',
    });
    expect(rows[2]!.likely_replacement_year).toBe('');
    expect(rows[1]!.waiting_one_year).toBe('484.31');
  });
});
