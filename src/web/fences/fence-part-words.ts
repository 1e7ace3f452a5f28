import type { ChartLanguage } from '../../drawing/chart-words.ts';

/** The words of the parts of a fence's page that tell of records and evidence. */
export interface FencePartWords {
  readonly seasons: string;
  readonly seasonsCaption: string;
  readonly unknownHeading: string;
  readonly allRecorded: string;
  readonly carried: string;
  readonly weighsLink: string;
  readonly carriedEnd: string;
  readonly foundAtPosts: string;
  readonly beforeAndAfter: string;
  readonly seenHeading: string;
  readonly noneRecorded: string;
  readonly inspectionsCaption: string;
  readonly inspectionColumns: readonly [day: string, inspection: string, found: string];
  readonly nothingRecorded: string;
  readonly stormsCaption: string;
  readonly stormColumns: readonly [day: string, storm: string, did: string];
  readonly gust: string;
  readonly reportedBy: (who: string) => string;
  readonly checker: string;
  readonly checkerNote: string;
  readonly checkerCaption: string;
  readonly checkerColumns: readonly [
    when: string,
    entered: string,
    postHolds: string,
    footingHolds: string,
    post: string,
    footing: string,
    least: string,
  ];
  readonly onDay: (day: string) => string;
  readonly meets: readonly [yes: string, no: string];
  readonly both: (post: string, footing: string) => string;
}

const EN: FencePartWords = {
  seasons: 'Seasons of this fence',
  seasonsCaption:
    'Middle value, and in brackets the range that holds it in 8 cases of 10. The ruled season is the one running or next to open.',
  unknownHeading: 'What it does not know',
  allRecorded: 'Every input that can be recorded is.',
  carried:
    'What no record can say (how fast its wood rots, how strong its wood and its footings are, how much wind reaches it) the forecast carries as ranges:',
  weighsLink: 'what weighs most of all',
  carriedEnd: ', and what an inspection can narrow.',
  foundAtPosts: 'What was found at the posts',
  beforeAndAfter: 'Before and after',
  seenHeading: 'Inspections and storms',
  noneRecorded: 'None recorded.',
  inspectionsCaption: 'Inspections, newest first',
  inspectionColumns: ['Day', 'Inspection', 'What was found'],
  nothingRecorded: 'nothing recorded',
  stormsCaption: 'What storms did, newest first',
  stormColumns: ['Day', 'Storm', 'What it did'],
  gust: 'gust',
  reportedBy: (who) => `reported by ${who}`,
  checker: 'As a checker would compute it',
  checkerNote:
    'Information only: allowable stress and presumptive soil values, with the rot expected by then. It asks more than nature does, so many sound fences fail it.',
  checkerCaption: 'By allowable stress (ASD), on the basis the design wind was entered in',
  checkerColumns: ['When', 'Entered gust', 'Post holds', 'Footing holds', 'Post', 'Footing', '16 psf minimum'],
  onDay: (day) => `on ${day}`,
  meets: ['meets it', 'does not meet it'],
  both: (post, footing) => `post ${post}, footing ${footing}`,
};

const ES: FencePartWords = {
  seasons: 'Temporadas de esta cerca',
  seasonsCaption:
    'Valor medio, y entre paréntesis el margen que lo contiene en 8 de cada 10 casos. La temporada con raya es la que está en curso o la próxima en abrir.',
  unknownHeading: 'Lo que no sabe',
  allRecorded: 'Consta todo lo que se puede anotar.',
  carried:
    'Lo que ningún registro puede decir (qué tan rápido se pudre su madera, qué tan fuertes son su madera y sus cimientos, cuánto viento le llega) el pronóstico lo lleva como márgenes:',
  weighsLink: 'qué pesa más de todo',
  carriedEnd: ', y qué puede aclarar una inspección.',
  foundAtPosts: 'Lo que se encontró en los postes',
  beforeAndAfter: 'Antes y después',
  seenHeading: 'Inspecciones y tormentas',
  noneRecorded: 'No consta ninguna.',
  inspectionsCaption: 'Inspecciones, la más reciente primero',
  inspectionColumns: ['Día', 'Inspección', 'Lo que se encontró'],
  nothingRecorded: 'nada anotado',
  stormsCaption: 'Lo que hicieron las tormentas, la más reciente primero',
  stormColumns: ['Día', 'Tormenta', 'Qué hizo'],
  gust: 'ráfaga',
  reportedBy: (who) => `según ${who}`,
  checker: 'Como lo calcularía un revisor',
  checkerNote:
    'Solo informativo: esfuerzos admisibles y valores de suelo supuestos, con la pudrición esperada para entonces. Pide más que la naturaleza, así que muchas cercas sanas no lo cumplen.',
  checkerCaption: 'Por esfuerzos admisibles (ASD), sobre la base con que se anotó el viento de diseño',
  checkerColumns: [
    'Cuándo',
    'Ráfaga anotada',
    'El poste aguanta',
    'El cimiento aguanta',
    'Poste',
    'Cimiento',
    'Mínimo de 16 psf',
  ],
  onDay: (day) => `el ${day}`,
  meets: ['la cumple', 'no la cumple'],
  both: (post, footing) => `el poste ${post}, el cimiento ${footing}`,
};

/** The words of the parts of a fence's page, by language. */
export const FENCE_PART_WORDS: Readonly<Record<ChartLanguage, FencePartWords>> = { en: EN, es: ES };
