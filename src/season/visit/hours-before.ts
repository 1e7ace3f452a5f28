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

/**
 * The hours of every crew on the days from today to the day before an opening, and what visits leave of them: of the week in
 * which the season opens only the days before it are counted [h].
 * @param visits proposed and confirmed ones; what of them lies outside those days is not counted
 */
export function hoursBefore({
  crewRefs,
  visits,
  today,
  opensOn,
  hoursOn,
}: {
  readonly crewRefs: readonly string[];
  readonly visits: readonly VisitSpan[];
  readonly today: CalendarDay;
  readonly opensOn: CalendarDay;
  readonly hoursOn: HoursOn;
}): readonly HoursBefore[] {
  const taken = new Map<string, number>();
  for (const visit of visits) {
    // as in the ledger: of a visit whose days are gone nothing is counted, of one that runs all that it takes of this week
    if (visit.lastDay < today) continue;
    for (const [day, hours] of hoursByDay(visit, hoursOn)) {
      if (day >= opensOn) continue;
      const key = `${mondayOf(day)} ${visit.crewRef}`;
      taken.set(key, (taken.get(key) ?? 0) + hours);
    }
  }
  return crewRefs.map((crewRef) => {
    const byWeek = new Map<CalendarDay, number>();
    for (let day = today; day < opensOn; day = addDays(day, 1))
      byWeek.set(mondayOf(day), (byWeek.get(mondayOf(day)) ?? 0) + hoursOn(crewRef, day));
    let [thereAre, left] = [0, 0];
    for (const [monday, hours] of byWeek) {
      thereAre += hours;
      left += Math.max(0, hours - (taken.get(`${monday} ${crewRef}`) ?? 0));
    }
    return { crewRef, thereAre, left };
  });
}
