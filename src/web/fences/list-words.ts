import { TREATMENT_CLASSES, type TreatmentClass } from '../../decay/treatment-class.ts';
import type { ChartLanguage } from '../../drawing/chart-words.ts';
import { treatmentName } from '../../drawing/report/record-names.ts';
import type { FenceStanding } from '../../forecast/fence-forecast.ts';
import type { SortKey } from '../../register/fence-query.ts';

/** The words of the list of fences, its form and its sentences. */
export interface ListWords {
  readonly title: string;
  readonly standings: Readonly<Record<FenceStanding, string>>;
  /** Short, or going short, at the line or at the ends. */
  readonly anywhere: Readonly<Record<'short' | 'closing', string>>;
  readonly dangerous: string;
  /** How the choices of standings are grouped: by the worse of line and ends, and by the line alone. */
  readonly groups: { readonly anywhere: string; readonly line: string };
  /** What a column is called, and the order by it. */
  readonly columns: Readonly<Record<SortKey, string>>;
  readonly worstFirst: string;
  readonly andOwner: readonly [and: string, owner: string];
  readonly notSwept: string;
  readonly search: string;
  readonly allOfThem: string;
  readonly more: string;
  readonly ownerRef: string;
  readonly siteRef: string;
  readonly builtFrom: string;
  readonly builtTo: string;
  readonly shortFrom: string;
  readonly shortTo: string;
  readonly orderBy: string;
  readonly turned: string;
  readonly show: string;
  readonly clear: string;
  readonly csv: (found: string) => string;
  readonly caption: string;
  readonly holds: (share: number) => string;
  readonly holdsNothing: string;
  readonly lessThanMargin: string;
  readonly now: string;
  readonly sinceNew: string;
  readonly notWithin: string;
  readonly siteAndOwner: string;
  readonly and: string;
  readonly page: (page: number) => string;
  readonly pageOf: (page: number, pages: number) => string;
  readonly pagesLabel: string;
  readonly goTo: string;
  readonly nothing: string;
  readonly noneYours: string;
  readonly showAll: (total: string) => string;
  readonly treatment: (kind: TreatmentClass) => string;
}

const EN: ListWords = {
  title: 'Fences',
  standings: { clear: 'clear', closing: 'closing', short: 'short', 'short from new': 'short from new' },
  anywhere: { short: 'short, at the line or ends', closing: 'closing, at the line or ends' },
  dangerous: 'recorded dangerous',
  groups: { anywhere: 'Line and ends together', line: 'The line alone; its short and closing are among those above' },
  columns: {
    worst: 'Worst first',
    ref: 'Fence',
    standing: 'Standing',
    ends: 'Ends',
    short: 'Short season',
    snap: 'Snap speed',
    lean: 'Lean speed',
    gust: 'Design gust',
    once: 'Once in … years',
    installed: 'Installed',
    treatment: 'Treatment',
    site: 'Site',
    owner: 'Owner',
  },
  worstFirst:
    'worst first: recorded dangerous, then by what is left of the design gust; where that is the same per cent, what is at stake: a pool, a path or animals beside it, then length',
  andOwner: ['and', 'owner'],
  notSwept: 'not swept yet',
  search: 'Fence, site or owner',
  allOfThem: 'all',
  more: 'More filters: ends, treatment, age, short season, owner',
  ownerRef: 'Owner (ref)',
  siteRef: 'Site (ref)',
  builtFrom: 'Installed from year',
  builtTo: 'to year',
  shortFrom: 'Short from season',
  shortTo: 'to season',
  orderBy: 'Order by',
  turned: 'the other way round',
  show: 'Show',
  clear: 'Show every fence',
  csv: (found) => (found === '1' ? 'This one as CSV' : `These ${found} as CSV`),
  caption: 'Speeds are 3-second gusts; the bar is the snap speed, its upright the design gust.',
  holds: (share) => `holds ${share} % of its gust`,
  holdsNothing: 'next to nothing sound is left',
  lessThanMargin: 'less than 3 % above',
  now: 'now',
  sinceNew: 'since new',
  notWithin: 'not within 30',
  siteAndOwner: 'Site and owner',
  and: 'and',
  page: (page) => `Page ${page}`,
  pageOf: (page, pages) => `Page ${page} of ${pages}`,
  pagesLabel: 'Pages of the list',
  goTo: 'Go to page',
  nothing: 'No fence answers to that.',
  noneYours: 'The fence office brings them in and gives them to your account.',
  showAll: (total) => `Show all ${total} fences`,
  treatment: (kind) => TREATMENT_CLASSES[kind].name,
};

const ES: ListWords = {
  title: 'Cercas',
  standings: {
    clear: 'con margen',
    closing: 'cerca del límite',
    short: 'insuficiente',
    'short from new': 'insuficiente desde nueva',
  },
  anywhere: {
    short: 'insuficiente, en la línea o los extremos',
    closing: 'cerca del límite, en la línea o los extremos',
  },
  dangerous: 'anotada como peligrosa',
  groups: {
    anywhere: 'La línea y los extremos juntos',
    line: 'Solo la línea; lo insuficiente y lo cerca del límite ya está contado arriba',
  },
  columns: {
    worst: 'La peor primero',
    ref: 'Cerca',
    standing: 'Estado',
    ends: 'Extremos',
    short: 'Insuficiente desde',
    snap: 'Velocidad de rotura',
    lean: 'Velocidad de inclinación',
    gust: 'Ráfaga de diseño',
    once: 'Una vez en … años',
    installed: 'Instalada',
    treatment: 'Tratamiento',
    site: 'Sitio',
    owner: 'Dueño',
  },
  worstFirst:
    'la peor primero: anotadas como peligrosas, luego por lo que queda de la ráfaga de diseño; con el mismo porcentaje, lo que está en juego: una piscina, un paso o animales al lado, luego el largo',
  andOwner: ['y', 'dueño'],
  notSwept: 'todavía sin calcular',
  search: 'Cerca, sitio o dueño',
  allOfThem: 'todos',
  more: 'Más filtros: extremos, tratamiento, edad, temporada, dueño',
  ownerRef: 'Dueño (ref)',
  siteRef: 'Sitio (ref)',
  builtFrom: 'Instalada desde el año',
  builtTo: 'hasta el año',
  shortFrom: 'Insuficiente desde la temporada',
  shortTo: 'hasta la temporada',
  orderBy: 'Ordenar por',
  turned: 'al revés',
  show: 'Mostrar',
  clear: 'Mostrar todas las cercas',
  csv: (found) => (found === '1' ? 'Esta en CSV' : `Estas ${found} en CSV`),
  caption:
    'Las velocidades son ráfagas de 3 segundos; la barra es la velocidad de rotura, su raya vertical la ráfaga de diseño.',
  holds: (share) => `aguanta el ${share} % de su ráfaga`,
  holdsNothing: 'casi nada sano queda',
  lessThanMargin: 'menos del 3 % por encima',
  now: 'ya',
  sinceNew: 'desde nueva',
  notWithin: 'no en 30',
  siteAndOwner: 'Sitio y dueño',
  and: 'y',
  page: (page) => `Página ${page}`,
  pageOf: (page, pages) => `Página ${page} de ${pages}`,
  pagesLabel: 'Páginas de la lista',
  goTo: 'Ir a la página',
  nothing: 'Ninguna cerca responde a eso.',
  noneYours: 'La oficina de cercas las registra y las da a su cuenta.',
  showAll: (total) => `Mostrar las ${total} cercas`,
  treatment: (kind) => treatmentName(kind, 'es'),
};

/** The words of the list of fences, by language. */
export const LIST_WORDS: Readonly<Record<ChartLanguage, ListWords>> = { en: EN, es: ES };
