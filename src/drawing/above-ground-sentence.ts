import type { AboveGroundFlag } from '../forecast/above-ground.ts';
import type { CalendarDay } from '../units/calendar-day.ts';
import { depthFigure, depthUnit } from './quantity-text.ts';
import type { DisplayUnits } from './speed-text.ts';

/**
 * Whether rails and infill are due to be looked at, in a sentence in the display units.
 * @param day the day that the flag was asked for
 */
export function aboveGroundSentence(flag: AboveGroundFlag, day: CalendarDay, units: DisplayUnits): string {
  const { expectedDepthMm, look, lookFrom, reason } = flag;
  if (expectedDepthMm === null || look === null) return reason;
  const soft = `if they are of the posts' wood, about ${depthFigure(expectedDepthMm, units)} ${depthUnit(units)} of each exposed face is expected to be soft on ${day}`;
  if (look) return `Rails and infill are due for a look: ${soft}.`;
  const when = lookFrom === null ? 'need no look yet' : `need no look before season ${lookFrom}`;
  return `Rails and infill ${when}: ${soft}.`;
}
