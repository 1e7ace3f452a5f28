import type { CalendarDay } from '../units/calendar-day.ts';
import { isCalendarDay, yearOf } from '../units/calendar-day.ts';

/** A storm season as a yearly calendar window, which may wrap the year end, and its share of the yearly hazard. */
export interface SeasonWindow {
  /** First day, `MM-DD`. A site without a storm season has `01-01` to `12-31` and share 1. */
  readonly opens: string;
  /** Last day, `MM-DD`. */
  readonly closes: string;
  /** Share of the yearly hazard that falls into the window, 0 < share <= 1 [-]. */
  readonly share: number;
}

/** The whole year as one season, for a site that has no storm season. */
export const YEAR_ROUND: SeasonWindow = { opens: '01-01', closes: '12-31', share: 1 };

/** True where the window's last day falls in the year after its first. */
const wrapsYearEnd = (window: SeasonWindow): boolean => window.closes < window.opens;

/** True where the text is a month and day that exists in every year (`02-29` does not). */
export const isMonthDay = (text: string): boolean => /^\d{2}-\d{2}$/.test(text) && isCalendarDay(`2001-${text}`);

/** Opening day of the season that opens in the given calendar year. */
export const openingDay = (window: SeasonWindow, year: number): CalendarDay => `${year}-${window.opens}`;

/** Last day of the season that opens in the given calendar year. */
export const closingDay = (window: SeasonWindow, year: number): CalendarDay =>
  `${wrapsYearEnd(window) ? year + 1 : year}-${window.closes}`;

/** Label of the season that opens in the given year: `2027`, or `2027/28` where it wraps the year end. */
export const seasonLabel = (window: SeasonWindow, year: number): string =>
  wrapsYearEnd(window) ? `${year}/${String((year + 1) % 100).padStart(2, '0')}` : String(year);

/**
 * The calendar year in which season 1 opens: the season running on the day, else the next to open.
 * @param today the calendar day in the site's own time zone
 */
export function seasonOneYear(window: SeasonWindow, today: CalendarDay): number {
  const year = yearOf(today);
  if (wrapsYearEnd(window) && today <= closingDay(window, year - 1)) return year - 1;
  return today <= closingDay(window, year) ? year : year + 1;
}
