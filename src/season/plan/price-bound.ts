import { BENEFIT_STAGE, type Candidate, type CompiledProblem, gainInStage } from './compiled-problem.ts';
import { pricedSite } from './priced-site.ts';

/** What is asked of the bound: a stage, and what the stages before it have reached. */
export interface PriceBoundTask {
  readonly compiled: CompiledProblem;
  readonly stage: number;
  /** Fences that count, by stage before this one; the bound is over the plans that reach them. */
  readonly reached: readonly number[];
  /** Value of a plan that is known: it sets the length of the steps, not what is valid. */
  readonly known: number;
  readonly maxSteps: number;
  readonly stopNow: () => boolean;
}

/** A bound over all plans, and the prices of hours that gave it. */
export interface PriceBound {
  /** No plan that reaches the stages before has a higher value in this stage. */
  readonly bound: number;
  /** What an hour is worth in each slot, in units of the stage. */
  readonly prices: Float64Array;
  /** What one more fence is worth in each earlier stage that is not served in full, in units of the stage. */
  readonly rankPrices: Float64Array;
  /** What each job earns at most at these prices, in units of the stage. */
  readonly worths: Float64Array;
  /** What the sites would do at these prices, each for itself; may ask for more hours than there are. */
  readonly relaxed: readonly Candidate[];
  readonly steps: number;
}

interface Priced {
  readonly bound: number;
  readonly relaxed: readonly Candidate[];
  readonly worths: Float64Array;
  /** By slot, hours left, and by earlier stage, fences more than asked; negative where it fails. */
  readonly left: Float64Array;
}

/**
 * A bound on the whole plan: Lagrangian relaxation of the crews' hours.
 *
 * Every slot's hours get a price p >= 0, and every earlier stage that is not served in full a price r >= 0. For any prices
 *
 *   bound(p, r) = sum p * hours - sum r * reached + sum over sites of the best the site can earn when it pays for its hours
 *
 * is at least the value of every plan, since a plan that keeps the hours and reaches the stages only adds to it. The sites
 * are then alone with themselves and are bounded from above by `pricedSite`. Prices are moved along averaged subgradients;
 * the lowest bound met is kept, and all of them are valid.
 */
export function priceBound(task: PriceBoundTask): PriceBound {
  const { compiled, stage, reached, known } = task;
  const { slotCount, slotHours, countable } = compiled;
  const inFull = reached.map((count, earlier) => count > 0 && count === countable[earlier]!);
  const sites = compiled.jobsOfSite.map((_, site) => pricedSite(compiled, { site, stage, inFull }));
  let steps = 0;
  const evaluate = (prices: Float64Array, rankPrices: Float64Array): Priced => {
    const left = new Float64Array(slotCount + reached.length);
    left.set(slotHours);
    const relaxed: Candidate[] = [];
    const worths = new Float64Array(compiled.jobs.length);
    let bound = stage === BENEFIT_STAGE ? compiled.baseValue : 0;
    for (let slot = 0; slot < slotCount; slot += 1) bound += prices[slot]! * slotHours[slot]!;
    reached.forEach((count, earlier) => {
      if (inFull[earlier]) return;
      bound -= rankPrices[earlier]! * count;
      left[slotCount + earlier] = -count;
    });
    for (const site of sites)
      bound += site({ prices, rankPrices, left, relaxed, worths, chooseShare: steps % 20 === 0 });
    steps += 1;
    return { bound, relaxed, worths, left };
  };

  const prices = new Float64Array(slotCount).fill(evenPrice(compiled, stage, evaluate, reached.length));
  const rankPrices = new Float64Array(reached.length);
  const direction = new Float64Array(slotCount + reached.length);
  let best: PriceBound = {
    bound: Number.POSITIVE_INFINITY,
    prices,
    rankPrices,
    worths: new Float64Array(compiled.jobs.length),
    relaxed: [],
    steps,
  };
  let pace = FIRST_PACE;
  let sinceBetter = 0;
  do {
    const { bound, relaxed, worths, left } = evaluate(prices, rankPrices);
    sinceBetter = bound < best.bound - 1e-5 * Math.abs(best.bound) ? 0 : sinceBetter + 1;
    if (bound < best.bound)
      best = { bound, prices: prices.slice(), rankPrices: rankPrices.slice(), worths, relaxed, steps };
    if (sinceBetter >= PATIENCE) {
      pace *= 0.6;
      sinceBetter = 0;
    }
    let squares = 0;
    for (let at = 0; at < direction.length; at += 1) {
      direction[at] = 0.6 * direction[at]! + 0.4 * left[at]!;
      squares += direction[at]! ** 2;
    }
    if (squares < 1e-12 || bound <= known || pace < LAST_PACE) break;
    const step = (pace * (bound - known)) / squares;
    for (let slot = 0; slot < slotCount; slot += 1) prices[slot] = Math.max(0, prices[slot]! - step * direction[slot]!);
    for (let earlier = 0; earlier < reached.length; earlier += 1)
      rankPrices[earlier] = Math.max(0, rankPrices[earlier]! - step * direction[slotCount + earlier]!);
  } while (steps < task.maxSteps && !task.stopNow());
  return { ...best, bound: best.bound + 1e-9 * Math.abs(best.bound), steps };
}

const FIRST_PACE = 0.5;
const LAST_PACE = 2e-3;
/** Steps without a better bound before the pace falls. */
const PATIENCE = 10;

/** The one price for all hours that gives the lowest bound, nearly: a search by golden section, the bound being convex in it. */
function evenPrice(
  { slotCount, candidates }: CompiledProblem,
  stage: number,
  evaluate: (prices: Float64Array, rankPrices: Float64Array) => Priced,
  rankCount: number,
): number {
  const boundAt = (price: number): number =>
    evaluate(new Float64Array(slotCount).fill(price), new Float64Array(rankCount)).bound;
  let high = candidates.reduce(
    (most, each) => Math.max(most, gainInStage(each, stage) / Math.max(each.hours, 0.25)),
    0,
  );
  let low = 0;
  const ratio = (Math.sqrt(5) - 1) / 2;
  let left = high - ratio * (high - low);
  let right = low + ratio * (high - low);
  let [atLeft, atRight] = [boundAt(left), boundAt(right)];
  for (let narrowings = 0; narrowings < 14; narrowings += 1) {
    if (atLeft <= atRight) {
      [high, right, atRight] = [right, left, atLeft];
      left = high - ratio * (high - low);
      atLeft = boundAt(left);
    } else {
      [low, left, atLeft] = [left, right, atRight];
      right = low + ratio * (high - low);
      atRight = boundAt(right);
    }
  }
  return (low + high) / 2;
}
