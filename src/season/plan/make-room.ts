import type { Candidate } from './compiled-problem.ts';
import type { Schedule } from './schedule.ts';

interface Trade {
  readonly candidate: Candidate;
  readonly leaving: readonly Candidate[];
  readonly lost: number;
}

/**
 * Places jobs that must be served and found no hours, by taking lesser jobs out of a slot: each goes where what has to
 * leave is worth least. Jobs that leave never count as much as the one that comes, so no stage loses for a later one.
 */
export function makeRoom(schedule: Schedule): void {
  const { candidatesOfJob } = schedule.compiled;
  const importance = candidatesOfJob.map((mine) => mine.reduce((most, each) => Math.max(most, each.importance), 0));
  const waiting = candidatesOfJob
    .map((_, job) => job)
    .filter((job) => importance[job]! > (schedule.chosen[job]?.importance ?? 0));
  waiting.sort((left, right) => importance[right]! - importance[left]! || left - right);
  const bySlot: Candidate[][] = Array.from({ length: schedule.compiled.slotCount }, () => []);
  for (const placed of schedule.chosen) if (placed !== null) bySlot[placed.slot]!.push(placed);
  const rate = ({ value, hours }: Candidate): number => value / Math.max(hours, 0.01);
  for (const job of waiting) {
    const before = schedule.chosen[job];
    schedule.take(job);
    let best: Trade | null = null;
    for (const candidate of candidatesOfJob[job]!) {
      if (candidate.importance < importance[job]!) continue;
      const lesser = bySlot[candidate.slot]!.filter(
        (placed) => placed.importance < candidate.importance && schedule.chosen[placed.job] === placed,
      );
      lesser.sort((left, right) => left.importance - right.importance || rate(left) - rate(right));
      const trade = tradeFor(schedule, candidate, lesser);
      if (trade !== null && (best === null || trade.lost < best.lost)) best = trade;
    }
    if (best === null) {
      if (before) schedule.put(before);
      continue;
    }
    for (const { job: leaves } of best.leaving) schedule.take(leaves);
    schedule.put(best.candidate);
    bySlot[best.candidate.slot]!.push(best.candidate);
  }
}

/** The fewest of the lesser jobs, in their order, that must leave for the candidate to fit; null where all are not enough. */
function tradeFor(schedule: Schedule, candidate: Candidate, lesser: readonly Candidate[]): Trade | null {
  const leaving: Candidate[] = [];
  let lost = -candidate.value;
  for (const placed of lesser) {
    if (schedule.fits(candidate)) break;
    schedule.take(placed.job);
    leaving.push(placed);
    lost += placed.value;
  }
  const enough = schedule.fits(candidate);
  if (enough) lost += candidate.value - schedule.netValue(candidate);
  for (const placed of leaving) schedule.put(placed);
  return enough ? { candidate, leaving, lost } : null;
}
