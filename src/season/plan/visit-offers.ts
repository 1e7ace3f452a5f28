import type { Candidate, CompiledProblem } from './compiled-problem.ts';
import type { Schedule } from './schedule.ts';

/** What a visit would take on, were it made or made longer. */
export interface VisitLoad {
  readonly candidates: readonly Candidate[];
  /** Value once the hours are paid for, and the hours used, the way included. */
  readonly net: number;
  readonly hours: number;
}

/** The works a site would have done in each slot at given prices: each job's best, musts first, then by value an hour. */
export function offersBySlot(
  compiled: CompiledProblem,
  site: number,
  prices: Float64Array,
): readonly (readonly Candidate[])[] {
  const bySlot: Candidate[][] = Array.from({ length: compiled.slotCount }, () => []);
  const net = ({ value, slot, hours }: Candidate): number => value - prices[slot]! * hours;
  for (const job of compiled.jobsOfSite[site]!) {
    const best = new Map<number, Candidate>();
    for (const candidate of compiled.candidatesOfJob[job]!) {
      const known = best.get(candidate.slot);
      const better =
        known === undefined ||
        candidate.importance > known.importance ||
        (candidate.importance === known.importance && net(candidate) > net(known));
      if (better) best.set(candidate.slot, candidate);
    }
    for (const candidate of best.values())
      if (candidate.importance > 0 || net(candidate) > 0) bySlot[candidate.slot]!.push(candidate);
  }
  const rate = ({ value, hours }: Candidate): number => value / Math.max(hours, 0.01);
  for (const offers of bySlot)
    offers.sort((left, right) => right.importance - left.importance || rate(right) - rate(left));
  return bySlot;
}

/** A visit that might be made, and which must it has to bring to be worth looking at; 0 where it only has to pay. */
export interface VisitTask {
  readonly site: number;
  readonly slot: number;
  readonly offers: readonly Candidate[];
  readonly prices: Float64Array;
  readonly level: number;
}

/** What the visit would take on within the hours left; null where it brings no must of the level, or does not pay. */
export function visitLoad(schedule: Schedule, { site, slot, offers, prices, level }: VisitTask): VisitLoad | null {
  const { compiled, chosen } = schedule;
  const price = prices[slot]!;
  const isNew = schedule.jobsAt(site, slot) === 0;
  const visit = site * compiled.slotCount + slot;
  let hours = isNew ? compiled.travelHours[visit]! : 0;
  let net = isNew ? -compiled.travelCost[visit]! - price * hours : 0;
  const room = schedule.hoursLeft(slot);
  let bringsMust = false;
  let candidates: Candidate[] | null = null;
  for (const candidate of offers) {
    if (chosen[candidate.job] !== null || hours + candidate.hours > room || candidate.importance > level) continue;
    if (level > 0 && candidate.importance === level) bringsMust = true;
    if (candidates === null) candidates = [];
    candidates.push(candidate);
    hours += candidate.hours;
    net += candidate.value - price * candidate.hours;
  }
  if (candidates === null || (level > 0 ? !bringsMust : net <= 0)) return null;
  return { candidates, net, hours };
}
