import type { Candidate, CompiledProblem } from './compiled-problem.ts';
import { makeRoom } from './make-room.ts';
import { makeSchedule, type Schedule } from './schedule.ts';
import { settle } from './settle.ts';
import { offersBySlot, type VisitLoad, visitLoad } from './visit-offers.ts';

/**
 * A first plan, visit by visit: what the plan before said is kept where it can be; then what the sites would do, each for
 * itself, is brought into the hours there are; then, for promises and for each must rank in turn, and last for all the
 * rest, the visit is added that is worth most an hour once its hours are paid for. A visit takes the works of its site
 * that it has come for, and whatever else there pays. Prices [value an hour] by slot.
 */
export function firstPlan(
  compiled: CompiledProblem,
  prices: Float64Array,
  relaxed: readonly Candidate[] = [],
): Schedule {
  const schedule = makeSchedule(compiled);
  // where hours have shrunk since, promises and musts stay before the rest
  const kept = compiled.previousOfJob.filter((candidate) => candidate !== null);
  kept.sort((left, right) => right.importance - left.importance || left.job - right.job);
  for (const candidate of kept) if (schedule.fits(candidate)) schedule.put(candidate);
  placeRelaxed(schedule, prices, relaxed);
  fillLevels(schedule, prices);
  return completePlan(schedule);
}

/**
 * Adds to a schedule whatever still fits and pays, trades lesser jobs for musts, and moves single jobs to better places,
 * until none of it changes anything; the result of it is left as it is by doing it again. Changes the schedule it is given.
 */
export function completePlan(schedule: Schedule): Schedule {
  const free = new Float64Array(schedule.compiled.slotCount);
  for (let round = 0; round < MOST_ROUNDS; round += 1) {
    const before = [...schedule.chosen];
    makeRoom(schedule);
    settle(schedule);
    fillLevels(schedule, free);
    if (before.every((candidate, job) => candidate === schedule.chosen[job])) break;
  }
  return schedule;
}

const MOST_ROUNDS = 20;

function fillLevels(schedule: Schedule, prices: Float64Array): void {
  const levels = new Set([0, ...schedule.compiled.candidates.map(({ importance }) => importance)]);
  for (const level of [...levels].sort((left, right) => right - left)) fillLevel(schedule, prices, level);
}

/** Brings the visits that the sites would make by themselves into the hours there are: musts first, then the long ones. */
function placeRelaxed(schedule: Schedule, prices: Float64Array, relaxed: readonly Candidate[]): void {
  const { compiled } = schedule;
  const bundles = new Map<number, Candidate[]>();
  for (const candidate of relaxed) {
    const visit = compiled.siteOfJob[candidate.job]! * compiled.slotCount + candidate.slot;
    const bundle = bundles.get(visit) ?? [];
    if (bundle.length === 0) bundles.set(visit, bundle);
    bundle.push(candidate);
  }
  const hoursOf = (bundle: readonly Candidate[]): number => bundle.reduce((sum, { hours }) => sum + hours, 0);
  const musts = (bundle: readonly Candidate[]): number =>
    bundle.reduce((most, { importance }) => Math.max(most, importance), 0);
  const order = [...bundles.values()].sort(
    (left, right) => musts(right) - musts(left) || hoursOf(right) - hoursOf(left),
  );
  for (const bundle of order) {
    let best: { readonly placed: readonly Candidate[]; readonly net: number; readonly must: number } | null = null;
    for (let slot = 0; slot < compiled.slotCount; slot += 1) {
      const moved = bundle.flatMap(
        ({ job, option }) =>
          compiled.candidatesOfJob[job]!.find((each) => each.slot === slot && each.option === option) ?? [],
      );
      const site = compiled.siteOfJob[bundle[0]!.job]!;
      const isNew = schedule.jobsAt(site, slot) === 0;
      const visit = site * compiled.slotCount + slot;
      const way = isNew ? compiled.travelHours[visit]! : 0;
      let room = schedule.hoursLeft(slot) - way;
      let net = isNew ? -compiled.travelCost[visit]! - prices[slot]! * way : 0;
      let must = 0;
      const rate = (c: Candidate): number => c.value / Math.max(c.hours, 0.01);
      moved.sort((left, right) => right.importance - left.importance || rate(right) - rate(left));
      const placed = moved.filter((c) => {
        if (c.hours > room || schedule.chosen[c.job] !== null) return false;
        room -= c.hours;
        net += c.value - prices[slot]! * c.hours;
        must += c.importance;
        return true;
      });
      if (placed.length > 0 && (best === null || must > best.must || (must === best.must && net > best.net)))
        best = { placed, net, must };
    }
    for (const candidate of best?.placed ?? []) schedule.put(candidate);
  }
}

/** Adds visits as long as one is left that brings a job of the level, or, at level 0, that pays. */
function fillLevel(schedule: Schedule, prices: Float64Array, level: number): void {
  const { compiled } = schedule;
  const { slotCount, siteRefs, siteOfJob } = compiled;
  const sites = siteRefs.map((_, site) => site);
  const offers = sites.map((site) => offersBySlot(compiled, site, prices));
  const best: (VisitLoad | null)[] = new Array<VisitLoad | null>(sites.length * slotCount).fill(null);
  const refresh = (site: number, slot: number): void => {
    best[site * slotCount + slot] = visitLoad(schedule, { site, slot, offers: offers[site]![slot]!, prices, level });
  };
  for (const site of sites) for (let slot = 0; slot < slotCount; slot += 1) refresh(site, slot);
  for (;;) {
    let most: VisitLoad | null = null;
    for (const load of best) if (load !== null && (most === null || rateOf(load) > rateOf(most))) most = load;
    if (most === null) return;
    for (const candidate of most.candidates) schedule.put(candidate);
    const { slot, job } = most.candidates[0]!;
    for (const site of sites) refresh(site, slot);
    for (let other = 0; other < slotCount; other += 1) refresh(siteOfJob[job]!, other);
  }
}

const rateOf = ({ net, hours }: VisitLoad): number => net / Math.max(hours, 0.01);
