import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cents } from '../../../src/season/money/money.ts';
import { drawUpQuote, quoteNumber } from '../../../src/season/money/quote.ts';
import { QUOTE_REQUEST } from './made-up-quote.ts';

describe('a quote', () => {
  it('adds up its lines, tax and total to the cent', () => {
    const quote = drawUpQuote(QUOTE_REQUEST);
    expect(quote.number).toBe('Q-20270301-002');
    expect(quote.lines.map(({ amount }) => amount)).toEqual([123_450, 21_253, 9500]);
    expect(quote.subtotal).toBe(154_203);
    // 8.25 % of 1,542.03 is 127.217475.
    expect(quote.tax).toBe(12_722);
    expect(quote.total).toBe(166_925);
    expect(quote).toMatchObject({
      owner: 'R. Okafor',
      issued: '2027-03-01',
      validUntil: '2027-03-31',
      currency: 'USD',
    });
    expect(quote).not.toHaveProperty('items');
  });

  it('rounds each line once, and the tax once on their sum', () => {
    const third = { what: 'gravel', quantity: 0.333, unit: 't', unitPrice: cents(1000) };
    const quote = drawUpQuote({ ...QUOTE_REQUEST, taxPercent: 10, items: [third, third, third] });
    expect(quote.lines.map(({ amount }) => amount)).toEqual([333, 333, 333]);
    expect([quote.subtotal, quote.tax, quote.total]).toEqual([999, 100, 1099]);
    expect(drawUpQuote({ ...QUOTE_REQUEST, taxPercent: 0 }).tax).toBe(0);
  });

  it('sums exactly whatever is asked for', () => {
    const item = fc.record({
      what: fc.constant('post swap'),
      quantity: fc.integer({ min: 1, max: 100_000 }).map((thousandths) => thousandths / 1000),
      unit: fc.constant('post'),
      unitPrice: fc.nat({ max: 1_000_000 }).map(cents),
    });
    fc.assert(
      fc.property(fc.array(item, { minLength: 1, maxLength: 12 }), fc.nat({ max: 2500 }), (items, hundredths) => {
        const quote = drawUpQuote({ ...QUOTE_REQUEST, items, taxPercent: hundredths / 100 });
        const exact = items.map(({ quantity, unitPrice }) => {
          const product = BigInt(Math.round(quantity * 1000)) * BigInt(unitPrice);
          return Number((product + 500n) / 1000n);
        });
        expect(quote.lines.map(({ amount }) => amount)).toEqual(exact);
        const subtotal = exact.reduce((sum, one) => sum + BigInt(one), 0n);
        expect(BigInt(quote.subtotal)).toBe(subtotal);
        expect(BigInt(quote.tax)).toBe((subtotal * BigInt(hundredths) + 5000n) / 10_000n);
        expect(quote.total).toBe(quote.subtotal + quote.tax);
      }),
    );
  });

  it('is refused with the place, the value and the way out', () => {
    const refuse = (change: Partial<typeof QUOTE_REQUEST>) => () => drawUpQuote({ ...QUOTE_REQUEST, ...change });
    const [first] = QUOTE_REQUEST.items;
    expect(refuse({ validUntil: '2027-02-28' })).toThrow(
      /Q-20270301-002, valid until: 2027-02-28;.*not before 2027-03-01/,
    );
    expect(refuse({ validUntil: 'spring' })).toThrow(/valid until: spring/);
    expect(drawUpQuote({ ...QUOTE_REQUEST, validUntil: '2027-03-01' }).validUntil).toBe('2027-03-01');
    expect(refuse({ taxPercent: -1 })).toThrow(/tax: -1 %/);
    expect(refuse({ taxPercent: 101 })).toThrow(/tax: 101 %/);
    expect(refuse({ items: [] })).toThrow(/lines: none; give one at least/);
    expect(refuse({ items: [{ ...first!, quantity: 0 }] })).toThrow(/post swap: quantity 0/);
    expect(refuse({ items: [{ ...first!, quantity: Infinity }] })).toThrow(RangeError);
    expect(refuse({ items: [{ ...first!, unitPrice: cents(-1) }] })).toThrow(/post swap: unit price -0\.01/);
  });
});

describe('the number of a quote', () => {
  it('is its day and its mark', () => {
    expect(quoteNumber('2027-12-05', '001')).toBe('Q-20271205-001');
    expect(quoteNumber('2027-12-05', '4F9A01C2')).toBe('Q-20271205-4F9A01C2');
    expect(() => quoteNumber('2027-12-05', '')).toThrow(/mark: ""; give 1 to 12 digits and capital letters/);
    expect(() => quoteNumber('2027-12-05', '0123456789ABC')).toThrow(RangeError);
    expect(() => quoteNumber('2027-12-05', '4f9a')).toThrow(/mark: "4f9a"/);
    expect(() => quoteNumber('2027-13-05', '1')).toThrow(/issued: 2027-13-05/);
  });
});
