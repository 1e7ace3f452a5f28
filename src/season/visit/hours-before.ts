import { addDays, type CalendarDay } from '../../units/calendar-day.ts';
import { type HoursOn, hoursByDay, type VisitSpan } from './visits-that-stand.ts';
import { mondayOf } from './week-of-day.ts';

/** Hours of a crew before a day [h]. */
export interface HoursBefore {
  readonly crewRef: string;
  /** What its people have, days off and weather reserve taken off. */
  readonly thereAre: number;
  /** What no visit has taken yet, week by week: a week with more work than hours counts as none. */
  readonly left: number;
}

/** Hours that visits take, by crew and day [h]. */
export type HoursTaken = ReadonlyMap<string, ReadonlyMap<CalendarDay, number>>;

/**
 * Adds up what visits take of each crew's days [h]. As in the ledger: of a visit whose days are gone nothing is counted, of one that
 * runs all that it takes of this week.
 * @param visits proposed and confirmed ones
 */
export function hoursTaken(visits: readonly VisitSpan[], today: CalendarDay, hoursOn: HoursOn): HoursTaken {
  const taken = new Map<string, Map<CalendarDay, number>>();
  for (const visit of visits) {
    if (visit.lastDay < today) continue;
    const days = taken.get(visit.crewRef) ?? new Map<CalendarDay, number>();
    taken.set(visit.crewRef, days);
    for (const [day, hours] of hoursByDay(visit, hoursOn)) days.set(day, (days.get(day) ?? 0) + hours);
  }
  return taken;
}

/**
 * The hours of every crew on the days from today to the day before an opening, and what visits leave of them: of the week in
 * which the season opens only the days before it are counted [h].
 * @param taken by visits; what of it lies outside those days is not counted
 */
export function hoursBefore({
  crewRefs,
  taken,
  today,
  opensOn,
  hoursOn,
}: {
  readonly crewRefs: readonly string[];
  readonly taken: HoursTaken;
  readonly today: CalendarDay;
  readonly opensOn: CalendarDay;
  readonly hoursOn: HoursOn;
}): readonly HoursBefore[] {
  const weeks = new Map<CalendarDay, CalendarDay[]>();
  // of the week that runs, days that are gone count for what visits took of them
  for (let day = mondayOf(today); day < opensOn; day = addDays(day, 1)) {
    const monday = mondayOf(day);
    const days = weeks.get(monday);
    if (days) days.push(day);
    else weeks.set(monday, [day]);
  }
  return crewRefs.map((crewRef) => {
    const ofCrew = taken.get(crewRef);
    let [thereAre, left] = [0, 0];
    for (const days of weeks.values()) {
      const hours = days.reduce((sum, day) => sum + (day < today ? 0 : hoursOn(crewRef, day)), 0);
      const used = ofCrew ? days.reduce((sum, day) => sum + (ofCrew.get(day) ?? 0), 0) : 0;
      thereAre += hours;
      left += Math.max(0, hours - used);
    }
    return { crewRef, thereAre, left };
  });
}
