import { monthName } from '../drawing/month-name.ts';
import { percentText } from '../drawing/quantity-text.ts';
import { mondayOf } from '../season/visit/week-of-day.ts';
import { type CalendarDay, dayNumber } from '../units/calendar-day.ts';
import type { MessageLanguage } from './message-facts.ts';

/** A calendar day written out: `June 1, 2027`, `1 de junio de 2027`. */
export function dayInWords(day: CalendarDay, language: MessageLanguage): string {
  const [year = 0, month = 1, date = 1] = day.split('-').map(Number);
  const name = monthName(month, language);
  return language === 'en' ? `${name} ${date}, ${year}` : `${date} de ${name} de ${year}`;
}

const WEEKDAYS: Readonly<Record<MessageLanguage, readonly string[]>> = {
  en: ['Monday', 'Tuesday', 'Wednesday', 'Thursday', 'Friday', 'Saturday', 'Sunday'],
  es: ['lunes', 'martes', 'miércoles', 'jueves', 'viernes', 'sábado', 'domingo'],
};

/** A calendar day with its weekday: `Wednesday, March 3, 2027`, `miércoles 3 de marzo de 2027`. */
export function weekdayInWords(day: CalendarDay, language: MessageLanguage): string {
  const weekday = WEEKDAYS[language][dayNumber(day) - dayNumber(mondayOf(day))] ?? '';
  return `${weekday}${language === 'en' ? ',' : ''} ${dayInWords(day, language)}`;
}

/** Two calendar days, the year once where it is the same: `Monday, March 1 to Friday, March 5, 2027`. */
export function daysInWords(
  first: CalendarDay,
  last: CalendarDay,
  language: MessageLanguage,
): readonly [string, string] {
  const [from, to] = [weekdayInWords(first, language), weekdayInWords(last, language)];
  const year = first.slice(0, 4);
  if (year !== last.slice(0, 4)) return [from, to];
  return [from.replace(language === 'en' ? `, ${year}` : ` de ${year}`, ''), to];
}

const SURENESS = [
  { least: 0.9, en: 'very likely', es: 'muy probable' },
  { least: 0.67, en: 'likely', es: 'probable' },
  { least: 0.5, en: 'more likely than not', es: 'más probable que no' },
  {
    least: 0.33,
    en: 'less likely than not, but not far from even',
    es: 'menos probable que no, aunque cerca de la mitad',
  },
  { least: 0.1, en: 'unlikely', es: 'poco probable' },
  { least: 0, en: 'very unlikely', es: 'muy poco probable' },
] as const;

/** How likely a probability [-] is, in plain words first and the number after: `more likely than not (62 %)`. */
export function likelihoodInWords(probability: number, language: MessageLanguage): string {
  const words = SURENESS.find((row) => probability >= row.least) ?? SURENESS[SURENESS.length - 1];
  return `${words?.[language] ?? ''} (${percentText(probability, language)})`;
}

/** A text on one line: control characters and line ends become one blank, so that it can stand in a header. */
export function oneLine(text: string): string {
  // biome-ignore lint/suspicious/noControlCharactersInRegex: control characters are what is taken out
  return text.replace(/[\u0000-\u001f\u007f\u0085\u2028\u2029]+/g, ' ').trim();
}
