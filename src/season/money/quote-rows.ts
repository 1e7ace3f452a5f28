import { moneyCell } from './money.ts';
import type { PlainRow } from './plain-row.ts';
import type { Quote } from './quote.ts';

/** A quote for other programs: its lines, then subtotal, tax and total, told apart by `kind`. */
export function quoteRows(quote: Quote): readonly PlainRow[] {
  const row = (kind: string, cells: PlainRow): PlainRow => ({
    quote: quote.number,
    issued: quote.issued,
    valid_until: quote.validUntil,
    kind,
    what: '',
    quantity: '',
    unit: '',
    unit_price: '',
    ...cells,
    currency: quote.currency,
  });
  return [
    ...quote.lines.map(({ what, quantity, unit, unitPrice, amount }) =>
      row('line', {
        what,
        quantity: String(quantity),
        unit,
        unit_price: moneyCell(unitPrice),
        amount: moneyCell(amount),
      }),
    ),
    row('subtotal', { amount: moneyCell(quote.subtotal) }),
    row('tax', { what: `${quote.taxPercent} %`, amount: moneyCell(quote.tax) }),
    row('total', { amount: moneyCell(quote.total) }),
  ];
}
