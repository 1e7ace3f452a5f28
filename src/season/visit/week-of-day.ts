import { addDays, type CalendarDay, dayNumber } from '../../units/calendar-day.ts';

const DAYS_PER_WEEK = 7;
/** 1970-01-01 was a Thursday: Mondays lie three days before the day numbers that a week divides. */
const MONDAY_SHIFT = 3;

/** The Monday of the week that a day lies in. */
export const mondayOf = (day: CalendarDay): CalendarDay =>
  addDays(day, -((dayNumber(day) + MONDAY_SHIFT) % DAYS_PER_WEEK));
