import { cents } from '../../../src/season/money/money.ts';
import type { QuoteRequest } from '../../../src/season/money/quote.ts';

export const QUOTE_REQUEST: QuoteRequest = {
  site: '14 Alder Row, Brennan',
  owner: 'R. Okafor',
  fenceRefs: ['north run', 'east run'],
  issued: '2027-03-01',
  mark: '002',
  validUntil: '2027-03-31',
  currency: 'USD',
  items: [
    { what: 'post swap', quantity: 5, unit: 'post', unitPrice: cents(24_690) },
    {
      what: 'footing reset where the ground is found soft, old concrete taken away',
      quantity: 2.5,
      unit: 'h',
      unitPrice: cents(8501),
    },
    { what: 'visit', quantity: 1, unit: 'site', unitPrice: cents(9500) },
  ],
  taxPercent: 8.25,
  cautions: ['These numbers are planning estimates, not a structural certification. Call before you dig.'],
};
