import { describe, expect, it } from 'vitest';
import { drawUpQuote } from '../../../src/season/money/quote.ts';
import { quoteText } from '../../../src/season/money/quote-text.ts';
import { QUOTE_REQUEST } from './made-up-quote.ts';

describe('a quote as plain text', () => {
  it('has every line, its sums and its cautions', () => {
    expect(quoteText(drawUpQuote(QUOTE_REQUEST))).toBe(
      [
        'Quote Q-20270301-002',
        'R. Okafor, 14 Alder Row, Brennan',
        'Fences: north run, east run',
        'Issued 2027-03-01, valid until 2027-03-31. Amounts in USD.',
        '',
        'post swap: 5 posts at 246.90                                    1,234.50',
        'footing reset where the ground is found soft, old concrete        212.53',
        'taken away: 2.5 h at 85.01',
        'visit: 1 site at 95.00                                             95.00',
        '------------------------------------------------------------------------',
        'Subtotal                                                        1,542.03',
        'Tax 8.25 %                                                        127.22',
        'Total USD                                                       1,669.25',
        '',
        'These numbers are planning estimates, not a structural certification.',
        'Call before you dig.',
        '',
      ].join('\n'),
    );
  });

  it('keeps to 72 characters whatever it is told', () => {
    const text = quoteText(
      drawUpQuote({
        ...QUOTE_REQUEST,
        owner: 'w'.repeat(150),
        fenceRefs: Array.from({ length: 40 }, (_, index) => `run ${index}`),
        cautions: ['', 'y'.repeat(73)],
        items: [{ ...QUOTE_REQUEST.items[0]!, what: 'z'.repeat(100) }],
      }),
    );
    expect(text.split('\n').filter((line) => line.length > 72)).toEqual([]);
    expect(text.match(/w{5,}/g)?.join('')).toHaveLength(150);
    expect(text.match(/z/g)).toHaveLength(100);
    expect(text).toContain('run 39');
  });
});
