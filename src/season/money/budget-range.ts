/** Lowest and highest that works may come to, in the register's currency, before tax. */
export interface BudgetRange {
  readonly low: number;
  readonly high: number;
}

/**
 * How far a price may be off once the ground is open [-]: of a price that the office set itself, and of the order of magnitude that
 * ships with the program. Source: judgement.
 */
const OFF_BY = {
  office: { below: 0.9, above: 1.25 },
  shipped: { below: 0.75, above: 1.4 },
} as const;

/** Figures that a budget is told to [-]. */
const FIGURES = 2;

function roundedTo(value: number, round: (value: number) => number): number {
  if (value <= 0) return 0;
  const step = 10 ** (Math.floor(Math.log10(value)) - FIGURES + 1);
  // a value that is whole steps already must not be moved by the last bit
  return round(Number((value / step).toFixed(6))) * step;
}

/**
 * From which price to which works may come: the catalogue's price with what it may be off by, told to two figures, downwards and upwards.
 * @param price what the catalogue makes of it, 0 or more, in the register's currency
 * @param source whether the office set the prices itself or the shipped orders of magnitude stand
 * Source: `OFF_BY` (judgement).
 */
export function budgetRange(price: number, source: keyof typeof OFF_BY): BudgetRange {
  const { below, above } = OFF_BY[source];
  return { low: roundedTo(price * below, Math.floor), high: roundedTo(price * above, Math.ceil) };
}

/** Ranges added up. */
export const sumRanges = (ranges: readonly BudgetRange[]): BudgetRange => ({
  low: roundedTo(
    ranges.reduce((sum, { low }) => sum + low, 0),
    Math.floor,
  ),
  high: roundedTo(
    ranges.reduce((sum, { high }) => sum + high, 0),
    Math.ceil,
  ),
});
