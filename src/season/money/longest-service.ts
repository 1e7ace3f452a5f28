import type { FenceFacts, InstallDate } from '../../forecast/fence-facts.ts';
import { fenceStates, stateOn } from '../../forecast/fence-state.ts';
import { middleDay } from '../../forecast/season-days.ts';
import { type CalendarDay, yearsBetween } from '../../units/calendar-day.ts';

/** How long a fence has served, and how much of its longest service is left. */
export interface ServiceLeft {
  /** When the fence as it stands was built, or rebuilt. */
  readonly built: InstallDate;
  /** Its age on a day [a]. */
  readonly ageAt: (when: CalendarDay) => number;
  /** Whole seasons of its longest service that are left when season 1 opens; 0: its rails and boards count as worn out. */
  readonly seasonsLeft: number;
}

/**
 * What is left of the longest service of a fence, after which it is rebuilt whatever its posts hold: rails and boards are not
 * forecast, they count as worn out by their age alone [a]. Counted in whole seasons, rounded. Throws RangeError where the fence is
 * not built on the day.
 * @param day the day from which it is looked at
 * @param seasonDay the day on which season 1 opens
 * @param longestServiceYears age at which rails and boards count as worn out [a], 1 to 30
 * Source: years between days (derived); the longest service itself is a term that the caller gives.
 */
export function serviceLeft(
  facts: FenceFacts,
  day: CalendarDay,
  { seasonDay, longestServiceYears }: { readonly seasonDay: CalendarDay; readonly longestServiceYears: number },
): ServiceLeft {
  const { built } = stateOn(fenceStates(facts), day);
  const ageAt = (when: CalendarDay): number => Math.max(0, yearsBetween(middleDay(built), when));
  return { built, ageAt, seasonsLeft: Math.max(0, Math.round(longestServiceYears - ageAt(seasonDay))) };
}
