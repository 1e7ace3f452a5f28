import { DAYS_PER_YEAR } from '../units/calendar-day.ts';

/** When rot of one post runs: stopped by groundline treatments, at half pace behind a liner. Days count from 1970-01-01 [d]. */
export interface RotClock {
  /** Stretches in which rot stands still, in any order, may overlap (a renewed treatment). */
  readonly stops: readonly { readonly fromDay: number; readonly toDay: number }[];
  /** Day from which a full-height liner halves the pace; null without one. */
  readonly linerFromDay: number | null;
}

export const RUNNING_CLOCK: RotClock = { stops: [], linerFromDay: null };
/** Pace behind a full-height liner over the pace without one [-]. Source: IRG 08-20384, IRG 96-40067 (read); the half is judgement. */
export const LINER_PACE = 0.5;

/** Part of the stretch from one day to another in which rot runs [d]: its length less the stops in it. */
function runningDays(clock: RotClock, fromDay: number, toDay: number): number {
  if (toDay <= fromDay) return 0;
  let running = toDay - fromDay;
  let covered = fromDay;
  for (const stop of [...clock.stops].sort((a, b) => a.fromDay - b.fromDay)) {
    const from = Math.max(stop.fromDay, covered);
    const to = Math.min(stop.toDay, toDay);
    if (to > from) {
      running -= to - from;
      covered = to;
    }
  }
  return running;
}

/**
 * Years of exposure that count for rot between installation and a day [a]: the law of depth is read at this age, so that a
 * treatment shifts the clock, d(t) = d_law(t - T_stopped), and never undoes what has rotted. 0 before installation.
 * Source: clock shift after groundline treatment, IRG/WP 3222 (read, 5 years); liner see `LINER_PACE`.
 */
export function exposureYears(clock: RotClock, installedDay: number, day: number): number {
  const liner = clock.linerFromDay === null ? day : Math.min(day, Math.max(installedDay, clock.linerFromDay));
  const bare = runningDays(clock, installedDay, liner);
  const lined = runningDays(clock, liner, day);
  return (bare + LINER_PACE * lined) / DAYS_PER_YEAR;
}
