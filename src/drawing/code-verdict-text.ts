import type { CodeVerdict, FenceForecast } from '../forecast/fence-forecast.ts';
import { seasonOne } from '../forecast/fence-forecast.ts';
import type { ChartLanguage } from './chart-words.ts';
import type { DisplayUnits } from './speed-text.ts';
import { speedText } from './speed-text.ts';

/** Which state a checker's verdict is about: `as built`, or the season at hand, whose opening may lie months ahead. */
export function verdictWhen(verdict: CodeVerdict, forecast: FenceForecast, language: ChartLanguage = 'en'): string {
  const [built, season] = language === 'es' ? ['como se construyó', 'en la temporada'] : ['as built', 'in season'];
  return verdict.when === 'new' ? built : `${season} ${seasonOne(forecast).label}`;
}

/** The calendar day of the state that a verdict is about; null for the state as built. */
export const verdictDay = (verdict: CodeVerdict, forecast: FenceForecast): string | null =>
  verdict.when === 'new' ? null : seasonOne(forecast).day;

/** A checker's verdict in a sentence: when, what post and footing hold by allowable stress, and what was entered. */
export function verdictSentence(verdict: CodeVerdict, forecast: FenceForecast, units: DisplayUnits): string {
  const day = verdictDay(verdict, forecast);
  const when = `${verdictWhen(verdict, forecast)}${day === null ? '' : ` (on ${day})`}`;
  const met = (meets: boolean): string => (meets ? 'meets it' : 'does not meet it');
  const [post, footing] = [speedText(verdict.snapMps, units), speedText(verdict.leanMps, units)];
  return `By allowable stress, ${when}, for the entered gust of ${speedText(verdict.enteredGustMps, units)}: the post holds ${post} and ${met(verdict.postMeets)}; the footing holds ${footing} and ${met(verdict.footingMeets)}.`;
}
