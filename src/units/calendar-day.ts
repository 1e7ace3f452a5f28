/** A calendar day as ISO text, `YYYY-MM-DD`, without time or zone. */
export type CalendarDay = string;

const DAY_MS = 86_400_000;
const SHAPE = /^(\d{4})-(\d{2})-(\d{2})$/;

/** Mean length of a Gregorian year [days]. Source: Gregorian calendar, 146,097 days in 400 years. */
export const DAYS_PER_YEAR = 365.2425;

/** True where the text is a real day of the Gregorian calendar written `YYYY-MM-DD` (years 1900 to 2200). */
export function isCalendarDay(text: string): boolean {
  const match = SHAPE.exec(text);
  if (!match) return false;
  const [year, month, day] = [Number(match[1]), Number(match[2]), Number(match[3])];
  if (year < 1900 || year > 2200) return false;
  const date = new Date(Date.UTC(year, month - 1, day));
  return date.getUTCFullYear() === year && date.getUTCMonth() === month - 1 && date.getUTCDate() === day;
}

/** Days met before, by their text and by their number: calendars ask for the same few thousand again and again. */
const numbers = new Map<CalendarDay, number>();
const days = new Map<number, CalendarDay>();
/** Days kept at most; all those of 1900 to 2200. */
const MOST_KEPT = 110_000;

/** Number of days [d] from 1970-01-01 to the day. Throws RangeError where the text is no calendar day. */
export function dayNumber(day: CalendarDay): number {
  const known = numbers.get(day);
  if (known !== undefined) return known;
  if (!isCalendarDay(day)) throw new RangeError(`not a calendar day: ${JSON.stringify(day)}; write YYYY-MM-DD`);
  const [year, month, date] = day.split('-').map(Number) as [number, number, number];
  const number = Date.UTC(year, month - 1, date) / DAY_MS;
  numbers.set(day, number);
  return number;
}

/** The calendar day that lies so many days [d] after 1970-01-01 (whole days; fractions are rounded). */
export function dayFromNumber(number: number): CalendarDay {
  const whole = Math.round(number);
  const known = days.get(whole);
  if (known !== undefined) return known;
  const day = new Date(whole * DAY_MS).toISOString().slice(0, 10);
  if (days.size < MOST_KEPT) days.set(whole, day);
  return day;
}

/** Years [a] from one day to another, in mean Gregorian years; negative where `to` is earlier. */
export function yearsBetween(from: CalendarDay, to: CalendarDay): number {
  return (dayNumber(to) - dayNumber(from)) / DAYS_PER_YEAR;
}

/** The calendar year of a day. */
export const yearOf = (day: CalendarDay): number => Number(day.slice(0, 4));

/** The day so many days [d] later (earlier where negative). */
export const addDays = (day: CalendarDay, days: number): CalendarDay => dayFromNumber(dayNumber(day) + days);
