import type { CalendarDay } from '../units/calendar-day.ts';
import type { MessageLanguage } from './message-facts.ts';

const MONTHS = {
  en: [
    'January',
    'February',
    'March',
    'April',
    'May',
    'June',
    'July',
    'August',
    'September',
    'October',
    'November',
    'December',
  ],
  es: [
    'enero',
    'febrero',
    'marzo',
    'abril',
    'mayo',
    'junio',
    'julio',
    'agosto',
    'septiembre',
    'octubre',
    'noviembre',
    'diciembre',
  ],
} as const;

/** A calendar day written out: `June 1, 2027`, `1 de junio de 2027`. */
export function dayInWords(day: CalendarDay, language: MessageLanguage): string {
  const [year = 0, month = 1, date = 1] = day.split('-').map(Number);
  const name = MONTHS[language][month - 1] ?? '';
  return language === 'en' ? `${name} ${date}, ${year}` : `${date} de ${name} de ${year}`;
}

/** A probability [-] as whole percent, with its ends left open: `under 1 %`, `62 %`, `over 99 %`. */
export function percentInWords(probability: number, language: MessageLanguage): string {
  const [under, over] = language === 'en' ? ['under', 'over'] : ['menos del', 'más del'];
  if (probability < 0.01) return `${under} 1 %`;
  if (probability > 0.99) return `${over} 99 %`;
  return `${Math.round(probability * 100)} %`;
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
  return `${words?.[language] ?? ''} (${percentInWords(probability, language)})`;
}

/** How often a gust comes: `about once in 24 years`; over 1,000 years only that it is rarer. Return period [a]. */
export function onceInWords(years: number, language: MessageLanguage): string {
  if (years > 1000) return language === 'en' ? 'less than once in 1,000 years' : 'menos de una vez en 1000 años';
  if (years < 1.5) return language === 'en' ? 'in most years' : 'casi todos los años';
  const whole = Math.round(years);
  return language === 'en' ? `about once in ${whole} years` : `más o menos una vez en ${whole} años`;
}

/** A text on one line: control characters and line ends become one blank, so that it can stand in a header. */
export function oneLine(text: string): string {
  // biome-ignore lint/suspicious/noControlCharactersInRegex: control characters are what is taken out
  return text.replace(/[\u0000-\u001f\u007f\u0085\u2028\u2029]+/g, ' ').trim();
}
