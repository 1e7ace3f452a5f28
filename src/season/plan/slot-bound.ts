import type { Candidate, CompiledProblem } from './compiled-problem.ts';
import { jobOffers } from './job-offers.ts';
import { fullestSlot, quartersOfRoom, visitsBySlot } from './slot-filling.ts';

/** What is asked of the bound on the benefit: what is known of it already, and what the stages before have reached. */
export interface SlotBoundTask {
  readonly compiled: CompiledProblem;
  /** Fences that count, by stage before the last; the bound is over the plans that reach them. */
  readonly reached: readonly number[];
  /** Prices to begin from: what a job earns, and what counting in an earlier stage is worth; any are valid. */
  readonly worths: Float64Array;
  readonly rankPrices: Float64Array;
  /** Where the bound may come down to: it sets the length of the steps, not what is valid. */
  readonly target: number;
  readonly maxSteps: number;
  readonly stopNow: () => boolean;
}

/** A bound on the benefit, and the prices of the jobs at the last step. */
export interface SlotBound {
  readonly bound: number;
  readonly prices: Float64Array;
  readonly steps: number;
}

/** How far prices move at first; what did well on made-up problems, no fact. */
export const FIRST_PACE = 0.03;
const PATIENCE = 4;

/**
 * A second bound on the benefit, which keeps the hours of every slot whole where `priceBound` lets them be shared out: the
 * rule that a job is done once is priced instead. For any prices v of the jobs (at least 0 where the job may be left)
 *
 *   bound(v) = sum of v + sum over slots of the most a slot can hold of (value - v) less the ways
 *
 * is at least the value of every plan. What a slot can hold is solved exactly by `fullestSlot`. Prices are moved along
 * averaged subgradients; the lowest bound is kept.
 * @returns the bound, in the register's currency; Infinity where no step was taken
 */
export function slotBound(task: SlotBoundTask): SlotBound {
  const { compiled, reached, target, rankPrices } = task;
  const { slotCount, slotHours, countable } = compiled;
  const inFull = reached.map((count, stage) => count > 0 && count === countable[stage]!);
  const jobs = compiled.jobs.map((_, job) => jobOffers(compiled, job, inFull));
  const worthOf = ({ value, counts }: Candidate): number =>
    inFull.reduce((sum, full, stage) => (!full && (counts >> stage) & 1 ? sum + rankPrices[stage]! : sum), value);
  const offersOfJob = jobs.map(({ offers }) => offers);
  const visits = visitsBySlot(compiled, { offersOfJob, worthOf, rounding: 'down' });
  const base = reached.reduce(
    (sum, count, stage) => (inFull[stage] ? sum : sum - rankPrices[stage]! * count),
    compiled.baseValue,
  );
  const prices = task.worths.slice();
  const direction = new Float64Array(prices.length);
  let best = Number.POSITIVE_INFINITY;
  let pace = FIRST_PACE;
  let sinceBetter = 0;
  let steps = 0;
  while (steps < task.maxSteps && !task.stopNow()) {
    steps += 1;
    const times = new Int32Array(prices.length);
    let bound = prices.reduce((sum, price) => sum + price, base);
    for (let slot = 0; slot < slotCount; slot += 1) {
      const { value, offers } = fullestSlot(visits[slot]!, quartersOfRoom(slotHours[slot]!), prices);
      bound += value;
      for (const { job } of offers) times[job]! += 1;
    }
    sinceBetter = bound < best - 1e-5 * Math.abs(best) ? 0 : sinceBetter + 1;
    best = Math.min(best, bound);
    if (sinceBetter >= PATIENCE) {
      pace *= 0.6;
      sinceBetter = 0;
    }
    if (bound <= target || !movePrices({ jobs, prices, times, direction, length: pace * (bound - target) })) break;
  }
  return { bound: best + 1e-9 * Math.abs(best), prices, steps };
}

/** Prices to be moved, and what the last fillings did. */
export interface PriceStep {
  readonly jobs: readonly { readonly forced: boolean; readonly offers: readonly Candidate[] }[];
  /** By job; changed. */
  readonly prices: Float64Array;
  /** How often each job was done. */
  readonly times: Int32Array;
  /** The averaged subgradient; changed. */
  readonly direction: Float64Array;
  /** How much the bound is hoped to fall. */
  readonly length: number;
}

/** Makes dearer what was done more than once and cheaper what was not done; false where every job was done once. */
export function movePrices({ jobs, prices, times, direction, length }: PriceStep): boolean {
  let squares = 0;
  jobs.forEach(({ forced, offers }, job) => {
    const isIdle = offers.length === 0 || (prices[job] === 0 && !forced && times[job] === 0);
    direction[job] = 0.5 * direction[job]! + 0.5 * (isIdle ? 0 : 1 - times[job]!);
    squares += direction[job] ** 2;
  });
  if (squares < 1e-12) return false;
  const step = length / squares;
  jobs.forEach(({ forced }, job) => {
    const moved = prices[job]! - step * direction[job]!;
    prices[job] = forced ? moved : Math.max(0, moved);
  });
  return true;
}
