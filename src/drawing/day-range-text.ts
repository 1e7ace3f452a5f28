import type { CalendarDay } from '../units/calendar-day.ts';
import { addDays } from '../units/calendar-day.ts';
import type { ChartLanguage } from './chart-words.ts';
import { monthName } from './month-name.ts';

const isFirstOfMonth = (day: CalendarDay): boolean => day.endsWith('-01');

/**
 * A range of days, both ends in it, as people write it: one day as it stands, a whole month `May 2001`, a whole year `2013`, whole years
 * `2008 to 2012`, anything else `between 2001-05-03 and 2001-05-17`.
 */
export function dayRangeText(earliest: CalendarDay, latest: CalendarDay, language: ChartLanguage = 'en'): string {
  const es = language === 'es';
  if (earliest === latest) return earliest;
  const [fromYear, toYear] = [earliest.slice(0, 4), latest.slice(0, 4)];
  if (earliest.endsWith('-01-01') && latest.endsWith('-12-31')) {
    return fromYear === toYear ? fromYear : `${fromYear} ${es ? 'a' : 'to'} ${toYear}`;
  }
  const oneMonth = earliest.slice(0, 7) === latest.slice(0, 7);
  if (oneMonth && isFirstOfMonth(earliest) && isFirstOfMonth(addDays(latest, 1))) {
    return `${monthName(Number(earliest.slice(5, 7)), language)} ${es ? 'de ' : ''}${fromYear}`;
  }
  return es ? `entre ${earliest} y ${latest}` : `between ${earliest} and ${latest}`;
}
