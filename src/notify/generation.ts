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

/** The works that last renewed a fence's posts. */
export interface Renewal {
  readonly kind: WorksKind;
  readonly day: CalendarDay;
}

/** The works that a build's name, as `generationOf` writes it, tells of; null for one as built. */
export function renewalOf(generation: string): Renewal | null {
  const kind = [...RENEWING].find((each) => generation.startsWith(`${each} `));
  return kind ? { kind, day: generation.slice(-10) } : null;
}
