import type { UnknownInput } from '../forecast/fence-forecast.ts';
import type { DisplayUnits } from './speed-text.ts';
import { displaySpeed, speedText } from './speed-text.ts';

/** A swing under this moves no shown number [mph or km/h]. */
const LEAST_SWING: Readonly<Record<DisplayUnits, number>> = { us: 0.5, metric: 1 };

/** An input that the register does not know, what stands in for it, and how far that moves the answer. */
export function unknownSentence(unknown: UnknownInput, units: DisplayUnits): string {
  const { input, standsIn, moves, swingMps } = unknown;
  const how =
    displaySpeed(swingMps, units) < LEAST_SWING[units]
      ? `It hardly moves the ${moves} speed.`
      : `It moves the ${moves} speed by ${speedText(swingMps, units)} between its likely ends.`;
  return `The ${input}: ${standsIn} stands in. ${how}`;
}
