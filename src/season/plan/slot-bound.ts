import type { Candidate, CompiledProblem } from './compiled-problem.ts';
import { jobOffers } from './job-offers.ts';

/** What is asked of the bound on the benefit: what is known of it already, and what the stages before have reached. */
export interface SlotBoundTask {
  readonly compiled: CompiledProblem;
  /** Fences that count, by stage before the last; the bound is over the plans that reach them. */
  readonly reached: readonly number[];
  /** Prices to begin from: what a job earns, and what counting in an earlier stage is worth; any are valid. */
  readonly worths: Float64Array;
  readonly rankPrices: Float64Array;
  /** Value of a plan that is known: it sets the length of the steps, not what is valid. */
  readonly known: number;
  readonly maxSteps: number;
  readonly stopNow: () => boolean;
}

/** Hours are counted in whole quarters [h]; what a visit needs is rounded down, which only relaxes. */
const HOURS_STEP = 0.25;
// habits of the search for prices that did well on made-up problems, not facts
const FIRST_PACE = 0.03;
const PATIENCE = 4;
const quarters = (hours: number): number => Math.floor(hours / HOURS_STEP + 1e-6);

interface SlotOffer {
  readonly job: number;
  readonly value: number;
  readonly quarters: number;
}

/** What one site can be given in one slot. */
interface SlotVisit {
  readonly way: number;
  readonly cost: number;
  readonly offersOfJob: readonly (readonly SlotOffer[])[];
}

/**
 * A second bound on the benefit, which keeps the hours of every slot whole where `priceBound` lets them be shared out: the
 * rule that a job is done once is priced instead. For any prices v of the jobs (at least 0 where the job may be left)
 *
 *   bound(v) = sum of v + sum over slots of the most a slot can hold of (value - v) less the ways
 *
 * is at least the value of every plan. What a slot can hold is a knapsack with a way to pay for each site, and is solved
 * exactly, hour by hour (dynamic programming). Prices are moved along averaged subgradients; the lowest bound is kept.
 * @returns the bound, in the register's currency, and the steps taken
 */
export function slotBound(task: SlotBoundTask): { readonly bound: number; readonly steps: number } {
  const { compiled, reached, known, rankPrices } = task;
  const { slotCount, slotHours, countable } = compiled;
  const inFull = reached.map((count, stage) => count > 0 && count === countable[stage]!);
  const jobs = compiled.jobs.map((_, job) => jobOffers(compiled, job, inFull));
  const rankValue = ({ counts }: Candidate): number =>
    inFull.reduce((sum, full, stage) => (!full && (counts >> stage) & 1 ? sum + rankPrices[stage]! : sum), 0);
  const visits = visitsBySlot(
    compiled,
    jobs.map(({ offers }) => offers),
    rankValue,
  );
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
    for (let slot = 0; slot < slotCount; slot += 1)
      bound += fullestSlot(visits[slot]!, quarters(slotHours[slot]!), prices, times);
    sinceBetter = bound < best - 1e-5 * Math.abs(best) ? 0 : sinceBetter + 1;
    best = Math.min(best, bound);
    if (sinceBetter >= PATIENCE) {
      pace *= 0.6;
      sinceBetter = 0;
    }
    let squares = 0;
    jobs.forEach(({ forced, offers }, job) => {
      const missing = offers.length === 0 || (prices[job] === 0 && !forced && times[job] === 0) ? 0 : 1 - times[job]!;
      direction[job] = 0.5 * direction[job]! + 0.5 * missing;
      squares += direction[job] ** 2;
    });
    if (squares < 1e-12 || bound <= known) break;
    const step = (pace * (bound - known)) / squares;
    jobs.forEach(({ forced }, job) => {
      const moved = prices[job]! - step * direction[job]!;
      prices[job] = forced ? moved : Math.max(0, moved);
    });
  }
  return { bound: best + 1e-9 * Math.abs(best), steps };
}

/** By slot, the sites that can be visited in it with what can be done there. */
function visitsBySlot(
  compiled: CompiledProblem,
  offersOfJob: readonly (readonly Candidate[])[],
  rankValue: (candidate: Candidate) => number,
): readonly (readonly SlotVisit[])[] {
  const { slotCount, slotHours, travelHours, travelCost, jobsOfSite } = compiled;
  const visits: SlotVisit[][] = Array.from({ length: slotCount }, () => []);
  jobsOfSite.forEach((jobs, site) => {
    const bySlot: SlotOffer[][][] = Array.from({ length: slotCount }, () => []);
    for (const job of jobs) {
      const mine = new Map<number, SlotOffer[]>();
      for (const candidate of offersOfJob[job]!) {
        const offer = { job, value: candidate.value + rankValue(candidate), quarters: quarters(candidate.hours) };
        const known = mine.get(candidate.slot);
        if (known) known.push(offer);
        else mine.set(candidate.slot, [offer]);
      }
      for (const [slot, offers] of mine) bySlot[slot]!.push(offers);
    }
    bySlot.forEach((ofJobs, slot) => {
      const at = site * slotCount + slot;
      if (ofJobs.length === 0 || quarters(travelHours[at]!) > quarters(slotHours[slot]!)) return;
      visits[slot]!.push({ way: quarters(travelHours[at]!), cost: travelCost[at]!, offersOfJob: ofJobs });
    });
  });
  return visits;
}

interface Picked {
  readonly offers: readonly SlotOffer[];
  /** By hours used, one more than the offer taken; 0 for none. */
  readonly pick: Uint8Array;
}

/** The most that visits of one slot earn at prices of the jobs; counts the jobs of one best filling in `times`. */
function fullestSlot(visits: readonly SlotVisit[], room: number, prices: Float64Array, times: Int32Array): number {
  const most = new Float64Array(room + 1);
  const taken: { readonly way: number; readonly picked: readonly Picked[]; readonly open: Uint8Array }[] = [];
  for (const { way, cost, offersOfJob } of visits) {
    const paying = offersOfJob
      .map((offers) => offers.filter(({ job, value }) => value > prices[job]!))
      .filter((offers) => offers.length > 0);
    const hoped = paying.reduce(
      (sum, offers) => sum + offers.reduce((high, { job, value }) => Math.max(high, value - prices[job]!), 0),
      0,
    );
    if (hoped <= cost) continue;
    const here = new Float64Array(room + 1).fill(Number.NEGATIVE_INFINITY);
    for (let used = way; used <= room; used += 1) here[used] = most[used - way]! - cost;
    const picked = paying.map((offers) => ({ offers, pick: addBest(here, offers, prices) }));
    const open = new Uint8Array(room + 1);
    for (let used = 0; used <= room; used += 1) {
      if (here[used]! <= most[used]!) continue;
      open[used] = 1;
      most[used] = here[used]!;
    }
    taken.push({ way, picked, open });
  }
  let used = room;
  for (const { way, picked, open } of taken.toReversed()) {
    if (open[used] === 0) continue;
    for (const { offers, pick } of picked.toReversed()) {
      if (pick[used] === 0) continue;
      const offer = offers[pick[used]! - 1]!;
      times[offer.job]! += 1;
      used -= offer.quarters;
    }
    used -= way;
  }
  return most[room]!;
}

/** Adds at most one of a job's offers to what a visit earns, hour by hour; changes `here`. */
function addBest(here: Float64Array, offers: readonly SlotOffer[], prices: Float64Array): Uint8Array {
  const pick = new Uint8Array(here.length);
  for (let used = here.length - 1; used >= 0; used -= 1) {
    let best = here[used]!;
    for (let n = 0; n < offers.length; n += 1) {
      const { job, value, quarters: needs } = offers[n]!;
      if (needs > used) continue;
      const earned = here[used - needs]! + value - prices[job]!;
      if (earned <= best) continue;
      best = earned;
      pick[used] = n + 1;
    }
    here[used] = best;
  }
  return pick;
}
