import { closingDay, openingDay, type SeasonWindow, seasonOneYear } from '../forecast/season-calendar.ts';
import { addDays, type CalendarDay, dayNumber } from '../units/calendar-day.ts';
import type { PlannedSeason } from './season-problem.ts';

/** Where less of the running season is left than this, the plan is for the next one [-]; model choice. */
const LEAST_LEFT = 0.25;

/** The storm season that works of today are weighed by at one site. */
export interface SeasonToPlan {
  /** Calendar year in which it opens. */
  readonly year: number;
  readonly season: PlannedSeason;
  /** The opening that comes next after the day: the deadline of works that are to count in that season. */
  readonly nextOpening: CalendarDay;
}

/**
 * The season to plan for on a day: the one that runs, where at least a quarter of it is left, else the next to open.
 * @param today the day in the site's zone
 */
export function seasonToPlan(window: SeasonWindow, today: CalendarDay): SeasonToPlan {
  const allYear = window.opens === '01-01' && window.closes === '12-31';
  const of = (year: number): PlannedSeason => ({
    opensOn: openingDay(window, year),
    closesOn: closingDay(window, year),
    allYear,
  });
  const first = seasonOneYear(window, today);
  const running = of(first);
  const nextOpening = running.opensOn > today ? running.opensOn : openingDay(window, first + 1);
  const length = dayNumber(running.closesOn) - dayNumber(running.opensOn) + 1;
  const left = dayNumber(addDays(running.closesOn, 1)) - Math.max(dayNumber(today), dayNumber(running.opensOn));
  const year = left / length < LEAST_LEFT ? first + 1 : first;
  return { year, season: of(year), nextOpening };
}
