import { describe, expect, it } from 'vitest';
import { drawUpQuote } from '../../../src/season/money/quote.ts';
import { quoteRows } from '../../../src/season/money/quote-rows.ts';
import { QUOTE_REQUEST } from './made-up-quote.ts';

describe('the rows of a quote', () => {
  it('are its lines, then its sums, with the same columns', () => {
    const rows = quoteRows(drawUpQuote(QUOTE_REQUEST));
    expect(rows.map((row) => [row.kind, row.amount])).toEqual([
      ['line', '1234.50'],
      ['line', '212.53'],
      ['line', '95.00'],
      ['subtotal', '1542.03'],
      ['tax', '127.22'],
      ['total', '1669.25'],
    ]);
    expect(rows[0]).toEqual({
      quote: 'Q-20270301-002',
      issued: '2027-03-01',
      valid_until: '2027-03-31',
      kind: 'line',
      what: 'post swap',
      quantity: '5',
      unit: 'post',
      unit_price: '246.90',
      amount: '1234.50',
      currency: 'USD',
    });
    expect(rows[4]).toMatchObject({ what: '8.25 %', quantity: '', unit: '', unit_price: '' });
    for (const row of rows) expect(Object.keys(row)).toEqual(Object.keys(rows[0]!));
  });
});
