import type { CalendarDay } from '../../units/calendar-day.ts';
import { type CrewTimes, personHoursInWeek } from '../crew-hours.ts';
import type { Visit } from './visit.ts';
import { type HoursOn, hoursByWeek, type VisitSpan } from './visits-that-stand.ts';

/** Hours of one crew in one week [h]. */
export interface LedgerCell {
  readonly crewRef: string;
  /** What the crew's people have that week, days off and weather reserve taken off; of the week that runs, what is left of it. */
  readonly thereAre: number;
  /** What visits on promised days take, their ways counted. */
  readonly confirmed: number;
  /** What proposed visits take. */
  readonly proposed: number;
  /** What nothing has taken yet; negative where more was promised than there is. */
  readonly left: number;
}

/** One week with its crews. */
export interface LedgerWeek {
  readonly monday: CalendarDay;
  /** In the order of the crews. */
  readonly cells: readonly LedgerCell[];
}

/** What the hours of some weeks are reckoned from. */
export interface LedgerInputs {
  readonly crews: readonly { readonly ref: string; readonly times: CrewTimes }[];
  readonly weeks: readonly CalendarDay[];
  /** Proposed and confirmed ones that touch those weeks. */
  readonly visits: readonly (VisitSpan & Pick<Visit, 'state'>)[];
  readonly today: CalendarDay;
  readonly hoursOn: HoursOn;
}

/** The hours of every crew, week by week: what there is, what visits take of it, and what is left [h]. */
export function hoursLedger({ crews, weeks, visits, today, hoursOn }: LedgerInputs): readonly LedgerWeek[] {
  const taken = new Map<string, number>();
  for (const visit of visits) {
    // of days that are gone nothing is counted on either side
    if (visit.lastDay < today) continue;
    for (const [monday, hours] of hoursByWeek(visit, hoursOn)) {
      const key = `${monday} ${visit.crewRef} ${visit.state}`;
      taken.set(key, (taken.get(key) ?? 0) + hours);
    }
  }
  return weeks.map((monday) => ({
    monday,
    cells: crews.map(({ ref, times }) => {
      const thereAre = personHoursInWeek(times, monday, today);
      const confirmed = taken.get(`${monday} ${ref} confirmed`) ?? 0;
      const proposed = taken.get(`${monday} ${ref} proposed`) ?? 0;
      return { crewRef: ref, thereAre, confirmed, proposed, left: thereAre - confirmed - proposed };
    }),
  }));
}
