import type { FenceForecast, FenceStanding } from '../forecast/fence-forecast.ts';
import { judgedGroup, seasonOne } from '../forecast/fence-forecast.ts';
import { isWorse } from '../forecast/standing.ts';
import type { ChartLanguage } from './chart-words.ts';
import { breakingSentence, endsSentence, standingSentence, turnoverSentence } from './fence-sentences.ts';
import { isNextToNothing, NOTHING_LEFT } from './held-text.ts';
import { onceInWords } from './quantity-text.ts';
import type { DisplayUnits } from './speed-text.ts';
import { speedText } from './speed-text.ts';

/** The sentences with which a fence's page opens. */
interface FenceSentences {
  readonly breaking: typeof breakingSentence;
  readonly standing: typeof standingSentence;
  readonly turnover: typeof turnoverSentence;
  readonly ends: typeof endsSentence;
}

const capital = (text: string): string => `${text.charAt(0).toUpperCase()}${text.slice(1)}`;

const STANDINGS: Readonly<Record<FenceStanding, string>> = {
  clear: 'con margen',
  closing: 'cerca del límite',
  short: 'insuficiente',
  'short from new': 'insuficiente desde nueva',
};

const inSeason = (season: string | null): string =>
  season === null ? 'dentro de 30 temporadas' : `en la temporada ${season}`;

function breaking(forecast: FenceForecast, units: DisplayUnits): string {
  const group = judgedGroup(seasonOne(forecast));
  const design = speedText(forecast.designGust.gustMps, units);
  const once = group.onceInYears === null ? '' : `, una que llega ${onceInWords(group.onceInYears, 'es')}`;
  if (isNextToNothing(group.snapMps.p50, units))
    return `${NOTHING_LEFT.es}. La ráfaga de diseño de su sitio es ${design}.`;
  return `Se rompe con una ráfaga de ${speedText(group.snapMps.p50, units)}${once}; la ráfaga de diseño de su sitio es ${design}.`;
}

/** What a kept standing says of posts, in Spanish; the bare one says why it is kept. */
function judgedText(
  posts: string,
  {
    kept,
    bare,
    season,
  }: { readonly kept: FenceStanding; readonly bare: FenceStanding; readonly season: string | null },
): string {
  if (isWorse(kept, bare))
    return `${capital(STANDINGS[kept])}: sus ${posts} han mejorado, pero todavía no un 3 % por encima de la ráfaga de diseño; hasta entonces siguen contando así.`;
  switch (kept) {
    case 'clear':
      return season === null
        ? `Con margen: sus ${posts} aguantan la ráfaga de diseño en todas las temporadas previstas.`
        : `Con margen: sus ${posts} aguantan la ráfaga de diseño hasta la temporada ${season}.`;
    case 'closing':
      return `Cerca del límite: sus ${posts} dejan de aguantar la ráfaga de diseño ${inSeason(season)}.`;
    case 'short':
      return `Insuficiente: sus ${posts} ya no aguantan la ráfaga de diseño.`;
    case 'short from new':
      return `Insuficiente desde nueva: sus ${posts} no aguantaban la ráfaga de diseño ni con la madera sana.`;
  }
}

function standing(forecast: FenceForecast, _units: DisplayUnits, kept: FenceStanding = forecast.standing): string {
  const posts = seasonOne(forecast).line ? 'postes de línea' : 'postes';
  return judgedText(posts, { kept, bare: forecast.standing, season: forecast.shortSeason });
}

function turnover(forecast: FenceForecast, units: DisplayUnits): string {
  const one = seasonOne(forecast);
  const lean = speedText(judgedGroup(one).leanMps.p50, units);
  const from = forecast.turnover;
  if (from === 'since new')
    return 'Sus postes han sido más débiles que sus cimientos desde nueva: se rompe antes de inclinarse.';
  if (from === null) return `Se inclina antes de romperse, a unas ${lean}, en todas las temporadas previstas.`;
  if (forecast.seasons.some(({ label, season }) => label === from && (season ?? 0) < 1))
    return `Desde la temporada ${from} se rompe antes de inclinarse.`;
  return from === one.label
    ? 'Desde esta temporada se rompe antes de inclinarse.'
    : `Se inclina a unas ${lean} antes de romperse; desde la temporada ${from} se rompe primero.`;
}

function ends(
  forecast: FenceForecast,
  _units: DisplayUnits,
  kept: FenceStanding | null = forecast.endsStanding,
): string | null {
  const { line, ends: group } = seasonOne(forecast);
  const { endsStanding: bare, endsShortSeason: season } = forecast;
  if (!line || !group || kept === null || bare === null || (kept === 'clear' && bare === 'clear')) return null;
  return `Extremos. ${judgedText('postes de los extremos', { kept, bare, season })} Perderlos es una reparación, no una cerca nueva.`;
}

/** The sentences with which a fence's page opens, by language. */
export const FENCE_SENTENCES: Readonly<Record<ChartLanguage, FenceSentences>> = {
  en: { breaking: breakingSentence, standing: standingSentence, turnover: turnoverSentence, ends: endsSentence },
  es: { breaking, standing, turnover, ends },
};
