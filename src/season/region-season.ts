import type { SeasonWindow } from '../forecast/season-calendar.ts';
import { type CalendarDay, dayNumber } from '../units/calendar-day.ts';
import { seasonToPlan } from './planned-season.ts';
import { inSeason } from './storm-season.ts';

/** Where the storm season of a region stands on a day. */
export type RegionSeason =
  /** There is no season: the whole year counts. */
  | { readonly kind: 'all year' }
  | {
      readonly kind: 'runs';
      readonly closesOn: CalendarDay;
      readonly daysLeft: number;
      readonly nextOpening: CalendarDay;
      readonly daysToOpening: number;
    }
  | { readonly kind: 'ahead'; readonly nextOpening: CalendarDay; readonly daysToOpening: number };

const monthDayOf = (day: CalendarDay): string => day.slice(5);

/** The last day of the season that runs on a day. */
function closingAfter({ closes }: SeasonWindow, day: CalendarDay): CalendarDay {
  const year = Number(day.slice(0, 4));
  return `${monthDayOf(day) <= closes ? year : year + 1}-${closes}`;
}

/**
 * Where a storm season stands: how many days until it opens next, and, while it runs, until it closes, today counted as one [d].
 * @param today the day in the region
 */
export function regionSeason(window: SeasonWindow, today: CalendarDay): RegionSeason {
  const { season, nextOpening } = seasonToPlan(window, today);
  if (season.allYear) return { kind: 'all year' };
  const daysToOpening = dayNumber(nextOpening) - dayNumber(today);
  if (!inSeason(window, monthDayOf(today))) return { kind: 'ahead', nextOpening, daysToOpening };
  const closesOn = closingAfter(window, today);
  return { kind: 'runs', closesOn, daysLeft: dayNumber(closesOn) - dayNumber(today) + 1, nextOpening, daysToOpening };
}
