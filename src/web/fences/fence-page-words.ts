import type { ChartLanguage } from '../../drawing/chart-words.ts';
import { bandText, depthFigure, depthUnit } from '../../drawing/quantity-text.ts';
import type { DisplayUnits } from '../../drawing/speed-text.ts';
import type { Band } from '../../forecast/band.ts';

/** The words around the drawings of a fence's posts. */
interface PostsWords {
  readonly runHeading: string;
  readonly runTable: string;
  readonly runCaption: string;
  readonly post: string;
  readonly position: string;
  readonly kind: string;
  readonly snap: string;
  readonly lean: string;
  readonly strength: string;
  readonly found: string;
  readonly linePost: string;
  readonly endPost: string;
  readonly sectionHeading: string;
  readonly sectionLead: (post: number, alike: number) => string;
  readonly sectionCaption: string;
  readonly sectionTable: string;
  readonly rot: string;
  readonly depths: (depthMm: Band, units: DisplayUnits) => string;
  readonly cut: (cutMm: number, units: DisplayUnits) => string;
}

/** The words of a fence's page. */
export interface FencePageWords {
  readonly posts: PostsWords;
}

const depths = (depthMm: Band, units: DisplayUnits): string =>
  `${bandText(depthMm, (mm) => depthFigure(mm, units))} ${depthUnit(units)}`;

const EN: FencePageWords = {
  posts: {
    runHeading: 'Along the run',
    runTable: 'The same as a table, post by post',
    runCaption: 'Middle values at the opening of the season that is running or next to open.',
    post: 'Post',
    position: 'From the named end',
    kind: 'Kind',
    snap: 'Snaps at',
    lean: 'Leans at',
    strength: 'Strength left',
    found: 'Marked',
    linePost: 'line post',
    endPost: 'end post',
    sectionHeading: 'The post that decides, cut through at the ground',
    sectionLead: (post, alike) =>
      alike === 1
        ? `Post ${post} decides the speed this fence is judged by.`
        : `Post ${post} stands for the ${alike} posts that decide the speed this fence is judged by.`,
    sectionCaption:
      'Rot takes the same depth off every side; bending strength goes with the cube of what is left. Single posts scatter around the one drawn here.',
    sectionTable: 'The same in words',
    rot: 'Rot per side',
    depths: (depthMm, units) => `${depths(depthMm, units)}.`,
    cut: (cutMm, units) => `Cut off one side ${depthFigure(cutMm, units)} ${depthUnit(units)}.`,
  },
};

const ES: FencePageWords = {
  posts: {
    runHeading: 'A lo largo del tramo',
    runTable: 'Lo mismo en una tabla, poste por poste',
    runCaption: 'Valores medios al abrir la temporada en curso o la próxima.',
    post: 'Poste',
    position: 'Desde el extremo con nombre',
    kind: 'Tipo',
    snap: 'Se rompe a',
    lean: 'Se inclina a',
    strength: 'Fuerza que queda',
    found: 'Marcado',
    linePost: 'poste de línea',
    endPost: 'poste de extremo',
    sectionHeading: 'El poste que decide, cortado a ras del suelo',
    sectionLead: (post, alike) =>
      alike === 1
        ? `El poste ${post} decide la velocidad por la que se juzga esta cerca.`
        : `El poste ${post} representa a los ${alike} postes que deciden la velocidad por la que se juzga esta cerca.`,
    sectionCaption:
      'La pudrición quita la misma profundidad de cada lado; la resistencia a la flexión va con el cubo de lo que queda. Cada poste se aparta algo del que se dibuja aquí.',
    sectionTable: 'Lo mismo en palabras',
    rot: 'Pudrición por lado',
    depths: (depthMm, units) => `${depths(depthMm, units)}.`,
    cut: (cutMm, units) => `Cortado de un lado ${depthFigure(cutMm, units)} ${depthUnit(units)}.`,
  },
};

/** The words of a fence's page, by language. */
export const FENCE_PAGE_WORDS: Readonly<Record<ChartLanguage, FencePageWords>> = { en: EN, es: ES };
