import type { GroundlineReading, PostReading } from '../../forecast/evidence/inspection.ts';
import type { StormOutcome } from '../../forecast/evidence/storm-outcome.ts';
import type { FoundPosts } from '../../forecast/fence-forecast.ts';
import type { ChartLanguage } from '../chart-words.ts';
import { outcomeText, readingText } from '../evidence-text.ts';
import { depthFigure, depthUnit } from '../quantity-text.ts';
import type { DisplayUnits } from '../speed-text.ts';
import { postNumbersText } from '../what-if-words.ts';
import { resultNameEs } from './record-names.ts';

const small = (mm: number, units: DisplayUnits): string => `${depthFigure(mm, units)} ${depthUnit(units)}`;

function groundlineEs(reading: GroundlineReading, units: DisplayUnits): string {
  switch (reading.kind) {
    case 'depth':
      return reading.depthMm === 0 ? 'sin pudrición' : `${small(reading.depthMm, units)} de pudrición en cada cara`;
    case 'residual-width':
      return `quedan ${small(reading.widthMm, units)} de ancho sano`;
    case 'residual-circumference':
      return `quedan ${small(reading.circumferenceMm, units)} de contorno sano`;
    case 'sound-to':
      return `sano hasta ${small(reading.depthMm, units)}`;
    case 'soft-to':
      return `blando hasta ${small(reading.depthMm, units)} por lo menos`;
    case 'broken':
      return 'roto a ras de suelo';
  }
}

function readingEs(reading: PostReading, units: DisplayUnits): string {
  const { groundline, cavityMm, leanDegrees, collarCracked, railConnection, trimmerCutMm, closedOff } = reading;
  return [
    ...(groundline ? [groundlineEs(groundline, units)] : []),
    ...(cavityMm === null ? [] : [cavityMm === 0 ? 'sin hueco' : `hueco de ${small(cavityMm, units)}`]),
    ...(leanDegrees === null ? [] : [leanDegrees === 0 ? 'a plomo' : `${leanDegrees}° fuera de plomo`]),
    ...(collarCracked === null ? [] : [collarCracked ? 'collar agrietado' : 'collar sano']),
    ...(railConnection === null
      ? []
      : [`la unión más débil del travesaño al ${Math.round(railConnection * 100)} % de una sana`]),
    ...(trimmerCutMm === null
      ? []
      : [trimmerCutMm === 0 ? 'sin corte de desbrozadora' : `corte de desbrozadora de ${small(trimmerCutMm, units)}`]),
    ...(closedOff ? ['peligroso, acordonado'] : []),
  ].join(', ');
}

/** What was found at one post, without its number: `0.24 in of rot on each face`. */
export const readingIn = (reading: PostReading, units: DisplayUnits, language: ChartLanguage): string =>
  language === 'es' ? readingEs(reading, units) : readingText(reading, units);

/** What was found at one post: `post 3: 0.24 in of rot on each face`. */
export const foundAtPost = (reading: PostReading, units: DisplayUnits, language: ChartLanguage): string =>
  language === 'es'
    ? `poste ${reading.post}: ${readingIn(reading, units, 'es')}`
    : `post ${reading.post}: ${readingIn(reading, units, 'en')}`;

/** What a storm did to which posts. */
export function stormDid(
  outcome: Pick<StormOutcome, 'posts' | 'result'>,
  othersNamed: boolean,
  language: ChartLanguage,
): string {
  if (language === 'en') return outcomeText(outcome, othersNamed);
  const { posts, result } = outcome;
  if (posts === 'all')
    return `${othersNamed ? 'todos los demás postes' : 'todos los postes'} ${resultNameEs(result, 'several')}`;
  return posts.length === 1
    ? `el poste ${posts[0]} ${resultNameEs(result, 'one')}`
    : `los postes ${posts.join(', ')} ${resultNameEs(result, 'several')}`;
}

/** What was found at the posts and not mended, a sentence each, the most pressing first. */
export function foundSentences(found: FoundPosts, language: ChartLanguage): readonly string[] {
  const { closedOff, broken, leaning, crackedCollars, hollow } = found;
  const some = (posts: readonly number[], en: string, es: string): readonly string[] => {
    if (posts.length === 0) return [];
    const numbers = postNumbersText(posts);
    return language === 'es'
      ? [`${posts.length === 1 ? 'Poste' : 'Postes'} ${numbers}: ${es}`]
      : [`${posts.length === 1 ? 'Post' : 'Posts'} ${numbers}: ${en}`];
  };
  return [
    ...some(
      closedOff,
      'recorded dangerous and closed off: keep people away.',
      'peligroso y acordonado: mantenga alejadas a las personas.',
    ),
    ...some(
      broken,
      'recorded broken; what is broken holds nothing.',
      'roto según el registro; lo que está roto no aguanta nada.',
    ),
    ...some(
      leaning,
      'recorded leaning: stay away in wind.',
      'inclinado según el registro: aléjese cuando haya viento.',
    ),
    ...some(
      crackedCollars,
      'the collar is cracked: the footing counts no wider than the post.',
      'collar agrietado: el cimiento cuenta como del ancho del poste.',
    ),
    ...some(hollow, 'hollow in the heart.', 'hueco por dentro.'),
  ];
}
