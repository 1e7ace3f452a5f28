import type { ChartLanguage } from './chart-words.ts';

const MONTHS: Readonly<Record<ChartLanguage, string>> = {
  en: 'January February March April May June July August September October November December',
  es: 'enero febrero marzo abril mayo junio julio agosto septiembre octubre noviembre diciembre',
};

/** The name of a month, 1 to 12, as a sentence in that language writes it. Throws RangeError outside 1 to 12. */
export function monthName(month: number, language: ChartLanguage): string {
  const name = MONTHS[language].split(' ')[month - 1];
  if (name === undefined) throw new RangeError(`month name: ${month} is no month; write 1 to 12`);
  return name;
}
