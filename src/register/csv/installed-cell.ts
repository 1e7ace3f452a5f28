import type { InstallDate } from '../../forecast/fence-facts.ts';
import { addDays, type CalendarDay, isCalendarDay } from '../../units/calendar-day.ts';
import type { Parsed } from './number-cell.ts';

const WAY_OUT = 'write 2014-05-03, 2014-05, 2014 or a range as 2008/2012';
const MANGLED =
  /^\d{1,2}[/.-]\d{1,2}[/.-]\d{2,4}$|^[A-Za-z]{3,9}[- .]\d{1,4}$|^\d{1,2}[- .][A-Za-z]{3,9}([- .]\d{2,4})?$|^\d{5}$/;

/** What to say of a text that is no date: spreadsheets rewrite dates, so that is named where it looks like it. */
export function notADate(text: string, wayOut: string): string {
  const how = MANGLED.test(text)
    ? `; looks rewritten by a spreadsheet, format the column as text and ${wayOut}`
    : `; ${wayOut}`;
  return `not a date${how}`;
}

function lastDayOfMonth(month: string): CalendarDay {
  const [year, number] = month.split('-').map(Number) as [number, number];
  const next = number === 12 ? `${year + 1}-01-01` : `${year}-${String(number + 1).padStart(2, '0')}-01`;
  return addDays(next, -1);
}

function parseSide(text: string): InstallDate | null {
  if (isCalendarDay(text)) return { earliest: text, latest: text };
  if (/^\d{4}-\d{2}$/.test(text) && isCalendarDay(`${text}-01`)) {
    return { earliest: `${text}-01`, latest: lastDayOfMonth(text) };
  }
  if (/^\d{4}$/.test(text) && isCalendarDay(`${text}-01-01`))
    return { earliest: `${text}-01-01`, latest: `${text}-12-31` };
  return null;
}

/**
 * Reads an install date: a day, a month, a year, or a range of two of these. A month, year or range that has begun
 * is taken to end today at the latest.
 */
export function parseInstalled(text: string, today: CalendarDay): Parsed<InstallDate> {
  const sides = text.split('/');
  const range = sides.length === 2 && sides.every((side) => side.trim().length >= 4);
  const first = parseSide((range ? sides[0]! : text).trim());
  const last = range ? parseSide(sides[1]!.trim()) : first;
  if (!first || !last) return { reason: notADate(text, WAY_OUT) };
  if (first.earliest > last.latest) return { reason: 'the range ends before it begins; write the earlier date first' };
  if (first.earliest > today || (range && last.earliest > today)) {
    return { reason: `in the future (today is ${today}); enter a fence once it stands` };
  }
  return { value: { earliest: first.earliest, latest: last.latest > today ? today : last.latest } };
}

/** An install date as the shortest cell that reads back as the same. */
export function writeInstalled({ earliest, latest }: InstallDate): string {
  if (earliest === latest) return earliest;
  for (const shorter of [earliest.slice(0, 4), earliest.slice(0, 7)]) {
    const side = parseSide(shorter);
    if (side && side.earliest === earliest && side.latest === latest) return shorter;
  }
  return `${earliest}/${latest}`;
}
