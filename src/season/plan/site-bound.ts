/**
 * One site by itself, at given prices: which visits to open and which jobs to do in them, without any limit of hours.
 * It is a facility-location problem. Its dual is a worth `v` for every job so that no visit earns more than it costs,
 *
 *   sum over jobs of max(0, gain[job][slot] - v[job]) <= visit[slot]   for every slot,
 *
 * and by weak duality no choice of visits and jobs earns more than the sum of the worths (Erlenkotter 1978, dual
 * ascent). Any worths that keep the rows are valid, however they were found.
 */
export interface SiteProblem {
  readonly jobCount: number;
  readonly slotCount: number;
  /** Gain by job and slot, at `job * slotCount + slot`; -Infinity where the job cannot be done. */
  readonly gain: Float64Array;
  /** What opening a visit costs, by slot; Infinity where the crew does not go. */
  readonly visit: Float64Array;
  /** 1 for each job that has to be done. */
  readonly forced: Uint8Array;
}

/** A bound on what a site can earn, and a choice that comes near it. */
export interface SiteBound {
  readonly bound: number;
  /** The worth of each job; the bound is their sum. */
  readonly worth: Float64Array;
  /** The slot of each job; -1 where it is left. */
  readonly slotOfJob: Int32Array;
}

/** Lowers the worths of the jobs, level by level, as far as the visits' costs allow; then opens the visits that are paid for. */
export function siteBound({ jobCount, slotCount, gain, visit, forced }: SiteProblem): SiteBound {
  const worth = new Float64Array(jobCount);
  const slack = Float64Array.from(visit);
  const active: number[] = [];
  for (let job = 0; job < jobCount; job += 1) {
    let best = Number.NEGATIVE_INFINITY;
    for (let slot = 0, at = job * slotCount; slot < slotCount; slot += 1, at += 1)
      if (gain[at]! > best) best = gain[at]!;
    if (forced[job] === 1 || best > 0) active.push(job);
    worth[job] = forced[job] === 1 ? best : Math.max(0, best);
  }
  let open = active;
  while (open.length > 0) {
    const still: number[] = [];
    for (const job of open) if (lowerOnce(job, { slotCount, gain, forced, worth, slack })) still.push(job);
    open = still;
  }
  let bound = 0;
  for (const job of active) bound += worth[job]!;
  return { bound, worth, slotOfJob: choice({ jobCount, slotCount, gain, forced, worth, slack, active }) };
}

interface Ascent {
  readonly slotCount: number;
  readonly gain: Float64Array;
  readonly forced: Uint8Array;
  readonly worth: Float64Array;
  readonly slack: Float64Array;
}

const EPSILON = 1e-9;

/** Lowers the worth of one job to the next gain below, or until a visit is used up; false where it can go no lower. */
function lowerOnce(job: number, { slotCount, gain, forced, worth, slack }: Ascent): boolean {
  const from = job * slotCount;
  const now = worth[job]!;
  const floor = forced[job] === 1 ? Number.NEGATIVE_INFINITY : 0;
  let next = floor;
  let room = Number.POSITIVE_INFINITY;
  for (let slot = 0; slot < slotCount; slot += 1) {
    const earned = gain[from + slot]!;
    if (earned >= now - EPSILON) {
      if (slack[slot]! < room) room = slack[slot]!;
    } else if (earned > next) next = earned;
  }
  // a forced job below its lowest gain is held by the visits alone
  const step = Math.min(now - next, room);
  if (!(step > EPSILON) || step === Number.POSITIVE_INFINITY) return false;
  for (let slot = 0; slot < slotCount; slot += 1) if (gain[from + slot]! >= now - EPSILON) slack[slot]! -= step;
  worth[job] = now - step;
  return step < room && worth[job] > floor;
}

/** Opens a paid-for visit for every job that none serves yet, then gives each job the best visit that is open. */
function choice(ascent: Ascent & { readonly jobCount: number; readonly active: readonly number[] }): Int32Array {
  const { jobCount, slotCount, gain, forced, worth, slack, active } = ascent;
  const opened = new Uint8Array(slotCount);
  for (const job of active) {
    const from = job * slotCount;
    let paid = -1;
    let served = false;
    for (let slot = 0; slot < slotCount && !served; slot += 1) {
      if (gain[from + slot]! < worth[job]! - EPSILON) continue;
      if (opened[slot] === 1) served = true;
      else if (slack[slot]! <= 1e-6 && (paid < 0 || gain[from + slot]! > gain[from + paid]!)) paid = slot;
    }
    if (!served && paid >= 0) opened[paid] = 1;
  }
  const slotOfJob = new Int32Array(jobCount).fill(-1);
  for (const job of active) {
    let best = forced[job] === 1 ? Number.NEGATIVE_INFINITY : 0;
    for (let slot = 0; slot < slotCount; slot += 1) {
      if (opened[slot] === 1 && gain[job * slotCount + slot]! > best) {
        best = gain[job * slotCount + slot]!;
        slotOfJob[job] = slot;
      }
    }
  }
  return slotOfJob;
}
