import type { Mark } from '../forecast/fence-forecast.ts';

/** Languages in which charts are labelled. */
export type ChartLanguage = 'en' | 'es';

/** Every word that a fence's chart shows. */
export interface ChartWords {
  readonly snapSpeed: (judged: 'line' | 'ends') => string;
  /** The same where the whole name does not fit beside season 1. */
  readonly snapSpeedShort: (judged: 'line' | 'ends') => string;
  readonly leanSpeed: string;
  readonly endsSnapSpeed: string;
  readonly designGust: (speed: string) => string;
  readonly today: (season: string) => string;
  /** While it leans before it snaps, the longest first; `until`: the season in which that turns, null where it does not. */
  readonly leansFirst: (until: string | null) => readonly string[];
  /** While it snaps before it leans, the longest first; `from`: null where it has done so since new. */
  readonly snapsFirst: (from: string | null) => readonly string[];
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
  snapSpeedShort: (judged) => (judged === 'line' ? 'Snap, line posts' : 'Snap, ends'),
  leanSpeed: 'Lean speed',
  endsSnapSpeed: 'Snap speed, ends',
  designGust: (speed) => `Design gust ${speed}`,
  today: (season) => `Season ${season}`,
  leansFirst: (until) => [
    `Leans first ${until === null ? 'in every season' : `until ${until}`}: a repair`,
    `Leans first${until === null ? '' : ` until ${until}`}`,
    'Leans first',
    'Leans',
  ],
  snapsFirst: (from) => [
    `Snaps first ${from === null ? 'since new' : `from ${from}`}: a replacement`,
    `Snaps first ${from === null ? 'since new' : `from ${from}`}`,
    'Snaps first',
    'Snaps',
  ],
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
  snapSpeedShort: (judged) => (judged === 'line' ? 'Rotura, postes de línea' : 'Rotura, extremos'),
  leanSpeed: 'Velocidad de inclinación',
  endsSnapSpeed: 'Rotura, extremos',
  designGust: (speed) => `Ráfaga de diseño ${speed}`,
  today: (season) => `Temporada ${season}`,
  leansFirst: (until) => [
    `Se inclina primero ${until === null ? 'en cada temporada' : `hasta ${until}`}: una reparación`,
    `Se inclina primero${until === null ? '' : ` hasta ${until}`}`,
    'Se inclina primero',
    'Se inclina',
  ],
  snapsFirst: (from) => [
    `Se rompe primero desde ${from ?? 'nueva'}: un reemplazo`,
    `Se rompe primero desde ${from ?? 'nueva'}`,
    'Se rompe primero',
    'Se rompe',
  ],
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
