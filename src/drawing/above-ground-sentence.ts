import type { AboveGroundFlag } from '../forecast/above-ground.ts';
import type { CalendarDay } from '../units/calendar-day.ts';
import type { ChartLanguage } from './chart-words.ts';
import { depthFigure, depthUnit } from './quantity-text.ts';
import { remarkInSpanish } from './spanish/forecast-remarks.ts';
import type { DisplayUnits } from './speed-text.ts';

/** In what a sentence is told: units and language, English unless given. */
interface Told {
  readonly units: DisplayUnits;
  readonly language?: ChartLanguage;
  /** True where rails and boards count as worn out by their age: then what is told is told of rot alone. */
  readonly isOutworn?: boolean;
}

/**
 * Whether rails and infill are due to be looked at, in a sentence in the display units.
 * @param day the day that the flag was asked for
 */
export function aboveGroundSentence(
  flag: AboveGroundFlag,
  day: CalendarDay,
  { units, language = 'en', isOutworn = false }: Told,
): string {
  const { expectedDepthMm, look, lookFrom, reason } = flag;
  const es = language === 'es';
  if (expectedDepthMm === null || look === null) return es ? remarkInSpanish(reason) : reason;
  const depth = `${depthFigure(expectedDepthMm, units)} ${depthUnit(units)}`;
  if (es) {
    const soft = `si son de la madera de los postes, se espera que el ${day} estén blandos más o menos ${depth} de cada cara expuesta`;
    if (look) return `A travesaños y tablas les toca una mirada: ${soft}.`;
    const when =
      lookFrom === null ? 'todavía no hay que mirarlos' : `no hay que mirarlos antes de la temporada ${lookFrom}`;
    return isOutworn
      ? `Solo por la pudrición, a travesaños y tablas ${when}; ${soft}. Por su edad cuentan como gastados de todos modos.`
      : `Travesaños y tablas: ${when}; ${soft}.`;
  }
  const soft = `if they are of the posts' wood, about ${depth} of each exposed face is expected to be soft on ${day}`;
  if (look) return `Rails and infill are due for a look: ${soft}.`;
  const when = lookFrom === null ? 'need no look yet' : `need no look before season ${lookFrom}`;
  return isOutworn
    ? `By rot alone, rails and infill ${when}: ${soft}. By their age they count as worn out all the same.`
    : `Rails and infill ${when}: ${soft}.`;
}
