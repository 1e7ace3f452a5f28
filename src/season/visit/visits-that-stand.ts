import { addDays, type CalendarDay } from '../../units/calendar-day.ts';
import type { PlanAssignment, PlanCrew, PlanProblem, PlanPromise } from '../plan/plan-problem.ts';
import type { Visit, VisitItem } from './visit.ts';
import { mondayOf } from './week-of-day.ts';

/** Hours that stand for none [h]. */
const LEAST_HOURS = 1e-3;

/** A fence on a promised date, with the hours that it takes of the week in which its visit begins [h]. */
interface PromisedItem extends PlanPromise {
  readonly item: VisitItem;
  readonly personHours: number;
}

/** What stands already when a plan is made, by fence. */
export interface StandingVisits {
  /** Fences of visits that no plan moves, in the weeks of the plan: their dates are promised, or the office gave their weeks. */
  readonly promised: ReadonlyMap<string, PromisedItem>;
  /** What an accepted plan proposed: another plan pays for every fence that it moves. */
  readonly previous: ReadonlyMap<string, PlanAssignment>;
  /** Fences that are visited before the plan begins: it leaves them out. */
  readonly visitedBefore: ReadonlyMap<string, Visit>;
  /** Hours that such visits take of weeks after the one in which they begin, by crew and Monday [h]. */
  readonly spilled: ReadonlyMap<string, ReadonlyMap<CalendarDay, number>>;
  /** Confirmed visits whose days are past: nobody has said whether they were done or missed. */
  readonly overdue: readonly Visit[];
}

/** True where a visit's days are past. */
const isPast = ({ lastDay }: Pick<Visit, 'lastDay'>, today: CalendarDay): boolean => lastDay < today;

/** True for a visit that no plan moves: confirmed, or proposed by the office itself, which gave its fences their week. */
const isKept = ({ state, planId }: Pick<Visit, 'state' | 'planId'>): boolean =>
  state === 'confirmed' || (state === 'proposed' && planId === null);

/** Hours of a crew's people on a day [h]. */
export type HoursOn = (crewRef: string, day: CalendarDay) => number;

/** What of a visit its hours by day are reckoned from: its days, its way and the hours of what is done there [h]. */
export interface VisitSpan extends Pick<Visit, 'crewRef' | 'firstDay' | 'lastDay' | 'travelPersonHours'> {
  readonly items: readonly Pick<Visit['items'][number], 'personHours'>[];
}

/** Hours that a visit takes of each of its days, filled one after the other; what they do not hold, of the first [h]. */
export function hoursByDay(visit: VisitSpan, hoursOn: HoursOn): ReadonlyMap<CalendarDay, number> {
  const { firstDay, lastDay, crewRef, items, travelPersonHours } = visit;
  const days = new Map<CalendarDay, number>();
  let left = items.reduce((sum, { personHours }) => sum + personHours, travelPersonHours);
  for (let day = firstDay; day <= lastDay; day = addDays(day, 1)) {
    const part = Math.min(left, hoursOn(crewRef, day));
    days.set(day, part);
    left -= part;
  }
  days.set(firstDay, (days.get(firstDay) ?? 0) + left);
  return days;
}

/** Hours that a visit takes of each week it lies in, as of its days [h]. */
export function hoursByWeek(visit: VisitSpan, hoursOn: HoursOn): ReadonlyMap<CalendarDay, number> {
  const weeks = new Map<CalendarDay, number>();
  for (const [day, hours] of hoursByDay(visit, hoursOn))
    weeks.set(mondayOf(day), (weeks.get(mondayOf(day)) ?? 0) + hours);
  return weeks;
}

/** Part of the hours at the site that fall into the week in which a visit begins [-]; its way is counted there. */
function shareInWeek({ items, travelPersonHours }: Visit, inWeek: number): number {
  const work = items.reduce((sum, { personHours }) => sum + personHours, 0);
  return work > 0 ? Math.min(1, Math.max(0, inWeek - travelPersonHours) / work) : 1;
}

/**
 * What a plan has to keep. Confirmed visits, and those that the office proposed itself, are promises, or where they come before
 * the first week of the plan, keep their fences out of it; proposed ones of a plan are what the plan before said. Proposed ones
 * whose days are past are nothing. Visits that were done, missed or cancelled hold no fence.
 */
export function visitsThatStand(
  visits: readonly Visit[],
  when: {
    readonly today: CalendarDay;
    /** Monday of the first week of the plan. */
    readonly firstWeek: CalendarDay;
    readonly hoursOn: HoursOn;
  },
): StandingVisits {
  const { today, firstWeek, hoursOn } = when;
  const promised = new Map<string, PromisedItem>();
  const previous = new Map<string, PlanAssignment>();
  const visitedBefore = new Map<string, Visit>();
  const spilled = new Map<string, Map<CalendarDay, number>>();
  for (const visit of visits) {
    const { state, crewRef, firstDay } = visit;
    if (state !== 'confirmed' && (state !== 'proposed' || isPast(visit, today))) continue;
    const week = mondayOf(firstDay);
    const byWeek = hoursByWeek(visit, hoursOn);
    const share = shareInWeek(visit, byWeek.get(week) ?? 0);
    for (const item of visit.items) {
      const { fenceRef, optionKey } = item;
      if (week < firstWeek) visitedBefore.set(fenceRef, visit);
      else if (!isKept(visit)) previous.set(fenceRef, { week, crewRef, optionKey });
      else promised.set(fenceRef, { week, crewRef, optionKey, item, personHours: item.personHours * share });
    }
    if (!isKept(visit)) continue;
    const ofCrew = spilled.get(crewRef) ?? new Map<CalendarDay, number>();
    for (const [monday, hours] of byWeek) {
      if (monday !== week && hours > 0) ofCrew.set(monday, (ofCrew.get(monday) ?? 0) + hours);
    }
    if (ofCrew.size > 0) spilled.set(crewRef, ofCrew);
  }
  return {
    promised,
    previous,
    visitedBefore,
    spilled,
    overdue: visits.filter((visit) => visit.state === 'confirmed' && isPast(visit, today)),
  };
}

/** Crews without the hours that confirmed visits of the week before take of theirs. */
export const withoutSpilled = (
  crews: readonly PlanCrew[],
  weeks: readonly CalendarDay[],
  { spilled }: StandingVisits,
): readonly PlanCrew[] =>
  crews.map((crew) => ({
    ...crew,
    personHoursByWeek: crew.personHoursByWeek.map((hours, index) =>
      Math.max(0, hours - (spilled.get(crew.ref)?.get(weeks[index]!) ?? 0)),
    ),
  }));

/**
 * A problem whose promised fences can be done in one way only: as their visit says, in its week and with its hours. The
 * office has confirmed it, so that no rule is asked again and nothing that pays better takes its place.
 */
export const withPromises = (problem: PlanProblem, { promised }: StandingVisits): PlanProblem => ({
  ...problem,
  jobs: problem.jobs.map((job) => {
    const promise = promised.get(job.ref);
    if (!promise) return job;
    const { item, personHours } = promise;
    const known = job.options.find(({ key }) => key === item.optionKey);
    const option = {
      key: item.optionKey,
      // a problem takes no hours of 0
      personHours: Math.max(personHours, LEAST_HOURS),
      cost: item.price,
      benefitByWeek: known?.benefitByWeek ?? problem.weeks.map(() => 0),
      barsByWeek: problem.weeks.map(() => []),
      skill: null,
      satisfiesMust: known?.satisfiesMust ?? true,
      note: null,
    };
    return { ...job, options: [option] };
  }),
});
