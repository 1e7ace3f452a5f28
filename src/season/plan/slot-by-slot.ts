import { BENEFIT_STAGE, type Candidate, type CompiledProblem } from './compiled-problem.ts';
import { type JobOffers, jobOffers } from './job-offers.ts';
import { makeSchedule, type Schedule, VALUE_TOLERANCE } from './schedule.ts';
import { FIRST_PACE, movePrices } from './slot-bound.ts';
import { fullestSlot, quartersOfRoom, type SlotFilling, type SlotVisit, visitsBySlot } from './slot-filling.ts';

/** What a plan is made from slot by slot. */
export interface SlotBySlotTask {
  readonly compiled: CompiledProblem;
  /** What doing a job costs, by job: the prices that gave the lowest bound. */
  readonly prices: Float64Array;
  /** A value that a good plan may reach; it sets how far prices move. */
  readonly target: number;
  readonly stopNow: () => boolean;
}

// habits that did well on made-up problems, not facts
const ROUNDS = 20;
const STEPS_A_ROUND = 3;
const LEAST_LENGTH = 0.005;
const MOST_REPAIRS = 200;
const MOST_SWEEPS = 5;
/** What counting in the last stage but one outweighs of value, and each stage of the one after it. */
const MUST_WEIGHT = 1e6;
const STAGE_WEIGHT = 50;

/**
 * A first plan out of the prices of the jobs: at these prices each slot is filled as well as it can be; the slots whose
 * jobs no other slot wants are settled, the prices of what is left are moved, and so on until every slot is settled. What
 * has to be done and found no place is then brought in where filling a slot anew loses least by it.
 */
export function slotBySlot({ compiled, prices: first, target, stopNow }: SlotBySlotTask): Schedule {
  const { slotCount, slotHours, countable } = compiled;
  const inFull = countable.map((count) => count > 0);
  const jobs = compiled.jobs.map((_, job) => jobOffers(compiled, job, inFull));
  const visits = visitsBySlot(compiled, {
    offersOfJob: jobs.map(({ offers }) => offers),
    worthOf: ({ value }) => value,
    rounding: 'up',
  });
  const prices = first.slice();
  const direction = new Float64Array(prices.length);
  const isOut = new Uint8Array(prices.length);
  const schedule = makeSchedule(compiled);
  const open = new Set(Array.from({ length: slotCount }, (_, slot) => slot));
  const fill = (slot: number): SlotFilling =>
    fullestSlot(visits[slot]!, quartersOfRoom(slotHours[slot]!), prices, isOut);
  const aRound = Math.max(1, Math.ceil(slotCount / ROUNDS));
  while (open.size > 0 && !stopNow()) {
    let fillings = new Map<number, SlotFilling>();
    let times = new Int32Array(prices.length);
    for (let step = 0; step < STEPS_A_ROUND; step += 1) {
      fillings = new Map([...open].map((slot) => [slot, fill(slot)]));
      times = new Int32Array(prices.length);
      let bound = 0;
      prices.forEach((price, job) => {
        if (isOut[job] === 0) bound += price;
      });
      for (const { value, offers } of fillings.values()) {
        bound += value;
        for (const { job } of offers) times[job]! += 1;
      }
      const still = jobs.map((job, index) => (isOut[index] === 1 ? { forced: job.forced, offers: [] } : job));
      const left = target - schedule.score()[BENEFIT_STAGE]!;
      const length = FIRST_PACE * Math.max(bound - left, LEAST_LENGTH * Math.abs(bound));
      movePrices({ jobs: still, prices, times, direction, length });
    }
    const contested = ({ offers }: SlotFilling): number =>
      offers.length === 0 ? 1 : offers.filter(({ job }) => times[job]! > 1).length / offers.length;
    const settled = [...fillings]
      .map(([slot, filling]) => ({ slot, share: contested(filling) }))
      .sort((left, right) => left.share - right.share || left.slot - right.slot)
      .slice(0, aRound);
    for (const [index, { slot }] of settled.entries()) {
      // jobs of the slots just settled are gone
      const { offers } = index === 0 ? fillings.get(slot)! : fill(slot);
      for (const { candidate, job } of offers) {
        if (!schedule.fits(candidate)) continue;
        schedule.put(candidate);
        isOut[job] = 1;
      }
      open.delete(slot);
    }
  }
  refillSlots(schedule, jobs, stopNow);
  return schedule;
}

/** What a candidate is worth with the stages it counts in, so that no value outweighs a stage. */
function weighed({ value, counts }: Candidate): number {
  let sum = value;
  for (let stage = 0; stage < BENEFIT_STAGE; stage += 1)
    if ((counts >> stage) & 1) sum += MUST_WEIGHT * STAGE_WEIGHT ** (BENEFIT_STAGE - 1 - stage);
  return sum;
}

/** Fills single slots anew with what waits and what they hold: first where that brings in most of what must be done, then wherever it is better. */
function refillSlots(schedule: Schedule, jobs: readonly JobOffers[], stopNow: () => boolean): void {
  const { compiled, chosen } = schedule;
  const { slotCount, slotHours, travelCost, siteOfJob } = compiled;
  const offersOfJob = jobs.map(({ offers }) => offers);
  const visits: readonly (readonly SlotVisit[])[] = visitsBySlot(compiled, {
    offersOfJob,
    worthOf: weighed,
    rounding: 'up',
  });
  const free = new Float64Array(chosen.length);
  const isOut = Uint8Array.from(chosen, (candidate) => (candidate === null ? 0 : 1));
  const worth = (candidates: readonly Candidate[], slot: number): number => {
    const sites = new Set(candidates.map(({ job }) => siteOfJob[job]!));
    const ways = [...sites].reduce((sum, site) => sum + travelCost[site * slotCount + slot]!, 0);
    return candidates.reduce((sum, candidate) => sum + weighed(candidate), -ways);
  };
  const refilled = (slot: number): { readonly slot: number; readonly gain: number; readonly put: Candidate[] } => {
    const mine = chosen.filter((candidate) => candidate?.slot === slot) as Candidate[];
    for (const { job } of mine) isOut[job] = 0;
    const { offers } = fullestSlot(visits[slot]!, quartersOfRoom(slotHours[slot]!), free, isOut);
    for (const { job } of mine) isOut[job] = 1;
    const put = offers.map(({ candidate }) => candidate);
    return { slot, gain: worth(put, slot) - worth(mine, slot), put };
  };
  const apply = ({ slot, put }: { readonly slot: number; readonly put: readonly Candidate[] }): void => {
    for (const candidate of [...chosen]) {
      if (candidate?.slot !== slot) continue;
      schedule.take(candidate.job);
      isOut[candidate.job] = 0;
    }
    for (const candidate of put) {
      if (!schedule.fits(candidate)) continue;
      schedule.put(candidate);
      isOut[candidate.job] = 1;
    }
  };
  for (let repair = 0; repair < MOST_REPAIRS && !stopNow(); repair += 1) {
    const missing = jobs.flatMap(({ forced, offers }, job) => (forced && chosen[job] === null ? offers : []));
    const slots = [...new Set(missing.map(({ slot }) => slot))].sort((left, right) => left - right);
    const best = slots.map(refilled).reduce((most, each) => (each.gain > most.gain ? each : most), NO_REFILL);
    if (best.gain <= VALUE_TOLERANCE) break;
    apply(best);
  }
  for (let sweep = 0, moved = true; moved && sweep < MOST_SWEEPS && !stopNow(); sweep += 1) {
    moved = false;
    for (let slot = 0; slot < slotCount; slot += 1) {
      const better = refilled(slot);
      if (better.gain <= VALUE_TOLERANCE) continue;
      apply(better);
      moved = true;
    }
  }
}

const NO_REFILL = { slot: -1, gain: 0, put: [] as Candidate[] };
