import { DAYS_PER_YEAR, dayFromNumber, dayNumber } from '../units/calendar-day.ts';
import { rounded } from './band.ts';
import type { BeliefPoints } from './belief-points.ts';
import { groupValue, postGroups } from './post-group.ts';
import { middleDay } from './season-days.ts';
import type { SensitivityCase } from './sensitivity-case.ts';
import { classValues, stateModel } from './state-model.ts';

/** Years after season 1 beyond which a fence counts as not going short [a]. */
export const SENSITIVITY_YEARS_AHEAD = 60;

/** When a fence goes short with its inputs at given values. */
export interface ShortTime {
  /** Years from the opening of season 1, negative before it [a]; null where not within 60. */
  readonly yearsAhead: number | null;
  /** True where sound wood was already short: the time is that of the build. */
  readonly fromNew: boolean;
}

/**
 * When the present posts of a fence, by the group it is judged by, first hold less than the design gust: scanned by years
 * from their build, straight between them.
 * @param fromDay day number from which years are counted
 * @param point every unknown at one value, a single point
 * Source: one-at-a-time sensitivity (common practice).
 */
export function shortTime(at: SensitivityCase, fromDay: number, point: BeliefPoints): ShortTime {
  const model = stateModel(at.site, at.state, point);
  const { line, ends } = postGroups(model.classes.classes);
  const group = (line ?? ends)!;
  const snapMps = (years: number, sound: boolean): number => {
    const day = dayFromNumber(fromDay + years * DAYS_PER_YEAR);
    return groupValue(group, classValues(model, day, sound).snapMps, 'lowest')[0]!;
  };
  const builtYears = (dayNumber(middleDay(at.state.built)) - fromDay) / DAYS_PER_YEAR;
  let years = builtYears;
  let speed = snapMps(years, true);
  if (speed < at.gustMps) return { yearsAhead: rounded(builtYears, 3), fromNew: true };
  while (years < SENSITIVITY_YEARS_AHEAD) {
    const next = Math.min(SENSITIVITY_YEARS_AHEAD, Math.floor(years + 1));
    const nextSpeed = snapMps(next, false);
    if (nextSpeed < at.gustMps) {
      const part = (speed - at.gustMps) / (speed - nextSpeed);
      return { yearsAhead: rounded(years + part * (next - years), 3), fromNew: false };
    }
    [years, speed] = [next, nextSpeed];
  }
  return { yearsAhead: null, fromNew: false };
}
