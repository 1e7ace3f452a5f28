import { minusMoney } from '../season/money/money.ts';
import type { ReservePlan, SetAside } from '../season/money/reserve-plan.ts';
import type { FenceTable } from './reserve-fences.ts';
import { wholeText } from './reserve-fences.ts';

/** The years of a plan side by side, in whole units of the currency of each year. */
export const reserveYearTable = ({ years }: Pick<ReservePlan, 'years'>): FenceTable => ({
  headings: ['year', 'repairs', 'replacing', 'p10', 'p50', 'p90', 'opening', 'paid in', 'interest', 'closing'],
  rows: years.map(({ year, repairs, spending, spendingBand, opening, contribution, interest, closing }) => [
    String(year),
    ...[
      repairs,
      minusMoney(spending, repairs),
      spendingBand.p10,
      spendingBand.p50,
      spendingBand.p90,
      opening,
      contribution,
      interest,
      closing,
    ].map(wholeText),
  ]),
  right: [1, 2, 3, 4, 5, 6, 7, 8, 9],
});

/** What to set aside: once and then every year, for what is expected and for what nine courses in ten stay under. */
export function setAsideTable({ setAside }: Pick<ReservePlan, 'setAside'>): FenceTable {
  const row = (name: string, { flat, rising }: SetAside): readonly string[] => [
    name,
    ...[flat.atOnce, flat.firstYear, rising.atOnce, rising.firstYear].map(wholeText),
  ];
  return {
    headings: ['to set aside', 'at once', 'and every year', 'or at once', 'and first year,\nrising with prices'],
    rows: [row('for what is expected', setAside.expected), row('enough in nine courses of ten', setAside.nineInTen)],
    right: [1, 2, 3, 4],
  };
}
