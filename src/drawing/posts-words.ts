import type { ChartLanguage } from './chart-words.ts';

/** The words over the drawings of a fence's posts. */
interface PostsWords {
  readonly runHeading: string;
  readonly sectionHeading: string;
  readonly sectionLead: (post: number, alike: number) => string;
  readonly sectionCaption: string;
}

/** The words over the drawings of a fence's posts, by language. */
export const POSTS_WORDS: Readonly<Record<ChartLanguage, PostsWords>> = {
  en: {
    runHeading: 'Along the run',
    sectionHeading: 'The post that decides, cut through at the ground',
    sectionLead: (post, alike) =>
      alike === 1
        ? `Post ${post} decides the speed this fence is judged by.`
        : `Post ${post} stands for the ${alike} posts that decide the speed this fence is judged by.`,
    sectionCaption:
      'Rot takes the same depth off every side; bending strength goes with the cube of what is left. Single posts scatter around the one drawn here.',
  },
  es: {
    runHeading: 'A lo largo del tramo',
    sectionHeading: 'El poste que decide, cortado a ras de suelo',
    sectionLead: (post, alike) =>
      alike === 1
        ? `El poste ${post} decide la velocidad por la que se juzga esta cerca.`
        : `El poste ${post} representa a los ${alike} postes que deciden la velocidad por la que se juzga esta cerca.`,
    sectionCaption:
      'La pudrición quita la misma profundidad de cada lado; la resistencia a la flexión va con el cubo de lo que queda. Cada poste se aparta algo del que se dibuja aquí.',
  },
};
