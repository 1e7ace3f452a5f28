import { BENEFIT_STAGE, type CompiledProblem } from './compiled-problem.ts';
import { completePlan, firstPlan } from './first-plan.ts';
import type { PlanFound, PlanLimits } from './plan-limits.ts';
import { type PriceBound, priceBound } from './price-bound.ts';
import { rearrange } from './rearrange.ts';
import { compareScores, type Schedule } from './schedule.ts';
import { type SlotBound, slotBound } from './slot-bound.ts';
import { slotBySlot } from './slot-by-slot.ts';

/** What a large plan is searched with. */
export interface PartsTools {
  readonly limits: PlanLimits;
  readonly stopNow: () => boolean;
}

/**
 * Plans what is too large to solve whole. Prices of hours are found for the whole; at these prices every site says what it
 * would do; that is brought into the hours there are and then improved a few slots at a time. The bound of every stage is
 * that of the prices, and of the benefit the lower of two. A plan before that can be kept as it is, and to which nothing can be added, stands.
 */
export function planInParts(compiled: CompiledProblem, { limits, stopNow }: PartsTools): PlanFound {
  const { countable, slotCount } = compiled;
  const even = firstPlan(compiled, new Float64Array(slotCount));
  let steps = 0;
  const boundOf = (stage: number, reached: readonly number[], known: number): PriceBound => {
    const found = priceBound({ compiled, stage, reached, known, maxSteps: limits.priceSteps, stopNow });
    steps += found.steps;
    return found;
  };
  const hoped = boundOf(BENEFIT_STAGE, countable, even.score()[BENEFIT_STAGE]!);
  const closerThan = (priced: PriceBound, reached: readonly number[], target: number): SlotBound => {
    const { worths, rankPrices } = priced;
    const found = slotBound({ compiled, reached, worths, rankPrices, target, maxSteps: limits.slotSteps, stopNow });
    steps += found.steps;
    return { ...found, bound: Math.min(found.bound, priced.bound) };
  };
  const target = hoped.bound - HOPED_GAP * Math.abs(hoped.bound);
  const closer = closerThan(hoped, countable, target);
  let schedule = even;
  if (!standsAsBefore(even)) {
    const starts = [
      even,
      ...PRICE_SHARES.map((share) =>
        firstPlan(
          compiled,
          hoped.prices.map((price) => share * price),
          hoped.relaxed,
        ),
      ),
      completePlan(slotBySlot({ compiled, prices: closer.prices, target, stopNow })),
    ];
    const start = starts.reduce((best, each) => (compareScores(each.score(), best.score()) > 0 ? each : best));
    const better = rearrange({ schedule: start, prices: hoped.prices, steps: limits.searchSteps, stopNow });
    steps += better.steps;
    schedule = completePlan(better.schedule);
  }
  const score = schedule.score();
  const bounds = countable.map((most, stage) => {
    if (score[stage] === most) return most;
    return Math.min(most, Math.floor(boundOf(stage, score.slice(0, stage), score[stage]!).bound + 1e-6));
  });
  const reached = score.slice(0, BENEFIT_STAGE);
  const isFull = reached.every((count, stage) => count === countable[stage]);
  const known = score[BENEFIT_STAGE]!;
  const last = isFull ? closer : closerThan(boundOf(BENEFIT_STAGE, reached, known), reached, known);
  return { schedule, bounds: [...bounds, last.bound], counts: { solves: 0, nodes: 0, iterations: 0, steps } };
}

/** How far under its bound a good plan is thought to lie [-]; it sets the length of steps, no more. */
const HOPED_GAP = 0.025;

/** Shares of the prices at which the first plan is tried: at full prices it leaves hours to visits that do not come. */
const PRICE_SHARES = [0.6, 0.8, 1] as const;

/** True where every fence has what the plan before said, and nothing more could be added. */
function standsAsBefore({ compiled, chosen }: Schedule): boolean {
  const { previousOfJob, jobs } = compiled;
  return (
    jobs.some(({ previous }) => previous !== null) &&
    chosen.every((candidate, job) => candidate === previousOfJob[job]) &&
    jobs.every(({ previous }, job) => previous === null || previousOfJob[job] !== null)
  );
}
