import type { ChartLanguage } from '../../drawing/chart-words.ts';
import { NOTHING_LEFT } from '../../drawing/held-text.ts';
import type { PostChoice } from '../../season/post-choice.ts';

/** The words of the page that compares works at a fence with doing nothing. */
export interface WhatIfPageWords {
  readonly title: (ref: string) => string;
  readonly fence: (ref: string) => string;
  readonly heading: (ref: string) => string;
  /** The snap speed is null where next to nothing sound is left. */
  readonly before: (season: string, snap: string | null, gust: string) => string;
  readonly choose: string;
  readonly after: (works: readonly string[], snap: string) => string;
  readonly refused: (works: string, reason: string) => string;
  readonly refusedWayOut: string;
  readonly compareAll: string;
  readonly note: (day: string) => string;
  readonly legend: string;
  readonly at: Readonly<Record<PostChoice, string>>;
  readonly postsFor: (works: string) => string;
  readonly compare: string;
  readonly sideBySide: string;
  readonly costs: (works: string, price: string, hours: number) => string;
  readonly nowAndAfter: string;
  readonly tableCaption: string;
  readonly season: (label: string) => string;
  readonly asItIs: string;
  readonly afterWorks: string;
  readonly rows: {
    readonly standing: string;
    readonly ends: string;
    readonly snap: string;
    readonly snapEnds: string;
    readonly lean: string;
    readonly short: string;
    readonly once: string;
    readonly snaps: string;
    readonly postsShort: string;
    readonly life: string;
    readonly price: string;
    readonly hours: string;
    readonly year: string;
  };
  readonly notWithin: string;
  readonly notKnown: string;
  readonly years: (figure: string) => string;
  readonly over: (years: number) => string;
  readonly chart: string;
  readonly everything: string;
  readonly seasonsTable: string;
  /** What prices are in, and what the columns that are no measure say. */
  readonly columns: (currency: string) => string;
}

/** What is left, within a sentence. */
const nothingLeft = (language: ChartLanguage): string =>
  `${NOTHING_LEFT[language].charAt(0).toLowerCase()}${NOTHING_LEFT[language].slice(1)}`;

const EN: WhatIfPageWords = {
  title: (ref) => `What if, fence ${ref}`,
  fence: (ref) => `Fence ${ref}`,
  heading: (ref) => `What if something were done to fence ${ref}?`,
  before: (season, snap, gust) =>
    `In season ${season}, as it is, ${snap === null ? nothingLeft('en') : `it breaks in a gust of ${snap}`}; its design gust is ${gust}.`,
  choose: 'Choose what might be done, and see both side by side.',
  after: (works, snap) => `After the ${works.join(' and the ')} it would break at ${snap}.`,
  refused: (works, reason) => `No ${works}: ${reason}.`,
  refusedWayOut: 'Choose other works or other posts.',
  compareAll: 'Compare everything that could be done to it',
  note: (day) =>
    `Works are thought to be done on ${day}. Prices before tax, from the works catalogue: where the office has not set its own, they are orders of magnitude.`,
  legend: 'Works from the catalogue, one or more',
  at: {
    all: 'every post',
    weak: 'weak posts',
    others: 'posts that are not weak',
    found: 'posts found broken or leaning',
    line: 'line posts',
    ends: 'end posts',
  },
  postsFor: (works) => `Posts for the ${works}`,
  compare: 'Compare with doing nothing',
  sideBySide: 'Side by side',
  costs: (works, price, hours) => `${works}: ${price} for ${hours} hours of work.`,
  nowAndAfter: 'Now and after',
  tableCaption: 'The fence as it is and after the works',
  season: (label) => `Season ${label}`,
  asItIs: 'As it is',
  afterWorks: 'After the works',
  rows: {
    standing: 'Standing',
    ends: 'Ends',
    snap: 'Snap speed',
    snapEnds: 'Snap speed, ends',
    lean: 'Lean speed',
    short: 'Short season',
    once: 'A gust that breaks it comes',
    snaps: 'Snaps in this season',
    postsShort: 'Posts expected short',
    life: 'Life left',
    price: 'Price',
    hours: 'Hours of one person',
    year: 'A year of life gained costs',
  },
  notWithin: 'not within 30',
  notKnown: 'not known',
  years: (figure) => `${figure} years`,
  over: (years) => `over ${years} years`,
  chart: 'Middle values, season by season. Thin: as it is. Heavy: after the works.',
  everything: 'Everything that could be done',
  seasonsTable: 'Snap and lean speed season by season',
  columns: (currency) =>
    `Prices in ${currency} before tax. Posts short: how many posts may be expected, each counted with its chance, not to hold the design gust in the first season; so some may be short where the fence as a whole, judged by its middle value, is short from none of the next 30 seasons. A year more costs: the price divided by the years of life that the works add.`,
};

const ES: WhatIfPageWords = {
  title: (ref) => `Qué pasaría, cerca ${ref}`,
  fence: (ref) => `Cerca ${ref}`,
  heading: (ref) => `¿Qué pasaría si se le hiciera algo a la cerca ${ref}?`,
  before: (season, snap, gust) =>
    `En la temporada ${season}, como está, ${snap === null ? nothingLeft('es') : `se rompe con una ráfaga de ${snap}`}; su ráfaga de diseño es ${gust}.`,
  choose: 'Elija lo que se podría hacer y vea las dos cosas lado a lado.',
  after: (works, snap) => `Después (${works.join(' y ')}) se rompería a ${snap}.`,
  refused: (works, reason) => `No procede: ${works}. Motivo: ${reason}.`,
  refusedWayOut: 'Elija otros trabajos u otros postes.',
  compareAll: 'Comparar todo lo que se le podría hacer',
  note: (day) =>
    `Se cuenta con que los trabajos se hacen el ${day}. Precios sin impuestos, del catálogo de trabajos: donde la oficina no puso los suyos son órdenes de magnitud.`,
  legend: 'Trabajos del catálogo, uno o más',
  at: {
    all: 'todos los postes',
    weak: 'postes débiles',
    others: 'postes que no son débiles',
    found: 'postes encontrados rotos o inclinados',
    line: 'postes de línea',
    ends: 'postes de los extremos',
  },
  postsFor: (works) => `Postes para: ${works}`,
  compare: 'Comparar con no hacer nada',
  sideBySide: 'Lado a lado',
  costs: (works, price, hours) => `${works}: ${price} por ${hours} horas de trabajo.`,
  nowAndAfter: 'Ahora y después',
  tableCaption: 'La cerca como está y después de los trabajos',
  season: (label) => `Temporada ${label}`,
  asItIs: 'Como está',
  afterWorks: 'Después de los trabajos',
  rows: {
    standing: 'Estado',
    ends: 'Extremos',
    snap: 'Velocidad de rotura',
    snapEnds: 'Velocidad de rotura, extremos',
    lean: 'Velocidad de inclinación',
    short: 'Insuficiente desde',
    once: 'Una ráfaga que la rompe llega',
    snaps: 'Se rompe en esta temporada',
    postsShort: 'Postes insuficientes que se esperan',
    life: 'Vida que le queda',
    price: 'Precio',
    hours: 'Horas de una persona',
    year: 'Cada año de vida ganado cuesta',
  },
  notWithin: 'no en 30',
  notKnown: 'no se sabe',
  years: (figure) => `${figure} años`,
  over: (years) => `más de ${years} años`,
  chart: 'Valores medios, temporada por temporada. Delgada: como está. Gruesa: después de los trabajos.',
  everything: 'Todo lo que se podría hacer',
  seasonsTable: 'Velocidad de rotura y de inclinación, temporada por temporada',
  columns: (currency) =>
    `Precios en ${currency}, sin impuestos. Postes insuf.: cuántos postes, contado cada uno con su probabilidad, se espera que no aguanten la ráfaga de diseño en la primera temporada; por eso puede haber algunos insuficientes aunque la cerca entera, por su valor medio, no lo sea en ninguna de las próximas 30 temporadas. Un año más cuesta: el precio dividido entre los años de vida que el trabajo añade.`,
};

/** The words of the page that compares works at a fence with doing nothing, by language. */
export const WHAT_IF_PAGE_WORDS: Readonly<Record<ChartLanguage, WhatIfPageWords>> = { en: EN, es: ES };
