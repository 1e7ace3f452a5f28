import { type FenceForecast, judgedGroup, seasonOne } from '../forecast/fence-forecast.ts';
import type { ChartLanguage } from './chart-words.ts';
import { onceInYearsCell, percentText } from './quantity-text.ts';

/** Gusts rarer than this are not held against the chance of a season [a]. */
const RAREST_TOLD_YEARS = 1000;
/** Gusts that come oftener are told to come in most years, not in N [a]. */
const LEAST_TOLD_YEARS = 1.5;
/** From so much above one in N years on, the difference is told [-]. */
const TOLD_FROM = 1.05;

/**
 * The chance that wind snaps a fence in its season 1, in one sentence, and why it is higher than one in the N years of the gust that
 * breaks it by its middle value: it may be weaker. Null where its site has no wind curve.
 */
export function snapChanceSentence(forecast: FenceForecast, language: ChartLanguage): string | null {
  const one = seasonOne(forecast);
  if (one.pSnap === null) return null;
  const { onceInYears } = judgedGroup(one);
  const chance = percentText(one.pSnap, language);
  const years =
    onceInYears !== null &&
    onceInYears >= LEAST_TOLD_YEARS &&
    onceInYears <= RAREST_TOLD_YEARS &&
    one.pSnap >= TOLD_FROM / onceInYears
      ? onceInYearsCell(onceInYears)
      : null;
  if (language === 'es') {
    const why = years === null ? '' : `, más que 1 en ${years}, porque puede ser más débil que su valor medio`;
    return `Que el viento la rompa en la temporada ${one.label}: ${chance}${why}.`;
  }
  const why = years === null ? '' : `, more than 1 in ${years}, because it may be weaker than its middle value`;
  return `Chance that wind snaps it in season ${one.label}: ${chance}${why}.`;
}
