import type { ChartLanguage } from './chart-words.ts';

/** Why the expected spending of a year may stand outside what it stays between in eight years of ten. */
export const MEAN_BESIDE_RANGE: Readonly<Record<ChartLanguage, string>> = {
  en: 'The expected sum counts everything that may happen at its chance, a fence that snaps and is rebuilt in a bad week too; what is spent in eight years of ten leaves the dearest year in ten out, and the cheapest. So where something dear is unlikely in a year, the expected sum of that year can stand above the range.',
  es: 'La suma prevista cuenta todo lo que puede pasar según su probabilidad, también una cerca que se rompe y se reconstruye en una mala semana; lo que se gasta en ocho años de cada diez deja fuera el más caro de los diez y el más barato. Por eso, donde algo caro es poco probable en un año, la suma prevista de ese año puede quedar por encima del rango.',
};
