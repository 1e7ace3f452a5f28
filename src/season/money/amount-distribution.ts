import type { Band } from '../../forecast/band.ts';
import { cents, type Money, NO_MONEY } from './money.ts';

/** One amount that may come about, and its probability [-]. */
export interface Chance {
  readonly amount: Money;
  readonly probability: number;
}

/** Amounts in ascending order, each once, with probabilities that sum to 1. */
export type AmountDistribution = readonly Chance[];

/** Different sums up to which a distribution is kept exactly, and steps on which it is laid beyond. */
const MOST_AMOUNTS = 2048;
/** Slack of a cumulative probability, for rounding in its sum. */
const SLACK = 1e-9;

/** Chances as a distribution: equal amounts put together, impossible ones left out. */
export function distributionOf(chances: readonly Chance[]): AmountDistribution {
  const byAmount = new Map<Money, number>();
  for (const { amount, probability } of chances)
    if (probability > 0) byAmount.set(amount, (byAmount.get(amount) ?? 0) + probability);
  return [...byAmount].map(([amount, probability]) => ({ amount, probability })).sort((a, b) => a.amount - b.amount);
}

/** The mean of a distribution [cents], not rounded. */
export const meanCents = (distribution: AmountDistribution): number =>
  distribution.reduce((sum, { amount, probability }) => sum + amount * probability, 0);

/** The smallest amount that is not exceeded with the probability given, 0 < p < 1. */
export function quantileAmount(distribution: AmountDistribution, probability: number): Money {
  let reached = 0;
  for (const chance of distribution) {
    reached += chance.probability;
    if (reached >= probability - SLACK) return chance.amount;
  }
  throw new RangeError(`quantile ${probability} of a distribution that sums to ${reached}`);
}

/**
 * The sum of independent amounts by convolution: exact while it has no more than 2,048 different sums, beyond that laid on 2,048
 * even steps over all that can come about, each amount shared between the steps beside it so that the mean stays.
 */
export function independentSum(parts: readonly AmountDistribution[]): AmountDistribution {
  let sum: AmountDistribution = [{ amount: NO_MONEY, probability: 1 }];
  for (const [index, part] of parts.entries()) {
    sum = distributionOf(
      sum.flatMap((left) =>
        part.map((right) => ({
          amount: cents(left.amount + right.amount),
          probability: left.probability * right.probability,
        })),
      ),
    );
    if (sum.length > MOST_AMOUNTS) return sumOnSteps(sum, parts.slice(index + 1));
  }
  return sum;
}

const least = (part: AmountDistribution): number => part[0]!.amount;
const span = (part: AmountDistribution): number => part.at(-1)!.amount - least(part);

/** The convolution of all parts on even steps from the least sum to the greatest. */
function sumOnSteps(begun: AmountDistribution, rest: readonly AmountDistribution[]): AmountDistribution {
  const parts = [begun, ...rest];
  const low = parts.reduce((sum, part) => sum + least(part), 0);
  // Each part is rounded up to whole steps once, for which it has one step in hand.
  const step = Math.ceil(parts.reduce((sum, part) => sum + span(part), 0) / (MOST_AMOUNTS - 1));
  const cells = MOST_AMOUNTS + parts.length;
  let sum = new Float64Array(cells);
  sum[0] = 1;
  let used = 1;
  for (const part of parts) {
    const next = new Float64Array(cells);
    for (const { amount, probability } of part) {
      const at = (amount - least(part)) / step;
      const below = Math.floor(at);
      const over = at - below;
      for (let cell = 0; cell < used; cell += 1) {
        const mass = sum[cell]! * probability;
        next[cell + below] = next[cell + below]! + mass * (1 - over);
        if (over > 0) next[cell + below + 1] = next[cell + below + 1]! + mass * over;
      }
    }
    used += Math.ceil(span(part) / step);
    sum = next;
  }
  return distributionOf(Array.from(sum, (probability, cell) => ({ amount: cents(low + cell * step), probability })));
}

/** How the fences of one plan go together: each by itself, or all early or all late together. The truth lies between. */
export type Dependence = 'independent' | 'together';

/**
 * 10th, 50th and 90th percentile of the sum of amounts [cents], each a whole number.
 * @param dependence `independent` by convolution; `together` as the sum of the parts' quantiles, which is exact where all go by
 * one common chance (comonotonic amounts)
 */
export function sumBand(parts: readonly AmountDistribution[], dependence: Dependence): Band {
  const sum = dependence === 'independent' ? independentSum(parts) : null;
  const at = (probability: number): number =>
    sum
      ? quantileAmount(sum, probability)
      : parts.reduce((total, part) => total + quantileAmount(part, probability), 0);
  return { p10: at(0.1), p50: at(0.5), p90: at(0.9) };
}
