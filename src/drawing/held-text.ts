import type { ChartLanguage } from './chart-words.ts';
import type { DisplayUnits } from './speed-text.ts';
import { displaySpeed, speedText, speedUnit } from './speed-text.ts';

/** Below this speed [mph or km/h, rounded] a fence is told to hold next to nothing, not to hold a gust. */
const NEXT_TO_NOTHING: Readonly<Record<DisplayUnits, number>> = { us: 5, metric: 8 };

/** True where a gust that a fence holds [m/s] is no gust worth the name in those units. */
export const isNextToNothing = (speedMps: number, units: DisplayUnits): boolean =>
  Math.round(displaySpeed(speedMps, units)) < NEXT_TO_NOTHING[units];

/** The gust that a fence holds [m/s] as a text: `84 mph`; next to nothing only as that: `under 5 mph`. */
export function heldText(speedMps: number, units: DisplayUnits, language: ChartLanguage): string {
  if (!isNextToNothing(speedMps, units)) return speedText(speedMps, units);
  return `${language === 'en' ? 'under' : 'menos de'} ${NEXT_TO_NOTHING[units]} ${speedUnit(units)}`;
}

/** What is said in place of the gust that breaks a fence where next to nothing holds it; a clause that opens a sentence. */
export const NOTHING_LEFT: Readonly<Record<ChartLanguage, string>> = {
  en: 'Next to nothing sound is left to hold it: any wind may bring it down',
  es: 'Casi nada sano queda que la sostenga: cualquier viento puede tirarla',
};
