import type { Candidate, CompiledProblem } from './compiled-problem.ts';

/** Hours are counted in whole quarters [h]. */
const HOURS_STEP = 0.25;
const TOLERANCE = 1e-6;

/** How hours become quarters: `down` only relaxes, so that a bound stays one; `up` never fills a slot beyond its hours. */
export type Rounding = 'down' | 'up';

/** Whole quarters of an hour in hours that a slot has [-]. */
export const quartersOfRoom = (hours: number): number => Math.floor(hours / HOURS_STEP + TOLERANCE);

const quartersNeeded = (hours: number, rounding: Rounding): number =>
  rounding === 'down' ? quartersOfRoom(hours) : Math.ceil(hours / HOURS_STEP - TOLERANCE);

/** One thing that could be done in a slot. */
interface SlotOffer {
  readonly candidate: Candidate;
  readonly job: number;
  readonly value: number;
  readonly quarters: number;
}

/** What one site can be given in one slot. */
export interface SlotVisit {
  readonly way: number;
  readonly cost: number;
  readonly offersOfJob: readonly (readonly SlotOffer[])[];
}

/** By slot, the sites that can be visited in it with what can be done there. */
export function visitsBySlot(
  compiled: CompiledProblem,
  parts: {
    readonly offersOfJob: readonly (readonly Candidate[])[];
    readonly worthOf: (candidate: Candidate) => number;
    readonly rounding: Rounding;
  },
): readonly (readonly SlotVisit[])[] {
  const { slotCount, slotHours, travelHours, travelCost, jobsOfSite } = compiled;
  const { offersOfJob, worthOf, rounding } = parts;
  const visits: SlotVisit[][] = Array.from({ length: slotCount }, () => []);
  jobsOfSite.forEach((jobs, site) => {
    const bySlot: SlotOffer[][][] = Array.from({ length: slotCount }, () => []);
    for (const job of jobs) {
      const mine = new Map<number, SlotOffer[]>();
      for (const candidate of offersOfJob[job]!) {
        const quarters = quartersNeeded(candidate.hours, rounding);
        const offer = { candidate, job, value: worthOf(candidate), quarters };
        const known = mine.get(candidate.slot);
        if (known) known.push(offer);
        else mine.set(candidate.slot, [offer]);
      }
      for (const [slot, offers] of mine) bySlot[slot]!.push(offers);
    }
    bySlot.forEach((ofJobs, slot) => {
      const at = site * slotCount + slot;
      const way = quartersNeeded(travelHours[at]!, rounding);
      if (ofJobs.length === 0 || way > quartersOfRoom(slotHours[slot]!)) return;
      visits[slot]!.push({ way, cost: travelCost[at]!, offersOfJob: ofJobs });
    });
  });
  return visits;
}

/** The best filling of a slot, and what it earns. */
export interface SlotFilling {
  readonly value: number;
  readonly offers: readonly SlotOffer[];
}

interface Picked {
  readonly offers: readonly SlotOffer[];
  /** By quarters used, one more than the offer taken; 0 for none. */
  readonly pick: Uint8Array;
}

/**
 * The most that visits of one slot earn at prices of the jobs: a knapsack with a way to pay for each site, solved exactly,
 * quarter by quarter (dynamic programming).
 * @param room quarters that the slot has
 * @param prices what doing a job costs, by job, in the units of the offers' values
 * @param isOut jobs that are not to be had, by job: 1; null for none
 */
export function fullestSlot(
  visits: readonly SlotVisit[],
  room: number,
  prices: Float64Array,
  isOut: Uint8Array | null = null,
): SlotFilling {
  const most = new Float64Array(room + 1);
  const taken: { readonly way: number; readonly picked: readonly Picked[]; readonly open: Uint8Array }[] = [];
  for (const { way, cost, offersOfJob } of visits) {
    const paying: (readonly SlotOffer[])[] = [];
    let hoped = 0;
    for (const offers of offersOfJob) {
      if (isOut?.[offers[0]!.job] === 1) continue;
      const mine = offers.filter(({ job, value }) => value > prices[job]!);
      if (mine.length === 0) continue;
      paying.push(mine);
      hoped += mine.reduce((high, { job, value }) => Math.max(high, value - prices[job]!), 0);
    }
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
  const chosen: SlotOffer[] = [];
  let used = room;
  for (const { way, picked, open } of taken.toReversed()) {
    if (open[used] === 0) continue;
    for (const { offers, pick } of picked.toReversed()) {
      if (pick[used] === 0) continue;
      const offer = offers[pick[used]! - 1]!;
      chosen.push(offer);
      used -= offer.quarters;
    }
    used -= way;
  }
  return { value: most[room]!, offers: chosen };
}

/** Adds at most one of a job's offers to what a visit earns, quarter by quarter; changes `here`. */
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
