import type { UnknownInput } from '../forecast/fence-forecast.ts';
import type { DisplayUnits } from './speed-text.ts';
import { displaySpeed, speedText } from './speed-text.ts';

/** A swing under this moves no shown number [mph or km/h]. */
const LEAST_SWING: Readonly<Record<DisplayUnits, number>> = { us: 0.5, metric: 1 };

const WAYS: Readonly<Record<UnknownInput['input'], string>> = {
  'install date': 'Papers of the build settle it.',
  'treatment class': 'The tag or stamp on a post can tell it to an inspection.',
  species: 'The wood or its stamp can tell it to an inspection.',
  embedment: 'An inspection measures it by digging at a post.',
  footing: 'An inspection measures it by digging at a post.',
  'end kind': 'An inspection sees it at the ends of the run.',
};

/** How an input that is not recorded can be found out, and whether an inspection is the way. */
export const wayToKnowSentence = ({ input }: Pick<UnknownInput, 'input'>): string => WAYS[input];

/** An input that the register does not know, what stands in for it, and how far that moves the answer. */
export function unknownSentence(unknown: UnknownInput, units: DisplayUnits): string {
  const { input, standsIn, moves, swingMps } = unknown;
  const how =
    displaySpeed(swingMps, units) < LEAST_SWING[units]
      ? `It hardly moves the ${moves} speed.`
      : `It moves the ${moves} speed by ${speedText(swingMps, units)} between its likely ends.`;
  return `The ${input}: ${standsIn} stands in. ${how}`;
}
