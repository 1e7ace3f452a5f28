import type { CalendarDay } from '../units/calendar-day.ts';
import { monthName } from './month-name.ts';

/** A day as a sentence names it: `June 1`, with its year where that is another than today's: `June 1, 2027`. */
export function dayWords(day: CalendarDay, today: CalendarDay): string {
  const [year, month, date] = day.split('-').map(Number) as [number, number, number];
  return `${monthName(month, 'en')} ${date}${day.slice(0, 4) === today.slice(0, 4) ? '' : `, ${year}`}`;
}

/** A whole number with its thousands parted: `12,400`. */
export const numberWords = (count: number): string => String(count).replace(/\B(?=(\d{3})+$)/g, ',');

/** A number with what it counts: `1 fence`, `12 fences`; none as `no fences`. @param several the plural where it is not the word with an s */
export const countWords = (count: number, one: string, several = `${one}s`): string =>
  `${count === 0 ? 'no' : numberWords(count)} ${count === 1 ? one : several}`;

/** Names one after the other: `a`, `a and b`, `a, b and c`. */
export const listWords = (names: readonly string[]): string =>
  names.length < 2 ? (names[0] ?? '') : `${names.slice(0, -1).join(', ')} and ${names.at(-1)}`;

/** Hours of people as a page writes them: whole ones from ten on, else with one decimal [h]. */
export const hoursWords = (hours: number): string =>
  Math.abs(hours) >= 10 ? numberWords(Math.round(hours)) : String(Number(hours.toFixed(1)));

/** A text with its first letter a capital. */
export const sentenceCase = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
