import type { UnknownInput } from '../forecast/fence-forecast.ts';
import type { ChartLanguage } from './chart-words.ts';
import { fenceReportWords } from './report/fence-words-in.ts';
import { phraseBook } from './spanish/phrase-book.ts';
import type { DisplayUnits } from './speed-text.ts';
import { displaySpeed, speedText } from './speed-text.ts';

/** A swing under this moves no shown number [mph or km/h]. */
const LEAST_SWING: Readonly<Record<DisplayUnits, number>> = { us: 0.5, metric: 1 };

const WAYS_EN: Readonly<Record<UnknownInput['input'], string>> = {
  'install date': 'Papers of the build settle it.',
  'treatment class': 'The tag or stamp on a post can tell it to an inspection.',
  species: 'The wood or its stamp can tell it to an inspection.',
  embedment: 'An inspection measures it by digging at a post.',
  footing: 'An inspection measures it by digging at a post.',
  'end kind': 'An inspection sees it at the ends of the run.',
};

const WAYS_ES: Readonly<Record<UnknownInput['input'], string>> = {
  'install date': 'Lo aclaran los papeles de la obra.',
  'treatment class': 'Una inspección puede leerlo en la etiqueta o el sello de un poste.',
  species: 'Una inspección puede verlo en la madera o en su sello.',
  embedment: 'Una inspección lo mide cavando junto a un poste.',
  footing: 'Una inspección lo mide cavando junto a un poste.',
  'end kind': 'Una inspección lo ve en los extremos del tramo.',
};

const stand = phraseBook([
  ['any day from {} to {}', 'cualquier día del {} al {}'],
  [
    'a pace between ground-contact and above-ground stock, with a wider spread',
    'un ritmo entre el de la madera para contacto con el suelo y el de la de sobre el suelo, con más dispersión',
  ],
  [
    'a low-middling bending strength with a wider spread',
    'una resistencia a la flexión de media a baja, con más dispersión',
  ],
  ['about {}', 'más o menos {}'],
  ['a concrete collar of about {}', 'un collar de concreto de más o menos {}'],
  ['a return at least {} long', 'un retorno de al menos {} de largo'],
]);

/** How an input that is not recorded can be found out, and whether an inspection is the way. */
export const wayToKnowSentence = ({ input }: Pick<UnknownInput, 'input'>, language: ChartLanguage = 'en'): string =>
  (language === 'es' ? WAYS_ES : WAYS_EN)[input];

/** An input that the register does not know, what stands in for it, and how far that moves the answer. */
export function unknownSentence(unknown: UnknownInput, units: DisplayUnits, language: ChartLanguage = 'en'): string {
  const { input, standsIn, moves, swingMps } = unknown;
  const hardly = displaySpeed(swingMps, units) < LEAST_SWING[units];
  if (language === 'es') {
    const speed = `la velocidad de ${moves === 'snap' ? 'rotura' : 'inclinación'}`;
    const moved = hardly
      ? `Casi no mueve ${speed}.`
      : `Mueve ${speed} en ${speedText(swingMps, units)} entre sus extremos probables.`;
    return `No consta: ${fenceReportWords('es').unknownInputs[input]}. En su lugar se toma ${stand(standsIn) ?? standsIn}. ${moved}`;
  }
  const how = hardly
    ? `It hardly moves the ${moves} speed.`
    : `It moves the ${moves} speed by ${speedText(swingMps, units)} between its likely ends.`;
  return `The ${input}: ${standsIn} stands in. ${how}`;
}
