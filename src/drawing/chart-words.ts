import type { Mark } from '../forecast/fence-forecast.ts';

/** Languages in which charts are labelled. */
export type ChartLanguage = 'en' | 'es';

/** Every word that a fence's chart shows. */
export interface ChartWords {
  readonly snapSpeed: (judged: 'line' | 'ends') => string;
  readonly leanSpeed: string;
  readonly endsSnapSpeed: string;
  readonly designGust: (speed: string) => string;
  readonly today: (season: string) => string;
  readonly turnover: (season: string) => string;
  readonly turnoverNew: string;
  readonly shortFrom: (season: string) => string;
  readonly shortSince: (season: string) => string;
  readonly shortFromNew: string;
  readonly marks: Readonly<Record<Mark, string>>;
  readonly axis: (unit: string) => string;
  readonly installed: string;
  readonly note: string;
  readonly title: (ref: string) => string;
  readonly summary: (facts: { season: string; snap: string; lean: string; gust: string }) => string;
}

const EN: ChartWords = {
  snapSpeed: (judged) => (judged === 'line' ? 'Snap speed, line posts' : 'Snap speed, ends'),
  leanSpeed: 'Lean speed',
  endsSnapSpeed: 'Snap speed, ends',
  designGust: (speed) => `Design gust ${speed}`,
  today: (season) => `Season ${season}`,
  turnover: (season) => `Snaps before it leans from ${season}`,
  turnoverNew: 'Snaps before it leans since new',
  shortFrom: (season) => `Short from ${season}`,
  shortSince: (season) => `Short since ${season}`,
  shortFromNew: 'Short from new',
  marks: {
    'two thirds': 'two thirds',
    'once in 50': 'once in 50',
    'once in 25': 'once in 25',
    'once in 10': 'once in 10',
  },
  axis: (unit) => `3-second gust, ${unit}`,
  installed: 'new',
  note: 'Heavy lines: as likely higher as lower. Bands: 8 chances in 10.',
  title: (ref) => `Snap speed and lean speed of fence ${ref}, from new to 30 seasons ahead`,
  summary: ({ season, snap, lean, gust }) =>
    `In season ${season} it snaps at ${snap} and leans at ${lean}; its site's design gust is ${gust}.`,
};

const ES: ChartWords = {
  snapSpeed: (judged) => (judged === 'line' ? 'Velocidad de rotura, postes de línea' : 'Velocidad de rotura, extremos'),
  leanSpeed: 'Velocidad de inclinación',
  endsSnapSpeed: 'Rotura, extremos',
  designGust: (speed) => `Ráfaga de diseño ${speed}`,
  today: (season) => `Temporada ${season}`,
  turnover: (season) => `Se rompe antes de inclinarse desde ${season}`,
  turnoverNew: 'Se rompe antes de inclinarse desde nueva',
  shortFrom: (season) => `Insuficiente desde ${season}`,
  shortSince: (season) => `Insuficiente desde ${season}`,
  shortFromNew: 'Insuficiente desde nueva',
  marks: {
    'two thirds': 'dos tercios',
    'once in 50': 'una vez en 50',
    'once in 25': 'una vez en 25',
    'once in 10': 'una vez en 10',
  },
  axis: (unit) => `ráfaga de 3 segundos, ${unit}`,
  installed: 'nueva',
  note: 'Líneas gruesas: igual de probable más que menos. Franjas: 8 de cada 10 casos.',
  title: (ref) => `Velocidad de rotura y de inclinación de la cerca ${ref}, desde nueva hasta 30 temporadas más`,
  summary: ({ season, snap, lean, gust }) =>
    `En la temporada ${season} se rompe a ${snap} y se inclina a ${lean}; la ráfaga de diseño del lugar es ${gust}.`,
};

const WORDS: Readonly<Record<ChartLanguage, ChartWords>> = { en: EN, es: ES };

/** The words of a fence's chart in one language. */
export const chartWords = (language: ChartLanguage): ChartWords => WORDS[language];
