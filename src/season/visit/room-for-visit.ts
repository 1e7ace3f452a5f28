import { addDays, type CalendarDay } from '../../units/calendar-day.ts';
import { type HoursOn, hoursByWeek, type VisitSpan } from './visits-that-stand.ts';

/** Days that a visit may be spread over at most. */
const MOST_DAYS = 30;
/** Hours [h] by which a sum may pass those of a day or a week before it counts as passed. */
const TOLERANCE_H = 1e-6;
/** Hours [h] that a visit works at least on the day on which it begins; shorter visits all of theirs. Judgement. */
const LEAST_ON_FIRST_DAY_H = 1;
const DAYS_PER_WEEK = 7;

/** Work of one crew that may be done on any of its days. */
interface Work {
  readonly firstDay: CalendarDay;
  readonly lastDay: CalendarDay;
  /** [h] */
  readonly personHours: number;
}

/** Hours of work that its days do not hold, the work that ends first done first [h]. */
function unheldHours(works: readonly Work[], hoursOn: (day: CalendarDay) => number): number {
  const open = works
    .map((work) => ({ ...work, left: work.personHours }))
    .sort((a, b) => (a.lastDay < b.lastDay ? -1 : Number(a.lastDay > b.lastDay)));
  const days = works.flatMap(({ firstDay, lastDay }) => [firstDay, lastDay]).sort();
  for (let day = days[0]!; day <= days.at(-1)!; day = addDays(day, 1)) {
    let free = hoursOn(day);
    for (const work of open) {
      if (work.firstDay > day || work.lastDay < day) continue;
      const part = Math.min(work.left, free);
      work.left -= part;
      free -= part;
    }
  }
  return open.reduce((sum, { left }) => sum + left, 0);
}

const hoursOf = ({ items, travelPersonHours }: VisitSpan): number =>
  items.reduce((sum, { personHours }) => sum + personHours, travelPersonHours);

/** A visit, what else its crew is to do, and the hours that its people have. */
export interface RoomInputs {
  readonly visit: VisitSpan;
  /** Other visits of the same crew. */
  readonly others: readonly VisitSpan[];
  readonly hoursOn: HoursOn;
}

const ofCrew =
  ({ visit, hoursOn }: RoomInputs) =>
  (day: CalendarDay): number =>
    hoursOn(visit.crewRef, day);

/** True where a visit takes hours of a day, or of days, that the others need: more is left undone than without it. */
export function isCrowded(inputs: RoomInputs): boolean {
  const { visit, others } = inputs;
  const { firstDay, lastDay } = visit;
  const standing = others.map((other) => ({ ...other, personHours: hoursOf(other) }));
  const hours = hoursOf(visit);
  const atOnce = Math.min(hours, LEAST_ON_FIRST_DAY_H);
  const own = [
    { firstDay, lastDay: firstDay, personHours: atOnce },
    { firstDay, lastDay, personHours: hours - atOnce },
  ];
  const before = standing.length === 0 ? 0 : unheldHours(standing, ofCrew(inputs));
  return unheldHours([...own, ...standing], ofCrew(inputs)) > before + TOLERANCE_H;
}

/** Last day of a visit that begins on its first day, from the hours that the others leave; null where no days hold it. */
export function lastDayWithRoom(inputs: RoomInputs): CalendarDay | null {
  const { visit } = inputs;
  for (let days = 0; days < MOST_DAYS; days += 1) {
    const lastDay = addDays(visit.firstDay, days);
    if (ofCrew(inputs)(lastDay) > 0 && !isCrowded({ ...inputs, visit: { ...visit, lastDay } })) return lastDay;
  }
  return null;
}

/** A week with more work than hours. */
export interface OverfullWeek {
  readonly monday: CalendarDay;
  /** [h] */
  readonly tooMany: number;
}

/** Weeks that a visit fills beyond their hours, counted week by week as in the ledger of hours; the earliest first. */
export function weeksOverfilled(inputs: RoomInputs): readonly OverfullWeek[] {
  const { visit, others, hoursOn } = inputs;
  return [...hoursByWeek(visit, hoursOn)].flatMap(([monday, hours]): readonly OverfullWeek[] => {
    if (hours <= TOLERANCE_H) return [];
    let left = -hours;
    for (let day = 0; day < DAYS_PER_WEEK; day += 1) left += ofCrew(inputs)(addDays(monday, day));
    for (const other of others) left -= hoursByWeek(other, hoursOn).get(monday) ?? 0;
    return left < -TOLERANCE_H ? [{ monday, tooMany: -left }] : [];
  });
}
