import type { Candidate, CompiledProblem } from '../src/season/plan/compiled-problem.ts';
import { makeSchedule, type Schedule } from '../src/season/plan/schedule.ts';

/** How an office without a planner would order its fences. */
export type Habit = 'benefit per hour' | 'oldest first';

const rate = ({ value, hours }: Candidate): number => value / hours;

/**
 * Fills the weeks one fence at a time, musts by rank before the rest: each fence gets the option that earns most an hour
 * (or, by age, most at all) in the place that is free and costs the least way, the earliest of them; a must takes any
 * place, the others only one that pays. The refs of made-up fences stand for their age.
 */
export function habitualPlan(compiled: CompiledProblem, habit: Habit): Schedule {
  const schedule = makeSchedule(compiled);
  const order = compiled.candidatesOfJob.map((mine, job) => ({
    job,
    must: mine.reduce((most, { importance }) => Math.max(most, importance), 0),
    rate: mine.reduce((most, each) => Math.max(most, rate(each)), Number.NEGATIVE_INFINITY),
  }));
  order.sort(
    (left, right) =>
      right.must - left.must ||
      (habit === 'oldest first' ? left.job - right.job : right.rate - left.rate || left.job - right.job),
  );
  for (const { job, must } of order) {
    const open = compiled.candidatesOfJob[job]!.filter(
      (each) => each.importance === must && schedule.fits(each) && (must > 0 || schedule.netValue(each) > 0),
    );
    const worth = (each: Candidate): number =>
      habit === 'oldest first' ? schedule.netValue(each) : schedule.netValue(each) / each.hours;
    const best = open.reduce<Candidate | null>(
      (most, each) => (most === null || worth(each) > worth(most) ? each : most),
      null,
    );
    if (best !== null) schedule.put(best);
  }
  return schedule;
}
