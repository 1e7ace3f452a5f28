import type { Candidate } from './compiled-problem.ts';
import { type Schedule, VALUE_TOLERANCE } from './schedule.ts';

const MOST_ROUNDS = 50;

/**
 * Takes each job in turn and gives it the best place that is free, until no single job can be placed or moved for the
 * better: afterwards nothing is left out that would fit and pay.
 */
export function settle(schedule: Schedule): void {
  for (let round = 0, moved = true; moved && round < MOST_ROUNDS; round += 1) {
    moved = false;
    for (let job = 0; job < schedule.chosen.length; job += 1) {
      const before = schedule.chosen[job]!;
      schedule.take(job);
      const after = bestPlace(schedule, job);
      const gain = netOf(schedule, after) - netOf(schedule, before);
      const rise = (after?.importance ?? 0) - (before?.importance ?? 0);
      const better = rise > 0 || (rise === 0 && gain > VALUE_TOLERANCE);
      const stays = better ? after : before;
      if (stays !== null) schedule.put(stays);
      if (better) moved = true;
    }
  }
}

const netOf = (schedule: Schedule, candidate: Candidate | null): number =>
  candidate === null ? 0 : schedule.netValue(candidate);

/** The best candidate that fits for a job that has none; null where leaving it is better. */
function bestPlace(schedule: Schedule, job: number): Candidate | null {
  let best: Candidate | null = null;
  let bestNet = VALUE_TOLERANCE;
  for (const candidate of schedule.compiled.candidatesOfJob[job]!) {
    const bestImportance = best?.importance ?? 0;
    if (candidate.importance < bestImportance || !schedule.fits(candidate)) continue;
    const net = schedule.netValue(candidate);
    if (candidate.importance > bestImportance || net > bestNet + VALUE_TOLERANCE) {
      best = candidate;
      bestNet = net;
    }
  }
  return best;
}
