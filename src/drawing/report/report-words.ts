import type { ChartLanguage } from '../chart-words.ts';
import { monthName } from '../month-name.ts';

/** Which page it is of how many: `page 2 of 5`. */
export const pageOf = (page: number, pages: number, language: ChartLanguage): string =>
  language === 'es' ? `página ${page} de ${pages}` : `page ${page} of ${pages}`;

/** A calendar day written out: `June 1, 2027`, `1 de junio de 2027`. */
export function writtenDay(day: string, language: ChartLanguage): string {
  const [year = 0, month = 1, date = 1] = day.split('-').map(Number);
  const name = monthName(month, language);
  return language === 'en' ? `${name} ${date}, ${year}` : `${date} de ${name} de ${year}`;
}

/** What the foot of a report says. */
export interface FootFacts {
  /** The day it is made, at the site. */
  readonly madeOn: string;
  readonly modelVersion: string | null;
  /** The day up to which records are counted. */
  readonly asOf: string;
}

/** The foot of a report: made on, model version, data as of. */
export function footParts({ madeOn, modelVersion, asOf }: FootFacts, language: ChartLanguage): readonly string[] {
  const [made, model, data] =
    language === 'es' ? ['Hecho el', 'modelo', 'datos hasta el'] : ['Made on', 'model', 'data as of'];
  return [`${made} ${madeOn}`, ...(modelVersion === null ? [] : [`${model} ${modelVersion}`]), `${data} ${asOf}`];
}
