import type { PostSection } from '../capacity/post-section.ts';
import { type SectionLoss, sectionArea, sectionModulus } from '../capacity/section-properties.ts';
import type { PostMoment, PostOutlook } from '../forecast/post-outlook.ts';
import { inchesFromMm } from '../units/length.ts';
import type { ChartLanguage } from './chart-words.ts';
import { percentText } from './quantity-text.ts';
import { soundCore } from './sound-core.ts';
import type { DisplayUnits } from './speed-text.ts';

/** Every word that the drawing of a post's section shows. */
export interface PostSectionWords {
  readonly title: (post: number) => string;
  readonly now: string;
  readonly inSeasons: (count: number) => string;
  readonly sound: (size: string) => string;
  readonly nothingSound: string;
  readonly thinShell: string;
  /** The range is null where all of it rounds to nothing. */
  readonly strength: (share: string, range: string | null) => string;
  readonly broken: string;
  readonly doesNotRot: string;
  readonly note: string;
  readonly cut: string;
  readonly hollow: string;
  readonly sleeved: string;
  readonly across: string;
}

const EN: PostSectionWords = {
  title: (post) => `Post ${post} cut through at the ground, to scale`,
  now: 'now',
  inSeasons: (count) => `in ${count} seasons`,
  sound: (size) => `${size} sound`,
  nothingSound: 'nothing sound',
  thinShell: 'shell too thin to count',
  strength: (share, range) => `${share} of its strength${range === null ? '' : ` (${range})`}`,
  broken: 'broken: holds nothing',
  doesNotRot: 'does not rot',
  note: 'The fence runs from left to right. Outer line: the post as set. Dark: sound in 9 cases of 10. Heavy line: as likely more as less. Pale: sound in 1 case of 10. Dotted: rotted.',
  cut: 'The flat at the top is what trimmers have cut off one face.',
  hollow: 'The gap in the middle is the cavity as found.',
  sleeved: 'The double line is the steel sleeve that carries it at the ground.',
  across: 'across',
};

const ES: PostSectionWords = {
  title: (post) => `Poste ${post} cortado a ras de suelo, a escala`,
  now: 'ahora',
  inSeasons: (count) => `en ${count} temporadas`,
  sound: (size) => `${size} sanos`,
  nothingSound: 'nada sano',
  thinShell: 'capa demasiado fina para contar',
  strength: (share, range) => `${share} de su fuerza${range === null ? '' : ` (${range})`}`,
  broken: 'roto: no sostiene nada',
  doesNotRot: 'no se pudre',
  note: 'La cerca va de izquierda a derecha. Línea exterior: el poste como se puso. Oscuro: sano en 9 de 10 casos. Línea gruesa: igual de probable más que menos. Claro: sano en 1 de 10 casos. Punteado: podrido.',
  cut: 'El lado plano de arriba es lo que la desbrozadora ha cortado de una cara.',
  hollow: 'El hueco del centro es la cavidad encontrada.',
  sleeved: 'La línea doble es la funda de acero que lo sostiene en el suelo.',
  across: 'de diámetro',
};

const WORDS: Readonly<Record<ChartLanguage, PostSectionWords>> = { en: EN, es: ES };

/** The words of the drawing of a post's section in one language. */
export const postSectionWords = (language: ChartLanguage): PostSectionWords => WORDS[language];

/** The losses of a moment at one end of its band. */
export const lossAt = (moment: PostMoment, end: 'p10' | 'p50' | 'p90'): SectionLoss => ({
  depthMm: moment.depthMm[end],
  oneFaceMm: moment.oneFaceMm,
  cavityDiameterMm: moment.cavityDiameterMm,
});

const figure = (mm: number, units: DisplayUnits): string =>
  units === 'us' ? inchesFromMm(mm).toFixed(1) : mm.toFixed(0);

/** Middle size of the sound wood left: `2.4 × 2.1 in`, `61 mm across`; null where nothing is left. */
function soundSizeText(
  section: PostSection,
  moment: PostMoment,
  { units, language }: { readonly units: DisplayUnits; readonly language: ChartLanguage },
): string | null {
  const core = soundCore(section, lossAt(moment, 'p50'));
  const unit = units === 'us' ? 'in' : 'mm';
  if (core.kind === 'nothing') return null;
  if (core.kind === 'circle') return `${figure(2 * core.radius, units)} ${unit} ${WORDS[language].across}`;
  return `${figure(core.width, units)} × ${figure(core.height, units)} ${unit}`;
}

/** What a post's section comes to at one moment, in a line or two: size left, strength left. */
export function momentLines(
  post: PostOutlook,
  moment: PostMoment,
  options: { readonly units: DisplayUnits; readonly language: ChartLanguage },
): readonly string[] {
  const words = WORDS[options.language];
  if (post.condition.broken && moment.season === 1) return [words.broken];
  if (!post.rots) return [words.doesNotRot];
  const loss = lossAt(moment, 'p50');
  const { p10, p50, p90 } = moment.strengthLeft;
  const share = (value: number): string => percentText(Math.min(1, value), options.language);
  const [low, high] = [p10, p90].map((left) => Math.round(Math.min(1, left) * 100));
  const range = high === 0 ? null : `${low}–${high} %`;
  const size = soundSizeText(post.section, moment, options);
  const left =
    size === null
      ? words.nothingSound
      : sectionModulus(post.section, loss) === 0 && sectionArea(post.section, loss) > 0
        ? words.thinShell
        : words.sound(size);
  return [left, words.strength(p50 >= 0.995 ? '100 %' : share(p50), range)];
}
