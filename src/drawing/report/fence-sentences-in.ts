import { type FenceForecast, type FenceStanding, judgedGroup, seasonOne } from '../../forecast/fence-forecast.ts';
import { isWorse } from '../../forecast/standing.ts';
import type { ChartLanguage } from '../chart-words.ts';
import { breakingSentence, endsSentence, standingSentence, turnoverSentence } from '../fence-sentences.ts';
import { isNextToNothing, NOTHING_LEFT } from '../held-text.ts';
import { onceInWords } from '../quantity-text.ts';
import type { DisplayUnits } from '../speed-text.ts';
import { speedText } from '../speed-text.ts';
import { standingName } from './record-names.ts';

/** A forecast with the standings that are kept after the margin an improvement has to pass, and how it is shown. */
export interface ToldForecast {
  readonly forecast: FenceForecast;
  readonly standing: FenceStanding;
  readonly endsStanding: FenceStanding | null;
  readonly units: DisplayUnits;
}

const capital = (text: string): string => `${text.charAt(0).toUpperCase()}${text.slice(1)}`;

function breakingEs({ forecast, units }: ToldForecast): string {
  const group = judgedGroup(seasonOne(forecast));
  const once = group.onceInYears;
  const often = once === null ? '' : `, que llega ${onceInWords(once, 'es')}`;
  const design = `la ráfaga de diseño del lugar es ${speedText(forecast.designGust.gustMps, units)}.`;
  if (isNextToNothing(group.snapMps.p50, units)) return `${NOTHING_LEFT.es}. ${capital(design)}`;
  return `Se rompe con una ráfaga de ${speedText(group.snapMps.p50, units)}${often}; ${design}`;
}

/** Standing of one group of posts in Spanish. */
function judgedEs(
  { forecast, units }: ToldForecast,
  group: {
    readonly posts: string;
    readonly kept: FenceStanding;
    readonly bare: FenceStanding;
    readonly holdsMps: number;
    readonly short: string | null;
  },
): string {
  const { posts, kept, bare, holdsMps, short } = group;
  const gust = speedText(forecast.designGust.gustMps, units);
  const season = short === null ? 'dentro de 30 temporadas' : `en la temporada ${short}`;
  const word = standingName(kept, 'es');
  if (isWorse(kept, bare)) {
    return `${capital(word)}: ${posts} aguantan ${speedText(holdsMps, units)}, menos del 3 % por encima de la ráfaga de diseño de ${gust}, o dejan de aguantarla pronto; sigue contando así hasta que aguanten más.`;
  }
  switch (kept) {
    case 'clear':
      return short === null
        ? `Con margen: ${posts} aguantan la ráfaga de diseño en todas las temporadas previstas.`
        : `Con margen: ${posts} aguantan la ráfaga de diseño hasta la temporada ${short}, cuando dejan de aguantarla.`;
    case 'closing':
      return `Cerca del límite: ${posts} dejan de aguantar la ráfaga de diseño ${season}.`;
    case 'short':
      return `Insuficiente: ${posts} ya no aguantan la ráfaga de diseño.`;
    case 'short from new':
      return `Insuficiente desde nueva: ${posts} no aguantaban la ráfaga de diseño ni con la madera sana.`;
  }
}

function standingEs(told: ToldForecast): string {
  const one = seasonOne(told.forecast);
  return judgedEs(told, {
    posts: one.line ? 'sus postes de línea' : 'sus postes',
    kept: told.standing,
    bare: told.forecast.standing,
    holdsMps: judgedGroup(one).snapMps.p50,
    short: told.forecast.shortSeason,
  });
}

function turnoverEs({ forecast, units }: ToldForecast): string {
  const one = seasonOne(forecast);
  const lean = speedText(judgedGroup(one).leanMps.p50, units);
  const { turnover } = forecast;
  if (turnover === 'since new')
    return 'Sus postes son más débiles que sus cimientos desde nueva: se rompe antes de inclinarse.';
  if (turnover === null) return `Se inclina antes de romperse, con unas ${lean}, en todas las temporadas previstas.`;
  const past = forecast.seasons.some((season) => season.label === turnover && (season.season ?? 0) < 1);
  if (past) return `Desde la temporada ${turnover} se rompe antes de inclinarse.`;
  return turnover === one.label
    ? 'Desde esta temporada se rompe antes de inclinarse.'
    : `Se inclina con unas ${lean} antes de romperse; desde la temporada ${turnover} se rompe primero.`;
}

function endsEs(told: ToldForecast): string | null {
  const { forecast, endsStanding } = told;
  const { line, ends } = seasonOne(forecast);
  if (!line || !ends || endsStanding === null || forecast.endsStanding === null || endsStanding === 'clear')
    return null;
  const judged = judgedEs(told, {
    posts: 'los postes junto a sus extremos',
    kept: endsStanding,
    bare: forecast.endsStanding,
    holdsMps: ends.snapMps.p50,
    short: forecast.endsShortSeason,
  });
  return `Extremos: ${judged.charAt(0).toLowerCase()}${judged.slice(1)} Perderlos significa una reparación, no una cerca nueva.`;
}

/** What a fence's forecast comes to, in sentences: which gust breaks it, where it stands, what gives way first, its ends. */
export function fenceSentences(
  told: ToldForecast,
  language: ChartLanguage,
): {
  readonly breaking: string;
  readonly rest: readonly string[];
} {
  const { forecast, units, standing, endsStanding } = told;
  if (language === 'es') {
    return {
      breaking: breakingEs(told),
      rest: [standingEs(told), turnoverEs(told), endsEs(told)].filter((each) => each !== null),
    };
  }
  return {
    breaking: breakingSentence(forecast, units),
    rest: [
      standingSentence(forecast, units, standing),
      turnoverSentence(forecast, units),
      endsSentence(forecast, units, endsStanding),
    ].filter((each) => each !== null),
  };
}
