import type { Works, WorksKind } from '../forecast/works.ts';
import type { CalendarDay } from '../units/calendar-day.ts';

const RENEWING: ReadonlySet<WorksKind> = new Set(['rebuild', 'post-swap', 'steel-sleeve', 'added-posts']);

/**
 * Names the build of a fence that notices are about: `as built`, or the last works up to the day that renewed posts.
 * @param today the calendar day up to which works count
 */
export function generationOf(works: readonly Works[], today: CalendarDay): string {
  const renewing = works
    .filter((each) => RENEWING.has(each.kind) && each.day <= today)
    .map((each) => `${each.kind} ${each.ref} of ${each.day}`)
    .sort((a, b) => (a.slice(-10) < b.slice(-10) ? -1 : a.slice(-10) > b.slice(-10) ? 1 : a < b ? -1 : 1));
  return renewing.at(-1) ?? 'as built';
}
