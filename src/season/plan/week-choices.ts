import type { CalendarDay } from '../../units/calendar-day.ts';
import { compileProblem, HOURS_TOLERANCE, slotOf } from './compiled-problem.ts';
import type { PlanAssignment, PlanProblem, WeekBar } from './plan-problem.ts';
import { makeSchedule, type Schedule } from './schedule.ts';

/** A shortage that would be written as 0.0 hours is none [h]. */
const SMALLEST_SHORTAGE_H = 0.05;

/** A job with the place that it has. */
export interface PlacedJob extends PlanAssignment {
  readonly jobRef: string;
}

/** A week of a crew to which a job could be given. Amounts in the register's currency. */
export interface WeekChoice {
  readonly week: CalendarDay;
  readonly crewRef: string;
  /** True for the place that it has now. */
  readonly isNow: boolean;
  /** Rules that forbid the week; with none of them it may be given where `hoursLeft` is not negative. */
  readonly bars: readonly WeekBar[];
  /** By how much less the works are worth there: expected loss that they no longer take away, and what waiting costs; negative where more. */
  readonly worthLost: number;
  /** By how much the ways of all visits cost more; negative where less. */
  readonly moreTravelCost: number;
  /** What the choice costs in all, everything else left where it is; negative where it saves. */
  readonly cost: number;
  /** Hours that the crew's week has left once it has the job, its way counted where the crew is not at the site anyway [h]. */
  readonly hoursLeft: number;
}

/**
 * Every week of every crew to which a job could be given, with what that costs beside where it is, by week and crew. The works
 * stay the same and all other jobs where they are. It is counted as the plan counts: the drop in expected loss less the
 * price, week by week, less one way a visit. What the plan adds for doing otherwise than before is left out, for it is the
 * office that does. Crews without the skill or without a way to the site are not among them. Throws RangeError where the job is
 * not in the problem, or not placed.
 */
export function weekChoices(problem: PlanProblem, placed: readonly PlacedJob[], jobRef: string): readonly WeekChoice[] {
  const now = placed.find((each) => each.jobRef === jobRef);
  if (!now) throw new RangeError(`fence ${jobRef}: it has no place in these weeks; give one that a visit has`);
  const compiled = compileProblem({
    ...problem,
    changePenalty: 0,
    jobs: problem.jobs.map((job) => ({ ...job, promised: null, previous: null })),
  });
  const { weeks, crews, jobs, siteOfJob, slotCount, travelHours, travelCost } = compiled;
  const index = jobs.findIndex(({ ref }) => ref === jobRef);
  const option = jobs[index]?.options.find(({ key }) => key === now.optionKey);
  if (!option) throw new RangeError(`fence ${jobRef}: ${now.optionKey} is not among its works; make a new plan`);
  const site = siteOfJob[index]!;
  const others = placedWithout(compiled, placed, jobRef);
  const way = (slot: number, amounts: Float64Array): number =>
    others.schedule.jobsAt(site, slot) === 0 ? amounts[site * slotCount + slot]! : 0;
  const benefitIn = (week: CalendarDay): number => option.benefitByWeek[weeks.indexOf(week)] ?? Number.NaN;
  const nowSlot = slotOf(
    weeks.length,
    crews.findIndex(({ ref }) => ref === now.crewRef),
    weeks.indexOf(now.week),
  );
  return weeks.flatMap((week, weekIndex) =>
    crews.flatMap((crew, crewIndex): readonly WeekChoice[] => {
      if (option.skill !== null && !crew.skills.includes(option.skill)) return [];
      if (!crew.travel.some(({ siteRef }) => siteRef === jobs[index]!.siteRef)) return [];
      const slot = slotOf(weeks.length, crewIndex, weekIndex);
      const worthLost = benefitIn(now.week) - benefitIn(week);
      const moreTravelCost = way(slot, travelCost) - way(nowSlot, travelCost);
      const left = others.schedule.hoursLeft(slot) - others.beyond(slot);
      const hoursLeft = left - option.personHours - way(slot, travelHours);
      return [
        {
          week,
          crewRef: crew.ref,
          isNow: slot === nowSlot,
          bars: option.barsByWeek[weekIndex]!,
          worthLost,
          moreTravelCost,
          cost: worthLost + moreTravelCost,
          hoursLeft: hoursLeft > -SMALLEST_SHORTAGE_H && hoursLeft <= HOURS_TOLERANCE ? 0 : hoursLeft,
        },
      ];
    }),
  );
}

/** All other jobs where they are; those that their week would not even hold alone are counted beside the schedule [h]. */
function placedWithout(
  compiled: Schedule['compiled'],
  placed: readonly PlacedJob[],
  jobRef: string,
): { readonly schedule: Schedule; readonly beyond: (slot: number) => number } {
  const { weeks, crews, jobs, candidatesOfJob } = compiled;
  const indexOf = new Map(jobs.map(({ ref }, index) => [ref, index]));
  const schedule = makeSchedule(compiled);
  const beyond = new Map<number, number>();
  for (const each of placed) {
    const job = indexOf.get(each.jobRef);
    const crew = crews.findIndex(({ ref }) => ref === each.crewRef);
    const week = weeks.indexOf(each.week);
    if (each.jobRef === jobRef || job === undefined || crew < 0 || week < 0) continue;
    const slot = slotOf(weeks.length, crew, week);
    const candidate = candidatesOfJob[job]!.find((own) => own.slot === slot && own.option.key === each.optionKey);
    if (candidate) schedule.put(candidate);
    else {
      const hours = jobs[job]!.options.find(({ key }) => key === each.optionKey)?.personHours ?? 0;
      beyond.set(slot, (beyond.get(slot) ?? 0) + hours);
    }
  }
  return { schedule, beyond: (slot) => beyond.get(slot) ?? 0 };
}
